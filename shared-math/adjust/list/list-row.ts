import type { Point } from '../../geometry/points.ts';
import type { Side } from '../../layout/index.ts';
import type { SurveyRow } from '../survey.ts';

/** What a thing is measured with. */
export type Instrument = 'tape' | 'plumb-bob' | 'caliper' | 'angle-finder';

/** What each instrument leaves in doubt, one standard deviation: mm, the angle finder's in degrees. */
export type InstrumentDoubts = Readonly<Record<Instrument, number>>;

/** A tape read to a sixteenth of an inch, a plumb bob to an eighth. Common practice, no published source. */
export const USUAL_INSTRUMENTS: InstrumentDoubts = {
  tape: 1.6,
  'plumb-bob': 3.2,
  caliper: 0.1,
  'angle-finder': 0.3,
};

export const INSTRUMENTS = Object.keys(USUAL_INSTRUMENTS) as readonly Instrument[];

export const INSTRUMENT_WORDS: Readonly<Record<Instrument, string>> = {
  tape: 'tape',
  'plumb-bob': 'plumb bob',
  caliper: 'caliper',
  'angle-finder': 'angle finder',
};

/** A view of the drawing, by which side of the car it shows. */
export type ListView = 'side' | 'top' | 'front';

/** What a row's dimension is drawn as at ride height, mm: a length from where to where, or a lean from the plumb. */
export type Dimension =
  | { readonly kind: 'length'; readonly from: Point; readonly to: Point }
  | { readonly kind: 'angle'; readonly at: Point; readonly along: Point };

type WithoutFigure<Row> = Row extends SurveyRow ? Omit<Row, 'id' | 'value' | 'doubt'> : never;

/** A row of the survey without its name and figure: what it looks at. */
export type Observation = WithoutFigure<SurveyRow>;

/** What has been typed into other rows, by their ids: mm or degrees, as it was read. */
export type TypedFigures = ReadonlyMap<string, number>;

/**
 * A way to take a figure. What is typed is turned into the survey's figure by `figure`, which answers undefined while
 * a figure that it `needs` has not been typed; `spread` is how much of the instrument's doubt the figure then has.
 */
export interface EntryWay {
  readonly id: string;
  /** "from the rail's outer face" */
  readonly name: string;
  readonly unit: 'length' | 'angle';
  /** Rows whose figures it counts from. */
  readonly needs: readonly string[];
  figure(typed: number, others: TypedFigures): number | undefined;
  /** What the figure would be typed as: undone, `figure` of it is the figure again. */
  typed(figure: number, others: TypedFigures): number | undefined;
  spread(doubt: number, typed: number, others: TypedFigures): number;
}

/** One thing that a person measures on the car. */
export interface ListRow {
  /** Its name in a survey too: `pivot-back`, on a right side that is not mirrored `pivot-back-right`. */
  readonly id: string;
  readonly group: string;
  /** "Hairpin pivot, behind the axle" */
  readonly name: string;
  /** One sentence: how it is measured, tyres on the ground and wheels straight ahead. */
  readonly how: string;
  readonly instrument: Instrument;
  readonly view: ListView;
  readonly dimension: Dimension;
  /** What it observes; undefined for a figure that only others count from, as the rail's top edge. */
  readonly observes: Observation | undefined;
  /** The usual way first; never empty. */
  readonly ways: readonly EntryWay[];
  readonly side: Side | undefined;
}
