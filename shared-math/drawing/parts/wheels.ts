import type { Point } from '../../geometry/points.ts';
import { add, dot, norm, scaled, subtract } from '../../geometry/vectors.ts';
import { type Layout, SIDES, type Side } from '../../layout/index.ts';
import type { DrawnHull } from '../drawing.ts';
import type { Pen } from '../pen.ts';
import { alongKingpin, kingpin, outboardSpin } from './halves.ts';
import { SIZES, WHEEL_SHARES } from './sizes.ts';

const SIDE_NAME: Record<Side, string> = { left: 'Left', right: 'Right' };

/** Where the stub axle leaves the kingpin: the kingpin's point nearest to the wheel centre. */
function stubRoot(layout: Layout, side: Side): Point {
  const { kingpinBottom, wheelCentre } = layout.axle[side];
  const { upward } = kingpin(layout, side);
  return add(kingpinBottom, scaled(upward, dot(subtract(wheelCentre, kingpinBottom), upward)));
}

function drawSpindle(pen: Pen, layout: Layout, side: Side): void {
  const { wheelCentre } = layout.axle[side];
  const carrier = `spindle-${side}` as const;
  const { upward } = kingpin(layout, side);
  const spin = outboardSpin(layout, side);
  const root = stubRoot(layout, side);
  const knuckle = add(root, scaled(subtract(wheelCentre, root), 0.34));
  const ear = (share: number): DrawnHull => {
    const at = alongKingpin(layout, side, share);
    return pen.hull(
      pen.disc(carrier, add(at, scaled(upward, -8)), upward, SIZES.spindleEar),
      pen.disc(carrier, add(at, scaled(upward, 8)), upward, SIZES.spindleEar),
      pen.disc(carrier, knuckle, spin, SIZES.stubRoot),
    );
  };
  pen.add({
    id: `spindle-${side}`,
    name: `${SIDE_NAME[side]} spindle`,
    role: 'axle',
    side,
    hardpoints: [`axle.${side}.wheelCentre`],
    shapes: [
      pen.hull(
        pen.disc(carrier, knuckle, spin, SIZES.stubRoot),
        pen.disc(carrier, add(wheelCentre, scaled(spin, 35)), spin, SIZES.stubEnd),
      ),
      ear(0.88),
      ear(0.12),
    ],
  });
}

function drawWheel(pen: Pen, layout: Layout, side: Side): void {
  const { tyreRadius, tyreWidth } = layout.car;
  const { wheelCentre } = layout.axle[side];
  const carrier = `spindle-${side}` as const;
  const spin = outboardSpin(layout, side);
  const at = (out: number): Point => add(wheelCentre, scaled(spin, out));
  const shoulder = Math.min(WHEEL_SHARES.shoulder * tyreRadius, 0.38 * tyreWidth);
  const wall = tyreWidth / 2 - shoulder;
  const reach = norm(subtract(wheelCentre, stubRoot(layout, side)));
  const ring = (out: number, share: number): DrawnHull => ({
    ...pen.hull(pen.disc(carrier, at(out), spin, share * tyreRadius)),
    ink: 'fine',
    fill: 'none',
    views: ['side'],
  });
  pen.add({
    id: `tyre-${side}`,
    name: `${SIDE_NAME[side]} tyre`,
    role: 'tyre',
    side,
    hardpoints: [`axle.${side}.wheelCentre`],
    shapes: [
      {
        ...pen.hull(
          pen.disc(carrier, at(-wall), spin, tyreRadius - shoulder, shoulder),
          pen.disc(carrier, at(wall), spin, tyreRadius - shoulder, shoulder),
        ),
        opening: [
          pen.disc(carrier, at(-tyreWidth / 2), spin, WHEEL_SHARES.rim * tyreRadius),
          pen.disc(carrier, at(tyreWidth / 2), spin, WHEEL_SHARES.rim * tyreRadius),
        ],
        fill: 'none',
        pictorial: true,
      },
      ring(0, WHEEL_SHARES.rim),
      { ...ring(0, WHEEL_SHARES.hub), pictorial: true },
      {
        ...pen.cylinder(
          carrier,
          wheelCentre,
          spin,
          -0.6 * reach,
          0.1 * tyreWidth,
          WHEEL_SHARES.drum * tyreRadius,
        ),
        ink: 'fine',
        fill: 'none',
        views: ['top', 'front'],
      },
      {
        kind: 'line',
        points: [pen.point(carrier, at(-0.62 * tyreWidth)), pen.point(carrier, at(0.62 * tyreWidth))],
        ink: 'broken',
        fill: 'none',
        views: ['top', 'front'],
      },
    ],
  });
}

/** Wheels and tyres turned with their spindles. */
export function drawWheels(pen: Pen, layout: Layout): void {
  for (const side of SIDES) {
    drawWheel(pen, layout, side);
    drawSpindle(pen, layout, side);
  }
}

/**
 * The ground that the tyres stand on, carried by them: through both contact points from ahead, level from the side.
 * `reach` is how far it runs beyond the tyres, mm.
 */
export function drawGround(
  pen: Pen,
  layout: Layout,
  reach: { ahead: number; behind: number; beside: number },
): void {
  const below: Point = [0, 0, -layout.car.tyreRadius];
  const left = pen.point('spindle-left', layout.axle.left.wheelCentre);
  const right = pen.point('spindle-right', layout.axle.right.wheelCentre);
  const track = Math.abs(layout.axle.left.wheelCentre[1] - layout.axle.right.wheelCentre[1]);
  const beyond = reach.beside / track;
  pen.add({
    id: 'ground',
    name: 'Ground',
    role: 'ground',
    hardpoints: [],
    shapes: [
      {
        kind: 'line',
        points: [
          pen.blend(
            [
              [left, 1 + beyond],
              [right, -beyond],
            ],
            below,
          ),
          pen.blend(
            [
              [left, -beyond],
              [right, 1 + beyond],
            ],
            below,
          ),
        ],
        ink: 'broken',
        fill: 'none',
        views: ['front'],
        pictorial: true,
      },
      {
        kind: 'line',
        points: [
          pen.blend(
            [
              [left, 0.5],
              [right, 0.5],
            ],
            [reach.ahead, 0, below[2]],
          ),
          pen.blend(
            [
              [left, 0.5],
              [right, 0.5],
            ],
            [-reach.behind, 0, below[2]],
          ),
        ],
        ink: 'broken',
        fill: 'none',
        views: ['side'],
        pictorial: true,
      },
    ],
  });
}
