import { setImmediate } from 'node:timers/promises';
import type { PrintJob } from './job.ts';

/** Work done part by part: reported as it goes, and called off between two parts. */
export class Making {
  readonly #job: PrintJob;
  readonly #of: number;
  #done = 0;

  constructor(job: PrintJob, parts: number) {
    this.#job = job;
    this.#of = parts;
  }

  /** Does one part. Throws the signal's reason where the work was called off. */
  async part<Value>(what: string, work: () => Value | Promise<Value>): Promise<Value> {
    this.#job.signal?.throwIfAborted();
    const value = await work();
    this.#done += 1;
    this.#job.progress?.(this.#done, this.#of, what);
    // Lets whoever wants to call it off be heard.
    await setImmediate();
    this.#job.signal?.throwIfAborted();
    return value;
  }
}
