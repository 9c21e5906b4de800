import type { Point } from '../../../geometry/points.ts';
import { add } from '../../../geometry/vectors.ts';
import { type Layout, SIDES } from '../../../layout/index.ts';
import type { Pen } from '../../pen.ts';
import { kingpin, onBeam } from '../halves.ts';
import { leafPack } from '../leaf.ts';
import { eye, rod } from '../links.ts';
import { SIZES } from '../sizes.ts';

/** mm from the shackle's eye up to where it hangs from the frame, and back. */
const SHACKLE: Point = [-14, 0, 78];
const LEAVES = [1, 0.78, 0.56, 0.34];

/** A leaf spring along each rail, clamped to the beam; its rear eye swings on a shackle. */
export function drawParallelLeaf(pen: Pen, layout: Layout): void {
  const { location } = layout;
  if (location.kind !== 'parallel-leaf') return;
  for (const side of SIDES) {
    const { fixedEye, seat, shackleEye } = location[side];
    const carrier = `axle-${side}` as const;
    const name = side === 'left' ? 'Left' : 'Right';
    const span = shackleEye[0] - fixedEye[0];
    const ends = [pen.point('frame', fixedEye), pen.point('frame', shackleEye)] as const;
    const hanger = add(shackleEye, [Math.sign(span) * -SHACKLE[0], 0, SHACKLE[2]]);
    const share = Math.min(0.95, Math.abs(seat[1]) / Math.max(1, Math.abs(kingpin(layout, side).middle[1])));
    const beam = onBeam(layout, side, share);
    const plate = (z: number): Point[] =>
      [-1, 1].flatMap((x) => [-1, 1].map((y): Point => [seat[0] + x * 46, seat[1] + y * 32, z]));
    const above = seat[2] >= beam[2] ? 1 : -1;
    pen.add({
      id: `leaf-seat-${side}`,
      name: `${name} spring seat`,
      role: 'axle',
      side,
      hardpoints: [`location.${side}.seat`],
      shapes: [pen.block(carrier, [...plate(seat[2] - above * 4), ...plate(beam[2] + above * SIZES.beamUp)])],
    });
    pen.add({
      id: `leaf-${side}`,
      name: `${name} spring`,
      role: 'spring',
      side,
      hardpoints: [`location.${side}.fixedEye`, `location.${side}.seat`, `location.${side}.shackleEye`],
      shapes: [
        rod(pen, ['frame', shackleEye], ['frame', hanger], SIZES.rod - 2),
        ...leafPack(pen, ends, pen.point(carrier, seat), {
          shares: LEAVES,
          halfThickness: SIZES.leaf,
          halfWidth: SIZES.leafHalfWidth,
          stack: -1,
          wide: 1,
          clamp: (seat[0] - fixedEye[0]) / span,
        }),
        eye(pen, ['frame', fixedEye], [0, 1, 0]),
        eye(pen, ['frame', shackleEye], [0, 1, 0]),
        eye(pen, ['frame', hanger], [0, 1, 0]),
      ],
    });
  }
}
