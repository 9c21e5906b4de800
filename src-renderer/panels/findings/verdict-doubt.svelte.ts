import { createContext } from 'svelte';
import type { Severity } from '../../../shared-math/findings/index.ts';
import type { Measuring } from '../../document/measuring.svelte.ts';
import type { OpenLayout } from '../../document/open-layout.svelte.ts';
import { JobClient } from '../../jobs/job-client.ts';
import { Latest } from '../../jobs/latest.ts';
import { Throttle } from '../../jobs/throttle.ts';
import { severityDoubtWords } from './doubt-words.ts';
import { startVerdictWorker } from './start-verdict-worker.ts';
import type { FoundOfCar, VerdictDoubtQuestion } from './verdict-doubt-job.ts';
import { type SeverityCounts, severityCounts } from './verdict-list.ts';

/** ms between two askings: a dozen cars are judged for each. */
const SPACING = 700;

/** Which findings would be others within the doubt of what was measured, worked out beside the page. */
export class VerdictDoubt {
  readonly #openLayout: OpenLayout;
  readonly #measuring: Measuring;
  readonly #throttle: Throttle;
  readonly #latest: Latest<VerdictDoubtQuestion, undefined, FoundOfCar[]>;
  #counts: SeverityCounts = $state.raw({});

  constructor(openLayout: OpenLayout, measuring: Measuring) {
    this.#openLayout = openLayout;
    this.#measuring = measuring;
    this.#latest = new Latest(new JobClient(startVerdictWorker), 'verdict-doubt', {
      answer: (cars) => {
        this.#counts = severityCounts(cars);
      },
      // Without an answer nothing is claimed.
      broken: () => {
        this.#counts = {};
      },
    });
    this.#throttle = new Throttle(SPACING, () => this.#ask());
  }

  /** Run as an effect: asks anew when drawing, measurements or limits are others; nothing to ask clears the answer. */
  follow(): void {
    if (this.#question()) this.#throttle.ask();
    else {
      this.#throttle.stop();
      this.#latest.forget();
      this.#counts = {};
    }
  }

  #question(): VerdictDoubtQuestion | undefined {
    const { document, settings } = this.#openLayout;
    const { takenRows: rows, takenPhotosAside: photosAside } = this.#measuring;
    return document && (rows.length > 0 || photosAside)
      ? { document, rows, photosAside, limits: $state.snapshot(settings.limits) }
      : undefined;
  }

  #ask(): void {
    const question = this.#question();
    if (question) this.#latest.ask(question, true);
  }

  /** That a finding would be another within the doubt, in words; empty where it stays what it is. */
  wordsFor(key: string, severity: Severity): string {
    const counts = this.#counts[key];
    return counts ? severityDoubtWords(counts, severity) : '';
  }
}

/** The one of the page, for its components. */
export const [getVerdictDoubt, setVerdictDoubt] = createContext<VerdictDoubt>();
