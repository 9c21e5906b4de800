/**
 * The wheel angles at which all wheels roll about one centre on the rear axle's line:
 * cot(outer) - cot(inner) = kingpin track / wheelbase (ISO 8855, Ackermann condition for a beam axle).
 * Angles in rad, positive sizes; lengths in one unit.
 */

/** The outer wheel's ideal angle for an inner one. 0 for 0. */
export function idealOuter(inner: number, kingpinTrack: number, wheelbase: number): number {
  if (inner === 0) return 0;
  return Math.atan(1 / (1 / Math.tan(inner) + kingpinTrack / wheelbase));
}

/** The inner wheel's ideal angle for an outer one. 0 for 0. */
export function idealInner(outer: number, kingpinTrack: number, wheelbase: number): number {
  if (outer === 0) return 0;
  return Math.atan2(1, 1 / Math.tan(outer) - kingpinTrack / wheelbase);
}
