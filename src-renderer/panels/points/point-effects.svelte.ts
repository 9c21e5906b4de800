import { createContext } from 'svelte';
import type { LayoutDocument } from '../../../shared-math/layout/index.ts';
import { type Sensitivity, USUAL_STEP } from '../../../shared-math/tune/index.ts';
import type { OpenLayout } from '../../document/open-layout.svelte.ts';
import type { JobClient } from '../../jobs/job-client.ts';
import { Latest } from '../../jobs/latest.ts';
import type { SensitivityQuestion } from './sensitivity-job.ts';

/** ms without a change after which it is asked: a drag has better things to do. */
const RESTS_AFTER = 140;
/** mm for readers of millimetres. */
const METRIC_STEP = 3;

/** What a small step of the chosen hardpoint either way does, once the layout rests. */
export class PointEffects {
  readonly #openLayout: OpenLayout;
  readonly #latest: Latest<SensitivityQuestion, undefined, Sensitivity | undefined>;
  #resting: ReturnType<typeof setTimeout> | undefined;
  #answer: { readonly of: LayoutDocument; readonly reported: Sensitivity } | null = $state.raw(null);
  #asked: LayoutDocument | undefined;
  /** Why the last question has no answer; empty if it has one, or nothing is asked. */
  trouble = $state('');

  /** Of the layout and point on the board; nothing while it is still worked out. */
  current: Sensitivity | null = $derived.by(() => {
    const { document, selection } = this.#openLayout;
    const answer = this.#answer;
    return answer && answer.of === document && answer.reported.id === selection ? answer.reported : null;
  });
  /** The last known of the chosen point, though the layout may have moved on: keeps lines in place under a drag. */
  last: Sensitivity | null = $derived.by(() => {
    const reported = this.#answer?.reported;
    return reported && reported.id === this.#openLayout.selection ? reported : null;
  });

  constructor(openLayout: OpenLayout, client: JobClient) {
    this.#openLayout = openLayout;
    this.#latest = new Latest(client, 'sensitivity', {
      answer: (reported) => {
        this.trouble = '';
        const of = this.#asked;
        this.#answer = reported && of ? { of, reported } : null;
      },
      broken: (reason) => {
        this.#answer = null;
        this.trouble = reason;
      },
    });
  }

  /** Run as an effect. */
  follow(): void {
    const { document, selection, points, settings } = this.#openLayout;
    const step = settings.unit === 'in' ? USUAL_STEP : METRIC_STEP;
    clearTimeout(this.#resting);
    // The shaft moves no wheel: its own figures are reported of it instead.
    const moves = points.some(({ id }) => id === selection && !id.startsWith('shaft.'));
    if (!document || selection === null || !moves) {
      this.trouble = '';
      this.#latest.forget();
      return;
    }
    this.#resting = setTimeout(() => {
      // What was under way is of another layout or point: only this one is wanted.
      this.#latest.forget();
      this.#asked = document;
      this.#latest.ask({ document, id: selection, step });
    }, RESTS_AFTER);
  }
}

/** The one of the page, for its components. */
export const [getPointEffects, setPointEffects] = createContext<PointEffects>();
