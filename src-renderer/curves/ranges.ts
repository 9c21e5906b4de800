/** The half height of a plot about its middle, and how far its ticks are apart; both in the plot's unit. */
export interface Rung {
  readonly half: number;
  readonly tick: number;
}

/**
 * Half heights that a plot may take, smallest first. The smallest keeps a good linkage's last hundredths of a degree
 * from filling the plot: noise must look like noise.
 */
export type Ladder = readonly Rung[];

/** A ladder from the half height and tick of each rung. */
export const rungs = (...pairs: readonly (readonly [half: number, tick: number])[]): Ladder =>
  pairs.map(([half, tick]) => ({ half, tick }));

export const STEER_LADDER = rungs(
  [0.25, 0.1],
  [0.5, 0.2],
  [1, 0.5],
  [2, 1],
  [3, 1],
  [5, 2],
  [8, 4],
  [12, 5],
  [20, 10],
  [45, 20],
  [90, 45],
  [180, 90],
);

/** Toe over the tyre's diameter. */
export const TOE_LADDERS: Record<'in' | 'mm', Ladder> = {
  in: rungs([0.125, 0.05], [0.25, 0.1], [0.5, 0.2], [1, 0.5], [2, 1], [5, 2], [10, 5], [30, 10], [100, 50]),
  mm: rungs([3, 1], [6, 2], [12, 5], [25, 10], [50, 20], [100, 50], [300, 100], [1000, 500], [3000, 1000]),
};

/** A plot's upright range: a middle and a rung about it. */
export interface Range {
  readonly middle: number;
  readonly rung: Rung;
}

/** Share of the half height that curves may fill before the next rung is taken. */
const FILL = 0.94;

function rungFor(ladder: Ladder, half: number): Rung {
  return ladder.find((rung) => half <= rung.half * FILL) ?? (ladder.at(-1) as Rung);
}

/**
 * The range to show next. It grows at once when a curve would leave it; it shrinks, and its middle moves, only when
 * `settled` says that nothing is being dragged, so that a curve's height means the same all through a drag.
 */
export function nextRange(
  before: Range | undefined,
  values: Iterable<number | null | undefined>,
  middle: number,
  ladder: Ladder,
  settled: boolean,
): Range {
  const kept = before && !settled ? before.middle : middle;
  let half = 0;
  for (const value of values) if (typeof value === 'number') half = Math.max(half, Math.abs(value - kept));
  const needed = rungFor(ladder, half);
  const rung = before && !settled && before.rung.half > needed.half ? before.rung : needed;
  if (before && before.middle === kept && before.rung === rung) return before;
  return { middle: kept, rung };
}

/** Share of the half height beyond which a tick's figure would be cut off at the edge. */
const TICKS_WITHIN = 0.9;

/** Where ticks stand: multiples of the rung's tick within the range. */
export function ticksOf({ middle, rung }: Range): number[] {
  const ticks: number[] = [];
  const [least, most] = [middle - TICKS_WITHIN * rung.half, middle + TICKS_WITHIN * rung.half];
  for (let i = Math.ceil(least / rung.tick); i * rung.tick <= most; i += 1) ticks.push(i * rung.tick + 0);
  return ticks;
}

/** Decimals that tell a tick from its neighbours. */
export function decimalsOf({ rung }: Range): number {
  return rung.tick >= 1 ? 0 : rung.tick >= 0.1 && Number.isInteger(Math.round(rung.tick * 100) / 10) ? 1 : 2;
}
