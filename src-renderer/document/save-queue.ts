import type { LayoutDocument } from '../../shared-math/layout/index.ts';
import { shownText } from '../../shared-math/outside/index.ts';
import type { CallFailure, CallHost } from '../../src-main/api/contract.ts';

/** What the reader sees about their work: short, and with the reason where it is not safe yet. */
export type SaveState =
  | 'saved'
  | 'saving'
  | 'changed elsewhere'
  | 'gone'
  /** Nobody answers; it is tried again. */
  | 'no answer'
  /** The program there is not this page's, and never will be. */
  | 'not admitted'
  /** The store failed; it is tried again. */
  | `not saved: ${string}`
  /** Refused for good as it stands; the next change may be taken. */
  | `refused: ${string}`;

/** One state of the document on its way to the store. Saves of one step (one drag) share a place in the history. */
export interface SaveJob {
  readonly document: LayoutDocument;
  readonly step: string;
  readonly label: string;
}

/** Milliseconds from a change to its save. With the call itself this stays well inside half a second. */
export const SAVE_AFTER = 300;
/** The same while a point is being dragged: often enough to lose little, seldom enough to disturb nothing. */
export const SAVE_AFTER_DRAGGING = 400;
/** Milliseconds to the next try after the store or the host failed; doubled at each failure up to the longest. */
export const RETRY_AFTER = 1000;
export const RETRY_LONGEST = 8000;

/** Characters of a label that the host takes. */
const LABEL_MOST = 200;

/**
 * Carries changes to the store, one call at a time and in order. Nothing put in is dropped before the store has
 * it: a failed save stays first in the queue and is tried again. One that is refused for good is reported and kept until
 * there is a newer state, which has all of it in itself; it never holds up what comes behind it.
 */
export class SaveQueue {
  #call: CallHost;
  #onState: (state: SaveState) => void;
  #id = '';
  #revision = 0;
  #waiting: SaveJob[] = [];
  #sending: Promise<void> | null = null;
  #sent: SaveJob | null = null;
  #timer: ReturnType<typeof setTimeout> | undefined;
  #retryAfter = RETRY_AFTER;
  /** Nothing is sent until the reader has decided, or there is nowhere to send it. */
  #held = false;
  #force = false;
  #urgent = false;
  #failing = false;

  constructor(call: CallHost, onState: (state: SaveState) => void) {
    this.#call = call;
    this.#onState = onState;
  }

  /** Turns to another variant. What waits for the present one must have been flushed before. */
  open(id: string, revision: number): void {
    this.#stopTimer();
    this.#id = id;
    this.#revision = revision;
    this.#waiting = [];
    this.#sent = null;
    this.#held = false;
    this.#force = false;
    this.#urgent = false;
    this.#failing = false;
    this.#retryAfter = RETRY_AFTER;
    this.#onState('saved');
  }

  /** The revision that the store had when it was heard of last. */
  get revision(): number {
    return this.#revision;
  }

  get pending(): boolean {
    return this.#waiting.length > 0 || this.#sending !== null;
  }

