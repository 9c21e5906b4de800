import { distance, type Point } from '../../../geometry/points.ts';
import { add, scaled, subtract, unit } from '../../../geometry/vectors.ts';
import { type Layout, SIDES } from '../../../layout/index.ts';
import type { Pen } from '../../pen.ts';
import { halfPack } from '../cantilever.ts';
import { kingpin, onBeam } from '../halves.ts';
import { eye, eyeBar, rod } from '../links.ts';
import { SIZES, tubeRadius } from '../sizes.ts';

const LEAVES = [1, 0.8, 0.6, 0.4, 0.2];
/** mm: half the clamp's height and width. */
const CLAMP = { up: 19, out: 32 };

/** Half a spring each side, clamped to the frame by its thick end, and a radius rod; the plate that holds both on the beam. */
export function drawQuarterElliptic(pen: Pen, layout: Layout): void {
  const { location } = layout;
  if (location.kind !== 'quarter-elliptic') return;
  const radius = tubeRadius(layout.diameters?.rods, SIZES.rod);
  for (const side of SIDES) {
    const carrier = `axle-${side}` as const;
    const name = side === 'left' ? 'Left' : 'Right';
    const spring = location[side];
    const line = unit(subtract(spring.clamp, spring.butt));
    const flat = add(spring.clamp, scaled(line, distance(spring.clamp, spring.eye)));
    const out = Math.abs((spring.eye[1] + spring.rod.axle[1]) / 2);
    const share = Math.min(0.95, out / Math.max(1, Math.abs(kingpin(layout, side).middle[1])));
    const corner = (at: Point, size: number) => [
      pen.disc(carrier, add(at, [0, -7, 0]), [0, 1, 0], size),
      pen.disc(carrier, add(at, [0, 7, 0]), [0, 1, 0], size),
    ];
    const beam = onBeam(layout, side, share);
    pen.add({
      id: `bar-bracket-${side}`,
      name: `${name} spring and rod bracket`,
      role: 'axle',
      side,
      hardpoints: [`location.${side}.eye`, `location.${side}.rod.axle`],
      shapes: [
        pen.hull(
          ...corner(spring.eye, SIZES.eye - 3),
          ...corner(spring.rod.axle, SIZES.eye - 3),
          ...corner([beam[0], spring.rod.axle[1], beam[2]], SIZES.beamUp + 4),
        ),
      ],
    });
    const across = (at: Point) =>
      [-1, 1].flatMap((y) => [-1, 1].map((z): Point => add(at, [0, y * CLAMP.out, z * CLAMP.up])));
    pen.add({
      id: `quarter-${side}`,
      name: `${name} spring`,
      role: 'spring',
      side,
      hardpoints: [`location.${side}.butt`, `location.${side}.clamp`, `location.${side}.eye`],
      shapes: [
        ...halfPack(
          pen,
          {
            clamp: pen.point('frame', spring.clamp),
            flat: pen.point('frame', flat),
            eye: pen.point(carrier, spring.eye),
          },
          { shares: LEAVES, halfThickness: SIZES.leaf, halfWidth: SIZES.leafHalfWidth, stack: 1, wide: 1 },
        ),
        pen.block('frame', [...across(spring.butt), ...across(spring.clamp)]),
        rod(pen, ['frame', spring.butt], ['frame', spring.clamp], SIZES.leaf * 2),
        ...(location.eyes === 'pinned'
          ? [eye(pen, [carrier, spring.eye], [0, 1, 0])]
          : [pen.hull(pen.ball(carrier, spring.eye, SIZES.ball))]),
      ],
    });
    const { axle, frame } = spring.rod;
    pen.add({
      id: `radius-rod-${side}`,
      name: `${name} radius rod`,
      role: 'link',
      side,
      hardpoints: [`location.${side}.rod.axle`, `location.${side}.rod.frame`],
      // Rigid with the axle, it is drawn to where the axle carries its ball.
      shapes:
        location.eyes === 'pinned'
          ? eyeBar(pen, [carrier, axle], ['frame', frame], radius)
          : [
              rod(pen, [carrier, axle], [carrier, frame], radius),
              pen.hull(pen.ball(carrier, frame, SIZES.ball)),
            ],
    });
  }
}
