import { z } from 'zod';
import { hardpoints, type LayoutDocument, type Refusal, refusalOf } from '../layout/index.ts';
import { failed, type Outcome, succeeded } from '../outcome.ts';
import { quoted } from '../outside/index.ts';
import { COORDINATE_MAX } from '../tolerances.ts';

/** The version of the survey document that this program writes, and the newest that it reads. */
export const SURVEY_VERSION = 1;
export const SURVEY_ROWS_MAX = 400;

/** mm. Two plumb points nearer than this on the floor have no direction that a tape could tell. */
export const PLUMB_MIN = 50;

const value = z.number().min(-COORDINATE_MAX).max(COORDINATE_MAX);
const positive = z.number().positive().max(COORDINATE_MAX);
const degrees = z.number().min(-90).max(90);
const point = z.string().min(1).max(80);
const side = z.enum(['left', 'right']);
const head = {
  id: z.string().trim().min(1).max(80),
  doubt: z.number().positive().max(COORDINATE_MAX).optional(),
};
const ofPoint = { ...head, of: point, value };
const between = { ...head, from: point, to: point };

const surveyRow = z.discriminatedUnion('kind', [
  z.strictObject({ ...ofPoint, kind: z.literal('back') }),
  z.strictObject({ ...ofPoint, kind: z.literal('out') }),
  z.strictObject({ ...ofPoint, kind: z.literal('up') }),
  z.strictObject({ ...between, kind: z.literal('straight'), value: positive }),
  z.strictObject({ ...between, kind: z.literal('plumb'), value: positive }),
  z.strictObject({ ...between, kind: z.literal('level'), value }),
  z.strictObject({ ...between, kind: z.literal('behind'), value }),
  z.strictObject({ ...between, kind: z.literal('across'), value }),
  z.strictObject({ ...head, kind: z.literal('arm'), of: point, side, value: positive }),
  z.strictObject({ ...head, kind: z.literal('sector-arm'), of: point, value: positive }),
  z.strictObject({ ...head, kind: z.literal('caster'), side, value: degrees }),
  z.strictObject({ ...head, kind: z.literal('inclination'), side, value: degrees }),
  z.strictObject({ ...head, kind: z.literal('steer-change'), side, heave: value, value: degrees }),
]);

export const surveySchema = z.strictObject({
  format: z.literal('toeboard-survey'),
  version: z.literal(SURVEY_VERSION),
  rows: z.array(surveyRow).max(SURVEY_ROWS_MAX),
});

/** One measurement taken on the car: mm or degrees, doubt as one standard deviation in the same unit. */
export type SurveyRow = z.infer<typeof surveyRow>;
export type SurveyKind = SurveyRow['kind'];
export type Survey = z.infer<typeof surveySchema>;

/** mm for lengths, degrees for angles: what each kind's usual instrument leaves in doubt (one standard deviation). */
export const USUAL_DOUBT: Record<SurveyKind, number> = {
  back: 1.6,
  out: 1.6,
  up: 1.6,
  straight: 1.6,
  plumb: 3.2,
  level: 1.6,
  behind: 1.6,
  across: 1.6,
  arm: 1.6,
  'sector-arm': 1.6,
  caster: 0.3,
  inclination: 0.3,
  'steer-change': 0.05,
};

/** A row's doubt, one standard deviation in its own unit (mm or degrees): its own, else its instrument's usual one. */
export function doubtOf(row: SurveyRow): number {
  return row.doubt ?? USUAL_DOUBT[row.kind];
}

/** The points that a row names, as it names them; those of the kingpin, where it looks at one, stand apart. */
export function pointsNamed(row: SurveyRow): readonly string[] {
  if ('of' in row) return [row.of];
  if ('from' in row) return [row.from, row.to];
  return [];
}

/** Where a row stands in a survey, for a refusal: `rows[3] "a4"`. */
function rowPath(index: number, id: unknown): string {
  return typeof id === 'string' && id !== '' ? `rows[${index}] ${quoted(id)}` : `rows[${index}]`;
}

/** A refusal of the schema that lies inside a row is given with the row's own name. */
function namedByRow(refusal: Refusal, input: unknown): Refusal {
  const match = /^rows\[(\d+)\]\.?(.*)$/.exec(refusal.path);
  if (!match) return refusal;
  const index = Number(match[1]);
  const row = (input as { rows: { id?: unknown }[] }).rows[index];
  const path = rowPath(index, row?.id);
  return { path: match[2] ? `${path} ${match[2]}` : path, reason: refusal.reason };
}

/** The points of a document that are measured: those of axle, location, lateral and steering. */
export function surveyedPoints(document: LayoutDocument) {
  return hardpoints(document).filter(({ id }) => !id.startsWith('shaft.'));
}

/**
 * Takes parsed JSON as a survey of a document's car: every row well formed, its points known to the document, its ends
 * two different points, its name its own.
 * Outcomes: the survey, or the first refusal, by row and reason. The input is not changed.
 */
export function readSurvey(input: unknown, document: LayoutDocument): Outcome<Survey, Refusal> {
  if (typeof input !== 'object' || input === null || Array.isArray(input))
    return failed({ path: '', reason: 'not a survey: expected an object { }' });
  const { format, version } = input as Record<string, unknown>;
  if (format !== 'toeboard-survey')
    return failed({ path: 'format', reason: 'expected "toeboard-survey": this is not a survey' });
  if (typeof version === 'number' && Number.isInteger(version) && version > SURVEY_VERSION)
    return failed({
      path: 'version',
      reason: `this survey is version ${version}, newer than this program reads (${SURVEY_VERSION}); use a newer Toeboard`,
    });
  const parsed = surveySchema.safeParse(input);
  if (!parsed.success) return failed(namedByRow(refusalOf(parsed.error, input), input));
  const survey = parsed.data;
  const known = new Map(surveyedPoints(document).map((entry) => [entry.id, entry]));
  const names = new Set<string>();
  for (const [index, row] of survey.rows.entries()) {
    const path = rowPath(index, row.id);
    if (names.has(row.id))
      return failed({ path, reason: 'a row of this name stands above: every row needs its own' });
    names.add(row.id);
    for (const id of pointsNamed(row))
      if (!known.has(id))
        return failed({
          path,
          reason: `unknown point ${quoted(id)}: this layout has no such point`,
        });
    if ('from' in row && row.from === row.to)
      return failed({
        path,
        reason: 'from and to are the same point: there is nothing between them to measure',
      });
    if (row.kind === 'sector-arm' && row.of === 'steering.box.sectorCentre')
      return failed({
        path,
        reason: 'the sector shaft has no distance from itself: name the ball of the arm',
      });
    if (row.kind === 'plumb' && row.value < PLUMB_MIN)
      return failed({
        path,
        reason: `plumb points ${row.value} mm apart on the floor: below ${PLUMB_MIN} mm they have no direction; measure a length in space`,
      });
  }
  return succeeded(survey);
}
