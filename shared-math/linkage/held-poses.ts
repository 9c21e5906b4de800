import type { AxleModel } from '../pose/index.ts';
import type { FrontEnd } from './front-end.ts';
import { createState, type FrontEndState, poseAxle } from './solve-front-end.ts';

interface HeldPose {
  readonly state: FrontEndState;
  /** The axle that it stands for; null where that has no pose. */
  axle: AxleModel | null;
  known: AxleModel | null;
}

/**
 * Axle poses by heave and roll, kept as long as the axle stays the same: front ends that share it and differ in their
 * steering are steered on them. With another axle they are solved anew, each from the one asked for before it.
 */
export class HeldPoses {
  private readonly poses = new Map<number, Map<number, HeldPose>>();
  private last: HeldPose | undefined;

  /** The axle posed at a heave (mm) and roll (rad), to be steered; undefined if it has no pose there. */
  at(frontEnd: FrontEnd, heave: number, roll: number): FrontEndState | undefined {
    let ofHeave = this.poses.get(heave);
    if (!ofHeave) {
      ofHeave = new Map();
      this.poses.set(heave, ofHeave);
    }
    let pose = ofHeave.get(roll);
    if (!pose) {
      pose = { state: createState(), axle: null, known: null };
      ofHeave.set(roll, pose);
    }
    const { axle } = frontEnd;
    if (pose.known !== axle) {
      const { state, work } = { state: pose.state, work: pose.state.work };
      work.posedFor = null;
      if (this.last?.axle === axle) {
        work.pose.set(this.last.state.work.pose);
        work.posedFor = frontEnd;
      }
      pose.known = axle;
      pose.axle = poseAxle(frontEnd, heave, roll, state) ? axle : null;
      this.last = pose;
    }
    return pose.axle === null ? undefined : pose.state;
  }
}
