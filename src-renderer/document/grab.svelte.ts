import { toDegrees } from '../../shared-math/units/index.ts';
import type { Held, Moved } from '../workers/ride-messages.ts';
import type { RideWorkerLine } from '../workers/start-ride-worker.ts';
import type { Workbench } from './workbench.svelte.ts';

export type { Held } from '../workers/ride-messages.ts';

/** In the order in which the keyboard goes through them. */
const HELD: readonly Held[] = ['axle', 'left', 'right'];

/** What the wheels steered at a moment since the hand took hold: s, degrees. */
export interface TraceRow {
  readonly at: number;
  readonly steer: number;
}

/** s of the trace that are kept. */
const TRACE_KEPT = 6;
/** s. A page that was not drawn for longer goes on where it stood. */
const FRAME_MOST = 0.1;

/**
 * A hand on the axle. Springs, dampers and tyres carry axle and frame in a worker of their own, by a fixed step; at every
 * frame the linkage is solved exactly where they have brought it. Nothing of it reaches the document.
 */
export class Grab {
  readonly #bench: Workbench;
  readonly #start: () => RideWorkerLine;
  #line: RideWorkerLine | undefined;
  #frame = 0;
  /** Tells the answers to this grab from those to one before. */
  #turn = 0;
  #waiting = false;
  #before: number | undefined;
  #seconds = 0;

  /** What is in the hand; nothing once it was let go. */
  held: Held | null = $state(null);
  /** Let go, and not yet at rest. */
  settling = $state(false);
  /** Taken hold of by keys: arrows pull then. */
  byKeys = $state(false);
  /** mm that the hand has gone up from where it took hold. */
  pulled = $state(0);
  /** What is under the pointer and could be taken hold of. */
  offered: Held | null = $state(null);
  trace: readonly TraceRow[] = $state.raw([]);
  /** N that the hand pulls with, up. */
  force = $state(0);

  readonly active = $derived(this.held !== null || this.settling);

  constructor(bench: Workbench, start: () => RideWorkerLine) {
    this.#bench = bench;
    this.#start = start;
  }

  /** Takes hold; tells whether there was anything to hold. */
  take(held: Held): boolean {
    const { document } = this.#bench;
    if (!document || this.#bench.poseState.status !== 'ok') return false;
    const again = this.settling;
    const { heave, roll } = this.#bench.pose;
    this.#bench.beginCarrying(() => this.#stopped());
    this.#turn += 1;
    this.held = held;
    this.settling = false;
    this.pulled = 0;
    this.force = 0;
    if (!again) this.trace = [];
    this.#seconds = this.trace.at(-1)?.at ?? 0;
    this.#waiting = false;
    this.#before = undefined;
    this.#reach().send({ kind: 'take', turn: this.#turn, document, held, heave, roll });
    cancelAnimationFrame(this.#frame);
    this.#frame = requestAnimationFrame(this.#tick);
    return true;
  }

  /** The keyboard's hand: takes hold of the axle, then of one tyre and the other, then of the axle again. */
  takeNext(): boolean {
    const next = HELD[(this.held === null ? 0 : HELD.indexOf(this.held) + 1) % HELD.length] as Held;
    if (this.held !== null) this.giveBack();
    const taken = this.take(next);
    this.byKeys = taken;
    return taken;
  }

  /** Holds the hand that many mm above where it took hold. */
  pull(up: number): void {
    if (this.held === null) return;
    this.pulled = up;
  }

  /** Opens the hand: springs and tyres bring the car back to ride height. */
  letGo(): void {
    if (this.held === null) return;
    this.held = null;
    this.byKeys = false;
    this.pulled = 0;
    this.force = 0;
    this.settling = true;
  }

  /** As if nothing had been taken hold of: at ride height at once. */
  giveBack(): void {
    if (this.active) this.#bench.setPose({ heave: 0, roll: 0 });
  }

  /** Somebody else poses the car, or it was given back. */
  #stopped(): void {
    cancelAnimationFrame(this.#frame);
    this.#turn += 1;
    this.held = null;
    this.settling = false;
    this.pulled = 0;
    this.force = 0;
  }

  #reach(): RideWorkerLine {
    if (!this.#line) {
      this.#line = this.#start();
      this.#line.listen((message) => {
        if (message.kind === 'moved') this.#moved(message);
        else if (message.kind === 'not-held' && message.turn === this.#turn) {
          this.giveBack();
          this.#bench.tell(`The axle cannot be pulled: ${message.reason}.`);
        }
      });
    }
    return this.#line;
  }

  #moved({ turn, heave, roll, stand, force, rests, seconds }: Moved): void {
    if (turn !== this.#turn) return;
    this.#waiting = false;
    this.#seconds += seconds;
    const { handwheel } = this.#bench.pose;
    if (rests && this.held === null) {
      // Ride height itself, and not the last hundredth of a millimetre before it.
      this.#bench.setPose({ heave: 0, roll: 0 });
      return;
    }
    this.force = this.held === null ? 0 : force;
    // Where the linkage does not reach, the car stays at the last pose that it did.
    if (!this.#bench.carryCar({ heave, roll, handwheel }, stand)) return;
    const row = { at: this.#seconds, steer: toDegrees(this.#bench.poseState.meanSteer) };
    this.trace = [...this.trace.filter(({ at }) => at > row.at - TRACE_KEPT), row];
  }

  readonly #tick = (now: number): void => {
    if (!this.active) return;
    this.#frame = requestAnimationFrame(this.#tick);
    const seconds = this.#before === undefined ? 0 : (now - this.#before) / 1000;
    if (this.#waiting) return;
    this.#before = now;
    this.#waiting = true;
    this.#reach().send({
      kind: 'pull',
      turn: this.#turn,
      up: this.held === null ? null : this.pulled,
      seconds: Math.min(FRAME_MOST, seconds),
      still: matchMedia('(prefers-reduced-motion: reduce)').matches,
    });
  };
}
