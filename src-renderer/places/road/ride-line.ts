import { FAILED, FAILURES_MOST, LastingLine } from '../../jobs/worker-line.ts';
import type { FromRideWorker, ToRideWorker } from './ride-messages.ts';
import type { RideWorkerLine } from './start-ride-worker.ts';

type FromHand = FromRideWorker & { kind: 'moved' | 'not-held' };
type FromRun = FromRideWorker & { kind: 'ran' | 'not-run' };
type Order = ToRideWorker & { kind: 'run' };
type Take = ToRideWorker & { kind: 'take' };
type Pull = ToRideWorker & { kind: 'pull' };

/**
 * The one line to the ride worker, for the hand and for the runs; the worker is started when something is first asked,
 * and again when it has failed. Runs are then driven anew and the hand takes hold anew, until it fails at them once more.
 */
export class RideLine {
  readonly #line: LastingLine<ToRideWorker, FromRideWorker>;
  #hand: (message: FromHand) => void = () => {};
  #run: (message: FromRun) => void = () => {};
  /** The newest order of each key that has not been answered. */
  readonly #orders = new Map<string, { readonly order: Order; failures: number }>();
  /** What the hand holds, and its last pull if it has not been answered. */
  #held: { readonly take: Take; pull: Pull | undefined; failures: number } | undefined;

  constructor(start: () => RideWorkerLine) {
    this.#line = new LastingLine(
      start,
      (message) => this.#hear(message),
      () => this.#again(),
    );
  }

  onHand(hear: (message: FromHand) => void): void {
    this.#hand = hear;
  }

  onRun(hear: (message: FromRun) => void): void {
    this.#run = hear;
  }

  send(message: ToRideWorker): void {
    if (message.kind === 'run') this.#orders.set(message.key, { order: message, failures: 0 });
    else if (message.kind === 'take') this.#held = { take: message, pull: undefined, failures: 0 };
    else if (message.turn === this.#held?.take.turn) this.#held.pull = message;
    this.#line.send(message);
  }

  #hear(message: FromRideWorker): void {
    if (message.kind === 'moved' || message.kind === 'not-held') {
      if (message.turn === this.#held?.take.turn) {
        if (message.kind === 'moved') this.#held.pull = undefined;
        else this.#held = undefined;
      }
      this.#hand(message);
    } else {
      if (this.#orders.get(message.key)?.order.id === message.id) this.#orders.delete(message.key);
      this.#run(message);
    }
  }

  #again(): void {
    const given: Order[] = [];
    for (const [key, entry] of this.#orders) {
      entry.failures += 1;
      if (entry.failures < FAILURES_MOST) this.#line.send(entry.order);
      else {
        this.#orders.delete(key);
        given.push(entry.order);
      }
    }
    const turn = this.#holdAgain();
    // Reported last: they may ask for something else at once.
    for (const { id, key } of given)
      this.#run({ kind: 'not-run', id, key, refusal: { path: '', reason: FAILED } });
    if (turn !== undefined) this.#hand({ kind: 'not-held', turn, reason: FAILED });
  }

  /** Takes hold anew where the hand waits for an answer; returns the hand's turn if it has to let go instead. */
  #holdAgain(): number | undefined {
    const held = this.#held;
    if (!held) return undefined;
    held.failures += 1;
    if (held.failures >= FAILURES_MOST) {
      this.#held = undefined;
      return held.take.turn;
    }
    this.#line.send(held.take);
    if (held.pull) this.#line.send(held.pull);
    return undefined;
  }
}
