import { VIEW_AXES, type View, type ViewPoint } from '../../shared-math/drawing/index.ts';
import type { Point } from '../../shared-math/geometry/points.ts';
import type { Hardpoint } from '../../shared-math/layout/index.ts';

/**
 * A spot that draws a dragged point to itself, near a place of a view's own plane: right and down, mm. Undefined if there is
 * none within the reach.
 */
export type SpotNear = (view: View, place: ViewPoint, reach: number) => ViewPoint | undefined;

export interface SnapRules {
  /** mm that coordinates are rounded to. */
  readonly step: number;
  /** mm within which a neighbour's coordinate draws the point to itself. */
  readonly reach: number;
  readonly neighbours: readonly Hardpoint[];
}

/** A coordinate that was taken over from a neighbour. */
export interface Guide {
  readonly axis: 0 | 1 | 2;
  readonly from: Hardpoint;
}

export interface Snapped {
  readonly at: Point;
  readonly guides: readonly Guide[];
}

/** mm. Documents keep what was meant, not the pointer's sixteen digits. */
const DOCUMENT_STEP = 0.01;

const rounded = (value: number, step: number) => Math.round(Math.round(value / step) * step * 1e6) / 1e6 + 0;

function nearest(value: number, axis: 0 | 1 | 2, rules: SnapRules): Hardpoint | undefined {
  let best: Hardpoint | undefined;
  let least = rules.reach;
  for (const neighbour of rules.neighbours) {
    const away = Math.abs(neighbour.at[axis] - value);
    if (away <= least && (!best || away < least)) {
      best = neighbour;
      least = away;
    }
  }
  return best;
}

/**
 * Draws the two coordinates that a view shows to a neighbour's nearby coordinate, or else to the grid. The hidden
 * one and those held (by Shift) stay as they are.
 */
export function snapped(to: Point, view: View, rules: SnapRules, held: readonly (0 | 1 | 2)[] = []): Snapped {
  const at: [number, number, number] = [to[0], to[1], to[2]];
  const guides: Guide[] = [];
  const { right, down } = VIEW_AXES[view];
  for (const { axis } of [right, down]) {
    if (held.includes(axis)) continue;
    const neighbour = nearest(to[axis], axis, rules);
    if (neighbour) {
      at[axis] = neighbour.at[axis];
      guides.push({ axis, from: neighbour });
    } else at[axis] = rounded(to[axis], rules.step);
  }
  return { at, guides };
}

/** Without snapping: only rid of digits that no tape measure has. */
export function unsnapped(to: Point, view: View, held: readonly (0 | 1 | 2)[] = []): Snapped {
  return snapped(to, view, { step: DOCUMENT_STEP, reach: -1, neighbours: [] }, held);
}

/** Which axis Shift holds: the one along which the drag has gone less. */
export function heldAxis(view: View, right: number, down: number): 0 | 1 | 2 {
  const axes = VIEW_AXES[view];
  return Math.abs(right) >= Math.abs(down) ? axes.down.axis : axes.right.axis;
}

/**
 * The points whose coordinates draw a dragged one: all others, but not its own mirror image and not what is bolted
 * to it and comes along.
 */
export function neighboursOf(points: readonly Hardpoint[], dragged: Hardpoint): Hardpoint[] {
  return points.filter(
    (point) => point.id !== dragged.id && point.id !== dragged.twin && !dragged.brings?.includes(point.id),
  );
}
