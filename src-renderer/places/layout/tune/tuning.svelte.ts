import { capitalised } from '../../../../shared-math/capitalised.ts';
import type { LayoutDocument } from '../../../../shared-math/layout/index.ts';
import { resolveLayout } from '../../../../shared-math/layout/index.ts';
import { arrangementOf, type FrontEnd, prepareFrontEnd } from '../../../../shared-math/linkage/index.ts';
import type { Outcome } from '../../../../shared-math/outcome.ts';
import {
  type FreedomName,
  type Holds,
  type SearchProgress,
  type TuneRefusal,
  type TuneResult,
  tuneRefusalWords,
} from '../../../../shared-math/tune/index.ts';
import { whenever } from '../../../controls/whenever.svelte.ts';
import type { OpenLayout } from '../../../document/open-layout.svelte.ts';
import type { JobClient } from '../../../jobs/job-client.ts';
import {
  type FreeField,
  type HoldFields,
  holdsFrom,
  type Reach,
  usualFree,
  usualHoldFields,
} from './tune-fields.ts';
import type { HoldsQuestion, TuneQuestion } from './tune-job.ts';
import { movesWords } from './tune-words.ts';

/**
 * Tuning of the open layout: what may move, what must hold, the search in the worker, and the proposal it ends with.
 * A search and a proposal are of one document; any other change of it drops them.
 */
export class Tuning {
  readonly #openLayout: OpenLayout;
  readonly #client: JobClient;
  #variant: string | undefined;
  #of: LayoutDocument | undefined;
  #stop: (() => void) | null = null;
  #stopAsking: (() => void) | null = null;

  free: readonly FreeField[] = $state.raw([]);
  holds: HoldFields = $state.raw(usualHoldFields({}, {}));
  seed = $state(1);
  running = $state(false);
  /** Of the search: what is done, 0 to 1, and the least bump steer so far, rad. */
  progress: SearchProgress = $state.raw({ share: 0, best: undefined });
  proposal: TuneResult | null = $state.raw(null);
  /** Why there is no proposal, as a sentence. */
  trouble = $state('');

  /** The proposed car, for the board. */
  proposed: FrontEnd | undefined = $derived.by(() =>
    this.proposal?.improved ? prepareFrontEnd(resolveLayout(this.proposal.document)) : undefined,
  );
  freeCount = $derived(this.free.filter(({ on }) => on).length);

  constructor(openLayout: OpenLayout, client: JobClient) {
    this.#openLayout = openLayout;
    this.#client = client;
  }

  /** For the life of the page: another variant begins with what is usual for it, another document is no longer the tuned one. */
  follow(): void {
    whenever(
      () => ({ document: this.#openLayout.document, variant: this.#openLayout.variant }),
      ({ document, variant }) => {
        if (document && variant && variant.id !== this.#variant) {
          this.#variant = variant.id;
          this.#begin(document);
        }
        if (document !== this.#of) this.#drop();
      },
    );
  }

  #begin(document: LayoutDocument): void {
    const { limits, unit } = this.#openLayout.settings;
    this.free = usualFree(document, arrangementOf(resolveLayout(document)) === 'side', unit);
    this.holds = usualHoldFields(limits, holdsFrom(usualHoldFields(limits, {}), limits));
    this.seed = 1;
    this.trouble = '';
    this.#stopAsking?.();
    this.#stopAsking = this.#client.begin<HoldsQuestion, undefined, Holds>(
      'holds',
      { document, limits: $state.snapshot(limits) },
      {
        answer: (kept) => {
          this.holds = usualHoldFields(limits, kept);
        },
        broken: (reason) => {
          this.trouble = `What has to hold could not be looked up: ${reason}.`;
        },
      },
    );
  }

  #drop(): void {
    this.cancel();
    if (this.proposal) this.proposal = null;
    this.#of = undefined;
  }

  setFree(name: FreedomName, change: Partial<Reach & { on: boolean }>): void {
    this.free = this.free.map((field) => (field.name === name ? { ...field, ...change } : field));
  }

  run(): void {
    const { document, settings } = this.#openLayout;
    if (!document) return;
    this.#stop?.();
    this.trouble = '';
    this.proposal = null;
    this.progress = { share: 0, best: undefined };
    this.running = true;
    this.#of = document;
    const limits = $state.snapshot(settings.limits);
    this.#stop = this.#client.begin<TuneQuestion, SearchProgress, Outcome<TuneResult, TuneRefusal>>(
      'tune',
      {
        document,
        free: this.free.filter(({ on }) => on).map(({ name, from, to }) => ({ name, from, to })),
        holds: holdsFrom(this.holds, limits),
        seed: this.seed,
        limits,
      },
      {
        news: (progress) => {
          this.progress = progress;
        },
        answer: (outcome) => {
          this.running = false;
          this.#stop = null;
          if (outcome.ok) this.proposal = outcome.value;
          else {
            const words = tuneRefusalWords(outcome.failure, (mm) => this.#openLayout.length(mm));
            this.trouble = `${capitalised(words)}.`;
          }
        },
        broken: (reason) => {
          this.running = false;
          this.#stop = null;
          this.trouble = `The search broke off: ${reason}.`;
        },
      },
    );
  }

  cancel(): void {
    this.#stop?.();
    this.#stop = null;
    if (this.running) this.running = false;
  }

  /** Takes the proposal as one step of undo. */
  accept(): boolean {
    const { proposal } = this;
    if (!proposal) return false;
    const words = movesWords(proposal, (mm) => this.#openLayout.length(mm));
    const taken = this.#openLayout.edits.change(`Tune: ${words}`, proposal.document);
    if (taken) this.#drop();
    return taken;
  }

  refuse(): void {
    this.#drop();
  }
}
