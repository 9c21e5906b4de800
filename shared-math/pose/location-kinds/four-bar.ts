import { type Layout, SIDES } from '../../layout/index.ts';
import type { AxleKind } from '../rows.ts';

type FourBar = Extract<Layout['location'], { kind: 'four-bar' }>;

/** Two bars each side with a ball at both ends. */
export const fourBar: AxleKind<FourBar> = {
  rows: (location) =>
    SIDES.flatMap((side) =>
      (['upper', 'lower'] as const).map((bar) => ({
        form: 'distance' as const,
        half: side,
        axle: location[side][bar].axle,
        frame: location[side][bar].frame,
      })),
    ),
};
