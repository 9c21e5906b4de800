import type { ViewPoint } from '../drawing/index.ts';
import { failed, type Outcome, succeeded } from '../outcome.ts';
import { toDegrees, toRadians } from '../units/index.ts';

/** Where a drawing lies under a view: mm of one of its units, its turn, and where its own 0, 0 lies. */
export interface UnderlayPlace {
  /** mm of one unit of the drawing. */
  readonly unit: number;
  /** Degrees, counter-clockwise as the view is seen. */
  readonly turn: number;
  /** Where the drawing's 0, 0 lies in the view's own plane: right and up, mm. */
  readonly at: readonly [right: number, up: number];
  /** Left and right swapped before it is turned. */
  readonly flipped?: boolean | undefined;
}

/** A place of the drawing, right and up in its own unit. */
export type DrawingSpot = readonly [x: number, y: number];

/** The transform from the drawing to the view's own plane, right and down: [a, b, c, d, e, f] as a canvas counts them. */
export function underlayTransform({ unit, turn, at, flipped }: UnderlayPlace) {
  const angle = toRadians(turn);
  const [c, s] = [unit * Math.cos(angle), unit * Math.sin(angle)];
  const way = flipped ? -1 : 1;
  return [way * c, -way * s, -s, -c, at[0], -at[1]] as const;
}

/** A place of the drawing in the view's own plane, right and down, mm. */
export function placeInView(place: UnderlayPlace, [x, y]: DrawingSpot): ViewPoint {
  const [a, b, c, d, e, f] = underlayTransform(place);
  return [a * x + c * y + e, b * x + d * y + f];
}

/** The place of the drawing that lies at a place of the view's own plane: the transform taken back. */
export function spotInDrawing(place: UnderlayPlace, [right, down]: ViewPoint): DrawingSpot {
  const [a, b, c, d, e, f] = underlayTransform(place);
  const det = a * d - b * c;
  const [x, y] = [right - e, down - f];
  return [(d * x - c * y) / det, (a * y - b * x) / det];
}

/** A drawing's spot and where it belongs in the view's own plane, right and down, mm. */
export interface KnownSpot {
  readonly spot: DrawingSpot;
  readonly place: ViewPoint;
}

/**
 * Where a drawing lies of which two spots are known. With v = spot₂ - spot₁ and w = place₂ - place₁ (up, not down): unit
 * = |w| / |v|, turn = angle of w less angle of v; what is left is the shift that brings spot₁ to its place.
 */
export function placeByTwo(one: KnownSpot, two: KnownSpot, flipped: boolean): Outcome<UnderlayPlace, string> {
  const way = flipped ? -1 : 1;
  const v = [way * (two.spot[0] - one.spot[0]), two.spot[1] - one.spot[1]] as const;
  const w = [two.place[0] - one.place[0], one.place[1] - two.place[1]] as const;
  const [long, far] = [Math.hypot(...v), Math.hypot(...w)];
  if (!(long > 1e-9)) return failed('both spots are one on the drawing');
  if (!(far > 1)) return failed('both points stand on one spot in this view');
  const unit = far / long;
  const turn = toDegrees((Math.atan2(w[1], w[0]) - Math.atan2(v[1], v[0])) as never);
  const free: UnderlayPlace = { unit, turn, at: [0, 0], flipped };
  const [right, down] = placeInView(free, one.spot);
  const round = (value: number, by: number) => Math.round(value * by) / by + 0;
  return succeeded({
    unit: Number(unit.toPrecision(9)),
    turn: round((((turn % 360) + 540) % 360) - 180, 1e6),
    at: [round(one.place[0] - right, 1e4), round(down - one.place[1], 1e4)],
    flipped,
  });
}
