/** Where a section ended: the two places inside the stretch that is left, and their values. */
export interface Section {
  low: number;
  high: number;
  left: number;
  right: number;
  atLeft: number;
  atRight: number;
}

/** A section to be written into, for callers that section in a hot loop. */
export function createSection(): Section {
  return { low: 0, high: 0, left: 0, right: 0, atLeft: 0, atRight: 0 };
}

/** The share that is kept at each step: what is left of 1 after it is to it as it is to 1. */
const KEPT = (Math.sqrt(5) - 1) / 2;

/**
 * Closes in on the least value of a function with one valley between `low` and `high`, to a stretch no longer than
 * `within`; the least lies between `low` and `high` of what is returned, its middle is the best place known.
 *
 * Two places divide the stretch so that, whichever end is cut off, the other place divides what is left in the same
 * way: with g the share kept, 1 - g of the stretch becomes g² of it, hence g² + g = 1. One value is asked a step.
 * Shapes:   one number in, one out; `into` is written and returned.
 * Units:    those of the function. Of two equal values the right end is kept.
 * Outcomes: a section. Where there are several valleys, one of them; a NaN among the values cuts off the left end.
 * Source:   J. Kiefer, "Sequential minimax search for a maximum", Proc. Amer. Math. Soc. 4 (1953), 502-506.
 * Checked:  tests/unit/golden-section.test.ts.
 */
export function goldenSection(
  value: (at: number) => number,
  low: number,
  high: number,
  within: number,
  into: Section = createSection(),
): Section {
  let [from, to] = [low, high];
  let left = to - KEPT * (to - from);
  let right = from + KEPT * (to - from);
  let atLeft = value(left);
  let atRight = value(right);
  while (to - from > within) {
    if (atLeft < atRight) {
      to = right;
      right = left;
      atRight = atLeft;
      left = to - KEPT * (to - from);
      atLeft = value(left);
    } else {
      from = left;
      left = right;
      atLeft = atRight;
      right = from + KEPT * (to - from);
      atRight = value(right);
    }
  }
  into.low = from;
  into.high = to;
  into.left = left;
  into.right = right;
  into.atLeft = atLeft;
  into.atRight = atRight;
  return into;
}
