import type { PhotoPart, WarpOrder } from '../../shared-math/trace/index.ts';
import { LastingLine, type Line } from '../jobs/worker-line.ts';
import type { FromOriginals, ToOriginals } from './original-messages.ts';

/** A line to the worker that keeps originals. */
export type OriginalsLine = Line<ToOriginals, FromOriginals>;

/** What opens a picture: its file where the browser decodes it, else the picture decoded. Undefined if that cannot be. */
export type Source = () => Promise<Blob | ImageBitmap | undefined>;

type Asked = (id: number) => ToOriginals;

/**
 * Photos at full size, as far as they are looked at closely. They are kept in a worker, which lets them go when nobody has asked
 * for a while or others need the room; whatever is asked of one that has gone opens it again.
 */
export class Originals {
  readonly #line: LastingLine<ToOriginals, FromOriginals>;
  readonly #waiting = new Map<number, (answer: FromOriginals | undefined) => void>();
  /** By key, while one is being opened: one file is not decoded twice at a time. */
  readonly #opening = new Map<string, Promise<boolean>>();
  #last = 0;

  constructor(start: () => OriginalsLine) {
    this.#line = new LastingLine(
      start,
      (answer) => this.#settle(answer.id, answer),
      // Originals went with the worker, and one may be what it failed at: who waits sees the reduced picture.
      () => {
        for (const id of [...this.#waiting.keys()]) this.#settle(id, undefined);
      },
    );
  }

  /** A picture that has just been decoded, for whoever looks closely next. It is given away. */
  take(key: string, bitmap: ImageBitmap): void {
    this.#line.send({ kind: 'take', key, bitmap }, [bitmap]);
  }

  /** A stretch of a picture as it is; undefined if it cannot be had. Whoever is given it closes it. */
  async part(key: string, source: Source, part: PhotoPart): Promise<ImageBitmap | undefined> {
    const answer = await this.#ask(key, source, (id) => ({ kind: 'part', id, key, part }));
    return answer?.kind === 'part' ? answer.bitmap : undefined;
  }

  /** A stretch of a picture seen straight on, from its own pixels; undefined if it cannot be had. Whoever is given it uses it up. */
  async straight(key: string, source: Source, order: WarpOrder): Promise<ImageBitmap | undefined> {
    const answer = await this.#ask(key, source, (id) => ({ kind: 'straight', id, key, order }));
    return answer?.kind === 'straight' ? answer.bitmap : undefined;
  }

  async #ask(key: string, source: Source, question: Asked): Promise<FromOriginals | undefined> {
    const answer = await this.#send(question);
    if (answer?.kind !== 'missing') return answer;
    return (await this.#open(key, source)) ? this.#send(question) : undefined;
  }

  #open(key: string, source: Source): Promise<boolean> {
    const under = this.#opening.get(key);
    if (under) return under;
    const opening = this.#opened(key, source).finally(() => this.#opening.delete(key));
    this.#opening.set(key, opening);
    return opening;
  }

  async #opened(key: string, source: Source): Promise<boolean> {
    const from = await source();
    if (!from) return false;
    if (!(from instanceof Blob)) {
      this.take(key, from);
      return true;
    }
    const answer = await this.#send((id) => ({ kind: 'open', id, key, file: from }));
    return answer?.kind === 'opened' && answer.ok;
  }

  #send(question: Asked): Promise<FromOriginals | undefined> {
    this.#last += 1;
    const id = this.#last;
    return new Promise((done) => {
      this.#waiting.set(id, done);
      this.#line.send(question(id));
    });
  }

  #settle(id: number, answer: FromOriginals | undefined): void {
    const done = this.#waiting.get(id);
    this.#waiting.delete(id);
    done?.(answer);
  }
}
