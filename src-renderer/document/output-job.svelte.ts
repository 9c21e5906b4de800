import type { CallHost, CallResult, Reply, Request } from '../../src-main/api/contract.ts';

export type JobStatus = Reply<'output.progress'>;

/** ms between two questions of how far a job has come. */
const ASK_AFTER = 120;

/** One output being made by the host: started, asked after until it ends, called off. */
export class OutputJob {
  readonly #call: CallHost;
  status: JobStatus | null = $state.raw(null);
  id = '';
  #off = false;

  constructor(call: CallHost) {
    this.#call = call;
  }

  /** Has it made; answers how it ended, or why it was never begun. */
  run(request: Request<'output.start'>): Promise<JobStatus> {
    return this.follow(() => this.#call('output.start', request));
  }

  /** The same for whatever begins a job. */
  async follow(start: () => Promise<CallResult<'output.start' | 'ticket.print'>>): Promise<JobStatus> {
    const started = await start();
    if (!started.ok) return this.#end(started.failure.reason);
    this.id = started.value.job;
    for (;;) {
      if (this.#off) {
        await this.#call('output.cancel', { job: this.id });
        return this.#end('', 'called-off');
      }
      const asked = await this.#call('output.progress', { job: this.id });
      if (!asked.ok) return this.#end(asked.failure.reason);
      this.status = asked.value;
      if (asked.value.state !== 'waiting' && asked.value.state !== 'working') return asked.value;
      await new Promise((done) => setTimeout(done, ASK_AFTER));
    }
  }

  /** Calls it off; `run` answers at its next question. */
  cancel(): void {
    this.#off = true;
  }

  #end(reason: string, state: JobStatus['state'] = 'failed'): JobStatus {
    this.status = { state, done: 0, of: 0, what: '', reason, file: null };
    return this.status;
  }
}
