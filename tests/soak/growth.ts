/** One reading of a figure: in which life of the thing (a page until it is reloaded, a program until it is killed), after how many acts. */
export interface Reading {
  readonly life: number;
  readonly at: number;
  readonly value: number;
}

/** How far a figure may rise over one life, after its warm-up: by so much and by this share of where it stood. */
export interface Tolerance {
  readonly absolute: number;
  readonly share: number;
}

export interface Growth {
  readonly outcome: 'steady' | 'grows' | 'too few readings';
  /** Median of the slopes, a thousand acts. */
  readonly perThousand: number;
  /** By how much it rose over its longest life at that slope, and how much it may. */
  readonly rise: number;
  readonly allowed: number;
  /** How many standard deviations the trend is away from none. */
  readonly z: number;
}

/** Of each life's readings the first share is left out, and never fewer than two: caches fill, code is made ready. */
const WARM_UP = 0.25;
const WARM_UP_LEAST = 2;
/** Readings after the warm-up below which nothing is judged. */
const READINGS_LEAST = 6;
/** One in a thousand steady figures would be called growing by chance (normal distribution, one side). */
const Z_MOST = 3.09;

function warm(readings: readonly Reading[]): Reading[] {
  return readings.slice(Math.max(WARM_UP_LEAST, Math.ceil(readings.length * WARM_UP)));
}

function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = sorted.length >> 1;
  const above = sorted[middle] ?? 0;
  return sorted.length % 2 === 1 ? above : ((sorted[middle - 1] ?? 0) + above) / 2;
}

/** Sum of the signs of all later less earlier values, and its variance if there is no trend, ties counted. */
export function trend(values: readonly number[]): { readonly sum: number; readonly variance: number } {
  let sum = 0;
  for (let later = 1; later < values.length; later += 1)
    for (let earlier = 0; earlier < later; earlier += 1)
      sum += Math.sign((values[later] as number) - (values[earlier] as number));
  const spread = (count: number) => count * (count - 1) * (2 * count + 5);
  const ties = new Map<number, number>();
  for (const value of values) ties.set(value, (ties.get(value) ?? 0) + 1);
  let variance = spread(values.length);
  for (const count of ties.values()) variance -= spread(count);
  return { sum, variance: variance / 18 };
}

/**
 * Whether a figure grows steadily. Its slope is the median of the slopes of all pairs of readings of one life (Theil 1950,
 * Sen 1968), which no single outlier moves; its trend is tested by the signs of the same pairs (Mann 1945, Kendall 1975),
 * sums and variances of the lives added up. It grows if the trend is beyond chance and the slope, over the longest life,
 * comes to more than is tolerated: both, as a long run would find a trend in next to nothing.
 */
export function judgeGrowth(readings: readonly Reading[], { absolute, share }: Tolerance): Growth {
  const lives = [...Map.groupBy(readings, ({ life }) => life).values()]
    .map(warm)
    .filter((life) => life.length > 1);
  const slopes: number[] = [];
  let sum = 0;
  let variance = 0;
  let span = 0;
  for (const life of lives) {
    const tested = trend(life.map(({ value }) => value));
    sum += tested.sum;
    variance += tested.variance;
    span = Math.max(span, (life.at(-1)?.at ?? 0) - (life[0]?.at ?? 0));
    for (const [at, later] of life.entries())
      for (const earlier of life.slice(0, at))
        if (later.at > earlier.at) slopes.push((later.value - earlier.value) / (later.at - earlier.at));
  }
  const slope = median(slopes);
  const all = lives.flat().map(({ value }) => value);
  const z = variance > 0 ? (sum - Math.sign(sum)) / Math.sqrt(variance) : 0;
  const rise = slope * span;
  const allowed = absolute + share * median(all);
  const judged = all.length >= READINGS_LEAST;
  return {
    outcome: !judged ? 'too few readings' : z > Z_MOST && rise > allowed ? 'grows' : 'steady',
    perThousand: slope * 1000,
    rise,
    allowed,
    z,
  };
}
