import type { Outline } from '../../shared-math/drawing/index.ts';

/** Numbers by lot, the same in every run: a linear congruence with the constants of Numerical Recipes, from memory. */
export function lot(seed: number): () => number {
  let state = seed;
  return () => {
    state = (1664525 * state + 1013904223) % 2 ** 32;
    return state / 2 ** 32;
  };
}

/** How far a place is outside closed outlines, mm: by crossings counted, then by the nearest edge; 0 within. */
export function outsideBy(outlines: readonly Outline[], x: number, y: number): number {
  let crossings = 0;
  let nearest = Number.POSITIVE_INFINITY;
  for (const line of outlines)
    for (let i = 0; i < line.length; i += 2) {
      const j = (i + 2) % line.length;
      const [ax, ay, bx, by] = [line[i]!, line[i + 1]!, line[j]!, line[j + 1]!];
      if (ay > y !== by > y && x < ax + ((y - ay) / (by - ay)) * (bx - ax)) crossings += 1;
      const square = (bx - ax) ** 2 + (by - ay) ** 2;
      const t =
        square === 0 ? 0 : Math.min(1, Math.max(0, ((x - ax) * (bx - ax) + (y - ay) * (by - ay)) / square));
      nearest = Math.min(nearest, Math.hypot(ax + t * (bx - ax) - x, ay + t * (by - ay) - y));
    }
  return crossings % 2 === 1 ? 0 : nearest;
}
