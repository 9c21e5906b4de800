import type { Lateral } from '../../layout/index.ts';
import type { AxleKind } from '../rows.ts';

type Spring = Extract<Lateral, { kind: 'spring' }>;

/** The spring itself keeps the axle below the frame's centre plane, at its own height. */
export const spring: AxleKind<Spring> = {
  rows: ({ height }) => [{ form: 'centred', height }],
};
