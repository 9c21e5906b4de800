import { expect } from 'vitest';
import { createState, poseAxle } from '../../shared-math/linkage/index.ts';
import { POSE_ROCKER } from '../../shared-math/pose/index.ts';
import { DEGREE, expectClose } from './close.ts';
import { type Combination, frontEndOf, layoutOf } from './layouts.ts';
import { rawResiduals, solveByRegistry } from './raw-equations.ts';

const POSES = [
  [75, 0],
  [-75, 0],
  [0, 3],
  [40, -2],
  [-60, 3],
] as const;

/**
 * The program's pose is the least-squares pose of the raw equations. Outside check: ml-levenberg-marquardt with difference
 * slopes, on residuals written anew in raw-equations.ts.
 */
export function expectRegistryPose({ over }: Combination): void {
  const frontEnd = frontEndOf(over);
  const layout = layoutOf(over);
  for (const [heave, degrees] of POSES) {
    const roll = degrees * DEGREE;
    const state = createState();
    expect(poseAxle(frontEnd, heave, roll, state)).toBe(true);
    const other = solveByRegistry(layout, heave, roll);
    const at = `heave ${heave}, roll ${degrees}`;
    expectClose(state.axle.x, other.x, 2e-4, `${at}: x`);
    expectClose(state.axle.y, other.y, 2e-4, `${at}: y`);
    expectClose(state.axle.yaw, other.yaw, 2e-6, `${at}: yaw`);
    expectClose(state.axle.pitch, (other.left + other.right) / 2, 2e-6, `${at}: pitch`);
    expectClose(state.axle.twist, other.left - other.right, 2e-6, `${at}: twist`);
    expectClose(state.work.pose[POSE_ROCKER]!, other.rocker ?? 0, 2e-6, `${at}: rocker`);
    // And no lower sum of squares is to be had nearby: the slope of it vanishes in every direction.
    const half = state.axle.twist / 2;
    const mine = {
      x: state.axle.x,
      y: state.axle.y,
      yaw: state.axle.yaw,
      left: state.axle.pitch + half,
      right: state.axle.pitch - half,
      rocker: state.work.pose[POSE_ROCKER]!,
    };
    const sum = (pose: typeof mine) =>
      rawResiduals(layout, heave, roll, pose).reduce((total, r) => total + r * r, 0);
    const joined = frontEnd.axle.unknowns === 4;
    const directions: ((d: number) => typeof mine)[] = [
      (d) => ({ ...mine, x: mine.x + d }),
      (d) => ({ ...mine, y: mine.y + d }),
      (d) => ({ ...mine, yaw: mine.yaw + d / 1000 }),
      (d) => ({ ...mine, left: mine.left + d / 1000, right: mine.right + (joined ? d / 1000 : 0) }),
      (d) => ({ ...mine, right: mine.right + d / 1000, left: mine.left + (joined ? d / 1000 : 0) }),
    ];
    directions.push((d) => ({ ...mine, rocker: mine.rocker + d / 1000 }));
    const step = 1e-3;
    for (const moved of directions) {
      const slope = (sum(moved(step)) - sum(moved(-step))) / (2 * step);
      const curve = (sum(moved(step)) - 2 * sum(mine) + sum(moved(-step))) / (step * step);
      expectClose(slope / Math.max(curve, 1e-3), 0, 1e-6, `${at}: distance to the minimum, mm`);
    }
  }
}
