import { failed, type Outcome, succeeded } from '../../shared-math/outcome.ts';
import { parseLength } from '../../shared-math/units/index.ts';

/** How a coordinate reads to somebody with a tape measure: a distance and which way it goes. */
export interface Direction {
  readonly axis: 0 | 1 | 2;
  readonly label: string;
  /** What the shown distance is multiplied by to become the coordinate. */
  readonly sign: 1 | -1;
}

const AHEAD: Direction = { axis: 0, label: 'ahead of axle', sign: 1 };
const BACK: Direction = { axis: 0, label: 'back from axle', sign: -1 };
const LEFT: Direction = { axis: 1, label: 'left of centre', sign: 1 };
const RIGHT: Direction = { axis: 1, label: 'right of centre', sign: -1 };
const ABOVE: Direction = { axis: 2, label: 'above ground', sign: 1 };

/** The direction that makes the distance positive. Heights are always above ground, negative below it. */
export function directionOf(axis: 0 | 1 | 2, value: number): Direction {
  if (axis === 0) return value > 0 ? AHEAD : BACK;
  if (axis === 1) return value < 0 ? RIGHT : LEFT;
  return ABOVE;
}

/** Words that may follow or lead a typed distance, whatever the field's own direction is. */
const WORDS: readonly [word: RegExp, axis: 0 | 1 | 2, sign: 1 | -1][] = [
  [/\b(ahead|forward|front)\b( of axle)?/, 0, 1],
  [/\b(back|behind|rear)\b( from axle)?/, 0, -1],
  [/\bleft\b( of centre)?/, 1, 1],
  [/\bright\b( of centre)?/, 1, -1],
  [/\b(above|up)\b( ground)?/, 2, 1],
  [/\b(below|down)\b( ground)?/, 2, -1],
];

/**
 * Reads a coordinate, mm: a length in the field's direction, a negative one against it, or one that says its own
 * way: "3 in ahead", "12 1/2 right".
 */
export function parseDirected(
  text: string,
  direction: Direction,
  unit: 'in' | 'mm',
): Outcome<number, string> {
  let rest = text.toLowerCase();
  let sign = direction.sign;
  for (const [word, axis, way] of WORDS) {
    if (!word.test(rest)) continue;
    if (axis !== direction.axis)
      return failed(`this field is ${direction.label}; it takes no other direction`);
    rest = rest.replace(word, ' ');
    sign = way;
  }
  const length = parseLength(rest, unit);
  if (!length.ok) return failed(length.failure.replace(`"${rest.trim()}"`, `"${text.trim()}"`));
  return succeeded(length.value === 0 ? 0 : length.value * sign);
}
