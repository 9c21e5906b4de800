import { describe, expect, test } from 'vitest';
import { ballJoints } from '../../../shared-math/joints/index.ts';
import {
  hardpoints,
  type LayoutDocument,
  readLayout,
  resolveLayout,
} from '../../../shared-math/layout/index.ts';
import { refusalSentence } from '../../../src-renderer/document/refusal-sentences.ts';
import { usualStudWords } from '../../../src-renderer/panels/points/stud-words.ts';
import {
  directionOfWay,
  studAt,
  wayOf,
  waysFor,
  withStud,
} from '../../../src-renderer/panels/points/studs.ts';
import { withoutValue } from '../../../src-renderer/places/layout/car/optional-values.ts';
import { documentOf, LATERALS, LOCATIONS, rawLayout } from '../../support/layouts.ts';

const plain = documentOf(rawLayout({ lateral: LATERALS.bar }));
const pointOf = (document: LayoutDocument, id: string) =>
  hardpoints(document).find((point) => point.id === id)!;
const stud = (document: LayoutDocument, id: string) => studAt(resolveLayout(document), id);
const turned = (id: string, to: readonly [number, number, number]) => withStud(plain, pointOf(plain, id), to);

describe('the stud of a ball', () => {
  test('is offered at every ball and nowhere else', () => {
    for (const location of Object.values(LOCATIONS)) {
      const document = documentOf(rawLayout({ location, lateral: LATERALS.bar }));
      const balls = hardpoints(document)
        .filter(({ id }) => stud(document, id))
        .map(({ id }) => id);
      expect([...balls].sort()).toEqual(
        ballJoints(resolveLayout(document))
          .map(({ id }) => id)
          .sort(),
      );
      expect(stud(document, 'axle.left.wheelCentre')).toBeUndefined();
    }
  });

  test('usually points as its place asks, in words', () => {
    const words = (id: string) => usualStudWords(stud(plain, id)!);
    expect(words('steering.box.pitmanBall')).toBe('along the sector');
    expect(words('steering.dragLinkBall')).toBe('along the kingpin');
    expect(words('lateral.axle')).toBe('fore and aft');
    expect(words('location.left.framePivot')).toBe('across the car');
    const wishbone = documentOf(rawLayout({ location: LOCATIONS.wishbone }));
    expect(usualStudWords(stud(wishbone, 'location.framePivot')!)).toBe('upright');
  });

  test('turned, is written into the document, and taken back leaves nothing behind', () => {
    const id = 'steering.dragLinkBall';
    const next = turned(id, [1, 0, 0]);
    expect(next.studs).toEqual({ [id]: [1, 0, 0] });
    expect(readLayout(next).ok).toBe(true);
    expect(stud(next, id)?.own).toEqual([1, 0, 0]);
    expect(stud(next, id)?.usual).toEqual(stud(plain, id)?.usual);
    expect(withStud(next, pointOf(next, id), undefined)).toEqual(plain);
  });

  test('takes its mirror image along where the sides are mirrored, and leaves the others alone', () => {
    const one = turned('axle.right.tieRodBall', [0, 0.6, 0.8]);
    expect(one.studs).toEqual({
      'axle.right.tieRodBall': [0, 0.6, 0.8],
      'axle.left.tieRodBall': [0, -0.6, 0.8],
    });
    const two = withStud(one, pointOf(one, 'lateral.axle'), [0, 0, 1]);
    expect(Object.keys(two.studs ?? {}).length).toBe(3);
    expect(withStud(two, pointOf(two, 'axle.left.tieRodBall'), undefined).studs).toEqual({
      'lateral.axle': [0, 0, 1],
    });
  });

  test('is known by its words whichever end is up, and by none where it is none of them', () => {
    const layout = resolveLayout(plain);
    for (const { joint } of hardpoints(plain).flatMap(({ id }) => stud(plain, id) ?? []))
      for (const way of waysFor(joint)) {
        const [x, y, z] = directionOfWay(layout, joint, way);
        expect(wayOf(layout, joint, [-3 * x, -3 * y, -3 * z])).toBe(
          // The sector's shaft lies across the car here, and says more.
          way === 'across' && joint.studCarrier === 'pitman' ? 'sector' : way,
        );
        expect(wayOf(layout, joint, [0.3, 0.4, 0.5])).toBeUndefined();
      }
  });

  test('of no length is refused by its name', () => {
    const refused = readLayout(turned('steering.box.pitmanBall', [0, 0, 0]));
    const sentence = refused.ok ? '' : refusalSentence(refused.failure, hardpoints(plain));
    expect(sentence).toBe('Stud of pitman ball: has no length, so it points nowhere');
  });
});

test('an optional value is taken out, and what stands beside it stays', () => {
  const document = documentOf(
    rawLayout({ car: { ...(rawLayout()['car'] as object), noseAhead: 600, noseWidth: 900 } }),
  );
  const next = withoutValue(document, 'car.noseAhead');
  expect(next.car).not.toHaveProperty('noseAhead');
  expect(next.car.noseWidth).toBe(900);
  expect(document.car.noseAhead).toBe(600);
  expect(readLayout(next).ok).toBe(true);
});
