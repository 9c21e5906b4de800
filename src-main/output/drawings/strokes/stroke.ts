// Strokes: lines and arcs in a view's own plane, right and up, mm. What a drawing is made of before any file's own words for it.

/** Right and up, mm. */
export type Spot = readonly [x: number, y: number];

/** A straight line; `t` runs from 0 at `a` to 1 at `b`. */
export interface Segment {
  readonly kind: 'line';
  readonly a: Spot;
  readonly b: Spot;
}

/**
 * A stretch of a circle or an ellipse: centre + u cos t + v sin t, with t from `from` on by `sweep` (positive: from u
 * toward v; a whole one sweeps 2π). u and v are square to one another and u is no shorter than v; alike, it is a circle.
 */
export interface Curve {
  readonly kind: 'curve';
  readonly centre: Spot;
  readonly u: Spot;
  readonly v: Spot;
  readonly from: number;
  readonly sweep: number;
}

export type Stroke = Segment | Curve;

/** Of 2π a turn, how much a sweep may lack and still be whole; rad. */
const WHOLE = 1e-9;

const TURN = 2 * Math.PI;

export const isWhole = (curve: Curve): boolean => Math.abs(curve.sweep) > TURN - WHOLE;
export const radiusOf = ({ u }: Curve): number => Math.hypot(u[0], u[1]);
/** mm within which two half axes are one radius. */
const ALIKE = 1e-9;
export const isCircular = ({ u, v }: Curve): boolean =>
  Math.abs(Math.hypot(u[0], u[1]) - Math.hypot(v[0], v[1])) < ALIKE;

/** The place at parameter t of a stroke: of a line 0 to 1, of a curve its own angle. */
export function spotAt(stroke: Stroke, t: number): Spot {
  if (stroke.kind === 'line')
    return [stroke.a[0] + t * (stroke.b[0] - stroke.a[0]), stroke.a[1] + t * (stroke.b[1] - stroke.a[1])];
  const { centre, u, v } = stroke;
  const [c, s] = [Math.cos(t), Math.sin(t)];
  return [centre[0] + u[0] * c + v[0] * s, centre[1] + u[1] * c + v[1] * s];
}

/** From where to where the parameter of a stroke runs. */
export function rangeOf(stroke: Stroke): readonly [from: number, to: number] {
  return stroke.kind === 'line' ? [0, 1] : [stroke.from, stroke.from + stroke.sweep];
}

/** The stretch of a stroke between two parameters within its range, in its own direction. */
export function stretchOf(stroke: Stroke, from: number, to: number): Stroke {
  if (stroke.kind === 'line') {
    if (from === 0 && to === 1) return stroke;
    return { kind: 'line', a: spotAt(stroke, from), b: spotAt(stroke, to) };
  }
  return { ...stroke, from, sweep: to - from };
}

export const startOf = (stroke: Stroke): Spot => spotAt(stroke, rangeOf(stroke)[0]);
export const endOf = (stroke: Stroke): Spot => spotAt(stroke, rangeOf(stroke)[1]);

/** A whole circle. */
export function circle(centre: Spot, radius: number): Curve {
  return { kind: 'curve', centre, u: [radius, 0], v: [0, radius], from: 0, sweep: TURN };
}

/** mm that a chord may stand off the curve where one is drawn by chords to be judged, not to be seen. */
const CHORD = 0.004;

/** Places along a stroke, its end left out, so near one another that chords stand off it by 0.004 mm at the most. */
export function sampled(stroke: Stroke): Spot[] {
  const [from, to] = rangeOf(stroke);
  if (stroke.kind === 'line') return [stroke.a];
  const step = 2 * Math.acos(Math.max(0.5, 1 - CHORD / Math.max(radiusOf(stroke), CHORD)));
  const count = Math.max(4, Math.ceil(Math.abs(to - from) / step));
  return Array.from({ length: count }, (_, i) => spotAt(stroke, from + ((to - from) * i) / count));
}

/** An upright rectangle, mm. */
export interface Room {
  readonly left: number;
  readonly bottom: number;
  readonly right: number;
  readonly top: number;
}

export function roomOf(spots: readonly Spot[]): Room {
  let [left, bottom, right, top] = [
    Number.POSITIVE_INFINITY,
    Number.POSITIVE_INFINITY,
    Number.NEGATIVE_INFINITY,
    Number.NEGATIVE_INFINITY,
  ];
  for (const [x, y] of spots) {
    left = Math.min(left, x);
    right = Math.max(right, x);
    bottom = Math.min(bottom, y);
    top = Math.max(top, y);
  }
  return { left, bottom, right, top };
}

/** What a stroke covers: of a curve its ends and where it turns back, x at tan t = v_x / u_x and y likewise. */
export function strokeRoom(stroke: Stroke): Room {
  if (stroke.kind === 'line') return roomOf([stroke.a, stroke.b]);
  const { u, v } = stroke;
  const [from, to] = rangeOf(stroke);
  const [low, high] = from < to ? [from, to] : [to, from];
  const spots = [spotAt(stroke, from), spotAt(stroke, to)];
  for (const axis of [0, 1] as const) {
    const turn = Math.atan2(v[axis], u[axis]);
    for (let t = turn + Math.PI * Math.ceil((low - turn) / Math.PI); t <= high; t += Math.PI)
      spots.push(spotAt(stroke, t));
  }
  return roomOf(spots);
}
