import { add } from '../../../geometry/vectors.ts';
import { type Layout, SIDES } from '../../../layout/index.ts';
import type { Pen } from '../../pen.ts';
import { onBeam } from '../halves.ts';
import { rod } from '../links.ts';
import { SIZES, tubeRadius } from '../sizes.ts';
import { bracket, ROD_SPREAD, ROD_STATION } from './bracket.ts';

/** Rods from both sides of the beam, joined to one ball under the frame. */
export function drawWishbone(pen: Pen, layout: Layout): void {
  const { location } = layout;
  if (location.kind !== 'wishbone') return;
  const { framePivot } = location;
  const radius = tubeRadius(layout.diameters?.rods, SIZES.hairpin);
  for (const side of SIDES) {
    const carrier = `axle-${side}` as const;
    const at = onBeam(layout, side, ROD_STATION);
    pen.add({
      id: `wishbone-${side}`,
      name: 'Wishbone',
      role: 'link',
      side,
      hardpoints: ['location.framePivot'],
      shapes: [
        rod(pen, [carrier, add(at, [0, 0, ROD_SPREAD])], [carrier, framePivot], radius),
        rod(pen, [carrier, add(at, [0, 0, -ROD_SPREAD])], [carrier, framePivot], radius),
        bracket(pen, carrier, at),
      ],
    });
  }
  pen.add({
    id: 'wishbone-ball',
    name: 'Wishbone ball',
    role: 'link',
    hardpoints: ['location.framePivot'],
    shapes: [pen.hull(pen.ball('axle-left', framePivot, SIZES.ball + 6))],
  });
}
