import type { Side } from '../layout/index.ts';
import type { FrontEnd } from '../linkage/index.ts';
import { groundEccentricity, parkingEffort } from '../sweep/index.ts';

/** Shares of load: a tyre's grip on a smooth, dusty floor and on rough dry concrete; common practice, no published source. */
export const PARKING_GRIPS = [0.4, 0.9] as const;

/**
 * N·mm that scrubbing takes about a side's kingpin, at a grip of the floor, by the formula of `parkingEffort`.
 */
export function scrubAbout({ layout }: FrontEnd, side: Side, friction: number): number {
  const { frontAxleLoad, tyreWidth, handwheelRadius } = layout.car;
  const eccentricity = groundEccentricity(layout, side);
  const effort = parkingEffort({
    frontAxleLoad: frontAxleLoad / 2,
    tyreWidth,
    eccentricity,
    overallRatio: 1,
    handwheelRadius,
    friction,
  });
  return 1000 * effort.kingpinTorque;
}
