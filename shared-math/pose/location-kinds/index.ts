import type { Layout } from '../../layout/index.ts';
import type { AxleKind } from '../rows.ts';
import { fourBar } from './four-bar.ts';
import { hairpins } from './hairpins.ts';
import { parallelLeaf } from './parallel-leaf.ts';
import { quarterElliptic } from './quarter-elliptic.ts';
import { splitRods } from './split-rods.ts';
import { wishbone } from './wishbone.ts';

type LocationOf<Kind extends Layout['location']['kind']> = Extract<Layout['location'], { kind: Kind }>;

/** What locates the axle fore and aft and in pitch. A new kind is one file and one line here. */
export const LOCATION_KINDS: { readonly [Kind in Layout['location']['kind']]: AxleKind<LocationOf<Kind>> } = {
  hairpins,
  'split-rods': splitRods,
  wishbone,
  'four-bar': fourBar,
  'parallel-leaf': parallelLeaf,
  'quarter-elliptic': quarterElliptic,
};
