import type { Point } from '../../../geometry/points.ts';
import { add } from '../../../geometry/vectors.ts';
import { type Layout, SIDES } from '../../../layout/index.ts';
import type { Pen } from '../../pen.ts';
import { kingpin, onBeam } from '../halves.ts';
import { eyeBar } from '../links.ts';
import { SIZES, tubeRadius } from '../sizes.ts';

const BARS = ['upper', 'lower'] as const;

/** Two bars each side, and the plates that hold them on the beam. */
export function drawFourBar(pen: Pen, layout: Layout): void {
  const { location } = layout;
  if (location.kind !== 'four-bar') return;
  for (const side of SIDES) {
    const carrier = `axle-${side}` as const;
    const bars = location[side];
    const out = Math.abs((bars.upper.axle[1] + bars.lower.axle[1]) / 2);
    const seat = onBeam(
      layout,
      side,
      Math.min(0.95, out / Math.max(1, Math.abs(kingpin(layout, side).middle[1]))),
    );
    const corner = (at: Point, radius: number) => [
      pen.disc(carrier, add(at, [0, -7, 0]), [0, 1, 0], radius),
      pen.disc(carrier, add(at, [0, 7, 0]), [0, 1, 0], radius),
    ];
    const across: Point = [seat[0], bars.upper.axle[1], seat[2]];
    pen.add({
      id: `bar-bracket-${side}`,
      name: `${side === 'left' ? 'Left' : 'Right'} bar bracket`,
      role: 'axle',
      side,
      hardpoints: [`location.${side}.upper.axle`, `location.${side}.lower.axle`],
      shapes: [
        pen.hull(
          ...corner(bars.upper.axle, SIZES.eye - 3),
          ...corner(bars.lower.axle, SIZES.eye - 3),
          ...corner(across, SIZES.beamUp + 4),
        ),
      ],
    });
    for (const bar of BARS)
      pen.add({
        id: `bar-${bar}-${side}`,
        name: `${side === 'left' ? 'Left' : 'Right'} ${bar} bar`,
        role: 'link',
        side,
        hardpoints: [`location.${side}.${bar}.axle`, `location.${side}.${bar}.frame`],
        shapes: eyeBar(
          pen,
          [carrier, bars[bar].axle],
          ['frame', bars[bar].frame],
          tubeRadius(layout.diameters?.rods, SIZES.rod),
        ),
      });
  }
}
