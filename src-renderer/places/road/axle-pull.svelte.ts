import { createContext } from 'svelte';
import { toDegrees } from '../../../shared-math/units/index.ts';
import { LEVEL } from '../../document/frame-pose.ts';
import type { OpenLayout } from '../../document/open-layout.svelte.ts';
import type { RideLine } from './ride-line.ts';
import type { Held, Hold, Moved } from './ride-messages.ts';

export type { Held, Hold } from './ride-messages.ts';

/** In the order in which the keyboard goes through them. */
const HELD: readonly Held[] = ['axle', 'left', 'right'];

/** What the wheels steered at a moment since the hand took hold: s, degrees. */
export interface TraceRow {
  readonly at: number;
  readonly steer: number;
}

/** s of the trace that are kept. */
export const TRACE_KEPT = 6;
/** s. A page that was not drawn for longer goes on where it stood. */
const FRAME_MOST = 0.1;
const NO_PULL = { up: 0, over: 0 };

/**
 * A hand on the axle. It pulls the axle toward the frame and away from it; springs, dampers and tyres carry both in a
 * worker of their own, by a fixed step; at every frame the linkage is solved exactly where they have brought the axle.
 * Nothing of it reaches the document.
 */
export class AxlePull {
  readonly #openLayout: OpenLayout;
  readonly #line: RideLine;
  #frame = 0;
  /** Tells the answers to this hold from those to one before. */
  #turn = 0;
  #waiting = false;
  #before: number | undefined;
  #seconds = 0;

  /** What is in the hand; nothing once it was let go. */
  hold: Hold | null = $state.raw(null);
  readonly held: Held | null = $derived(this.hold?.held ?? null);
  /** Let go, and not yet at rest. */
  settling = $state(false);
  /** Taken hold of by keys: arrows pull then. */
  byKeys = $state(false);
  /** mm that the hand has gone up and to the left from where it took hold. */
  pulled: { readonly up: number; readonly over: number } = $state.raw(NO_PULL);
  /** N that the hand pulls with. */
  force = $state(0);
  trace: readonly TraceRow[] = $state.raw([]);
  /** What is under the pointer and could be taken hold of. */
  offered: Held | null = $state(null);

  readonly active = $derived(this.hold !== null || this.settling);

  constructor(openLayout: OpenLayout, line: RideLine) {
    this.#openLayout = openLayout;
    this.#line = line;
    line.onHand((message) => {
      if (message.turn !== this.#turn) return;
      if (message.kind === 'moved') this.#moved(message);
      else {
        this.giveBack();
        openLayout.tell(`The axle cannot be pulled: ${message.reason}.`);
      }
    });
  }

  /** Takes hold; tells whether there was anything to hold. */
  take(hold: Hold): boolean {
    const { document, carPose } = this.#openLayout;
    const { pose, state } = carPose;
    if (!document || state.status !== 'ok') return false;
    const { heave, roll } = pose;
    const again = this.settling;
    carPose.beginCarrying(() => this.#stopped());
    // The frame stands still on the board, and the ground moves under it.
    carPose.carry(pose, LEVEL);
    this.#turn += 1;
    this.hold = hold;
    if (!again) this.trace = [];
    this.#seconds = this.trace.at(-1)?.at ?? 0;
    this.#waiting = false;
    this.#before = undefined;
    this.#line.send({ kind: 'take', turn: this.#turn, document, hold, heave, roll });
    this.#frame = requestAnimationFrame(this.#tick);
    return true;
  }

  /** The keyboard's hand: takes hold of the axle, then of one tyre and the other, then of the axle again. */
  takeNext(): void {
    const held = HELD[(this.held === null ? 0 : HELD.indexOf(this.held) + 1) % HELD.length] as Held;
    if (this.hold) this.giveBack();
    const { left, right } = this.#openLayout.layout.axle;
    const centre = held === 'right' ? right.wheelCentre : left.wheelCentre;
    this.byKeys = this.take({ held, y: held === 'axle' ? 0 : centre[1], z: centre[2], sideways: false });
  }

  /** Holds the hand that many mm above where it took hold, and to the left of it. */
  pull(up: number, over = 0): void {
    if (this.hold) this.pulled = { up, over };
  }

  /** Opens the hand: springs and tyres bring the car back to ride height. */
  letGo(): void {
    if (!this.hold) return;
    this.#open();
    this.settling = true;
  }

  /** As if nothing had been taken hold of: at ride height at once. */
  giveBack(): void {
    if (this.active) this.#openLayout.carPose.set({ heave: 0, roll: 0 });
  }

  #open(): void {
    this.hold = null;
    this.byKeys = false;
    this.pulled = NO_PULL;
    this.force = 0;
  }

  /** Somebody else poses the car, or it was given back. */
  #stopped(): void {
    cancelAnimationFrame(this.#frame);
    this.#turn += 1;
    this.#open();
    this.settling = false;
  }

  #moved({ heave, roll, force, rests, seconds }: Moved): void {
    this.#waiting = false;
    this.#seconds += seconds;
    if (rests && !this.hold) {
      // Ride height itself, and not the last hundredth of a millimetre before it.
      this.#openLayout.carPose.set({ heave: 0, roll: 0 });
      return;
    }
    this.force = this.hold ? force : 0;
    // Where the linkage does not reach, the car stays at the last pose that it did.
    const { handwheel } = this.#openLayout.carPose.pose;
    if (!this.#openLayout.carPose.carry({ heave, roll, handwheel }, LEVEL)) return;
    const row = { at: this.#seconds, steer: toDegrees(this.#openLayout.carPose.state.meanSteer) };
    this.trace = [...this.trace.filter(({ at }) => at > row.at - TRACE_KEPT), row];
  }

  readonly #tick = (now: number): void => {
    if (!this.active) return;
    this.#frame = requestAnimationFrame(this.#tick);
    if (this.#waiting) return;
    const seconds = this.#before === undefined ? 0 : (now - this.#before) / 1000;
    this.#before = now;
    this.#waiting = true;
    this.#line.send({
      kind: 'pull',
      turn: this.#turn,
      to: this.hold ? this.pulled : null,
      seconds: Math.min(FRAME_MOST, seconds),
      still: window.matchMedia('(prefers-reduced-motion: reduce)').matches,
    });
  };
}

/** The one of the page, for its components. */
export const [getAxlePull, setAxlePull] = createContext<AxlePull>();
