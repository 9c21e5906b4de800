import type { ToleranceBand } from '../../../../shared-math/tune/index.ts';
import type { OpenLayout } from '../../../document/open-layout.svelte.ts';
import type { JobClient } from '../../../jobs/job-client.ts';
import { Latest } from '../../../jobs/latest.ts';
import type { BandQuestion } from './band-job.ts';

/** ms without a change after which it is asked. */
const RESTS_AFTER = 120;

/** How bump steer spreads where every hardpoint is off by the shop's tolerance, while somebody wants to see it. */
export class ToleranceView {
  readonly #openLayout: OpenLayout;
  readonly #latest: Latest<BandQuestion, undefined, ToleranceBand | undefined>;
  #resting: ReturnType<typeof setTimeout> | undefined;

  shown = $state(false);
  band: ToleranceBand | null = $state.raw(null);
  trouble = $state('');

  constructor(openLayout: OpenLayout, client: JobClient) {
    this.#openLayout = openLayout;
    this.#latest = new Latest(client, 'band', {
      answer: (band) => {
        this.band = band ?? null;
        this.trouble = band ? '' : 'Too few cars built that far off get through their travel.';
      },
      broken: (reason) => {
        this.band = null;
        this.trouble = `The band could not be worked out: ${reason}.`;
      },
    });
  }

  /** Run as an effect. A band of a moment ago would lie beside its curve: it goes with the first change. */
  follow(): void {
    const { document, settings } = this.#openLayout;
    const { tolerance } = settings;
    clearTimeout(this.#resting);
    this.band = null;
    this.trouble = '';
    this.#latest.forget();
    if (!this.shown || !document) return;
    this.#resting = setTimeout(() => this.#latest.ask({ document, tolerance }), RESTS_AFTER);
  }
}
