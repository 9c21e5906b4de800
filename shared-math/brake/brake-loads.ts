/** What the front wheels carry and brake with, together. N. */
export interface BrakeLoads {
  /** As shares of g. */
  readonly deceleration: number;
  readonly frontLoad: number;
  readonly brakeForce: number;
  /** The rear wheels have left the ground: the front carries the whole car, which stops no faster. */
  readonly rearLifts: boolean;
}

/** What the loads need of a car: N, a share, mm. */
export interface LoadedCar {
  readonly frontAxleLoad: number;
  readonly frontShare: number;
  readonly gravityHeight: number;
  readonly wheelbase: number;
}

/**
 * Loads with every wheel braked as hard as its grip on the road allows, as shares of its load.
 * The car of weight W = front load/front share slows by `grip` of g; the force at the road, W grip, and the mass's own, at
 * height h, make a couple that the wheels take up as W grip h/wheelbase more in front and as much less behind (moments about
 * the rear contact). More than W the front cannot carry: from there on the rear wheels are off the ground and
 * the car slows by (1 - share) wheelbase/h of g.
 * Rear brakes that do less than their grip allows transfer less, so these are the front's largest loads at a grip.
 * Source:  statics; the formula of load transfer in any text on vehicle dynamics (from memory).
 * Checked: tests/reference/leaf-wind-up.test.ts (moments about the other contact).
 */
export function brakeLoads(car: LoadedCar, grip: number): BrakeLoads {
  const weight = car.frontAxleLoad / car.frontShare;
  const transferred = (weight * grip * car.gravityHeight) / car.wheelbase;
  const rearLifts = car.frontAxleLoad + transferred >= weight;
  if (rearLifts) {
    const deceleration = Math.min(grip, ((1 - car.frontShare) * car.wheelbase) / car.gravityHeight);
    return { deceleration, frontLoad: weight, brakeForce: weight * deceleration, rearLifts };
  }
  const frontLoad = car.frontAxleLoad + transferred;
  return { deceleration: grip, frontLoad, brakeForce: grip * frontLoad, rearLifts };
}
