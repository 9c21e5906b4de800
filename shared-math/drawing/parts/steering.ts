import type { Point } from '../../geometry/points.ts';
import { add, cross, dot, norm, scaled, subtract, unit } from '../../geometry/vectors.ts';
import { type Layout, SIDES } from '../../layout/index.ts';
import type { Pen } from '../pen.ts';
import { alongKingpin, kingpin, shareOfKingpin, squareTo } from './halves.ts';
import { arm, ballRod } from './links.ts';
import { SIZES, tubeRadius } from './sizes.ts';

/** How much larger than a manual box one with power assistance is drawn. */
const SIZE_OF: Record<'manual' | 'power', number> = { manual: 1, power: 1.22 };
/** Toward the driver: back and up. */
const TOWARD_DRIVER: Point = [-1, 0, 0.5];

/** The sector axis with its direction from the box toward the pitman arm, and the arm's hub on it. */
function sector(layout: Layout): { hub: Point; toArm: Point; reach: number } {
  const { sectorCentre, sectorAxis, pitmanBall } = layout.steering.box;
  const axis = unit(sectorAxis);
  const along = dot(subtract(pitmanBall, sectorCentre), axis);
  const reach = Math.abs(along);
  // With the ball level with the centre nothing tells on which side the box is: then it is inboard.
  const outward = Math.sign(axis[1] * sectorCentre[1]) || 1;
  return {
    hub: add(sectorCentre, scaled(axis, along)),
    toArm: scaled(axis, reach > 1 ? Math.sign(along) : outward),
    reach,
  };
}

/** How far along the worm from its middle its housing and its input are drawn, mm for a manual box. */
const WORM = { half: 64, least: 25, radius: 33, input: 132, stub: 24 } as const;
/** mm for a manual box. A shaft whose axis passes the sector farther off than this does not lead into the box. */
const WORM_REACH = 90;

interface Worm {
  readonly at: Point;
  /** Toward the driver, length 1. */
  readonly way: Point;
  /** From its middle to the tip of the input, and to the ends of its housing, mm. */
  readonly input: number;
  readonly half: number;
  /** Whether it lies where the steering shaft leads. */
  readonly onShaft: boolean;
}

/** Where the worm lies that the input turns: where the steering shaft leads into the box, else where it usually does. */
function wormOf(layout: Layout): Worm {
  const { steering, shaft } = layout;
  const { box } = steering;
  const { hub, toArm } = sector(layout);
  const size = SIZE_OF[box.assist];
  if (shaft) {
    const way = scaled(unit(shaft.box.axis), -1);
    const input = dot(subtract(shaft.box.end, box.sectorCentre), way);
    const at = add(shaft.box.end, scaled(way, -input));
    const near = norm(subtract(at, box.sectorCentre)) < WORM_REACH * size;
    const half = Math.min(WORM.half * size, input - WORM.stub);
    const fits = half > WORM.least && input < 2.6 * WORM.input * size;
    if (near && fits && Math.abs(dot(way, toArm)) < 0.9) return { at, way, input, half, onShaft: true };
  }
  const way = squareTo(toArm, TOWARD_DRIVER, [0, 0, 1]);
  const swing = unit(subtract(box.pitmanBall, hub));
  const beside = cross(toArm, way);
  // It lies beside the sector, on the side that the arm does not hang to.
  const away = dot(beside, swing) > 0 ? -1 : 1;
  const at = add(add(box.sectorCentre, scaled(beside, away * 34 * size)), scaled(toArm, -26 * size));
  return { at, way, input: 70 * size + 62, half: WORM.half * size, onShaft: false };
}

/** mm that the input is seen of, from its tip to the box: what the shaft's drawing leaves to the box. */
export function inputSeen(layout: Layout): number {
  const { input, half, onShaft } = wormOf(layout);
  return onShaft ? input - half : INPUT_ALONE;
}
/** mm. Of an input that does not lead into the box. */
const INPUT_ALONE = 60;

