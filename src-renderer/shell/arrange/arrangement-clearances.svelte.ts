import type { Arrangement, ArrangementName } from '../../../shared-math/arrange/index.ts';
import type { Clearances } from '../../../shared-math/clearance/index.ts';
import { type Measurer, pageMeasurer } from '../../document/measurer.ts';

/** How near the parts of proposed arrangements come to one another, measured beside the page, one after another. */
export class ArrangementClearances {
  readonly #measurer: Measurer;
  #numbers = 0;
  /** Which arrangement each question on its way is about; an answer to any other is of no use any more. */
  #asked = new Map<number, ArrangementName>();
  #found: ReadonlyMap<ArrangementName, Clearances | 'failed' | null> = $state.raw(new Map());

  constructor(measurer: Measurer = pageMeasurer()) {
    this.#measurer = measurer;
    measurer.onanswer = ({ number, clearances }) => {
      const name = this.#asked.get(number);
      if (!name) return;
      this.#asked.delete(number);
      this.#found = new Map(this.#found).set(name, clearances);
    };
    measurer.onfailure = (number) => {
      const name = this.#asked.get(number);
      this.#asked.delete(number);
      if (name) this.#found = new Map(this.#found).set(name, 'failed');
    };
  }

  /** Measures these arrangements and forgets all others. */
  ask(arrangements: readonly Arrangement[]): void {
    this.#found = new Map();
    this.#asked = new Map();
    for (const { name, document, figures } of arrangements) {
      if (!figures) continue;
      this.#numbers += 1;
      this.#asked.set(this.#numbers, name);
      this.#measurer.ask({ number: this.#numbers, document });
    }
  }

  /** Undefined while it is being measured; null where it cannot be, 'failed' where the worker failed at it. */
  of(name: ArrangementName): Clearances | 'failed' | null | undefined {
    return this.#found.get(name);
  }

  end(): void {
    this.#measurer.end();
  }
}
