import { JobClient, type WorkerLine } from './job-client.ts';

export interface CrewListener<News, Answer> {
  /** `at` says which of the inputs it is about. */
  news?(at: number, news: News): void;
  answer(at: number, answer: Answer): void;
  /** Everything has been answered. */
  done(): void;
  /** One of them broke off; nothing more is heard of any. */
  broken(reason: string): void;
}

/** As many as the machine has processors; what else runs has its share all the same. */
export const usualCrew = (): number => Math.max(1, globalThis.navigator?.hardwareConcurrency ?? 1);

/**
 * Several workers at one job with many inputs: each takes the next input as soon as it is free. Which worker answers which
 * input, and in which order, says nothing: an answer comes with the place of its input in the list.
 */
export class Crew {
  readonly #clients: readonly JobClient[];

  constructor(start: () => WorkerLine, size: number = usualCrew()) {
    this.#clients = Array.from({ length: size }, () => new JobClient(start));
  }

  /** Begins; what it gives back calls all of it off. */
  begin<Input, News, Answer>(
    job: string,
    inputs: readonly Input[],
    listener: CrewListener<News, Answer>,
  ): () => void {
    let next = 0;
    let answered = 0;
    let off = false;
    const underWay = new Map<JobClient, () => void>();
    const callOff = () => {
      off = true;
      for (const stop of underWay.values()) stop();
      underWay.clear();
    };
    const give = (client: JobClient): void => {
      const at = next;
      if (off || at >= inputs.length) return;
      next += 1;
      const stop = client.begin<Input, News, Answer>(job, inputs[at] as Input, {
        news: (news) => listener.news?.(at, news),
        answer: (answer) => {
          underWay.delete(client);
          answered += 1;
          listener.answer(at, answer);
          if (off) return;
          if (answered === inputs.length) listener.done();
          else give(client);
        },
        broken: (reason) => {
          callOff();
          listener.broken(reason);
        },
      });
      underWay.set(client, stop);
    };
    if (inputs.length === 0) listener.done();
    for (const client of this.#clients) give(client);
    return callOff;
  }
}
