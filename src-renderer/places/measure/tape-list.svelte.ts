import { type SurveyRow, surveyedPoints } from '../../../shared-math/adjust/index.ts';
import { type ListRow, unknownWithout } from '../../../shared-math/adjust/list/index.ts';
import { failed, type Outcome, succeeded } from '../../../shared-math/outcome.ts';
import { parseLength } from '../../../shared-math/units/index.ts';
import type { Measuring } from '../../document/measuring.svelte.ts';
import type { OpenLayout } from '../../document/open-layout.svelte.ts';
import { asTyped } from './typed-figures.ts';

/** How two points of the board are measured against each other. */
export type BetweenKind = 'straight' | 'plumb' | 'level';

/** A further measurement that is being made: its points as far as they are chosen. */
export interface Between {
  readonly kind: BetweenKind;
  readonly from: string | null;
  readonly to: string | null;
}

/** What the list of measurements shows just now; what was measured is `Measuring`'s. */
export class TapeList {
  readonly #openLayout: OpenLayout;
  readonly #measuring: Measuring;
  /** Whether the place stands open. */
  here = $state(false);
  /** The row that has the keyboard. */
  focused: string | null = $state(null);
  between: Between | null = $state.raw(null);
  #lastPicked: string | null = null;

  row: ListRow | undefined = $derived.by(() => this.#measuring.list.find(({ id }) => id === this.focused));

  /** What stays unknown if the focused row alone is left open, in words. */
  unknown: readonly string[] = $derived.by(() => {
    const { document } = this.#openLayout;
    return document && this.row?.observes ? unknownWithout(document, this.#measuring.list, this.row.id) : [];
  });

  constructor(openLayout: OpenLayout, measuring: Measuring) {
    this.#openLayout = openLayout;
    this.#measuring = measuring;
  }

  // Between two points ---------------------------------------------------------------------------------------

  begin(kind: BetweenKind): void {
    this.#lastPicked = this.#openLayout.selection;
    this.between = { kind, from: null, to: null };
  }

  /** Run as an effect: while two points are wanted, what is chosen on the board is the next of them. */
  followPicking(): void {
    const chosen = this.#openLayout.selection;
    const { between } = this;
    if (!between || chosen === null || chosen === this.#lastPicked || !this.#isMeasured(chosen)) return;
    this.#lastPicked = chosen;
    if (between.from === null) this.between = { ...between, from: chosen };
    else if (chosen !== between.from) this.between = { ...between, to: chosen };
  }

  #isMeasured(id: string): boolean {
    const { document } = this.#openLayout;
    return document !== null && surveyedPoints(document).some((point) => point.id === id);
  }

  /** Takes the figure between the two chosen points. */
  takeBetween(typed: string): Outcome<number, string> {
    const { between } = this;
    if (!between?.from || !between.to) return failed('choose two points on the board');
    const { unit, instruments } = this.#openLayout.settings;
    const figure = parseLength(typed, unit);
    if (!figure.ok) return figure;
    if (between.kind !== 'level' && figure.value <= 0)
      return failed('a length between two points is more than 0');
    const instrument = between.kind === 'plumb' ? 'plumb-bob' : 'tape';
    const ends = { from: between.from, to: between.to };
    const id = this.#freeId();
    const row = {
      id,
      kind: between.kind,
      ...ends,
      value: figure.value,
      doubt: instruments[instrument],
    } as SurveyRow;
    this.#measuring.enterFurther(id, row, {
      way: 'plain',
      typed: asTyped(typed, 'length', unit),
      figure: figure.value,
      instrument,
    });
    this.between = null;
    return succeeded(figure.value);
  }

  #freeId(): string {
    const taken = new Set(this.#measuring.car.survey.rows.map(({ id }) => id));
    for (let number = 1; ; number += 1) if (!taken.has(`further-${number}`)) return `further-${number}`;
  }

  /** Lets go of a measurement that is being made. Tells whether there was one. */
  putAway(): boolean {
    const had = this.between !== null;
    this.between = null;
    return had;
  }
}
