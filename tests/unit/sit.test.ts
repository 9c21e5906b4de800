import { Matrix } from 'ml-matrix';
import { describe, expect, test } from 'vitest';
import { distance, type Point } from '../../shared-math/geometry/points.ts';
import { hardpoints, type LayoutDocument, resolveLayout } from '../../shared-math/layout/index.ts';
import {
  createState,
  poseAxle,
  prepareFrontEnd,
  solveFrontEnd,
  steerByBall,
} from '../../shared-math/linkage/index.ts';
import { type SatCar, sat, sitRows } from '../../shared-math/sit/index.ts';
import { DEGREE } from '../support/close.ts';
import { COMBINATIONS, CROSS_STEER, documentOf, LATERALS, LOCATIONS, rawLayout } from '../support/layouts.ts';
import { demonstration } from '../support/printed.ts';

function sitting(document: LayoutDocument, front: number, rear: number): SatCar {
  const found = sat(document, { front, rear });
  if (!found.ok) throw new Error(JSON.stringify(found.failure));
  return found.value;
}

/** A car whose links hold it without giving: four bars, a bar and an I-beam. */
const FIRM = documentOf(
  rawLayout({ location: LOCATIONS['four-bar'], lateral: LATERALS.bar, steering: CROSS_STEER }),
);
const placesOf = (document: LayoutDocument) => new Map(hardpoints(document).map(({ id, at }) => [id, at]));

describe.each([
  [30, 30],
  [25, -40],
  [-20, 35],
  [0, -60],
])('lower by %d in front and %d behind', (front, rear) => {
  // The whole frame by one rotation matrix and one shift, multiplied by a registry's matrix library (ml-matrix).
  test.each([
    'hairpins-side-steer.json',
    'four-bar-cross-steer.json',
    'parallel-leaf-cross-steer.json',
    'wishbone-side-steer.json',
  ])('%s: every point of the frame goes with one rigid frame', (name) => {
    const document = demonstration(name);
    const { document: after, rake } = sitting(document, front, rear);
    const angle = Math.atan((front - rear) / document.car.wheelbase);
    expect(rake).toBeCloseTo(angle, 12);
    const turn = new Matrix([
      [Math.cos(angle), 0, Math.sin(angle)],
      [0, 1, 0],
      [-Math.sin(angle), 0, Math.cos(angle)],
    ]);
    const before = resolveLayout(document).axle;
    const centre = before.left.wheelCentre.map(
      (each, i) => (each + (before.right.wheelCentre[i] as number)) / 2,
    );
    const turned = (at: readonly number[]) =>
      turn
        .mmul(Matrix.columnVector(at.map((each, i) => each - (centre[i] as number))))
        .to1DArray()
        .map((each, i) => each + (centre[i] as number) - (i === 2 ? front : 0));
    const [was, is] = [placesOf(document), placesOf(after)];
    const box = 'steering.box.sectorCentre';
    // How far the origin follows the axle along the car is the pose's; one point says it, all the others have to agree.
    const along = ((is.get(box) as Point)[0] as number) - (turned(was.get(box) as Point)[0] as number);
    let seen = 0;
    const check = (id: string, from: readonly number[], to: readonly number[]) => {
      const [x, y, z] = turned(from) as [number, number, number];
      expect(to[0], id).toBeCloseTo(x + along, 5);
      expect(to[1], id).toBeCloseTo(y, 5);
      expect(to[2], id).toBeCloseTo(z, 5);
      seen += 1;
    };
    for (const { id, carrier, at } of hardpoints(document))
      if (carrier === 'frame' || carrier === 'pitman') check(id, at, is.get(id) as Point);
    for (const [i, rail] of document.rails.entries())
      for (const [j, at] of rail.path.entries()) check(`rail ${i}`, at, after.rails[i]?.path[j] as Point);
    for (const [i, obstacle] of document.obstacles.entries()) {
      const moved = after.obstacles[i];
      if (obstacle.kind === 'box' && moved?.kind === 'box') check(`box ${i}`, obstacle.centre, moved.centre);
      if (obstacle.kind !== 'box' && moved && moved.kind !== 'box')
        check(`tube ${i}`, obstacle.from, moved.from);
    }
    expect(seen).toBeGreaterThan(10);
    const axis = turn.mmul(Matrix.columnVector([...document.steering.box.sectorAxis])).to1DArray();
    for (const [i, each] of after.steering.box.sectorAxis.entries())
      expect(each).toBeCloseTo(axis[i] as number, 5);
  });

  test('the wheels stay on the ground, links and kingpins keep their lengths, the travel moves', () => {
    const { document: after, heave } = sitting(FIRM, front, rear);
    const [was, is] = [resolveLayout(FIRM), resolveLayout(after)];
    for (const side of ['left', 'right'] as const) {
      // A yawed axle's wheels lie a hair apart in a raked frame's ground.
      expect(is.axle[side].wheelCentre[2]).toBeCloseTo(330, 2);
      expect(distance(is.axle[side].kingpinTop, is.axle[side].kingpinBottom)).toBeCloseTo(
        distance(was.axle[side].kingpinTop, was.axle[side].kingpinBottom),
        4,
      );
      if (is.location.kind === 'four-bar' && was.location.kind === 'four-bar')
        for (const bar of ['upper', 'lower'] as const)
          expect(distance(is.location[side][bar].axle, is.location[side][bar].frame)).toBeCloseTo(
            distance(was.location[side][bar].axle, was.location[side][bar].frame),
            4,
          );
    }
    const tie = ({ axle }: typeof was) => distance(axle.left.tieRodBall, axle.right.tieRodBall);
    expect(tie(is)).toBeCloseTo(tie(was), 4);
    expect((is.axle.left.wheelCentre[0] + is.axle.right.wheelCentre[0]) / 2).toBeCloseTo(0, 4);
    expect(after.travel).toEqual({
      ...FIRM.travel,
      bump: expect.closeTo(75 - heave, 5),
      rebound: expect.closeTo(75 + heave, 5),
    });
    expect(after.sits).toEqual({ front, rear });
  });
});

