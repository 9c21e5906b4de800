import type { RideFigures } from './figures.ts';

/** What is usual for a figure of the ride, and on whose word. Hz, shares, mm. */
export interface RideRange {
  readonly least: number;
  readonly most: number;
  readonly source: string;
}

const PRACTICE = 'common practice, no published source';

/** Usual ranges on hand-built cars with a solid front axle. They judge nothing: many a good car stands outside. */
export const RIDE_RANGES: Readonly<Partial<Record<keyof RideFigures, RideRange>>> = {
  rideFrequency: { least: 1, most: 2, source: PRACTICE },
  hopFrequency: { least: 8, most: 15, source: PRACTICE },
  dampingRatio: { least: 0.2, most: 0.45, source: PRACTICE },
  springDeflection: { least: 60, most: 200, source: PRACTICE },
};
