import type { Point } from '../../geometry/points.ts';
import { type Layout, SIDES } from '../../layout/index.ts';
import type { AxleKind } from '../rows.ts';

type ParallelLeaf = Extract<Layout['location'], { kind: 'parallel-leaf' }>;

/** Distance in plan, mm. */
function inPlan(a: Point, b: Point): number {
  return Math.hypot(a[0] - b[0], a[1] - b[1]);
}

/**
 * A leaf each side along the rail. The half from the seat to the fixed eye bends to a near-circle whose end runs
 * an arc of 3/4 of its length (SAE HS-788's rule, from memory; for a uniform-strength leaf it follows by series:
 * drop L(1 - cos φ)/φ against shortening L(1 - sin φ/φ)). So the seat keeps its distance from the point a quarter
 * of the way from the eye. A seat nearer one eye tips as the spring deflects: with plan distances a to the front
 * eye and b to the rear eye, clamped halves of one curvature give the pitch -(a - b)/(a b) for each mm of rise.
 */
export const parallelLeaf: AxleKind<ParallelLeaf> = {
  rows: (location) =>
    SIDES.flatMap((side) => {
      const { fixedEye, seat, shackleEye } = location[side];
      const quarter: Point = [
        fixedEye[0] + (seat[0] - fixedEye[0]) / 4,
        fixedEye[1] + (seat[1] - fixedEye[1]) / 4,
        fixedEye[2] + (seat[2] - fixedEye[2]) / 4,
      ];
      const [front, rear] = fixedEye[0] > shackleEye[0] ? [fixedEye, shackleEye] : [shackleEye, fixedEye];
      const a = inPlan(seat, front);
      const b = inPlan(seat, rear);
      return [
        { form: 'distance' as const, half: side, axle: seat, frame: quarter },
        { form: 'leaf-pitch' as const, half: side, seat, pitchPerRise: -(a - b) / (a * b) },
      ];
    }),
};