function drawBox(pen: Pen, layout: Layout): void {
  const { box } = layout.steering;
  const { toArm, reach } = sector(layout);
  const size = SIZE_OF[box.assist];
  const worm = wormOf(layout);
  const flange = Math.max(4, Math.min(reach - 16, 22 * size));
  const disc = (at: Point, axis: Point, along: number, radius: number, round = 7) =>
    pen.disc('frame', add(at, scaled(axis, along)), axis, Math.max(1, radius * size - round), round);
  pen.add({
    id: 'box',
    name: 'Steering box',
    role: 'box',
    hardpoints: ['steering.box.sectorCentre'],
    shapes: [
      worm.onShaft
        ? pen.cylinder('frame', worm.at, worm.way, worm.half, worm.half + 9, 17)
        : pen.cylinder('frame', worm.at, worm.way, worm.half, worm.input, 10),
      {
        ...pen.hull(
          disc(box.sectorCentre, toArm, flange - 7, 44),
          disc(box.sectorCentre, toArm, -52 * size, 44),
          disc(worm.at, worm.way, -worm.half, WORM.radius),
          disc(worm.at, worm.way, worm.half, WORM.radius),
        ),
        fill: 'tint',
      },
      {
        ...pen.hull(pen.disc('frame', box.sectorCentre, toArm, 30 * size)),
        ink: 'fine',
        fill: 'none',
      },
    ],
  });
}

function drawPitmanArm(pen: Pen, layout: Layout): void {
  const { box } = layout.steering;
  const { hub, toArm, reach } = sector(layout);
  pen.add({
    id: 'pitman-arm',
    name: 'Pitman arm',
    role: 'steering',
    hardpoints: ['steering.box.pitmanBall', 'steering.box.sectorCentre'],
    shapes: [
      pen.cylinder('frame', hub, toArm, -Math.max(reach, 20), 26, SIZES.sectorShaft),
      pen.hull(
        pen.disc('pitman', add(hub, scaled(toArm, -9)), toArm, SIZES.pitmanHub),
        pen.disc('pitman', add(hub, scaled(toArm, 9)), toArm, SIZES.pitmanHub),
        pen.disc('pitman', add(box.pitmanBall, scaled(toArm, -7)), toArm, SIZES.armEnd),
        pen.disc('pitman', add(box.pitmanBall, scaled(toArm, 7)), toArm, SIZES.armEnd),
      ),
      {
        ...pen.hull(pen.disc('frame', add(hub, scaled(toArm, 9)), toArm, SIZES.sectorShaft - 3)),
        ink: 'fine',
      },
    ],
  });
}

/** Arms on the spindles: one for the drag link, one each for the tie rod; each springs from the nearer ear. */
function drawArms(pen: Pen, layout: Layout): void {
  const { dragLinkBall, dragLinkTo } = layout.steering;
  const ends = [
    ...SIDES.map((side) => ({
      side,
      ball: layout.axle[side].tieRodBall,
      id: `tie-rod-arm-${side}`,
      name: `${side === 'left' ? 'Left' : 'Right'} tie rod arm`,
      hardpoint: `axle.${side}.tieRodBall`,
    })),
    {
      side: dragLinkTo,
      ball: dragLinkBall,
      id: 'steering-arm',
      name: 'Steering arm',
      hardpoint: 'steering.dragLinkBall',
    },
  ];
  for (const { side, ball, id, name, hardpoint } of ends) {
    const share = shareOfKingpin(layout, side, ball, 0, 1) < 0.5 ? 0.12 : 0.88;
    pen.add({
      id,
      name,
      role: 'steering',
      side,
      hardpoints: [hardpoint],
      shapes: arm(
        pen,
        `spindle-${side}`,
        alongKingpin(layout, side, share),
        kingpin(layout, side).upward,
        ball,
      ),
    });
  }
}

function drawRods(pen: Pen, layout: Layout): void {
  const { steering, axle, diameters } = layout;
  pen.add({
    id: 'tie-rod',
    name: 'Tie rod',
    role: 'steering',
    hardpoints: ['axle.left.tieRodBall', 'axle.right.tieRodBall'],
    shapes: ballRod(
      pen,
      ['spindle-left', axle.left.tieRodBall],
      ['spindle-right', axle.right.tieRodBall],
      tubeRadius(diameters?.tieRod, SIZES.rod),
    ),
  });
  pen.add({
    id: 'drag-link',
    name: 'Drag link',
    role: 'steering',
    hardpoints: ['steering.dragLinkBall', 'steering.box.pitmanBall'],
    shapes: ballRod(
      pen,
      [`spindle-${steering.dragLinkTo}`, steering.dragLinkBall],
      ['pitman', steering.box.pitmanBall],
      tubeRadius(diameters?.dragLink, SIZES.rod),
    ),
  });
}

/** From the box to the wheels: everything that the handwheel moves. */
export function drawSteering(pen: Pen, layout: Layout): void {
  drawBox(pen, layout);
  drawArms(pen, layout);
  drawPitmanArm(pen, layout);
  drawRods(pen, layout);
}
