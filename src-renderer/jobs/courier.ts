import type { FromWorker, ToWorker } from './messages.ts';

/** The other end of a courier: a worker; a plain object in tests. */
export interface WorkerLine {
  send(message: ToWorker): void;
  /** Told once what to do with everything that comes. */
  listen(hear: (message: FromWorker) => void): void;
}

/** What a caller wants to hear of a job. */
export interface Ears<News, Answer> {
  news?(news: News): void;
  answer(answer: Answer): void;
  broken(reason: string): void;
}

/**
 * The page's side: begins jobs in a worker and hears of them. The worker is started with the first job. A job that was
 * called off is never heard of again, whatever of it is still on its way.
 */
export class Courier {
  readonly #start: () => WorkerLine;
  #line: WorkerLine | undefined;
  #last = 0;
  readonly #waiting = new Map<number, Ears<never, never>>();

  constructor(start: () => WorkerLine) {
    this.#start = start;
  }

  /** Begins a job; what it gives back calls it off. */
  begin<Input, News, Answer>(job: string, input: Input, ears: Ears<News, Answer>): () => void {
    const line = this.#open();
    this.#last += 1;
    const id = this.#last;
    this.#waiting.set(id, ears as unknown as Ears<never, never>);
    line.send({ kind: 'begin', id, job, input });
    return () => {
      if (this.#waiting.delete(id)) line.send({ kind: 'call-off', id });
    };
  }

  #open(): WorkerLine {
    if (this.#line) return this.#line;
    const line = this.#start();
    line.listen((message) => this.#hear(message));
    this.#line = line;
    return line;
  }

  #hear(message: FromWorker): void {
    const ears = this.#waiting.get(message.id);
    if (!ears) return;
    if (message.kind === 'news') {
      ears.news?.(message.news as never);
      return;
    }
    this.#waiting.delete(message.id);
    if (message.kind === 'answer') ears.answer(message.answer as never);
    else ears.broken(message.reason);
  }
}
