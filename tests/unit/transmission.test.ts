import { expect, test } from 'vitest';
import type { Point } from '../../shared-math/geometry/points.ts';
import { transmissionAngles } from '../../shared-math/joints/index.ts';
import type { Carrier } from '../../shared-math/layout/index.ts';
import { carryPoint, createState, solveFrontEnd } from '../../shared-math/linkage/index.ts';
import { DEGREE, expectClose } from '../support/close.ts';
import { frontEndOf, STEERED } from '../support/layouts.ts';

const minus = (a: Point, b: Point): Point => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
const times = (a: Point, b: Point): Point => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
const along = (a: Point, b: Point) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];

/**
 * The angle between two planes through an axis, one with the arm in it and one along the link, 90 degrees at most:
 * between their normals. The same angle as in the plane square to the axis, without laying anything into it.
 */
function dihedral(axis: Point, arm: Point, link: Point): number {
  const [p, q] = [times(axis, arm), times(axis, link)];
  return Math.atan2(Math.hypot(...times(p, q)), Math.abs(along(p, q)));
}

test.each(STEERED.filter((_, i) => i % 3 === 0))(
  'transmission angles are those between the planes through each arm’s axis: $label',
  ({ over }) => {
    const frontEnd = frontEndOf(over);
    const { steering, axle } = frontEnd.layout;
    const state = createState();
    const out = new Float64Array(3);
    const place = (carrier: Carrier, at: Point): Point => {
      carryPoint(frontEnd, state, carrier, at, out);
      return [out[0]!, out[1]!, out[2]!];
    };
    for (const [heave, roll, handwheel] of [
      [0, 0, 0],
      [60, 2 * DEGREE, 3],
      [-60, -2 * DEGREE, -5],
    ] as const) {
      expect(solveFrontEnd(frontEnd, heave, roll, handwheel, state)).toBe('ok');
      const side = frontEnd.driven;
      const [pitman, ball] = [
        place('pitman', steering.box.pitmanBall),
        place(`spindle-${side}`, steering.dragLinkBall),
      ];
      const bottom = place(`axle-${side}`, axle[side].kingpinBottom);
      const kingpin = minus(place(`axle-${side}`, axle[side].kingpinTop), bottom);
      const found = transmissionAngles(frontEnd, state);
      const link = minus(ball, pitman);
      const { sectorAxis, sectorCentre } = steering.box;
      expectClose(found.pitman, dihedral(sectorAxis, minus(pitman, sectorCentre), link), 1e-7, 'pitman arm');
      expectClose(found.steeringArm, dihedral(kingpin, minus(ball, bottom), link), 1e-7, 'steering arm');
    }
  },
);
