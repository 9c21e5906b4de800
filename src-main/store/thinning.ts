/** States kept of each variant at most. An evening's work is some hundred edits. */
export const HISTORY_MAX = 300;
/** The newest are kept however old they are. */
export const NEWEST_KEPT = 50;

const HOUR = 3_600_000;
const DAY = 24 * HOUR;
const WEEK = 7 * DAY;

export interface Dated {
  readonly id: number;
  /** ms since 1970. */
  readonly at: number;
}

/**
 * Which states of a variant go, given newest first. The newest fifty stay, all of the last 24 hours, of the week before
 * now the last of each hour, of earlier days the last of each, and the very first; no more than three hundred together,
 * the oldest going first. Hours and days are UTC. A clock set back makes states of the future: these count as new.
 */
export function thinnedOut(newestFirst: readonly Dated[], now: number): number[] {
  const spans = new Set<string>();
  let kept = 0;
  return newestFirst.flatMap(({ id, at }, index) => {
    if (index === newestFirst.length - 1) return [];
    const age = now - at;
    const span = age < WEEK ? `hour ${Math.floor(at / HOUR)}` : `day ${Math.floor(at / DAY)}`;
    const stays = index < NEWEST_KEPT || age < DAY || !spans.has(span);
    spans.add(span);
    if (!stays || kept >= HISTORY_MAX - 1) return [id];
    kept += 1;
    return [];
  });
}