  /** Takes a change; it is saved within `delay` milliseconds, together with what came before it. */
  put({ label, ...change }: SaveJob, delay: number = SAVE_AFTER): void {
    // A label names what was changed, and names may be as long as a label alone may be.
    const job = { ...change, label: shownText(label, LABEL_MOST) };
    if (this.#waiting.at(-1)?.step === job.step) this.#waiting.pop();
    this.#waiting.push(job);
    if (this.#held) return;
    if (!this.#failing) this.#onState('saving');
    if (delay === 0) this.#startUrgently();
    else if (!this.#sending) this.#startIn(delay);
  }

  /** Whether a state of this step is in the store, or on its way there. */
  hasSent(step: string): boolean {
    return this.#sent?.step === step;
  }

  /** Takes back what waits of a step that was cancelled before any of it was sent. */
  withdraw(step: string): void {
    this.#waiting = this.#waiting.filter((job) => job.step !== step);
    if (!this.pending && !this.#held) {
      this.#stopTimer();
      this.#onState('saved');
    }
  }

  /** Sends what waits at once. Resolves when the store has it, or has failed to take it. */
  async flush(): Promise<void> {
    this.#startUrgently();
    await this.#sending;
  }

  /** For a page that is going away: there is no later, so what waits follows a running call without awaiting it. */
  flushLeaving(): void {
    const last = this.#waiting.at(-1);
    if (!last || this.#held || this.#id === '') return;
    if (!this.#sending) {
      this.#waiting = [last];
      this.#start();
      return;
    }
    this.#waiting = [];
    void this.#call('variant.save', {
      id: this.#id,
      ...last,
      // The running call, which left before this one, adds one.
      revision: this.#revision + 1,
    });
  }

  /** After "changed elsewhere": what stands here replaces what the store holds. */
  async keepMine(): Promise<void> {
    this.#held = false;
    this.#force = true;
    await this.flush();
  }

  #stopTimer(): void {
    clearTimeout(this.#timer);
    this.#timer = undefined;
  }

  #startIn(delay: number): void {
    this.#timer ??= setTimeout(() => this.#start(), delay);
  }

  #startUrgently(): void {
    this.#urgent = true;
    this.#start();
  }

  #start(): void {
    this.#stopTimer();
    if (this.#sending || this.#held || this.#waiting.length === 0) return;
    this.#sending = this.#sendWaiting().finally(() => {
      this.#sending = null;
    });
  }

  /** Sends what waits now; what arrives meanwhile has its own turn, unless somebody waits for it. */
  async #sendWaiting(): Promise<void> {
    if (!this.#failing) this.#onState('saving');
    let turns = this.#waiting.length;
    for (let job = this.#waiting[0]; job; job = this.#waiting[0]) {
      if (turns === 0 && !this.#urgent) {
        this.#startIn(SAVE_AFTER);
        return;
      }
      turns = Math.max(0, turns - 1);
      if (!(await this.#send(job))) return;
    }
    this.#urgent = false;
    this.#onState('saved');
  }

  /** Whether the store took it and the next one may follow. */
  async #send(job: SaveJob): Promise<boolean> {
    const id = this.#id;
    this.#sent = job;
    const result = await this.#call('variant.save', {
      id,
      ...job,
      revision: this.#revision,
      force: this.#force,
    });
    if (id !== this.#id) return false;
    if (result.ok) {
      this.#revision = result.value.revision;
      this.#force = false;
      this.#failing = false;
      this.#retryAfter = RETRY_AFTER;
      // A newer state of the same step may have taken the job's place meanwhile; that one still waits.
      if (this.#waiting[0] === job) this.#waiting.shift();
      return true;
    }
    this.#failing = true;
    return this.#refused(job, result.failure);
  }

  /** Whether the next one may follow a job that the store did not take. */
  #refused(job: SaveJob, { code, reason }: CallFailure): boolean {
    switch (code) {
      case 'changed-elsewhere':
      case 'not-found':
        this.#held = true;
        this.#onState(code === 'not-found' ? 'gone' : 'changed elsewhere');
        return false;
      case 'no-answer':
        this.#onState('no answer');
        this.#retryLater();
        return false;
      case 'not-admitted':
        this.#onState('not admitted');
        return false;
      case 'storage-failed':
        this.#onState(`not saved: ${reason}`);
        this.#retryLater();
        return false;
      case 'internal':
      case 'bad-request':
      case 'refused-document':
        if (this.#waiting[0] === job && this.#waiting.length > 1) {
          this.#waiting.shift();
          return true;
        }
        // A newer state of the same step has taken its place: that one is still to be tried.
        if (this.#waiting[0] !== job) return true;
        if (code !== 'internal') this.#onState(`refused: ${reason}`);
        else {
          this.#onState(`not saved: ${reason}`);
          this.#retryLater();
        }
        return false;
    }
  }

  #retryLater(): void {
    this.#startIn(this.#retryAfter);
    this.#retryAfter = Math.min(RETRY_LONGEST, this.#retryAfter * 2);
  }
}
