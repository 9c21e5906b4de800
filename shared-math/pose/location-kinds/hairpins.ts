import type { Point } from '../../geometry/points.ts';
import { type Layout, SIDES } from '../../layout/index.ts';
import { type AxleKind, SIDEWAYS_WEIGHT } from '../rows.ts';

type Hairpins = Extract<Layout['location'], { kind: 'hairpins' }>;

/** A radius rod each side, rigid with its half of the axle, ending in one ball on the frame. */
export const hairpins: AxleKind<Hairpins> = {
  rows: (location) =>
    SIDES.map((side) => ({
      form: 'coincide',
      half: side,
      // The rod is rigid with the axle: its ball is drawn where the frame holds it.
      axle: location[side].framePivot as Point,
      frame: location[side].framePivot,
      weights: [1, SIDEWAYS_WEIGHT, 1],
    })),
};
