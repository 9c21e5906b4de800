import { z } from 'zod';
import type { LayoutDocument } from '../../layout/index.ts';
import { failed, type Outcome, succeeded } from '../../outcome.ts';
import { COORDINATE_MAX } from '../../tolerances.ts';
import { gaugeSchema } from '../gauge/readings.ts';
import {
  pointsNamed,
  SURVEY_ROWS_MAX,
  SURVEY_VERSION,
  type Survey,
  type SurveyRow,
  surveyedPoints,
  surveySchema,
} from '../survey.ts';
import {
  type EntryWay,
  INSTRUMENTS,
  type Instrument,
  type InstrumentDoubts,
  type ListRow,
  type TypedFigures,
} from './list-row.ts';

const rowId = z.string().trim().min(1).max(80);

/** How a row was taken: which way, the words typed, the figure read from them (mm or degrees), and what with. */
const taken = z.strictObject({
  way: z.string().min(1).max(40),
  typed: z.string().max(120),
  figure: z.number().min(-COORDINATE_MAX).max(COORDINATE_MAX),
  instrument: z.enum(INSTRUMENTS as [Instrument, ...Instrument[]]).optional(),
  /** Asked whether it is so, the person said yes. */
  sure: z.boolean().optional(),
  /** mm or degrees, where the person set it for this row. */
  doubt: z.number().positive().max(COORDINATE_MAX).optional(),
});

/** What was measured on a car: the survey, how each figure of it was typed, and whether left and right were taken as alike. */
export const carSurveySchema = z.strictObject({
  survey: surveySchema,
  taken: z.record(rowId, taken).default({}),
  /** True or false once the person has said so. */
  alike: z.boolean().optional(),
  /** What was read with a gauge on the finished car. */
  gauge: gaugeSchema.optional(),
});

export type CarSurvey = z.infer<typeof carSurveySchema>;
export type Taken = z.infer<typeof taken>;

export const EMPTY_SURVEY: Survey = { format: 'toeboard-survey', version: SURVEY_VERSION, rows: [] };
export const EMPTY_CAR_SURVEY: CarSurvey = { survey: EMPTY_SURVEY, taken: {} };

/** The figures typed so far, by row. */
export function typedFigures({ survey, taken }: CarSurvey): TypedFigures {
  return new Map([
    ...survey.rows.map(({ id, value }) => [id, value] as const),
    ...Object.entries(taken).map(([id, { figure }]) => [id, figure] as const),
  ]);
}

/** The way in which a row was taken, else its usual one. */
export function wayOf(row: ListRow, { taken }: CarSurvey): EntryWay {
  return row.ways.find(({ id }) => id === taken[row.id]?.way) ?? (row.ways[0] as EntryWay);
}

/** One standard deviation of what was typed, mm or degrees as the instrument has it. */
export function typedDoubt(row: ListRow, entry: Taken | undefined, doubts: InstrumentDoubts): number {
  return entry?.doubt ?? doubts[entry?.instrument ?? row.instrument];
}

/** A row of the survey made from what was typed; undefined while a figure that it counts from is missing. */
function observedRow(
  row: ListRow,
  entry: Taken,
  others: TypedFigures,
  doubts: InstrumentDoubts,
): SurveyRow | undefined {
  const way = row.ways.find(({ id }) => id === entry.way);
  const value = way?.figure(entry.figure, others);
  if (!row.observes || !way || value === undefined) return undefined;
  const doubt = way.spread(typedDoubt(row, entry, doubts), entry.figure, others);
  return { ...row.observes, id: row.id, value, doubt } as SurveyRow;
}

/**
 * The car's survey with one row of the list filled in, filled anew or, without an entry, left open. Rows that count from
 * it are worked out anew. Refused in one line where its way counts from a figure that has not been typed, or where the
 * survey cannot hold the figure. The input is not changed.
 */
export function withTaken(
  list: readonly ListRow[],
  car: CarSurvey,
  id: string,
  entry: Taken | undefined,
  doubts: InstrumentDoubts,
): Outcome<CarSurvey, string> {
  const row = list.find((each) => each.id === id);
  if (!row) return failed('this car has no such measurement');
  const { [id]: _, ...others } = car.taken;
  const taken = entry ? { ...others, [id]: entry } : others;
  if (entry) {
    const way = row.ways.find((each) => each.id === entry.way);
    const missing = way?.needs.find((need) => taken[need] === undefined);
    if (!way) return failed('this row is not taken that way');
    if (missing !== undefined) {
      const named = list.find((each) => each.id === missing);
      return failed(`${named?.name ?? missing}, is missing: it counts from that; measure it first`);
    }
    if (way.figure(entry.figure, typedFigures({ ...car, taken })) === undefined)
      return failed('that cannot be worked out from what is typed');
  }
  const rows = car.survey.rows.filter((each) => each.id !== id);
  let next: CarSurvey = { ...car, taken, survey: { ...car.survey, rows } };
  // The row itself, and those that count from it.
  const again = list.filter(
    (each) => each.id === id || (taken[each.id] && wayOf(each, next).needs.includes(id)),
  );
  for (const each of again) {
    const typed = taken[each.id];
    const observed = typed && observedRow(each, typed, typedFigures(next), doubts);
    next = withRow(next, each.id, observed, list);
  }
  if (next.survey.rows.length > SURVEY_ROWS_MAX)
    return failed(`a survey holds ${SURVEY_ROWS_MAX} rows at most`);
  const checked = carSurveySchema.safeParse(next);
  if (!checked.success) return failed(refusalOfFigure(row));
  return succeeded(next);
}

function refusalOfFigure(row: ListRow): string {
  const angle = row.ways[0]?.unit === 'angle';
  return angle
    ? 'an angle is between -90° and 90°'
    : 'a length between two points is more than 0, and 20 metres at most';
}

/** Puts a row where the list has it; rows that the list does not have come after it. */
function withRow(
  car: CarSurvey,
  id: string,
  row: SurveyRow | undefined,
  list: readonly ListRow[],
): CarSurvey {
  const order = new Map(list.map((each, at) => [each.id, at]));
  const rows = car.survey.rows.filter((each) => each.id !== id);
  if (row) {
    const own = order.get(id) ?? Number.POSITIVE_INFINITY;
    const before = rows.findIndex((each) => (order.get(each.id) ?? Number.POSITIVE_INFINITY) > own);
    rows.splice(before < 0 ? rows.length : before, 0, row);
  }
  return { ...car, survey: { ...car.survey, rows } };
}

/** The car's survey with a further measurement, or with one changed; without a row, taken out. */
export function withFurther(
  car: CarSurvey,
  id: string,
  row: SurveyRow | undefined,
  typed?: Taken,
): CarSurvey {
  const rows = car.survey.rows.some((each) => each.id === id)
    ? car.survey.rows.flatMap((each) => (each.id === id ? (row ?? []) : each))
    : [...car.survey.rows, ...(row ? [row] : [])];
  const { [id]: _, ...others } = car.taken;
  return {
    ...car,
    survey: { ...car.survey, rows },
    taken: row && typed ? { ...others, [id]: typed } : others,
  };
}

/**
 * The rows of a car's survey that a variant can take: those whose points it has. The others, of another arrangement, are
 * counted, not lost.
 */
export function rowsFor(
  document: LayoutDocument,
  { survey }: CarSurvey,
): { readonly rows: SurveyRow[]; readonly elsewhere: number } {
  const known = new Set(surveyedPoints(document).map(({ id }) => id));
  const rows = survey.rows.filter((row) => pointsNamed(row).every((id) => known.has(id)));
  return { rows, elsewhere: survey.rows.length - rows.length };
}
