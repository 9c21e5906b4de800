import { type Layout, SIDES } from '../../layout/index.ts';
import { type AxleKind, SIDEWAYS_WEIGHT } from '../rows.ts';

type Hairpins = Extract<Layout['location'], { kind: 'hairpins' }>;

/** A radius rod each side, rigid with its half of the axle, ending in one ball on the frame. */
export const hairpins: AxleKind<Hairpins> = {
  rows: (location) =>
    SIDES.map((side) => ({
      form: 'coincide',
      half: side,
      axle: location[side].framePivot,
      frame: location[side].framePivot,
      weights: [1, SIDEWAYS_WEIGHT, 1],
    })),
};