// Another way round: the car as drawn, its axle posed that much higher by the solver, and a drag link of the new length closed
// there. No frame is moved for it.
test.each([
  ['four bars', FIRM],
  ['hairpins', documentOf(rawLayout({ lateral: LATERALS.bar }))],
] as const)(
  '%s, let down level: steer, caster and camber over heave are those of the solved pose',
  (_, document) => {
    const { document: after, heave, dragLinkBy } = sitting(document, 25, 25);
    expect(heave).toBeCloseTo(25, 6);
    const drawn = prepareFrontEnd(resolveLayout(document));
    const sits = prepareFrontEnd(resolveLayout(after));
    const [one, other] = [createState(), createState()];
    const ball = document.steering.box.pitmanBall;
    for (const more of [-30, -10, 0, 15, 40]) {
      expect(solveFrontEnd(sits, more, 0 as never, 0 as never, one)).toBe('ok');
      expect(poseAxle(drawn, 25 + more, 0 as never, other)).toBe(true);
      steerByBall(
        drawn,
        ball[0],
        ball[1],
        ball[2],
        drawn.dragLinkLength + dragLinkBy,
        drawn.dragLinkBranch,
        other,
      );
      for (const side of ['left', 'right'] as const)
        for (const figure of ['steer', 'camber', 'caster', 'kingpinInclination'] as const)
          expect(one[side][figure] / DEGREE, `${figure} at ${more}`).toBeCloseTo(
            other[side][figure] / DEGREE,
            3,
          );
    }
  },
);

test('a raised tail takes off the caster by which the frame is raked', () => {
  const { document: after, rake, casterGained } = sitting(FIRM, 0, -60);
  // By hand: atan(60/2640) is 1.302°; with no travel of the axle it does not pitch in its links.
  expect(rake / DEGREE).toBeCloseTo(1.302, 3);
  expect(casterGained / DEGREE).toBeCloseTo(-1.302, 1);
  const caster = (document: LayoutDocument) => {
    const { kingpinTop, kingpinBottom } = document.axle.left;
    return Math.atan2(kingpinBottom[0] - kingpinTop[0], kingpinTop[2] - kingpinBottom[2]);
  };
  expect(caster(after) - caster(FIRM)).toBeCloseTo(casterGained, 9);
});

// A spring with one fixed eye is left out: its own arc begins anew from where it sits.
describe('there and back', () => {
  test.each(
    COMBINATIONS.filter(
      ({ label }) => /i-beam/.test(label) && /(four-bar|wishbone), (bar|spring|watt)/.test(label),
    ),
  )('$label', ({ over }) => {
    const document = documentOf(rawLayout(over));
    const down = sitting(document, 20, -30);
    const back = sitting(down.document, -20, 30).document;
    expect(back.sits).toBeUndefined();
    const was = placesOf(document);
    for (const [id, at] of placesOf(back))
      for (const [axis, value] of at.entries())
        expect(value, `${id} ${axis}`).toBeCloseTo((was.get(id) as Point)[axis] as number, 1);
  });
});

test('nothing lowered changes nothing but the last digits', () => {
  const { document, dragLinkBy, rake } = sitting(FIRM, 0, 0);
  expect(rake).toBe(0);
  expect(dragLinkBy).toBeCloseTo(0, 5);
  expect(document.sits).toBeUndefined();
  const was = placesOf(FIRM);
  for (const [id, at] of placesOf(document))
    expect(distance(at, was.get(id) as Point), id).toBeLessThan(1e-4);
});

test('what was measured at another height and moves is planned where it is now; a guess stays one', () => {
  const document = {
    ...FIRM,
    origins: { 'axle.left.kingpinTop': 'tape', 'steering.box.sectorCentre': 'photo' },
  } as LayoutDocument;
  const { document: after } = sitting(document, 25, 0);
  expect(after.origins).toEqual({
    'axle.left.kingpinTop': 'plan',
    // Spelled out from now on, as the bar takes the axle aside.
    'axle.right.kingpinTop': 'plan',
    'steering.box.sectorCentre': 'plan',
  });
  expect(sitting(FIRM, 25, 0).document.origins).toBeUndefined();
  expect(sitting(document, 0, 0).document.origins).toEqual(document.origins);
});

describe('what cannot be is said', () => {
  test('past the bump or the droop, with what is lacking', () => {
    expect(sat(FIRM, { front: 100, rear: 100 })).toMatchObject({
      ok: false,
      failure: { kind: 'no-bump', lacks: expect.closeTo(25, 3) },
    });
    expect(sat(FIRM, { front: -80, rear: -80 })).toMatchObject({
      ok: false,
      failure: { kind: 'no-droop', lacks: expect.closeTo(5, 3) },
    });
  });

  test('a row of the curve that cannot be has its failure, the others their figures', () => {
    const rows = [
      ...sitRows(
        FIRM,
        [-100, 0, 25, 100].map((front) => ({ front, rear: 0 })),
      ),
    ];
    expect(rows.map(({ failure }) => failure?.kind)).toEqual(['no-droop', undefined, undefined, 'no-bump']);
    expect(rows[1]?.bump).toBeCloseTo(75, 4);
    expect(rows[2]?.bump).toBeCloseTo(50, 1);
    expect(rows[2]?.worstBumpSteer).not.toBe(rows[1]?.worstBumpSteer);
  });
});
