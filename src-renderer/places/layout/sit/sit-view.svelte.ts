import type { SitRow } from '../../../../shared-math/sit/index.ts';
import type { OpenLayout } from '../../../document/open-layout.svelte.ts';
import type { JobClient } from '../../../jobs/job-client.ts';
import { Latest } from '../../../jobs/latest.ts';
import type { SitQuestion } from './sit-job.ts';

/** ms without a change after which the curve is asked. */
const RESTS_AFTER = 200;

/** Heights each way of the one that the car sits at. */
const EACH_WAY = 6;
/** mm. No car is looked at further down or up than this: 3 in. */
const FARTHEST = 76.2;

/** What the open layout would be like lower and higher in front, its tail where it is, while somebody looks at it. */
export class SitView {
  readonly #openLayout: OpenLayout;
  readonly #latest: Latest<SitQuestion, undefined, readonly SitRow[]>;
  #resting: ReturnType<typeof setTimeout> | undefined;

  shown = $state(false);
  rows: readonly SitRow[] = $state.raw([]);
  trouble = $state('');

  constructor(openLayout: OpenLayout, client: JobClient) {
    this.#openLayout = openLayout;
    this.#latest = new Latest(client, 'sit', {
      answer: (rows) => {
        this.rows = rows;
        this.trouble = '';
      },
      broken: (reason) => {
        this.rows = [];
        this.trouble = `The curve could not be worked out: ${reason}.`;
      },
    });
  }

  /** Run as an effect. A curve of a moment ago would belong to another car: it goes with the first change. */
  follow(): void {
    const { document } = this.#openLayout;
    clearTimeout(this.#resting);
    this.rows = [];
    this.#latest.forget();
    if (!this.shown || !document) return;
    const { bump, rebound: droop } = document.travel;
    const way = (most: number, sign: 1 | -1) => {
      const far = Math.min(most, FARTHEST);
      return far === 0 ? [] : Array.from({ length: EACH_WAY }, (_, i) => (sign * far * (i + 1)) / EACH_WAY);
    };
    const fronts = [...way(droop, -1).reverse(), 0, ...way(bump, 1)];
    const question = { document, heights: fronts.map((front) => ({ front, rear: 0 })) };
    this.#resting = setTimeout(() => this.#latest.ask(question, true), RESTS_AFTER);
  }
}
