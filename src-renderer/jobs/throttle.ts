/** Where a throttle takes its time from; a hand-wound one in tests. */
export interface Clock {
  /** ms of any steady clock. */
  now(): number;
  /** Runs something in a quiet moment, not before the time is over. What it gives back calls that off. */
  after(milliseconds: number, run: () => void): () => void;
}

/** ms. A page that is never quiet is interrupted after this, so that what is waited for comes at all. */
const AT_LATEST = 80;

/** The page's own: waits, then for the browser to have nothing to draw. */
export const PAGE_CLOCK: Clock = {
  now: () => performance.now(),
  after(milliseconds, run) {
    let quiet = 0;
    const timer = setTimeout(() => {
      quiet = requestIdleCallback(run, { timeout: AT_LATEST });
    }, milliseconds);
    return () => {
      clearTimeout(timer);
      cancelIdleCallback(quiet);
    };
  },
};

/**
 * Work that follows something which changes faster than is worth following. However often it is asked for, it runs
 * at most once in `spacing` ms, never inside the asking, and once more after the last asking.
 */
export class Throttle {
  readonly #spacing: number;
  readonly #work: () => void;
  readonly #clock: Clock;
  #last = Number.NEGATIVE_INFINITY;
  #callOff: (() => void) | null = null;

  constructor(spacing: number, work: () => void, clock: Clock = PAGE_CLOCK) {
    this.#spacing = spacing;
    this.#work = work;
    this.#clock = clock;
  }

  /** Whether work is still to come. */
  get waiting(): boolean {
    return this.#callOff !== null;
  }

  ask(): void {
    if (this.#callOff) return;
    const wait = Math.max(0, this.#last + this.#spacing - this.#clock.now());
    this.#callOff = this.#clock.after(wait, () => this.now());
  }

  /** Does it at once; what was asked for is done with. */
  now(): void {
    this.stop();
    this.#work();
    // Counted from the end, so that slow work on a slow machine leaves room for everything else.
    this.#last = this.#clock.now();
  }

  stop(): void {
    this.#callOff?.();
    this.#callOff = null;
  }
}
