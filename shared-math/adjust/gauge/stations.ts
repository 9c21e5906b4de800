import type { Layout } from '../../layout/index.ts';
import { createState, poseAxle, prepareFrontEnd, steerAxle } from '../../linkage/index.ts';
import { type LengthUnit, MM_PER_INCH, type Radians } from '../../units/index.ts';

/** Stations at the most on either side of ride height, where the step is not made longer. */
const STATIONS_MOST = 8;

/**
 * Heaves, mm, at which a gauge is read: whole steps of 1/2 in or 10 mm from ride height to the ends of the travel,
 * doubled until they are few enough, and the ends themselves. Lowest first. Common practice, no published source.
 */
export function gaugeStations({ bump, rebound }: Layout['travel'], unit: LengthUnit): number[] {
  let step = unit === 'in' ? MM_PER_INCH / 2 : 10;
  while (Math.max(bump, rebound) / step > STATIONS_MOST) step *= 2;
  const heaves = new Set([0, bump, -rebound]);
  // A station within a third of a step of an end is the end.
  for (let at = step; at < bump - step / 3; at += step) heaves.add(at);
  for (let at = step; at < rebound - step / 3; at += step) heaves.add(-at);
  return [...heaves].map((heave) => heave + 0).sort((a, b) => a - b);
}

/** What a gauge should read at a station: toe-in that each wheel gains from ride height; null where it is not reached. */
export interface StationForecast {
  /** mm. */
  readonly heave: number;
  readonly left: Radians | null;
  readonly right: Radians | null;
}

/** What a gauge should read at stations, roll 0 and handwheel straight. */
export function forecastStations(layout: Layout, heaves: readonly number[]): StationForecast[] {
  const frontEnd = prepareFrontEnd(layout);
  const state = createState();
  const toeAt = (heave: number) =>
    poseAxle(frontEnd, heave, 0, state) && steerAxle(frontEnd, 0, state) === 'ok'
      ? { left: state.left.toeIn, right: state.right.toeIn }
      : undefined;
  const ride = toeAt(0);
  return heaves.map((heave) => {
    const at = ride && toeAt(heave);
    return at
      ? { heave, left: at.left - ride.left, right: at.right - ride.right }
      : { heave, left: null, right: null };
  });
}
