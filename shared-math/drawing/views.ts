import type { Point } from '../geometry/points.ts';

/** The three views of the sheet: the car's left side, from above, from ahead. */
export type View = 'side' | 'top' | 'front';

export const VIEWS: readonly View[] = ['side', 'top', 'front'];

/** An axis of the car, and whether the sheet's direction goes along it or against it. */
export interface AxisWay {
  readonly axis: 0 | 1 | 2;
  readonly sign: 1 | -1;
}

/** How a view shows the car: which way of the car goes right on the sheet, which down, which out of it. */
export interface ViewAxes {
  readonly right: AxisWay;
  readonly down: AxisWay;
  readonly toward: AxisWay;
}

/**
 * Third-angle projection (ASME Y14.3): each view stands on the side from which it is seen. The front of the car is
 * to the left in the side view, so the front view stands left of it; the top view stands above it, with the car's
 * left side, which is the one that the side view sees, below.
 */
export const VIEW_AXES: Record<View, ViewAxes> = {
  side: {
    right: { axis: 0, sign: -1 },
    down: { axis: 2, sign: -1 },
    toward: { axis: 1, sign: 1 },
  },
  top: {
    right: { axis: 0, sign: -1 },
    down: { axis: 1, sign: 1 },
    toward: { axis: 2, sign: 1 },
  },
  front: {
    right: { axis: 1, sign: 1 },
    down: { axis: 2, sign: -1 },
    toward: { axis: 0, sign: 1 },
  },
};

/** A place in a view's own plane or on the sheet: right and down, mm of the car. */
export type ViewPoint = readonly [right: number, down: number] & { readonly unit?: 'mm' };

/** An upright rectangle in the same plane, mm. Empty where left exceeds right. */
export interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** Where a view's own plane lies on the sheet: the place of the car's origin, for each view. */
export interface Sheet {
  readonly origin: Record<View, ViewPoint>;
}

/** A point of the car as a view shows it, in the view's own plane: the car's origin at 0, 0. */
export function project(view: View, point: Point): ViewPoint {
  const { right, down } = VIEW_AXES[view];
  // Adding 0 turns a negative zero, which nobody should see, into a plain one.
  return [right.sign * point[right.axis] + 0, down.sign * point[down.axis] + 0];
}

/** The point that a place of a view's own plane stands for. What the view does not show is kept from `keep`. */
export function unproject(view: View, place: ViewPoint, keep: Point): Point {
  const { right, down } = VIEW_AXES[view];
  const point: [number, number, number] = [keep[0], keep[1], keep[2]];
  point[right.axis] = right.sign * place[0] + 0;
  point[down.axis] = down.sign * place[1] + 0;
  return point;
}

/** A point of the car on the sheet, mm right and down. */
export function onSheet(sheet: Sheet, view: View, point: Point): ViewPoint {
  const [right, down] = project(view, point);
  const origin = sheet.origin[view];
  return [origin[0] + right, origin[1] + down];
}

/** The point that a place on the sheet stands for in a view; the third coordinate is kept from `keep`. */
export function fromSheet(sheet: Sheet, view: View, place: ViewPoint, keep: Point): Point {
  const origin = sheet.origin[view];
  return unproject(view, [place[0] - origin[0], place[1] - origin[1]], keep);
}

export const NO_BOX: Box = {
  left: Number.POSITIVE_INFINITY,
  top: Number.POSITIVE_INFINITY,
  right: Number.NEGATIVE_INFINITY,
  bottom: Number.NEGATIVE_INFINITY,
};

export function joined(a: Box, b: Box): Box {
  return {
    left: Math.min(a.left, b.left),
    top: Math.min(a.top, b.top),
    right: Math.max(a.right, b.right),
    bottom: Math.max(a.bottom, b.bottom),
  };
}

export function moved(box: Box, by: ViewPoint): Box {
  return {
    left: box.left + by[0],
    top: box.top + by[1],
    right: box.right + by[0],
    bottom: box.bottom + by[1],
  };
}

/**
 * Lays the three views out on one sheet, at least `gap` mm apart, from what each shows in its own plane. The side
 * view's origin is the sheet's; the top view keeps its right and the front view its down, which is what aligns them.
 * Origins stand whole multiples of `raster` mm apart, so that one grid serves all three.
 */
export function arrangeSheet(shown: Record<View, Box>, gap: number, raster: ViewPoint = [1, 1]): Sheet {
  const above = shown.side.top - gap - shown.top.bottom;
  const ahead = Math.min(shown.side.left, shown.top.left) - gap - shown.front.right;
  return {
    origin: {
      side: [0, 0],
      top: [0, Math.floor(above / raster[1]) * raster[1]],
      front: [Math.floor(ahead / raster[0]) * raster[0], 0],
    },
  };
}
