import { prepareRide, type Ride, type RideParameters } from '../../shared-math/ride/index.ts';

/** Two corners of the quarter car of a textbook, undamped: masses in kg, rates in N/mm of one side. */
export function quarterCars(
  sprung: number,
  unsprung: number,
  spring: number,
  tyre: number,
  over: Partial<RideParameters> = {},
): RideParameters {
  return {
    sprungMass: 2 * sprung,
    unsprungMass: 2 * unsprung,
    springRate: spring,
    springBase: 900,
    bumpDamping: 0,
    reboundDamping: 0,
    damperBase: 1000,
    tyreRate: tyre,
    tyreDamping: 0,
    track: 1420,
    rollStiffness: 0,
    sprungInertia: 2 * sprung * 550 ** 2,
    axleInertia: 2 * unsprung * 560 ** 2,
    sprungHeight: 480,
    rollCentre: 480,
    bump: 1000,
    rebound: 1000,
    stopRate: 0,
    stopDepth: 20,
    ...over,
  };
}

/** The quarter car of Barton & Fieldhouse, Automotive Chassis Engineering, p. 209. */
export const TEXTBOOK = [317.5, 45.4, 22, 192] as const;

export function rideOf(parameters: RideParameters, options: Parameters<typeof prepareRide>[1] = {}): Ride {
  const ride = prepareRide(parameters, options);
  if (!ride.ok) throw new Error(`${ride.failure.path}: ${ride.failure.reason}`);
  return ride.value;
}

/** Frequency (Hz) of a sampled swing from its first to its last upward passage through 0, by straight lines between. */
export function frequencyOf(values: readonly number[], step: number): number {
  const passages: number[] = [];
  for (let i = 1; i < values.length; i += 1) {
    const [before, now] = [values[i - 1]!, values[i]!];
    if (before < 0 && now >= 0) passages.push((i - 1 + before / (before - now)) * step);
  }
  return (passages.length - 1) / (passages.at(-1)! - passages[0]!);
}

/** The peaks of a sampled swing: each by the parabola through the three samples about it. */
export function peaksOf(values: readonly number[], step: number): { at: number; value: number }[] {
  const peaks: { at: number; value: number }[] = [];
  for (let i = 1; i < values.length - 1; i += 1) {
    const [a, b, c] = [values[i - 1]!, values[i]!, values[i + 1]!];
    if (!(b > a && b >= c)) continue;
    const bend = a - 2 * b + c;
    const shift = bend === 0 ? 0 : (a - c) / (2 * bend);
    peaks.push({ at: (i + shift) * step, value: b - ((a - c) * shift) / 4 });
  }
  return peaks;
}
