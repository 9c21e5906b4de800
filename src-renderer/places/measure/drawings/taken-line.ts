import { unproject, VIEW_AXES, type View, type ViewPoint } from '../../../../shared-math/drawing/index.ts';
import type { Point } from '../../../../shared-math/geometry/points.ts';
import { failed, type Outcome, succeeded } from '../../../../shared-math/outcome.ts';
import type { Outlined } from '../photos/trace-bodies.ts';

/** mm that a kink may stand off a straight line and be left out, and the kinks that a rail may have. */
const STRAIGHT_WITHIN = 0.5;
const RAIL_KINKS = 50;

/** The places of a line that it needs to keep within a tolerance: Douglas and Peucker's way, from the farthest place on. */
export function simplified(places: readonly ViewPoint[], within: number): ViewPoint[] {
  const kept = new Set([0, places.length - 1]);
  const open: [number, number][] = [[0, places.length - 1]];
  for (let stretch = open.pop(); stretch; stretch = open.pop()) {
    const [from, to] = stretch;
    const [a, b] = [places[from] as ViewPoint, places[to] as ViewPoint];
    const [ex, ey] = [b[0] - a[0], b[1] - a[1]];
    const length = Math.hypot(ex, ey) || 1;
    let [farthest, most] = [-1, within];
    for (let i = from + 1; i < to; i += 1) {
      const [x, y] = places[i] as ViewPoint;
      const off = Math.abs((x - a[0]) * ey - (y - a[1]) * ex) / length;
      if (off > most) [farthest, most] = [i, off];
    }
    if (farthest < 0) continue;
    kept.add(farthest);
    open.push([from, farthest], [farthest, to]);
  }
  return [...kept].sort((a, b) => a - b).map((at) => places[at] as ViewPoint);
}

/**
 * A line of a drawing as the points of a rail or of an obstacle, at a depth along the view. Places: right and
 * down in the view's own plane, mm. The failure ends a sentence.
 */
export function pointsOfLine(
  what: Outlined,
  places: readonly ViewPoint[],
  closed: boolean,
  view: View,
  depth: number,
): Outcome<Point[], string> {
  if (what === 'rail' && closed)
    return failed(
      'that line is closed: a rail is its middle line from front to back; an outline can be in the way',
    );
  const kinks = what === 'rail' ? simplified(places, STRAIGHT_WITHIN) : places;
  if (what === 'rail' && kinks.length > RAIL_KINKS)
    return failed(`that line has ${kinks.length} kinks, a rail ${RAIL_KINKS} at the most`);
  const keep: [number, number, number] = [0, 0, 0];
  keep[VIEW_AXES[view].toward.axis] = depth;
  return succeeded(kinks.map((place) => unproject(view, place, keep)));
}
