import { add, scaled, subtract } from '../../../geometry/vectors.ts';
import { type Layout, SIDES } from '../../../layout/index.ts';
import type { Pen } from '../../pen.ts';
import { onBeam } from '../halves.ts';
import { rod } from '../links.ts';
import { SIZES, tubeRadius } from '../sizes.ts';
import { bracket, ROD_SPREAD, ROD_STATION } from './bracket.ts';

/** Share of the way to the ball at which a rod's fork runs into one. */
export const FORK_SHARE = 0.2;

/**
 * A radius rod each side: a fork on the beam that runs into one rod, and a ball at its end. Rigid with the axle, it is
 * drawn to where the axle carries its ball, as hairpins are.
 */
export function drawSplitRods(pen: Pen, layout: Layout): void {
  const { location } = layout;
  if (location.kind !== 'split-rods') return;
  const radius = tubeRadius(layout.diameters?.rods, SIZES.radiusRod);
  for (const side of SIDES) {
    const carrier = `axle-${side}` as const;
    const at = onBeam(layout, side, ROD_STATION);
    const { framePivot } = location[side];
    const fork = add(at, scaled(subtract(framePivot, at), FORK_SHARE));
    const arm = (z: number) => rod(pen, [carrier, add(at, [0, 0, z])], [carrier, fork], SIZES.hairpin);
    pen.add({
      id: `radius-rod-${side}`,
      name: `${side === 'left' ? 'Left' : 'Right'} radius rod`,
      role: 'link',
      side,
      hardpoints: [`location.${side}.framePivot`],
      shapes: [
        arm(ROD_SPREAD),
        arm(-ROD_SPREAD),
        rod(pen, [carrier, fork], [carrier, framePivot], radius),
        bracket(pen, carrier, at),
        pen.hull(pen.ball(carrier, framePivot, Math.max(SIZES.ball, radius + 3))),
      ],
    });
  }
}
