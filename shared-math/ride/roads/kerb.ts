import type { Side } from '../../layout/index.ts';
import { type RoadKindOf, rangeProblem, startProblem, under, WHEELS } from './road-kind.ts';

/** A square edge up onto a kerb, met at `start` by both wheels or one. mm. */
export interface KerbRoad {
  readonly kind: 'kerb';
  readonly side: Side | 'both';
  readonly height: number;
  readonly start: number;
}

/**
 * Height at which the wheel rolls: a stiff wheel of radius r meets an edge of height h at √(r² - (r - h)²) before it and
 * turns about it, its centre on a circle of its radius. What a tyre gives at the edge is left out.
 */
function climb(height: number, start: number, radius: number) {
  const level = radius - height;
  const reach = Math.sqrt(radius * radius - level * level);
  return (distance: number): number => {
    const short = start + reach - distance;
    if (short <= 0) return height;
    return short < reach ? Math.sqrt(radius * radius - short * short) - level : 0;
  };
}

export const kerb: RoadKindOf<KerbRoad> = {
  usual: { kind: 'kerb', side: 'both', height: 60, start: 2000 },
  fields: [
    { key: 'side', words: 'Met by', holds: 'choice', choices: [['both', 'both wheels'], ...WHEELS] },
    { key: 'height', words: 'Height', holds: 'length' },
  ],
  board: { words: 'Kerb edge', figures: { side: 'both', height: 38.1 }, seconds: 2.5 },
  problem: ({ height, start }, tyreRadius) => {
    if (height >= tyreRadius)
      return {
        path: 'road.height',
        reason: `a kerb of ${height} mm is no lower than the wheel's middle at ${tyreRadius} mm`,
      };
    return rangeProblem('height', height, 1, 500) ?? startProblem(start);
  },
  prepare: ({ side, height, start }, tyreRadius) => under(side, climb(height, start, tyreRadius)),
};
