import type { Point } from '../../geometry/points.ts';
import type { Layout } from '../../layout/index.ts';
import type { AxleKind } from '../rows.ts';

type Wishbone = Extract<Layout['location'], { kind: 'wishbone' }>;

/** Rods from both ends of the axle joined to one central ball: the halves cannot pitch apart. */
export const wishbone: AxleKind<Wishbone> = {
  joinsHalves: true,
  // The rods are rigid with the axle: their ball is drawn where the frame holds it.
  rows: ({ framePivot }) => [
    { form: 'coincide', half: 'left', axle: framePivot as Point, frame: framePivot, weights: [1, 1, 1] },
  ],
};
