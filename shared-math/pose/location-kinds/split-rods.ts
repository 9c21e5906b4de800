import type { Layout } from '../../layout/index.ts';
import type { AxleKind } from '../rows.ts';
import { hairpins } from './hairpins.ts';

type SplitRods = Extract<Layout['location'], { kind: 'split-rods' }>;

/**
 * A wishbone cut apart, or a rod made alone: each bolted stiffly to its half of the axle, their balls apart on the frame. It
 * moves as hairpins do, which are two thin rods each in the place of the one: ahead of the ball all is one stiff piece.
 */
export const splitRods: AxleKind<SplitRods> = {
  rows: ({ left, right }) => hairpins.rows({ kind: 'hairpins', left, right }),
};
