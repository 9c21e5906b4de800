import type { FromWorker, Job, ToWorker } from './messages.ts';

/** Any job, whatever it takes and gives: the client's types say which belongs to which. */
// biome-ignore lint/suspicious/noExplicitAny: a table of jobs of different types has no narrower one.
export type AnyJob = Job<any, unknown, unknown>;

/** What a runner speaks to: the worker's own scope; a plain object in tests. */
export interface RunnerLine {
  send(message: FromWorker): void;
  /** Runs something once messages that wait have been read. */
  soon(run: () => void): void;
}

/**
 * The worker's side: takes jobs and does them step by step. Between two steps it reads its messages, so that a job that
 * is called off ends within one step; jobs that were begun take turns.
 */
export class JobRunner {
  readonly #jobs: Readonly<Record<string, AnyJob>>;
  readonly #line: RunnerLine;
  readonly #running = new Map<number, Generator<unknown, unknown>>();

  constructor(jobs: Readonly<Record<string, AnyJob>>, line: RunnerLine) {
    this.#jobs = jobs;
    this.#line = line;
  }

  read(message: ToWorker): void {
    if (message.kind === 'call-off') {
      this.#running.delete(message.id);
      return;
    }
    const { id, job, input } = message;
    const known = this.#jobs[job];
    if (!known) {
      this.#line.send({ kind: 'broken', id, reason: `there is no job called ${job}` });
      return;
    }
    this.#running.set(id, known(input));
    this.#line.soon(() => this.#step(id));
  }

  #step(id: number): void {
    const running = this.#running.get(id);
    if (!running) return;
    try {
      const { done, value } = running.next();
      if (!done) {
        if (value !== undefined) this.#line.send({ kind: 'news', id, news: value });
        this.#line.soon(() => this.#step(id));
        return;
      }
      this.#running.delete(id);
      this.#line.send({ kind: 'answer', id, answer: value });
    } catch (error) {
      this.#running.delete(id);
      this.#line.send({ kind: 'broken', id, reason: error instanceof Error ? error.message : String(error) });
    }
  }
}
