import {
  FLAG_BUMP_STOP,
  FLAG_DROOP_STOP,
  FLAG_LEFT_OFF_GROUND,
  FLAG_NO_KICK,
  FLAG_RIGHT_OFF_GROUND,
  type RideRun,
  RUN_DIVERGED,
  RUN_NO_POSE,
  RUN_OK,
  RUN_OUT_OF_REACH,
} from '../../../shared-math/ride/index.ts';
import { toDegrees } from '../../../shared-math/units/index.ts';
import type { FramePose } from '../../document/frame-pose.ts';
import type { Pose } from '../../document/reach.ts';

// What is read off a run: a moment of it, its curves, its peaks.

/** The row before a moment (s) and the share of the way to the next one. */
export function rowAt(run: RideRun, time: number): { readonly row: number; readonly share: number } {
  const step = (run.time[1] ?? 1) - (run.time[0] ?? 0);
  const at = Math.min(run.count - 1, Math.max(0, time / step));
  const row = Math.min(run.count - 1, Math.floor(at + 1e-9));
  return { row, share: Math.max(0, at - row) };
}

/** A column's value at a moment, by the straight line between its rows. */
export function valueAt(run: RideRun, column: Float64Array, time: number): number {
  const { row, share } = rowAt(run, time);
  const before = column[row] as number;
  const after = column[Math.min(run.count - 1, row + 1)] as number;
  return before + share * (after - before);
}

/** Where the car stands at a moment of a run. */
export function standAt(run: RideRun, time: number, handwheel: number): { pose: Pose; framePose: FramePose } {
  return {
    pose: {
      heave: valueAt(run, run.heave, time),
      roll: toDegrees(valueAt(run, run.roll, time)),
      handwheel,
    },
    framePose: {
      rise: valueAt(run, run.frameRise, time),
      roll: valueAt(run, run.frameRoll, time),
      about: run.setUp.parameters.rollCentre,
    },
  };
}

/** The worst of a run, each way; rad, mm, N. */
export interface RunPeaks {
  /** What the road steers the wheels by, at most, and from end to end. */
  readonly dart: number;
  readonly swing: number;
  /** How the handwheel is thrown, at most; undefined if that is not known at every moment. */
  readonly kick: number | undefined;
  readonly bump: number;
  readonly droop: number;
  readonly roll: number;
  readonly toeChange: number;
  /** s that either tyre is off the ground. */
  readonly offGround: number;
  readonly bumpStop: boolean;
  readonly droopStop: boolean;
  /** The first moment (s) that is not `ok`, and what it is. */
  readonly trouble: { readonly at: number; readonly status: number } | undefined;
}

export function peaksOf(run: RideRun): RunPeaks {
  let [least, most, kick, bump, droop, roll, off] = [0, 0, 0, 0, 0, 0, 0];
  let [toeLeast, toeMost] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  let flags = 0;
  let trouble: RunPeaks['trouble'];
  for (let row = 0; row < run.count; row += 1) {
    const status = run.status[row] as number;
    if (status !== RUN_OK) trouble ??= { at: run.time[row] as number, status };
    if (status === RUN_DIVERGED) break;
    const flag = run.flags[row] as number;
    if (flag & (FLAG_LEFT_OFF_GROUND | FLAG_RIGHT_OFF_GROUND)) off += 1;
    bump = Math.max(bump, run.heave[row] as number);
    droop = Math.max(droop, -(run.heave[row] as number));
    roll = Math.max(roll, Math.abs(run.roll[row] as number));
    if (status !== RUN_OK) continue;
    flags |= flag;
    least = Math.min(least, run.bumpSteer[row] as number);
    most = Math.max(most, run.bumpSteer[row] as number);
    kick = Math.max(kick, Math.abs(run.kick[row] as number));
    toeLeast = Math.min(toeLeast, run.totalToeIn[row] as number);
    toeMost = Math.max(toeMost, run.totalToeIn[row] as number);
  }
  return {
    dart: Math.max(most, -least),
    swing: most - least,
    kick: flags & FLAG_NO_KICK ? undefined : kick,
    bump,
    droop,
    roll,
    toeChange: Math.max(0, toeMost - toeLeast),
    offGround: off * ((run.time[1] ?? 0) - (run.time[0] ?? 0)),
    bumpStop: (flags & FLAG_BUMP_STOP) !== 0,
    droopStop: (flags & FLAG_DROOP_STOP) !== 0,
    trouble,
  };
}

/** Why a moment of a run has no steering, as the end of a sentence. */
export const STATUS_WORDS: Readonly<Record<number, string>> = {
  [RUN_OUT_OF_REACH]: 'the linkage cannot reach where the road throws the axle',
  [RUN_NO_POSE]: 'the links cannot hold the axle where the road throws it',
  [RUN_DIVERGED]: 'springs and tyres threw the car beyond any road',
};
