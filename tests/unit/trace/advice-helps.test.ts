import { describe, expect, test } from 'vitest';
import { adjust } from '../../../shared-math/adjust/index.ts';
import { hardpoints, type LayoutDocument, type Photo } from '../../../shared-math/layout/index.ts';
import { helpsIn } from '../../../shared-math/trace/advice-helps.ts';
import { photosFurther, planeOf, stanceOf, typicalDoubt } from '../../../shared-math/trace/index.ts';
import { photographedCar } from '../../support/photo-scene.ts';
import { CLICKS_ONLY, guessedCar, lots, photoOf } from '../../support/photo-world.ts';

// What could be done, as documents: held against what an independent camera really gave, and against their own adjustment.

const points = hardpoints(photographedCar())
  .filter(({ id }) => !id.includes('.right.') && !id.startsWith('shaft.') && id !== 'axle.left.wheelCentre')
  .map(({ id }) => id);
const off = lots(11);
const taken = (['side', 'top'] as const).map((view) =>
  photoOf({ view, away: 3900, askew: 0.06, focal: 26 }, off, { slips: CLICKS_ONLY, marks: points }),
);
/** Nobody gave more than rectangle and known point; the file has the focal length. */
const bare = taken.map(({ distance: _, depth: __, lens: ___, ...photo }): Photo => {
  const px = (26 / 43.2666) * Math.hypot(2400, 1600);
  return { ...photo, focal: { px, share: 0.05 } };
});

function doubtsOf(document: LayoutDocument): Map<string, number> {
  const found = adjust(document, [], { further: photosFurther([]), pointsOnly: true });
  if (!found.ok) throw new Error(found.failure.kind);
  return new Map(points.map((id) => [id, Math.hypot(...(found.value.points.get(id)?.doubt ?? [0, 0, 0]))]));
}

const document = { ...photographedCar(), origins: guessedCar().origins ?? {}, photos: bare };
const doubts = doubtsOf(document);
const helps = helpsIn(document, { points }, doubts);
const typical = (of: LayoutDocument) => typicalDoubt(doubtsOf(of).values());

/**
 * An edge may leave a trifle more in doubt: without one a lens is taken to be within what cameras leave unmended, with one
 * it is what the edge says. Then it is not advised.
 */
const worse = (kind: string) => (kind === 'edge' ? 1.001 : 1);

describe('what nobody has given of two photos', () => {
  test.each(['distance', 'plane', 'edge'] as const)('%s: is given to both, as it truly was', (kind) => {
    const help = helps.find((each) => each.help.kind === kind);
    if (!help || !('photos' in help.help)) throw new Error(`${kind} is not among the helps`);
    expect(help.help.photos).toEqual([0, 1]);
    for (const [i, photo] of help.document.photos.entries()) {
      const truly = taken[i] as Photo;
      if (kind === 'distance')
        expect(Math.abs((photo.distance ?? 0) / (truly.distance ?? 1) - 1)).toBeLessThan(0.03);
      // Without a depth the plane is taken to stand where the known point does: nobody can foretell better.
      if (kind === 'plane') expect(photo.depth).toBeDefined();
      if (kind === 'edge') expect(photo.lens?.line.length).toBeGreaterThan(2);
    }
    expect(typical(help.document)).toBeLessThan(worse(kind) * typicalDoubt(doubts.values()));
  });

  test('every other help lessens the doubt too, and none adds a photo where one was taken', () => {
    expect(helps.length).toBeGreaterThan(12);
    const kinds = new Set(helps.map(({ help }) => help.kind));
    expect([...kinds].sort()).toEqual(['beside', 'distance', 'edge', 'length', 'plane', 'view']);
    for (const { help, document: after } of helps) {
      expect(typical(after), JSON.stringify(help)).toBeLessThanOrEqual(
        worse(help.kind) * typicalDoubt(doubts.values()),
      );
      if (help.kind === 'view') expect(help.view).toBe('front');
      if (help.kind !== 'beside') continue;
      const [like, more] = [after.photos[help.photo] as Photo, after.photos.at(-1) as Photo];
      const [stood, stands] = [like, more].map((photo) => {
        const plane = planeOf(photo);
        return plane.ok ? stanceOf(photo, plane.value) : undefined;
      });
      // The photo that is pretended has its camera where it is asked for.
      expect(Math.abs((stands?.right ?? 0) - (stood?.right ?? 0) - help.right)).toBeLessThan(15);
      expect(Math.abs(help.right)).toBeGreaterThan(250);
    }
  });

  test('what is given is not asked for again', () => {
    const all = { ...document, photos: taken };
    const kinds = new Set(helpsIn(all, { points }, doubtsOf(all)).map(({ help }) => help.kind));
    expect([...kinds].sort()).toEqual(['beside', 'length', 'view']);
  });
});
