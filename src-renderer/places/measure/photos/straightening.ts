import type { Picture, WarpOrder } from '../../../../shared-math/trace/index.ts';
import { FAILURES_MOST, LastingLine } from '../../../jobs/worker-line.ts';
import type { FromPhotoWorker, ToPhotoWorker } from './photo-messages.ts';
import type { PhotoWorkerLine } from './start-photo-worker.ts';

interface Waiting {
  readonly hash: string;
  readonly order: WarpOrder;
  readonly done: (picture: Picture | undefined) => void;
  failures: number;
}

/**
 * Photos as they are seen straight on, worked out beside the page. A worker that has failed is started anew, with the
 * pictures that it kept, and asked again.
 */
export class Straightening {
  readonly #line: LastingLine<ToPhotoWorker, FromPhotoWorker>;
  readonly #kept = new Map<string, Picture>();
  readonly #waiting = new Map<number, Waiting>();
  #last = 0;

  constructor(start: () => PhotoWorkerLine) {
    this.#line = new LastingLine(
      start,
      ({ id, picture }) => {
        this.#waiting.get(id)?.done(picture);
        this.#waiting.delete(id);
      },
      () => this.#again(),
    );
  }

  keep(hash: string, picture: Picture): void {
    this.#kept.set(hash, picture);
    this.#line.send({ kind: 'keep', hash, picture });
  }

  /** A kept picture as an order wants it seen; undefined if the worker has failed at it twice. */
  warped(hash: string, order: WarpOrder): Promise<Picture | undefined> {
    this.#last += 1;
    const id = this.#last;
    return new Promise((done) => {
      this.#waiting.set(id, { hash, order, done, failures: 0 });
      this.#line.send({ kind: 'warp', id, hash, order });
    });
  }

  #again(): void {
    for (const entry of this.#waiting.values()) entry.failures += 1;
    const given = [...this.#waiting].filter(([, { failures }]) => failures >= FAILURES_MOST);
    for (const [id] of given) this.#waiting.delete(id);
    for (const [hash, picture] of this.#kept) this.#line.send({ kind: 'keep', hash, picture });
    for (const [id, { hash, order }] of this.#waiting) this.#line.send({ kind: 'warp', id, hash, order });
    for (const [, { done }] of given) done(undefined);
  }
}
