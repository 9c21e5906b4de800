import { randomUUID } from 'node:crypto';
import { StoreError, storageReason } from '../../store/index.ts';
import { DrawingRefused } from '../drawings/job.ts';
import { NoType } from '../pens/no-type.ts';
import type { Made, OutputRequest, Source, Watch } from './request.ts';

export type JobState = 'waiting' | 'working' | 'ready' | 'failed' | 'called-off';

/** What is known of a job. */
export interface JobStatus {
  readonly state: JobState;
  readonly done: number;
  readonly of: number;
  /** The part done last. */
  readonly what: string;
  /** Why it failed, as a sentence without its full stop. */
  readonly reason: string;
  readonly file: {
    readonly fileName: string;
    readonly type: string;
    readonly bytes: number;
    readonly parts: number;
  } | null;
}

interface Job {
  status: JobStatus;
  made: Made | undefined;
  /** ms since 1970, when it was last asked for. */
  asked: number;
  readonly off: AbortController;
}

/** Jobs kept at most, and for how long nobody need ask for one that is done, ms. */
const KEPT = 16;
const KEPT_FOR = 10 * 60_000;

const NOT_KEPT = 'this output is no longer kept: make it again';

export interface OutputJobsOptions {
  /** ms since 1970. */
  readonly now?: () => number;
  readonly log?: (fault: unknown) => void;
  /** How things are made; the real way if absent. */
  readonly make?: (request: OutputRequest, source: Source, watch: Watch) => Promise<Made>;
}

/** Loaded when first needed: printing brings fonts and libraries that a start need not wait for. */
const makeForReal: NonNullable<OutputJobsOptions['make']> = async (request, source, watch) =>
  (await import('./make.ts')).make(request, source, watch);

/** Where outputs are made: one after another, beside the host's calls; each can be watched, called off and fetched. */
export class OutputJobs {
  readonly #jobs = new Map<string, Job>();
  readonly #now: () => number;
  readonly #log: (fault: unknown) => void;
  readonly #make: NonNullable<OutputJobsOptions['make']>;
  #last: Promise<void> = Promise.resolve();

  constructor({ now = Date.now, log = console.error, make = makeForReal }: OutputJobsOptions = {}) {
    this.#now = now;
    this.#log = log;
    this.#make = make;
  }

  /** Takes a job on; it is worked at when those before it are done. Answers its name. */
  start(request: OutputRequest, source: Source): string {
    return this.begin((watch) => this.#make(request, source, watch));
  }

  /** The same for anything that can be made: what it is made by is called when its turn has come. */
  begin(make: (watch: Watch) => Promise<Made>): string {
    this.#forget();
    const id = randomUUID();
    const job: Job = {
      status: { state: 'waiting', done: 0, of: 0, what: '', reason: '', file: null },
      made: undefined,
      asked: this.#now(),
      off: new AbortController(),
    };
    this.#jobs.set(id, job);
    this.#last = this.#last.then(() => this.#work(job, make));
    return id;
  }

  /** What is known of a job; a StoreError where it is no longer kept. */
  status(id: string): JobStatus {
    return this.#found(id).status;
  }

  /** Calls a job off, and lets go of what it made. One that is gone already is no fault. */
  cancel(id: string): void {
    const job = this.#jobs.get(id);
    if (!job) return;
    job.off.abort(new Error('called off'));
    job.made = undefined;
    job.status = { ...job.status, state: 'called-off', file: null };
  }

  /** What a job made, or undefined if it is not ready or no longer kept. */
  made(id: string): Made | undefined {
    this.#forget();
    const job = this.#jobs.get(id);
    if (job) job.asked = this.#now();
    return job?.made;
  }

  /** Calls everything off. */
  close(): void {
    for (const id of this.#jobs.keys()) this.cancel(id);
    this.#jobs.clear();
  }

  #found(id: string): Job {
    this.#forget();
    const job = this.#jobs.get(id);
    if (!job) throw new StoreError('not-found', NOT_KEPT);
    job.asked = this.#now();
    return job;
  }

  /** Lets go of jobs that nobody asks for, and of the oldest where there are too many. */
  #forget(): void {
    for (const [id, job] of this.#jobs) if (this.#now() - job.asked > KEPT_FOR) this.#drop(id);
    for (const id of this.#jobs.keys()) {
      if (this.#jobs.size <= KEPT) break;
      this.#drop(id);
    }
  }

  #drop(id: string): void {
    this.cancel(id);
    this.#jobs.delete(id);
  }

  async #work(job: Job, make: (watch: Watch) => Promise<Made>): Promise<void> {
    const { signal } = job.off;
    if (signal.aborted) return;
    const tell = (change: Partial<JobStatus>) => {
      // Called off is its end, whatever the work still says.
      if (!signal.aborted) job.status = { ...job.status, ...change };
    };
    tell({ state: 'working' });
    try {
      const made = await make({
        signal,
        progress: (done, of, what) => tell({ done, of, what }),
      });
      if (signal.aborted) return;
      job.made = made;
      const { fileName, type, parts } = made;
      const bytes = parts.reduce((sum, part) => sum + part.length, 0);
      tell({ state: 'ready', file: { fileName, type, bytes, parts: parts.length } });
    } catch (error) {
      if (signal.aborted) return;
      const known = error instanceof DrawingRefused || error instanceof NoType || error instanceof StoreError;
      if (!known) this.#log(error);
      tell({
        state: 'failed',
        reason: known ? error.message : (storageReason(error) ?? 'Toeboard made a mistake of its own'),
      });
    }
  }
}
