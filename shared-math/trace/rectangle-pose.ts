import type { Point } from '../geometry/points.ts';
import { turning } from './camera-model.ts';
import type { FlatPlace } from './photo-places.ts';

/**
 * What is unknown of a known rectangle as it stands beside the car, in this order: the place of its middle (three, mm), a turn
 * about that (rotation vector, rad), how much wider and higher it is than its sides were given, and how far it leans out
 * of square (shares of its width, its height, its height).
 */
export const RECTANGLE_UNKNOWNS = 9;

export interface Rectangle {
  /** The ways of the car that its sides run when it is not turned: unit vectors. */
  readonly right: Point;
  readonly down: Point;
  /** The points of it that are known, from its middle. */
  readonly places: readonly FlatPlace[];
}

/**
 * Writes where a rectangle's points stand: M + exp([w]×) (x (1 + s) r + y ((1 + t) d + h r)), with r and d its ways; and,
 * where asked, what each coordinate changes by. Turning by dw changes a turned vector v by (J dw) × v.
 * Frame:    vehicle. Units: mm, rad.
 * Shapes:   `unknowns` RECTANGLE_UNKNOWNS from `offset`; `out` three for each place from `at`; `slopes` RECTANGLE_UNKNOWNS
 *           for each of those.
 * Source:   derivatives by hand. Checked: tests/unit/trace/photo-observations.test.ts (differences).
 */
export function placeRectangle(
  { right, down, places }: Rectangle,
  unknowns: Float64Array,
  offset: number,
  out: Float64Array,
  at: number,
  slopes?: Float64Array,
): void {
  const { turned, left } = turning(
    unknowns[offset + 3] as number,
    unknowns[offset + 4] as number,
    unknowns[offset + 5] as number,
  );
  const wider = 1 + (unknowns[offset + 6] as number);
  const higher = 1 + (unknowns[offset + 7] as number);
  const lean = unknowns[offset + 8] as number;
  for (let k = 0; k < places.length; k += 1) {
    const [x, y] = places[k] as FlatPlace;
    for (let i = 0; i < 3; i += 1) {
      let [r, d] = [0, 0];
      for (let j = 0; j < 3; j += 1) {
        r += (turned[3 * i + j] as number) * (right[j] as number);
        d += (turned[3 * i + j] as number) * (down[j] as number);
      }
      const v = x * wider * r + y * (higher * d + lean * r);
      const row = at + 3 * k + i;
      out[row] = (unknowns[offset + i] as number) + v;
      if (!slopes) continue;
      const from = (3 * k + i) * RECTANGLE_UNKNOWNS;
      for (let j = 0; j < 3; j += 1) slopes[from + j] = i === j ? 1 : 0;
      slopes[from + 6] = x * r;
      slopes[from + 7] = y * d;
      slopes[from + 8] = y * r;
    }
    if (!slopes) continue;
    const v = (i: number) => (out[at + 3 * k + i] as number) - (unknowns[offset + i] as number);
    for (let j = 0; j < 3; j += 1)
      for (let i = 0; i < 3; i += 1) {
        const [a, b] = [(i + 1) % 3, (i + 2) % 3];
        slopes[(3 * k + i) * RECTANGLE_UNKNOWNS + 3 + j] =
          (left[3 * a + j] as number) * v(b) - (left[3 * b + j] as number) * v(a);
      }
  }
}
