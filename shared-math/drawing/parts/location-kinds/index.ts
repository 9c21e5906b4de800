import type { Layout, LocationKind } from '../../../layout/index.ts';
import type { Pen } from '../../pen.ts';
import { drawFourBar } from './four-bar.ts';
import { drawHairpins } from './hairpins.ts';
import { drawParallelLeaf } from './parallel-leaf.ts';
import { drawQuarterElliptic } from './quarter-elliptic.ts';
import { drawSplitRods } from './split-rods.ts';
import { drawWishbone } from './wishbone.ts';

/** How each kind of axle location is drawn. A new kind is one new file and one new line here. */
export const LOCATION_PARTS: Record<LocationKind, (pen: Pen, layout: Layout) => void> = {
  hairpins: drawHairpins,
  'split-rods': drawSplitRods,
  wishbone: drawWishbone,
  'four-bar': drawFourBar,
  'parallel-leaf': drawParallelLeaf,
  'quarter-elliptic': drawQuarterElliptic,
};
