import { halfOf, type Lateral } from '../../layout/index.ts';
import type { AxleKind } from '../rows.ts';

type Bar = Extract<Lateral, { kind: 'bar' }>;

/** A bar across the car from axle to frame. Its axle end goes with the half on whose side it stands. */
export const bar: AxleKind<Bar> = {
  rows: ({ axle, frame }) => [{ form: 'distance', half: halfOf(axle), axle, frame }],
};
