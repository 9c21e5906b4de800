import { GRAVITY, type RideParameters } from './parameters.ts';

/** Two masses one on the other, on springs: frequencies in Hz, and in each how far the lower goes for 1 of the upper. */
export interface TwoMasses {
  readonly low: number;
  readonly high: number;
  /** Wheel over body in the slow mode; body over wheel in the fast one. */
  readonly lowShape: number;
  readonly highShape: number;
}

/**
 * Natural frequencies of an upper mass on a spring on a lower mass on a spring, without damping.
 * From M ẍ + K x = 0 with K = [[k, -k], [-k, k + t]]: the squares of the frequencies are the roots of
 * m u ω⁴ - (m (k + t) + u k) ω² + k t - (k + t) n + … = 0; `negative` is stiffness taken off the upper mass alone, as by a
 * weight that leans over.
 * Units:   any that agree, as kg and N/m, or kg·m² and N·m/rad.
 * Source:  own derivation; the equation of a quarter car in textbooks (Barton & Fieldhouse, Automotive Chassis
 *          Engineering).
 * Checked: tests/reference/ride-modes.test.ts (a registry library's eigenvalues; a textbook's worked example).
 */
export function twoMasses(
  upper: number,
  lower: number,
  spring: number,
  tyre: number,
  negative = 0,
): TwoMasses {
  const a = (spring - negative) / upper;
  const d = (spring + tyre) / lower;
  // K of the upper mass less what leans: [[k - n, -k], [-k, k + t]], each row over its mass.
  const coupling = (spring * spring) / (upper * lower);
  const middle = (a + d) / 2;
  const spread = Math.sqrt(((a - d) / 2) ** 2 + coupling);
  const high = middle + spread;
  // The product of the roots is the determinant: no difference of near numbers.
  const low = (a * d - coupling) / high;
  const hertz = (square: number) => (square > 0 ? Math.sqrt(square) / (2 * Math.PI) : 0);
  return {
    low: hertz(low),
    high: hertz(high),
    lowShape: spring / (spring + tyre - low * lower),
    highShape: spring / (spring - negative - high * upper),
  };
}

/** What springs, dampers and tyres come to. Hz, mm, shares. */
export interface RideFigures {
  /** Straight up and down: the body on springs and tyres, the axle hopping between them. */
  readonly rideFrequency: number;
  readonly hopFrequency: number;
  /** The same in roll; 0 where the car would fall over. */
  readonly rollFrequency: number;
  readonly tramp: number;
  /** Of critical, on the springs alone: bump damping, rebound damping, and their mean. */
  readonly bumpDampingRatio: number;
  readonly reboundDampingRatio: number;
  readonly dampingRatio: number;
  /** mm that the car's own weight presses spring and tyre together. */
  readonly springDeflection: number;
  readonly tyreDeflection: number;
}

/** N·m/rad against roll: springs and bar between frame and axle; tyres; and what the leaning weight takes off. */
function rollRates(p: RideParameters): { spring: number; tyre: number; weight: number } {
  return {
    spring: (p.springRate * p.springBase ** 2) / 2000 + p.rollStiffness / 1000,
    tyre: (p.tyreRate * p.track ** 2) / 2000,
    weight: (p.sprungMass * GRAVITY * (p.sprungHeight - p.rollCentre)) / 1000,
  };
}

function inertias(p: RideParameters): { frame: number; axle: number } {
  return {
    frame: (p.sprungInertia + p.sprungMass * (p.sprungHeight - p.rollCentre) ** 2) / 1e6,
    axle: p.axleInertia / 1e6,
  };
}

/** Frequencies, damping and static deflection of a car's front. */
export function rideFigures(p: RideParameters): RideFigures {
  const spring = 2000 * p.springRate;
  const heave = twoMasses(p.sprungMass, p.unsprungMass, spring, 2000 * p.tyreRate);
  const rates = rollRates(p);
  const { frame, axle } = inertias(p);
  const roll = twoMasses(frame, axle, rates.spring, rates.tyre, rates.weight);
  const critical = 2 * Math.sqrt(spring * p.sprungMass);
  const ratio = (damping: number) => (2000 * damping) / critical;
  return {
    rideFrequency: heave.low,
    hopFrequency: heave.high,
    rollFrequency: roll.low,
    tramp: roll.high,
    bumpDampingRatio: ratio(p.bumpDamping),
    reboundDampingRatio: ratio(p.reboundDamping),
    dampingRatio: ratio((p.bumpDamping + p.reboundDamping) / 2),
    springDeflection: (p.sprungMass * GRAVITY) / 2 / p.springRate,
    tyreDeflection: ((p.sprungMass + p.unsprungMass) * GRAVITY) / 2 / p.tyreRate,
  };
}

/** The fastest swing (rad/s) and the strongest damping (1/s) that the engine's step has to follow. */
export function stiffest(p: RideParameters): { swing: number; damping: number } {
  const { hopFrequency, tramp } = rideFigures(p);
  const { frame, axle } = inertias(p);
  const damper = Math.max(p.bumpDamping, p.reboundDamping);
  const straight =
    2000 * damper * (1 / p.sprungMass + 1 / p.unsprungMass) + (2000 * p.tyreDamping) / p.unsprungMass;
  const turning =
    ((damper * p.damperBase ** 2) / 2000) * (1 / frame + 1 / axle) +
    (p.tyreDamping * p.track ** 2) / 2000 / axle;
  return { swing: 2 * Math.PI * Math.max(hopFrequency, tramp), damping: Math.max(straight, turning) };
}
