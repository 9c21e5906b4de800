import type { JobClient } from './job-client.ts';

/** What is asked of a job, and whether it may be broken off as soon as something newer is asked. */
export interface Question<Input> {
  readonly input: Input;
  readonly interruptible: boolean;
}

export interface LatestListener<News, Answer> {
  news?(news: News): void;
  answer(answer: Answer): void;
  broken(reason: string): void;
}

/**
 * One job that is asked again and again, faster than it answers. At most one question is under way and at most one
 * waits, the newest: those between are never asked. What is under way is heard, as while something is dragged an answer
 * of a moment ago is better than none, but never after a newer one.
 */
export class Latest<Input, News, Answer> {
  readonly #client: JobClient;
  readonly #job: string;
  readonly #listener: LatestListener<News, Answer>;
  #underWay: { readonly interruptible: boolean; readonly callOff: () => void } | null = null;
  #next: Question<Input> | null = null;

  constructor(client: JobClient, job: string, listener: LatestListener<News, Answer>) {
    this.#client = client;
    this.#job = job;
    this.#listener = listener;
  }

  /** Whether anything is still to be heard. */
  get busy(): boolean {
    return this.#underWay !== null;
  }

  ask(input: Input, interruptible = false): void {
    if (this.#underWay && !this.#underWay.interruptible) {
      this.#next = { input, interruptible };
      return;
    }
    this.#underWay?.callOff();
    this.#begin({ input, interruptible });
  }

  /** Nothing of what was asked is wanted any more. */
  forget(): void {
    this.#next = null;
    this.#underWay?.callOff();
    this.#underWay = null;
  }

  #begin({ input, interruptible }: Question<Input>): void {
    const done = () => {
      this.#underWay = null;
      const next = this.#next;
      this.#next = null;
      if (next) this.#begin(next);
    };
    const callOff = this.#client.begin<Input, News, Answer>(this.#job, input, {
      news: (news) => this.#listener.news?.(news),
      answer: (answer) => {
        this.#listener.answer(answer);
        done();
      },
      broken: (reason) => {
        this.#listener.broken(reason);
        done();
      },
    });
    this.#underWay = { interruptible, callOff };
  }
}
