/** Numbers that look random and are the same for the same seed: at least 0, less than 1. */
export type Random = () => number;

/**
 * A small generator of 32 bits: a counter that steps by an odd constant, its bits stirred by multiplication and
 * shifts. Enough for searches and spreads, not for secrets. The stirring is the well-known "mulberry32".
 */
export function seededRandom(seed: number): Random {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let x = Math.imul(state ^ (state >>> 15), state | 1);
    x ^= x + Math.imul(x ^ (x >>> 7), x | 61);
    return ((x ^ (x >>> 14)) >>> 0) / 4_294_967_296;
  };
}
