import { describe, expect, test } from 'vitest';
import { analyse, contradictionsIn, findings } from '../../shared-math/findings/index.ts';
import { distance, type Point } from '../../shared-math/geometry/points.ts';
import {
  hardpoints,
  type LayoutDocument,
  moveHardpoint,
  readLayout,
  resolveLayout,
  withTyreRadius,
  withValue,
} from '../../shared-math/layout/index.ts';
import { withTraced } from '../../src-renderer/places/measure/photos/photo-planes.ts';
import { expectClose } from '../support/close.ts';
import { COMBINATIONS, CROSS_STEER, documentOf, LATERALS, LOCATIONS, rawLayout } from '../support/layouts.ts';

const at = (document: LayoutDocument, id: string) => {
  const point = hardpoints(document).find((each) => each.id === id);
  if (!point) throw new Error(id);
  return point;
};
const places = (document: LayoutDocument) =>
  new Map(hardpoints(document).map((point) => [point.id, point.at]));
/** Ids of the points that moved, with how far. */
function moved(before: LayoutDocument, after: LayoutDocument): Map<string, Point> {
  const was = places(before);
  const changes = new Map<string, Point>();
  for (const [id, to] of places(after)) {
    const from = was.get(id) as Point;
    const by = to.map(
      (value, i) => Math.round((value - (from[i] as number)) * 1e3) / 1e3 + 0,
    ) as unknown as Point;
    if (by.some((value) => value !== 0)) changes.set(id, by);
  }
  return changes;
}

/** Every point that the axle beam, the spindles or what is fixed to them carry, and a rocker bolted to it. */
const onAxle = (document: LayoutDocument) =>
  hardpoints(document)
    .filter(
      ({ carrier }) =>
        /^(axle|spindle)-/.test(carrier) ||
        (carrier === 'rocker' && document.lateral.kind === 'watt' && document.lateral.rockerOn === 'axle'),
    )
    .map(({ id }) => id)
    .sort();

describe('the axle is one body', () => {
  test.each(COMBINATIONS)('tyres of another size carry all of it, and nothing else: $label', ({ over }) => {
    const before = documentOf(rawLayout(over));
    const after = withTyreRadius(before, 406.4);
    expect(readLayout(after).ok).toBe(true);
    const changes = moved(before, after);
    expect([...changes.keys()].sort()).toEqual(onAxle(before));
    for (const by of changes.values()) expect(by).toEqual([0, 0, 76.4]);
    expect(after.car.tyreRadius).toBe(406.4);
    expect(after.axle.left.wheelCentre[2]).toBeCloseTo(406.4, 9);
    // No length on the axle changes.
    for (const a of onAxle(before))
      expectClose(
        distance(at(after, a).at, at(after, 'axle.left.wheelCentre').at),
        distance(at(before, a).at, at(before, 'axle.left.wheelCentre').at),
        1e-3,
      );
  });

  test.each(COMBINATIONS)('a wheel centre carries it, up with the tyre’s radius: $label', ({ over }) => {
    const before = documentOf(rawLayout(over));
    const [x, y, z] = before.axle.left.wheelCentre;
    const up = moveHardpoint(before, 'axle.left.wheelCentre', [x, y, z + 20]);
    expect([...moved(before, up).keys()].sort()).toEqual(onAxle(before));
    expect(up.car.tyreRadius).toBe(before.car.tyreRadius + 20);
    const back = moveHardpoint(before, 'axle.right.wheelCentre', [x - 12, -y, z]);
    expect([...moved(before, back).keys()].sort()).toEqual(onAxle(before));
    for (const by of moved(before, back).values()) expect(by).toEqual([-12, 0, 0]);
    expect(back.car).toEqual(before.car);
  });

  test('sideways kingpins and arms go with the wheel, brackets stay where the frame is', () => {
    const before = documentOf(
      rawLayout({ location: LOCATIONS['four-bar'], lateral: LATERALS.bar, steering: CROSS_STEER }),
    );
    const [x, y, z] = before.axle.left.wheelCentre;
    const changes = moved(before, moveHardpoint(before, 'axle.left.wheelCentre', [x, y + 15, z]));
    expect(Object.fromEntries(changes)).toEqual({
      'axle.left.kingpinTop': [0, 15, 0],
      'axle.right.kingpinTop': [0, -15, 0],
      'axle.left.kingpinBottom': [0, 15, 0],
      'axle.right.kingpinBottom': [0, -15, 0],
      'axle.left.wheelCentre': [0, 15, 0],
      'axle.right.wheelCentre': [0, -15, 0],
      'axle.left.tieRodBall': [0, 15, 0],
      'axle.right.tieRodBall': [0, -15, 0],
      'steering.dragLinkBall': [0, -15, 0],
    });
  });

  test('one side of an axle that is not mirrored moves by itself, a mirrored pair of seats with it spelled out', () => {
    const mirrored = documentOf(rawLayout({ location: LOCATIONS['parallel-leaf'] }));
    const before: LayoutDocument = {
      ...mirrored,
      axle: { ...mirrored.axle, right: resolveLayout(mirrored).axle.right },
    };
    const [x, y, z] = before.axle.left.wheelCentre;
    const after = moveHardpoint(before, 'axle.right.wheelCentre', [x, -y, z + 4]);
    const ids = [...moved(before, after).keys()];
    expect(ids).toContain('location.right.seat');
    expect(ids.filter((id) => id.includes('.left.') || id === 'steering.dragLinkBall')).toEqual([]);
    expect(after.car.tyreRadius).toBe(before.car.tyreRadius + 2);
  });

  test('what a wheel centre brings is what moves with it', () => {
    for (const { over } of COMBINATIONS) {
      const document = documentOf(rawLayout(over));
      const point = at(document, 'axle.left.wheelCentre');
      const [x, y, z] = point.at;
      const ids = [...moved(document, moveHardpoint(document, point.id, [x, y, z + 5])).keys()];
      expect([...(point.brings ?? []), point.id].sort()).toEqual(ids.sort());
    }
  });

  test('a traced wheel centre takes nothing along: each point is seen by itself', () => {
    const before = documentOf(rawLayout());
    const point = at(before, 'axle.left.wheelCentre');
    const changes = moved(before, withTraced(before, point, [2, 712, 350]));
    expect([...changes.keys()].sort()).toEqual(['axle.left.wheelCentre', 'axle.right.wheelCentre']);
  });
});

