/** A B-spline as a DXF gives it: knots and weights by control point; no weights, all are 1. */
export interface SplineFacts {
  readonly degree: number;
  readonly knots: readonly number[];
  readonly weights: readonly number[];
  readonly xs: readonly number[];
  readonly ys: readonly number[];
}

/** Places on each stretch between two knots. */
const PLACES = 12;

/**
 * Places along a B-spline, x, y, x, y …, by de Boor's recursion; undefined if its figures make no spline.
 * Source: C. de Boor, "On calculating with B-splines", 1972 (the recursion, from memory).
 */
export function splinePlaces({ degree, knots, weights, xs, ys }: SplineFacts): number[] | undefined {
  const count = xs.length;
  if (degree < 1 || degree > 10 || count < degree + 1 || knots.length !== count + degree + 1)
    return undefined;
  if (![...knots, ...xs, ...ys].every(Number.isFinite) || ys.length !== count) return undefined;
  const places: number[] = [];
  const at = (t: number, span: number) => {
    const points = Array.from({ length: degree + 1 }, (_, i) => {
      const own = span - degree + i;
      const w = weights[own] ?? 1;
      return [(xs[own] as number) * w, (ys[own] as number) * w, w];
    });
    for (let round = 1; round <= degree; round += 1)
      for (let i = degree; i >= round; i -= 1) {
        const low = knots[span - degree + i] as number;
        const high = knots[span + 1 + i - round] as number;
        const share = high === low ? 0 : (t - low) / (high - low);
        points[i] = (points[i] as number[]).map(
          (value, axis) => (1 - share) * ((points[i - 1] as number[])[axis] as number) + share * value,
        );
      }
    const [x, y, w] = points[degree] as [number, number, number];
    places.push(x / w, y / w);
  };
  for (let span = degree; span < count; span += 1) {
    const [from, to] = [knots[span] as number, knots[span + 1] as number];
    if (to <= from) continue;
    for (let i = 0; i < PLACES; i += 1) at(from + ((to - from) * i) / PLACES, span);
    if (span === count - 1) at(to, span);
  }
  return places.every(Number.isFinite) && places.length >= 4 ? places : undefined;
}
