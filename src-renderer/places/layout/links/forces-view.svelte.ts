import type { LinkForces } from '../../../../shared-math/forces/index.ts';
import type { Refusal } from '../../../../shared-math/layout/index.ts';
import type { Outcome } from '../../../../shared-math/outcome.ts';
import { toRadians } from '../../../../shared-math/units/index.ts';
import type { OpenLayout } from '../../../document/open-layout.svelte.ts';
import type { JobClient } from '../../../jobs/job-client.ts';
import { Latest } from '../../../jobs/latest.ts';
import type { ForcesQuestion } from './forces-job.ts';

/** ms without a change after which they are asked. */
const RESTS_AFTER = 120;

/** The forces in the links of the open layout, at the heave and roll where the car stands, while somebody looks at them. */
export class ForcesView {
  readonly #openLayout: OpenLayout;
  readonly #latest: Latest<ForcesQuestion, undefined, Outcome<LinkForces, Refusal>>;
  #resting: ReturnType<typeof setTimeout> | undefined;

  shown = $state(false);
  /** Of a moment ago while the car changes; null before the first answer and where there is none. */
  forces: LinkForces | null = $state.raw(null);
  trouble = $state('');

  constructor(openLayout: OpenLayout, client: JobClient) {
    this.#openLayout = openLayout;
    this.#latest = new Latest(client, 'forces', {
      answer: (outcome) => {
        this.forces = outcome.ok ? outcome.value : null;
        this.trouble = outcome.ok ? '' : `No forces: ${outcome.failure.reason}.`;
      },
      broken: (reason) => {
        this.forces = null;
        this.trouble = `The forces could not be worked out: ${reason}.`;
      },
    });
  }

  /** Run as an effect. Another car's forces are never shown: they go with its document. */
  follow(): void {
    const { document, variant } = this.#openLayout;
    const { heave, roll } = this.#openLayout.carPose.pose;
    clearTimeout(this.#resting);
    if (!this.shown || !document || !variant) {
      this.#latest.forget();
      this.forces = null;
      return;
    }
    const question = { document, heave, roll: toRadians(roll) };
    this.#resting = setTimeout(() => this.#latest.ask(question, true), RESTS_AFTER);
  }
}
