import { add } from '../../../geometry/vectors.ts';
import { type Layout, SIDES } from '../../../layout/index.ts';
import type { Pen } from '../../pen.ts';
import { onBeam } from '../halves.ts';
import { rod } from '../links.ts';
import { SIZES, tubeRadius } from '../sizes.ts';
import { bracket, ROD_SPREAD, ROD_STATION } from './bracket.ts';

/**
 * A hairpin each side: two rods from a bracket on the beam that meet in a ball. The rods are rigid with the axle, so
 * they are drawn to where the axle carries their ball, and the frame's pivot beside it shows what the pose asks of it.
 */
export function drawHairpins(pen: Pen, layout: Layout): void {
  const { location } = layout;
  if (location.kind !== 'hairpins') return;
  const radius = tubeRadius(layout.diameters?.rods, SIZES.hairpin);
  for (const side of SIDES) {
    const carrier = `axle-${side}` as const;
    const at = onBeam(layout, side, ROD_STATION);
    const { framePivot } = location[side];
    pen.add({
      id: `hairpin-${side}`,
      name: `${side === 'left' ? 'Left' : 'Right'} hairpin`,
      role: 'link',
      side,
      hardpoints: [`location.${side}.framePivot`],
      shapes: [
        rod(pen, [carrier, add(at, [0, 0, ROD_SPREAD])], [carrier, framePivot], radius),
        rod(pen, [carrier, add(at, [0, 0, -ROD_SPREAD])], [carrier, framePivot], radius),
        bracket(pen, carrier, at),
        pen.hull(pen.ball(carrier, framePivot, SIZES.ball)),
      ],
    });
  }
}
