import { type Drawing, drawLayout, placeAtRide, placeInPose, roomFor } from '../drawing/index.ts';
import type { Layout } from '../layout/index.ts';
import {
  createState,
  type FrontEnd,
  type FrontEndState,
  prepareFrontEnd,
  solveFrontEnd,
} from '../linkage/index.ts';
import { evenly, visitGrid } from '../sweep/index.ts';
import type { Radians } from '../units/index.ts';

/** Where a car is put by hand: heave in mm, up is bump; roll and handwheel in rad. All zero is ride height. */
export interface HandPose {
  readonly heave: number;
  readonly roll: Radians;
  readonly handwheel: Radians;
}

export const RIDE_HEIGHT: HandPose = { heave: 0, roll: 0, handwheel: 0 };

/** How far each wheel points from straight ahead at the held handwheel, and from where the driver points it; rad, left is above 0. */
export interface WheelsPointing {
  /** Steer at ride height with this handwheel. */
  readonly asked: Readonly<Record<'left' | 'right', number>>;
  /** Steer in the pose less `asked`: what the wheel does by itself. */
  readonly byItself: Readonly<Record<'left' | 'right', number>>;
  /** The mean of both wheels' own doing: the bump steer. */
  readonly bumpSteer: number;
}

/** Bump steer over heave at a held roll and handwheel: mm, rad; rows that cannot be posed are left out. */
export interface SteerCurve {
  readonly heave: readonly number[];
  readonly bumpSteer: readonly number[];
}

const STRAIGHT = { left: 0, right: 0 } as const;

/** Heaves that a curve is drawn from, ends included. */
const CURVE_POSES = 41;

/**
 * A car that is moved about by hand: solved in every pose it is put to, and kept in its last solved one where it cannot go.
 * Frame: vehicle. Units: mm, rad. Its drawing and places serve any way of looking at it.
 */
export class MovedCar {
  readonly layout: Layout;
  readonly drawing: Drawing;
  /** Where the drawing's points are in the pose, mm. */
  readonly placed: Float64Array;
  readonly #frontEnd: FrontEnd;
  readonly #state = createState();
  readonly #ride = createState();
  #pose: HandPose = RIDE_HEIGHT;
  #stands = false;

  /** Needs a validated layout. One whose ride height cannot be posed lies as it was drawn, and `failure` says why. */
  constructor(layout: Layout) {
    this.layout = layout;
    this.drawing = drawLayout(layout);
    this.placed = roomFor(this.drawing);
    placeAtRide(this.drawing, this.placed);
    this.#frontEnd = prepareFrontEnd(layout);
    this.#solve(RIDE_HEIGHT);
  }

  get pose(): HandPose {
    return this.#pose;
  }

  /** Whether the car stands in its pose, solved. */
  get standing(): boolean {
    return this.#stands;
  }

  /** What stopped the pose that was tried last. */
  get failure(): FrontEndState['failure'] {
    return this.#ride.status === 'ok' ? this.#state.failure : this.#ride.failure;
  }

  /** Puts the car into a pose. Answers what stopped it, and then leaves it where it was; undefined if it stands there. */
  put(pose: HandPose): FrontEndState['failure'] | undefined {
    if (this.#solve(pose)) return undefined;
    const { failure } = this;
    this.#solve(this.#pose);
    return failure;
  }

  /** Where the wheels point in the pose; straight ahead if the car does not stand. */
  get wheels(): WheelsPointing {
    if (!this.#stands) return { asked: STRAIGHT, byItself: STRAIGHT, bumpSteer: 0 };
    const { left, right, meanSteer } = this.#state;
    const ride = this.#ride;
    return {
      asked: { left: ride.left.steer, right: ride.right.steer },
      byItself: { left: left.steer - ride.left.steer, right: right.steer - ride.right.steer },
      bumpSteer: meanSteer - ride.meanSteer,
    };
  }

  /** Bump steer over the layout's whole bump and droop, at the pose's roll and handwheel. */
  get curve(): SteerCurve {
    const { bump, rebound: droop } = this.layout.travel;
    const heave: number[] = [];
    const bumpSteer: number[] = [];
    visitGrid(
      this.#frontEnd,
      evenly(-droop, bump, CURVE_POSES),
      [this.#pose.roll],
      [this.#pose.handwheel],
      (state, status, steer) => {
        if (status !== 'ok') return;
        heave.push(state.heave);
        bumpSteer.push(steer);
      },
    );
    return { heave, bumpSteer };
  }

  #solve(pose: HandPose): boolean {
    this.#stands = false;
    if (solveFrontEnd(this.#frontEnd, 0, 0, pose.handwheel, this.#ride) !== 'ok') return false;
    if (solveFrontEnd(this.#frontEnd, pose.heave, pose.roll, pose.handwheel, this.#state) !== 'ok')
      return false;
    this.#pose = pose;
    this.#stands = true;
    placeInPose(this.drawing, this.#frontEnd, this.#state, this.placed);
    return true;
  }
}
