import type { Turn } from '../../../../shared-math/pictorial/index.ts';
import type { SweptPart } from '../../../../shared-math/swept/index.ts';
import { whenever } from '../../../controls/whenever.svelte.ts';
import type { OpenLayout } from '../../../document/open-layout.svelte.ts';
import type { JobClient } from '../../../jobs/job-client.ts';
import { Latest } from '../../../jobs/latest.ts';
import type { RoomAnswer, RoomQuestion } from './room-job.ts';

/** ms without a change after which the room is worked out finely, and between two coarse ones. */
const RESTS_AFTER = 170;
const SPACING = 80;

/** Of two turns. A layout that cannot be steered is answered without one. */
function isSame(answered: Turn | undefined, turn: Turn | undefined): boolean {
  return !answered || (answered.azimuth === turn?.azimuth && answered.elevation === turn.elevation);
}

/** The room that what moves needs, of the parts that are asked for: coarsely at every change, finely once it rests. */
export class RoomView {
  readonly #openLayout: OpenLayout;
  readonly #latest: Latest<RoomQuestion, undefined, RoomAnswer | undefined>;
  #resting: ReturnType<typeof setTimeout> | undefined;
  #of: string | undefined;
  #asked = Number.NEGATIVE_INFINITY;
  /** Whether what was asked for last is the fine one. */
  #fineAsked = false;
  #last: Pick<RoomQuestion, 'document' | 'parts'> | undefined;

  parts: readonly SweptPart[] = $state.raw([]);
  /** From where the pictorial looks at the car; undefined where it does not show. */
  turn: Turn | undefined = $state.raw();
  /** The turn in which the pictorial is fitted. */
  square: Turn | undefined = $state.raw();
  answer: RoomAnswer | undefined = $state.raw();
  /** Whether what shows is fine, of the layout, the parts and the turn as they stand. */
  settled = $state(false);
  trouble = $state('');

  constructor(openLayout: OpenLayout, client: JobClient) {
    this.#openLayout = openLayout;
    this.#latest = new Latest(client, 'room', {
      answer: (answer) => {
        this.answer = answer;
        this.trouble = answer ? '' : 'The layout cannot be steered at ride height.';
        // A coarse answer may come when the fine one is asked for already, and one of another turn.
        this.settled = this.#fineAsked && (answer?.fine ?? true) && isSame(answer?.turn, this.turn);
      },
      broken: (reason) => {
        this.answer = undefined;
        this.trouble = `The room could not be worked out: ${reason}.`;
      },
    });
  }

  toggle(part: SweptPart): void {
    this.parts = this.parts.includes(part)
      ? this.parts.filter((other) => other !== part)
      : [...this.parts, part];
  }

  /** For the life of the page: asks whenever the layout or what is asked for is another than before. */
  follow(): void {
    whenever(
      () => ({
        document: this.#openLayout.document,
        variant: this.#openLayout.variant?.id,
        parts: this.parts,
        turn: this.turn,
        square: this.square,
      }),
      ({ document, variant, parts, turn, square }) => {
        clearTimeout(this.#resting);
        // In another turn all else stays as it is known, and the new outlines come once the turning rests.
        const turnedOnly =
          variant === this.#of && document === this.#last?.document && parts === this.#last?.parts;
        this.#last = document ? { document, parts } : undefined;
        this.#fineAsked = false;
        this.settled = false;
        if (!document || parts.length === 0 || variant !== this.#of) {
          this.#latest.forget();
          this.answer = undefined;
          this.trouble = '';
        }
        this.#of = variant;
        if (!document || parts.length === 0) return;
        const ask = (fine: boolean) => {
          this.#fineAsked = fine;
          this.#latest.ask({ document, parts, fine, turn, square }, fine);
        };
        const now = performance.now();
        if (!turnedOnly && now - this.#asked >= SPACING) {
          this.#asked = now;
          ask(false);
        }
        this.#resting = setTimeout(() => ask(true), RESTS_AFTER);
      },
    );
  }
}
