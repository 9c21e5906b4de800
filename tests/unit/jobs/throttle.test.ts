import { expect, test } from 'vitest';
import { type Clock, Throttle } from '../../../src-renderer/jobs/throttle.ts';

/** A clock that goes only when it is wound on. */
class HandClock implements Clock {
  #now = 1000;
  #waiting: { at: number; run: () => void }[] = [];

  now(): number {
    return this.#now;
  }
  after(milliseconds: number, run: () => void): () => void {
    const entry = { at: this.#now + milliseconds, run };
    this.#waiting.push(entry);
    return () => {
      this.#waiting = this.#waiting.filter((each) => each !== entry);
    };
  }
  wind(milliseconds: number): void {
    const end = this.#now + milliseconds;
    for (;;) {
      const next = this.#waiting.filter(({ at }) => at <= end).sort((a, b) => a.at - b.at)[0];
      if (!next) break;
      this.#waiting = this.#waiting.filter((each) => each !== next);
      this.#now = Math.max(this.#now, next.at);
      next.run();
    }
    this.#now = end;
  }
}

function begin() {
  const clock = new HandClock();
  const seen: number[] = [];
  let state = 0;
  const throttle = new Throttle(100, () => seen.push(state), clock);
  const change = () => {
    state += 1;
    throttle.ask();
  };
  return { clock, seen, throttle, change };
}

test('nothing is done inside the asking', () => {
  const { clock, seen, change } = begin();
  change();
  expect(seen).toEqual([]);
  clock.wind(0);
  expect(seen).toEqual([1]);
});

test('a drag of a second is followed ten times at most, and its last state is always seen', () => {
  const { clock, seen, change, throttle } = begin();
  for (let step = 0; step < 125; step += 1) {
    change();
    clock.wind(8);
  }
  expect(seen.length).toBeGreaterThanOrEqual(9);
  expect(seen.length).toBeLessThanOrEqual(11);
  clock.wind(500);
  expect(seen.at(-1)).toBe(125);
  expect(throttle.waiting).toBe(false);
  const runs = seen.length;
  clock.wind(5000);
  expect(seen.length).toBe(runs);
});

test('a change long after the last is followed at once', () => {
  const { clock, seen, change } = begin();
  change();
  clock.wind(3000);
  change();
  clock.wind(1);
  expect(seen).toEqual([1, 2]);
});

test('done at once, what was asked for is not done again', () => {
  const { clock, seen, change, throttle } = begin();
  change();
  throttle.now();
  expect(seen).toEqual([1]);
  clock.wind(1000);
  expect(seen).toEqual([1]);
});

test('called off, nothing comes', () => {
  const { clock, seen, change, throttle } = begin();
  change();
  throttle.stop();
  clock.wind(1000);
  expect(seen).toEqual([]);
});
