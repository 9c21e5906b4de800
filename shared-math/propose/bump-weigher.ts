import {
  type HeldTravel,
  holdTravel,
  holdWheels,
  type MapKernel,
  prepareMapKernel,
  withBallOf,
  worstAt,
} from '../aim/index.ts';
import type { FrontEnd } from '../linkage/index.ts';

/** Poses looked at: coarse where the axle's path changes with every layout and has to be solved anew. */
const FINE = { heaves: 31, along: 11, rolls: 4 } as const;
const COARSE = { heaves: 15, along: 7, rolls: 3 } as const;

/**
 * Worst |bump steer| of front ends one after another, over heave and with each wheel anywhere in its own travel. Axle
 * poses are kept as long as the axle is the same, what the tie rod does in them as long as its balls are, and all but the box
 * as long as the steering-arm ball is.
 */
export class BumpWeigher {
  private readonly fineness: { readonly heaves: number; readonly along: number; readonly rolls: number };
  private travel: HeldTravel | undefined;
  private kernel: MapKernel | undefined;

  constructor(movesAxle: boolean) {
    this.fineness = movesAxle ? COARSE : FINE;
  }

  /** rad; infinity where the axle has no pose or the link no reach. */
  worst(frontEnd: FrontEnd): number {
    const { dragLinkBall, box } = frontEnd.layout.steering;
    const { travel } = this;
    const sameTravel = travel?.frontEnd.axle === frontEnd.axle && travel.frontEnd.driven === frontEnd.driven;
    if (!travel || !sameTravel) {
      const { heaves, along, rolls } = this.fineness;
      this.travel = holdWheels(holdTravel(frontEnd, heaves), along, rolls);
      this.kernel =
        this.travel.status === 'ok' ? prepareMapKernel(this.travel, this.kernel?.table) : undefined;
    } else if (this.kernel && travel.frontEnd.left !== frontEnd.left) {
      // Another tie rod: the axle's poses stand.
      this.travel = { ...travel, frontEnd, ball: dragLinkBall };
      this.kernel = prepareMapKernel(this.travel, this.kernel.table);
    } else if (this.kernel && dragLinkBall.some((value, i) => value !== travel.ball[i])) {
      this.travel = { ...travel, frontEnd, ball: dragLinkBall };
      this.kernel = withBallOf(this.kernel, this.travel);
    }
    return this.kernel ? worstAt(this.kernel, box.pitmanBall) : Number.POSITIVE_INFINITY;
  }
}
