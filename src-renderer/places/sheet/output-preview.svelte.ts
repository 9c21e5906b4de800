import type { CallHost, Request } from '../../../src-main/api/contract.ts';
import { OutputJob } from '../../document/output-job.svelte.ts';
import { fetchPart } from '../../host/outputs.ts';

type Asked = Request<'output.start'>;

/** ms that nothing else is wished for before a preview is begun. */
const SETTLE = 200;

/** The cells of a CSV (RFC 4180), row by row: bare, or quoted with quotes doubled; parted as its head is. */
export function cellsOf(text: string): string[][] {
  const head = text.slice(0, Math.max(0, text.indexOf('\n')));
  const cell = head.includes(';')
    ? /(?:^|;)(?:"((?:[^"]|"")*)"|([^;]*))/g
    : /(?:^|,)(?:"((?:[^"]|"")*)"|([^,]*))/g;
  return text
    .split(/\r?\n/)
    .filter((line) => line !== '')
    .map((line) =>
      [...line.matchAll(cell)].map(([, quoted, bare]) => quoted?.replaceAll('""', '"') ?? bare ?? ''),
    );
}

/** The pages of what would be made, drawn by the same strokes; for a table its first lines. */
export class OutputPreview {
  readonly #call: CallHost;
  #job: OutputJob | undefined;
  #timer: ReturnType<typeof setTimeout> | undefined;
  #wanted = '';
  /** Counts the pages asked for, so that one that comes late does not push out a later one. */
  #turn = 0;

  /** The page shown as a picture; empty where there is none. */
  picture = $state('');
  /** The first rows of a table. */
  rows: readonly (readonly string[])[] = $state.raw([]);
  pages = $state(0);
  page = $state(0);
  /** Whether what is shown is not yet what would be made. */
  stale = $state(false);
  /** Why there is nothing to show: a sentence without its full stop. */
  trouble = $state('');

  constructor(call: CallHost) {
    this.#call = call;
  }

  /** Shows another thing; undefined if it is shown already. `key` tells what it depends on. */
  follow(asked: Asked | undefined, key: string): void {
    if (key === this.#wanted) return;
    const other = this.#wanted.split('|')[0] !== key.split('|')[0];
    this.#wanted = key;
    clearTimeout(this.#timer);
    this.#job?.cancel();
    this.#job = undefined;
    if (other) this.#clear();
    this.stale = asked !== undefined;
    if (asked) this.#timer = setTimeout(() => void this.#draw(asked, key), SETTLE);
    else this.#clear();
  }

  turnTo(page: number): void {
    if (page < 0 || page >= this.pages) return;
    this.page = page;
    const job = this.#job;
    if (job) void this.#show(job, this.#wanted);
  }

  /** Lets go of everything: nobody looks any more. */
  end(): void {
    this.follow(undefined, '');
  }

  #clear(): void {
    this.#turn += 1;
    if (this.picture) URL.revokeObjectURL(this.picture);
    this.picture = '';
    this.rows = [];
    this.pages = 0;
    this.page = 0;
    this.trouble = '';
  }

  async #draw(asked: Asked, key: string): Promise<void> {
    const job = new OutputJob(this.#call);
    this.#job = job;
    const status = await job.run({ ...asked, preview: true });
    if (key !== this.#wanted) return;
    if (status.state !== 'ready' || !status.file) {
      this.#clear();
      this.trouble = status.reason;
      this.stale = false;
      return;
    }
    this.trouble = '';
    this.pages = status.file.parts;
    this.page = Math.min(this.page, this.pages - 1);
    await this.#show(job, key);
  }

  async #show(job: OutputJob, key: string): Promise<void> {
    this.#turn += 1;
    const turn = this.#turn;
    this.stale = true;
    const part = await fetchPart(job.id, this.page);
    if (key !== this.#wanted || turn !== this.#turn) return;
    this.stale = false;
    if (!part.ok) {
      this.trouble = part.failure;
      return;
    }
    if (part.value.type.startsWith('text/csv')) {
      this.rows = cellsOf(await part.value.text());
      return;
    }
    if (this.picture) URL.revokeObjectURL(this.picture);
    this.picture = URL.createObjectURL(part.value);
  }
}
