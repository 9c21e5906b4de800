/** How often a worker may fail at one question before whoever asked it is informed. */
export const FAILURES_MOST = 2;

/** What they hear: it ends a sentence. */
export const FAILED = 'the work beside the page failed twice';

/** The page's end of the line to a worker; a plain object in tests. */
export interface Line<To, From> {
  /** `transfer` is given away with the message, not copied. */
  send(message: To, transfer?: Transferable[]): void;
  /** Given once: what to do with everything that comes. */
  listen(hear: (message: From) => void): void;
  /** Given once: what to do when the worker has failed: what it has not answered by then it never will. */
  onFailure?(hear: () => void): void;
  /** Ends the worker, whatever it is at. */
  end?(): void;
}

/** The page's line to a worker. It fails by an error that nothing in it caught, or by a message that cannot be read. */
export function lineTo<To, From>(worker: Worker): Line<To, From> {
  return {
    send: (message, transfer = []) => worker.postMessage(message, transfer),
    listen: (hear) => {
      worker.onmessage = ({ data }: MessageEvent<From>) => hear(data);
    },
    onFailure: (hear) => {
      worker.onerror = hear;
      worker.onmessageerror = hear;
    },
    end: () => worker.terminate(),
  };
}

/**
 * A line that outlasts its worker: one is started with the first message, and another when it has failed. What was asked
 * and not answered is then asked again by `again`, which knows it.
 */
export class LastingLine<To, From> {
  readonly #start: () => Line<To, From>;
  readonly #hear: (message: From) => void;
  readonly #again: () => void;
  #line: Line<To, From> | undefined;

  constructor(start: () => Line<To, From>, hear: (message: From) => void, again: () => void) {
    this.#start = start;
    this.#hear = hear;
    this.#again = again;
  }

  send(message: To, transfer?: Transferable[]): void {
    this.#line ??= this.#open();
    this.#line.send(message, transfer);
  }

  end(): void {
    this.#line?.end?.();
    this.#line = undefined;
  }

  #open(): Line<To, From> {
    const line = this.#start();
    line.listen((message) => {
      if (line === this.#line) this.#hear(message);
    });
    line.onFailure?.(() => {
      if (line !== this.#line) return;
      this.end();
      this.#again();
    });
    return line;
  }
}
