import type { Lateral, LateralKind } from '../../layout/index.ts';
import type { AxleKind } from '../rows.ts';
import { bar } from './bar.ts';
import { fixedSpring } from './fixed-spring.ts';
import { spring } from './spring.ts';
import { watt } from './watt.ts';

/** What locates the axle sideways. A new kind is one file and one line here. */
export const LATERAL_KINDS: { readonly [Kind in LateralKind]: AxleKind<Extract<Lateral, { kind: Kind }>> } = {
  bar,
  spring,
  'fixed-spring': fixedSpring,
  watt,
};
