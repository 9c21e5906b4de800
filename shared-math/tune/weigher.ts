import {
  type HeldTravel,
  holdTravel,
  type MapKernel,
  prepareMapKernel,
  withBallOf,
  worstAt,
} from '../aim/index.ts';
import type { Point } from '../geometry/points.ts';
import { createState, type FrontEnd, poseAxle } from '../linkage/index.ts';
import { evenly } from '../sweep/index.ts';
import { toRadians } from '../units/index.ts';

/** Poses of roll at ride height, odd so that level is one of them. */
const ROLLS = 13;
/** Share of the lesser of the two worsts that counts too, so that one is not left loose while the other rules. */
const ALSO = 0.02;

/** The axle's poses at ride height over roll, as `holdTravel` has them over heave. */
function holdRoll(frontEnd: FrontEnd, travel: HeldTravel): HeldTravel {
  const full = toRadians(frontEnd.layout.travel.roll);
  const rolls = evenly(-full, full, ROLLS);
  const state = createState();
  const frames: Float64Array[] = [];
  for (const roll of rolls) {
    if (!poseAxle(frontEnd, 0, roll, state)) return { ...travel, status: 'no-pose' };
    frames.push(state.work.frame.slice());
  }
  return { ...travel, frames };
}

/** A way that the axle moves, made ready for frame ends as long as axle and steering-arm ball are the same. */
class Held {
  private readonly travelOf: (frontEnd: FrontEnd) => HeldTravel;
  private travel: HeldTravel;
  private kernel: MapKernel | undefined;

  constructor(drawn: FrontEnd, travelOf: (frontEnd: FrontEnd) => HeldTravel) {
    this.travelOf = travelOf;
    this.travel = travelOf(drawn);
  }

  get hasPose(): boolean {
    return this.travel.status === 'ok';
  }

  /** Ready for a front end; undefined if its axle has no pose somewhere. */
  for(frontEnd: FrontEnd): MapKernel | undefined {
    const ball = frontEnd.layout.steering.dragLinkBall;
    if (frontEnd.axle !== this.travel.frontEnd.axle) {
      this.travel = this.travelOf(frontEnd);
      this.kernel = this.hasPose ? prepareMapKernel(this.travel, this.kernel?.table) : undefined;
    } else if (this.kernel && !isSame(ball, this.travel.ball)) {
      this.travel = { ...this.travel, frontEnd, ball };
      this.kernel = withBallOf(this.kernel, this.travel);
    } else if (!this.kernel && this.hasPose) {
      this.travel = { ...this.travel, frontEnd, ball };
      this.kernel = prepareMapKernel(this.travel);
    }
    return this.kernel;
  }
}

function isSame(a: Point, b: Point): boolean {
  return a[0] === b[0] && a[1] === b[1] && a[2] === b[2];
}

/**
 * Worst |bump steer| of front ends over heave and over roll, with as much kept from one to the next as still holds: the
 * axle's poses where they share the drawn one's axle model, and all but the box where the steering-arm ball is the same.
 */
export class Weigher {
  private readonly heave: Held;
  private readonly roll: Held;

  constructor(drawn: FrontEnd) {
    this.heave = new Held(drawn, (frontEnd) => holdTravel(frontEnd));
    this.roll = new Held(drawn, (frontEnd) => holdRoll(frontEnd, holdTravel(frontEnd, 1)));
  }

  get hasPose(): boolean {
    return this.heave.hasPose && this.roll.hasPose;
  }

  /** rad, the larger worst and a little of the lesser; infinity where the axle has no pose or the box no reach. */
  weigh(frontEnd: FrontEnd): number {
    const heave = this.heave.for(frontEnd);
    const roll = this.roll.for(frontEnd);
    if (!heave || !roll) return Number.POSITIVE_INFINITY;
    const { pitmanBall } = frontEnd.layout.steering.box;
    const overHeave = worstAt(heave, pitmanBall);
    const overRoll = worstAt(roll, pitmanBall);
    return Math.max(overHeave, overRoll) + ALSO * Math.min(overHeave, overRoll);
  }
}