describe('tyres that do not stand on the ground', () => {
  const INCHES = { unit: 'in', fraction: 16 } as const;
  const stops = (document: LayoutDocument) =>
    findings(analyse(resolveLayout(document)), INCHES).filter(({ rule }) => rule === 'tyre-and-ground');

  test('are a stop that names the gap, and that the remedy mends without moving a point', () => {
    const bad = withValue(documentOf(rawLayout()), 'car.tyreRadius', 406.4);
    const [stop, ...others] = stops(bad);
    expect(others).toEqual([]);
    expect(stop?.severity).toBe('stop');
    expect(stop?.sentence).toBe(
      'The tyres reach 3 in into the ground: wheel centre 13 in up, tyre radius 16 in',
    );
    const { remedy } = stop as NonNullable<typeof stop>;
    if (remedy?.kind !== 'set') throw new Error('a value is set');
    const mended = withValue(bad, remedy.path, remedy.value);
    expect(stops(mended)).toEqual([]);
    expect(moved(bad, mended).size).toBe(0);
    // The radius typed again puts the axle on it.
    expect(stops(withTyreRadius(bad, 406.4))).toEqual([]);
    expect(contradictionsIn(resolveLayout(bad), { unit: 'mm', fraction: 16 })[0]?.sentence).toBe(
      'The tyres reach 76.4 mm into the ground: wheel centre 330.0 mm up, tyre radius 406.4 mm',
    );
  });

  test('within what a tape reads nothing is said; hanging and one tyre alone are told as that', () => {
    const good = documentOf(rawLayout());
    expect(stops(withValue(good, 'car.tyreRadius', 331.5))).toEqual([]);
    expect(stops(withValue(good, 'car.tyreRadius', 310))[0]?.sentence).toMatch(
      /^The tyres hang .* above the ground/,
    );
    const apart = { ...good, axle: { ...good.axle, right: resolveLayout(good).axle.right } };
    const one = withValue(apart, 'axle.right.wheelCentre', [0, -710, 320]);
    expect(stops(one).map(({ sentence, part }) => [sentence.slice(0, 14), part])).toEqual([
      ['The right tyre', 'axle.right.wheelCentre'],
    ]);
  });
});
