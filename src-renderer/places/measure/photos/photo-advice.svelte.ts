import { originOf } from '../../../../shared-math/layout/index.ts';
import { type AdviceTask, type Advised, adjustedPhotos } from '../../../../shared-math/trace/index.ts';
import type { Measuring } from '../../../document/measuring.svelte.ts';
import type { OpenLayout } from '../../../document/open-layout.svelte.ts';
import type { JobClient } from '../../../jobs/job-client.ts';
import { Latest } from '../../../jobs/latest.ts';
import type { Trace } from './trace.svelte.ts';

/** ms without a change after which it is asked. */
const RESTS_AFTER = 500;

/** What would help most to know the traced points better, worked out beside the page while the photos are worked on. */
export class PhotoAdvice {
  readonly #openLayout: OpenLayout;
  readonly #measuring: Measuring;
  readonly #trace: Trace;
  readonly #latest: Latest<AdviceTask, undefined, Advised | undefined>;
  #resting: ReturnType<typeof setTimeout> | undefined;

  /** Null while it is worked out, undefined if nothing can be foretold. */
  advised: Advised | null | undefined = $state.raw(undefined);
  trouble = $state('');

  constructor(openLayout: OpenLayout, measuring: Measuring, trace: Trace, client: JobClient) {
    this.#openLayout = openLayout;
    this.#measuring = measuring;
    this.#trace = trace;
    this.#latest = new Latest(client, 'advice', {
      answer: (advised) => {
        this.advised = advised;
        this.trouble = '';
      },
      broken: (reason) => {
        this.advised = undefined;
        this.trouble = `What would help could not be worked out: ${reason}.`;
      },
    });
  }

  /** Run as an effect. An answer to what is no longer so goes with the first change. */
  follow(): void {
    const task = this.#task();
    clearTimeout(this.#resting);
    this.#latest.forget();
    this.trouble = '';
    this.advised = task ? null : undefined;
    if (task) this.#resting = setTimeout(() => this.#latest.ask(task, true), RESTS_AFTER);
  }

  /** The points of the list that neither a tape nor the person has placed, and that place no photo. */
  #task(): AdviceTask | undefined {
    const { document } = this.#openLayout;
    const { takenRows: survey } = this.#measuring;
    if (!this.#trace.open || !document || adjustedPhotos(document.photos).length === 0) return undefined;
    const points = this.#trace.points
      .filter((point) => ['guess', 'photo'].includes(originOf(document, point)))
      .map(({ id }) => id)
      .filter((id) => !document.photos.some(({ anchor }) => anchor?.point === id));
    return points.length > 0 ? { document, survey, points } : undefined;
  }
}
