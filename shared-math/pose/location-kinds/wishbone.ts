import type { Layout } from '../../layout/index.ts';
import type { AxleKind } from '../rows.ts';

type Wishbone = Extract<Layout['location'], { kind: 'wishbone' }>;

/** Rods from both ends of the axle joined to one central ball: the halves cannot pitch apart. */
export const wishbone: AxleKind<Wishbone> = {
  joinsHalves: true,
  rows: ({ framePivot }) => [
    { form: 'coincide', half: 'left', axle: framePivot, frame: framePivot, weights: [1, 1, 1] },
  ],
};
