import type { OutputJobs } from '../../output/jobs/index.ts';
import type { Store } from '../../store/index.ts';
import type { Call, Received, Reply } from '../contract.ts';

/** What answers each call: checked input in, reply out; a StoreError thrown is a named failure. */
export type Handlers = { readonly [Name in Call]: (input: Received<Name>) => Reply<Name> };

/** What the handlers work with. */
export interface Program {
  readonly version: string;
  readonly store: Store;
  /** Where what leaves the board is made. */
  readonly outputs: OutputJobs;
  /** Where the demonstrations are read from. */
  readonly projectsFolder: string;
}

/** Does something and gives the empty reply. */
export function done(work: () => void): Record<string, never> {
  work();
  return {};
}
