import { halfOf, type Lateral } from '../../layout/index.ts';
import type { AxleKind } from '../rows.ts';

type Watt = Extract<Lateral, { kind: 'watt' }>;

/**
 * Watt's linkage across the car: a rocker on a fore-and-aft bolt, and a bar from either end of it to either side. With bars
 * alike and level, and the rocker upright between them, its bolt goes straight up and down but for a hair: the rest of Watt's
 * curve. Each point of the axle goes with the half on whose side it stands, the rocker with that of its bolt.
 */
export const watt: AxleKind<Watt> = {
  rows: ({ rockerOn, pivot, upper, lower }) => [
    {
      form: 'rocker',
      on: rockerOn,
      half: halfOf(pivot),
      pivot,
      upper: { ...upper, half: halfOf(upper.end) },
      lower: { ...lower, half: halfOf(lower.end) },
    },
  ],
};
