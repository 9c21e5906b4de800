/**
 * Which pages are open, by what they report of themselves: each that it is here, each minute again, and that it goes.
 * A page whose browser died never says that it goes; one that the browser has put to sleep is silent for hours and still
 * there to be come back to. So silence alone counts as gone only after a long time.
 */
export class Presence {
  /** When each page was last heard of, ms. */
  readonly #heard = new Map<string, number>();
  #emptySince: number | undefined;

  /** A page says that it is here, or that it goes. `now` in ms on any clock that only goes on. */
  report(page: string, here: boolean, now: number): void {
    if (here) {
      this.#heard.set(page, now);
      this.#emptySince = undefined;
    } else if (this.#heard.delete(page) && this.#heard.size === 0) this.#emptySince = now;
  }

  /** ms since the last page went; undefined while one is open, and before the first has come. */
  emptyFor(now: number): number | undefined {
    for (const [page, heard] of this.#heard) if (now - heard > SILENT_MOST) this.report(page, false, now);
    return this.#emptySince === undefined ? undefined : now - this.#emptySince;
  }
}

/** ms. Browsers let a hidden page sleep overnight. */
export const SILENT_MOST = 12 * 3_600_000;

/** Minutes without a page after which the program ends, where nobody has said otherwise. */
const END_AFTER = 10;

/** What `TOEBOARD_END_AFTER` says: ms without a page until the end, undefined for never; or why it is not taken. */
export function endAfter(given: string | undefined): {
  readonly ms: number | undefined;
  readonly refusal?: string;
} {
  if (given === undefined || given.trim() === '') return { ms: END_AFTER * 60_000 };
  const minutes = Number(given);
  if (!Number.isFinite(minutes) || minutes < 0)
    return {
      ms: END_AFTER * 60_000,
      refusal: `TOEBOARD_END_AFTER is not taken: it is minutes, such as ${END_AFTER}, or 0 to stay open.`,
    };
  return { ms: minutes === 0 ? undefined : minutes * 60_000 };
}
