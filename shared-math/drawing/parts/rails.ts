import { mirrored, type Point } from '../../geometry/points.ts';
import { add, scaled, subtract } from '../../geometry/vectors.ts';
import { type Layout, locationPointsOn, type Obstacle, type Rail, type Side } from '../../layout/index.ts';
import type { Line, Section } from '../drawing.ts';
import type { Pen } from '../pen.ts';

/** mm that a rail is drawn on behind the rearmost point of the front end before it is broken off. */
const DRAWN_BEHIND = 230;
/** mm: where it is broken off moves in steps, so that it does not run along with a dragged point. */
const BREAK_STEP = 100;

/** Where an obstacle ends behind; mm. */
function rearOf(obstacle: Obstacle): number {
  return obstacle.kind === 'box'
    ? obstacle.centre[0] - obstacle.size[0] / 2
    : Math.min(obstacle.from[0], obstacle.to[0]) - obstacle.radius;
}

/** The x at which long rails are broken off: well behind everything that the layout places. */
function breakAt(layout: Layout): number {
  const { steering } = layout;
  const { sectorCentre, pitmanBall } = steering.box;
  const behind = [sectorCentre[0], pitmanBall[0], -layout.car.tyreRadius];
  for (const [x] of locationPointsOn(layout, 'frame')) behind.push(x);
  // Past the steering shaft's joints, which have to clear the rail; the column itself stands behind them.
  const ahead = layout.shaft ? [layout.shaft.column.end[0]] : [];
  const end = Math.min(Math.min(...behind) - DRAWN_BEHIND, ...ahead, ...layout.obstacles.map(rearOf));
  return Math.floor(end / BREAK_STEP) * BREAK_STEP;
}

/** The part of a path ahead of x = `end`, and whether something was cut off. */
function ahead(path: readonly Point[], end: number): { path: Point[]; cut: boolean } {
  const kept: Point[] = [];
  let cut = false;
  for (let i = 0; i < path.length; i += 1) {
    const point = path[i] as Point;
    const before = path[i - 1];
    if (before && before[0] >= end !== point[0] >= end) {
      const share = (end - before[0]) / (point[0] - before[0]);
      kept.push(add(before, scaled(subtract(point, before), share)));
    }
    if (point[0] >= end) kept.push(point);
    else cut = true;
  }
  // A rail that lies wholly behind is drawn as it is.
  return kept.length >= 2 ? { path: kept, cut } : { path: [...path], cut: false };
}

/** The line by which draughtsmen break off what goes on: a flat S across the rail's end, in one view. */
function breakLine(pen: Pen, rail: Rail, at: Point, view: 'side' | 'top'): Line {
  const steps = [-1.25, -0.5, -0.18, 0.18, 0.5, 1.25];
  const kick = [0, 0, 14, -14, 0, 0];
  const points = steps.map((step, i) =>
    pen.point(
      'frame',
      add(at, [
        kick[i] as number,
        view === 'top' ? (step * rail.width) / 2 : 0,
        view === 'side' ? (step * rail.height) / 2 : 0,
      ]),
    ),
  );
  return { kind: 'line', points, ink: 'fine', fill: 'none', views: [view] };
}

function drawRail(
  pen: Pen,
  rail: Rail,
  path: readonly Point[],
  id: string,
  side: Side | undefined,
  end: number,
): void {
  const shown = ahead(path, end);
  const up: Point = [0, 0, rail.height / 2];
  const out: Point = [0, rail.width / 2, 0];
  const sections: Section[] = shown.path.map((point) => pen.section('frame', point, up, out));
  const front = (shown.path[0] as Point)[0] >= (shown.path.at(-1) as Point)[0] ? 0 : shown.path.length - 1;
  const nose = shown.path[front] as Point;
  const corner = (y: 1 | -1, z: 1 | -1): Point => add(nose, [0, (y * rail.width) / 2, (z * rail.height) / 2]);
  const last = shown.path[front === 0 ? shown.path.length - 1 : 0] as Point;
  pen.add({
    id,
    name: rail.name,
    role: 'frame',
    ...(side ? { side } : {}),
    hardpoints: [],
    shapes: [
      {
        kind: 'band',
        sections,
        endOn: ['front'],
        ink: 'outline',
        fill: 'tint',
        views: ['side', 'top'],
        pictorial: true,
      },
      // From ahead one looks at the rail's nose; what climbs or spreads behind it is drawn finely.
      { kind: 'band', sections, endOn: ['front'], ink: 'fine', fill: 'tint', views: ['front'] },
      {
        ...pen.block('frame', [corner(1, 1), corner(1, -1), corner(-1, -1), corner(-1, 1)]),
        fill: 'tint',
        views: ['front'],
      },
      ...(shown.cut ? [breakLine(pen, rail, last, 'side'), breakLine(pen, rail, last, 'top')] : []),
    ],
  });
}

/** Where a rail's middle line passes a plane x = `x`, and its size; undefined if it does not reach there. */
export function railAt(layout: Layout, x: number): { y: number; z: number; rail: Rail } | undefined {
  for (const rail of layout.rails) {
    if (!rail.mirrored) continue;
    for (let i = 1; i < rail.path.length; i += 1) {
      const a = rail.path[i - 1] as Point;
      const b = rail.path[i] as Point;
      if (a[0] === b[0] || (x - a[0]) * (x - b[0]) > 0) continue;
      const share = (x - a[0]) / (b[0] - a[0]);
      return { y: Math.abs(a[1] + share * (b[1] - a[1])), z: a[2] + share * (b[2] - a[2]), rail };
    }
  }
  return undefined;
}

/** The frame's rails, with their mirror images. */
export function drawRails(pen: Pen, layout: Layout): void {
  const end = breakAt(layout);
  layout.rails.forEach((rail, i) => {
    const side: Side = (rail.path[0]?.[1] ?? 0) < 0 ? 'right' : 'left';
    drawRail(pen, rail, rail.path, `rail-${i}`, rail.mirrored ? side : undefined, end);
    if (rail.mirrored)
      drawRail(
        pen,
        rail,
        rail.path.map(mirrored),
        `rail-${i}-mirrored`,
        side === 'left' ? 'right' : 'left',
        end,
      );
  });
}
