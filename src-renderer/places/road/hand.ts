import { type LayoutDocument, resolveLayout } from '../../../shared-math/layout/index.ts';
import {
  placeRide,
  prepareRide,
  type Ride,
  rideParameters,
  stepRide,
} from '../../../shared-math/ride/index.ts';
import { toDegrees, toRadians } from '../../../shared-math/units/index.ts';
import type { FromRideWorker, Hold, ToRideWorker } from './ride-messages.ts';

/** N/mm and N·s/mm of an arm that pulls: as stiff in every car, so that stiff springs are felt as stiff. */
const ARM = { stiffness: 90, damping: 4 };
/** At rest: mm and mm/s of the axle at a wheel. */
const STILL = { away: 0.02, speed: 0.4 };
/** s that are stepped at once where only the rest is wanted, and after which that is given up. */
const STRIDE = 0.05;
const CALM = 4;
const GIVEN_UP = 6;

/** How far a wheel is from ride height, and how fast it goes: the worse of both, mm and mm/s. */
function unrest({ state, parameters }: Ride): { away: number; speed: number } {
  const arm = parameters.track / 2;
  return {
    away: Math.max(
      Math.abs(state.heave) + arm * Math.abs(state.roll),
      Math.abs(state.frameRise) + arm * Math.abs(state.frameRoll),
    ),
    speed: Math.max(
      Math.abs(state.axleSpeed) + arm * Math.abs(state.axleRollSpeed),
      Math.abs(state.frameSpeed) + arm * Math.abs(state.frameRollSpeed),
    ),
  };
}

/**
 * One hand on one axle at a time: takes hold, pulls, lets go. The engine goes on by its own fixed step; what a frame of
 * the page leaves over is kept for the next, so that the same pulls make the same way whatever the page's pace.
 */
export class HandOnAxle {
  #ride: Ride | undefined;
  #turn = -1;
  /** Where the hand took hold, against ride height, mm. */
  #from = { up: 0, over: 0 };
  #left = 0;

  /** Takes hold; answers why not, if not. */
  take(order: ToRideWorker & { kind: 'take' }): FromRideWorker | undefined {
    const made = this.#prepare(order.document);
    if (typeof made === 'string') return { kind: 'not-held', turn: order.turn, reason: made };
    const { heave } = order;
    const roll = toRadians(order.roll);
    // The page tells only how axle and frame stand to one another: the frame is taken as level.
    placeRide(made, { axleRise: heave, axleRoll: roll });
    this.#ride = made;
    this.#turn = order.turn;
    this.#left = 0;
    this.#grip(made, order.hold, heave, roll);
    return undefined;
  }

  #prepare(document: LayoutDocument): Ride | string {
    const setUp = rideParameters(resolveLayout(document));
    if (!setUp.ok) return setUp.failure.reason;
    const made = prepareRide(setUp.value.parameters);
    return made.ok ? made.value : made.failure.reason;
  }

  #grip({ hand, parameters }: Ride, { y, z, sideways }: Hold, heave: number, roll: number): void {
    Object.assign(hand, { on: true, against: 'frame', y, z, sideways, ...ARM });
    // Turned as the axle stands, the point that is held lies beside where it is at ride height.
    this.#from = { up: heave + y * roll, over: -(z - parameters.rollCentre) * roll };
    hand.up = this.#from.up;
    hand.over = this.#from.over;
  }

  /** Pulls, or opens the hand, and goes on by whole steps. Nothing for an order that belongs to another hold. */
  pull({ turn, to, seconds, still }: ToRideWorker & { kind: 'pull' }): FromRideWorker | undefined {
    const ride = this.#ride;
    if (!ride || turn !== this.#turn) return undefined;
    const { hand, state, subStep } = ride;
    hand.on = to !== null;
    if (to) {
      hand.up = this.#from.up + to.up;
      hand.over = this.#from.over + to.over;
    }
    let stepped = 0;
    if (still) stepped = this.#toRest(ride);
    else {
      const count = Math.floor((this.#left + seconds) / subStep + 1e-9);
      this.#left += seconds - count * subStep;
      stepRide(ride, count);
      stepped = count * subStep;
    }
    if (state.status !== 'ok')
      return { kind: 'not-held', turn, reason: 'springs and tyres threw it beyond any road' };
    const { away, speed } = unrest(ride);
    return {
      kind: 'moved',
      turn,
      heave: state.heave,
      roll: toDegrees(state.roll),
      seconds: stepped,
      force: Math.hypot(hand.pullUp, hand.pullOver),
      rests: !hand.on && away < STILL.away && speed < STILL.speed,
    };
  }

  #toRest(ride: Ride): number {
    let stepped = 0;
    let calm = 0;
    const count = Math.round(STRIDE / ride.subStep);
    // Still for several strides on end: at the turn of a swing everything stands still for a moment too.
    while (stepped < GIVEN_UP && calm < CALM) {
      if (stepRide(ride, count) !== 'ok') break;
      stepped += count * ride.subStep;
      const { away, speed } = unrest(ride);
      calm = speed < STILL.speed && (ride.hand.on || away < STILL.away) ? calm + 1 : 0;
    }
    return stepped;
  }
}
