import type { FromWorker, ToWorker } from './messages.ts';
import { FAILED, FAILURES_MOST, LastingLine, type Line } from './worker-line.ts';

/** The other end of a client: a worker; a plain object in tests. */
export type WorkerLine = Line<ToWorker, FromWorker>;

/** What a caller wants to hear of a job. */
export interface JobListener<News, Answer> {
  news?(news: News): void;
  answer(answer: Answer): void;
  broken(reason: string): void;
}

interface Waiting {
  readonly job: string;
  readonly input: unknown;
  readonly listener: JobListener<never, never>;
  failures: number;
}

/**
 * The page's side: begins jobs in a worker and hears of them. The worker is started with the first job, and again when
 * it has failed: its jobs are then begun anew, and broken off when it fails at them once more. A job that was called off
 * is never heard of again, whatever of it is still on its way.
 */
export class JobClient {
  readonly #line: LastingLine<ToWorker, FromWorker>;
  #last = 0;
  readonly #waiting = new Map<number, Waiting>();

  constructor(start: () => WorkerLine) {
    this.#line = new LastingLine(
      start,
      (message) => this.#hear(message),
      () => this.#again(),
    );
  }

  /** Begins a job; what it gives back calls it off. */
  begin<Input, News, Answer>(job: string, input: Input, listener: JobListener<News, Answer>): () => void {
    this.#last += 1;
    const id = this.#last;
    this.#waiting.set(id, {
      job,
      input,
      listener: listener as unknown as JobListener<never, never>,
      failures: 0,
    });
    this.#line.send({ kind: 'begin', id, job, input });
    return () => {
      if (this.#waiting.delete(id)) this.#line.send({ kind: 'call-off', id });
    };
  }

  /** Which of the jobs under way the worker failed at cannot be known: it counts against each. */
  #again(): void {
    const waiting = [...this.#waiting];
    for (const [id, entry] of waiting) {
      entry.failures += 1;
      if (entry.failures < FAILURES_MOST)
        this.#line.send({ kind: 'begin', id, job: entry.job, input: entry.input });
      else this.#waiting.delete(id);
    }
    // Reported last: they may ask for something else at once.
    for (const [, { listener, failures }] of waiting) if (failures >= FAILURES_MOST) listener.broken(FAILED);
  }

  #hear(message: FromWorker): void {
    const listener = this.#waiting.get(message.id)?.listener;
    if (!listener) return;
    if (message.kind === 'news') {
      listener.news?.(message.news as never);
      return;
    }
    this.#waiting.delete(message.id);
    if (message.kind === 'answer') listener.answer(message.answer as never);
    else listener.broken(message.reason);
  }
}
