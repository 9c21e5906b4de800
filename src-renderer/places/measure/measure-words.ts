import type { BumpSteerDoubt, Misfit, SlipKind, SurveyRow } from '../../../shared-math/adjust/index.ts';
import {
  type FarQuestion,
  freeWords,
  type ListRow,
  pointWords,
  type SideDifference,
  type SlipQuestion,
  type UsualRange,
} from '../../../shared-math/adjust/list/index.ts';
import { capitalised } from '../../../shared-math/capitalised.ts';
import type { LayoutDocument } from '../../../shared-math/layout/index.ts';

/** What the place shows at the right: the list of the tape, photos, drawings, or the finished car's gauge. */
export type MeasurePage = 'tape' | 'photos' | 'drawings' | 'gauge';

/** What each slip asks, after the figure that would be right. */
const SLIP_WORDS: Readonly<Record<SlipKind, string>> = {
  'wrong-side': 'measured to the other side?',
  'millimetres-as-inches': 'meant millimetres?',
  'inches-as-millimetres': 'meant inches?',
  'a-foot': 'a foot misread?',
  'an-inch': "an inch taken at the tape's end?",
  'half-or-twice': 'half for the whole?',
  'left-for-right': 'measured on the other side of the car?',
};

export interface Figures {
  length(mm: number): string;
  degrees(degrees: number, decimals?: number): string;
}

const ANGLES = new Set<SurveyRow['kind']>(['caster', 'inclination', 'steer-change']);

/** What waits for an answer: "2 measurements do not fit, 1 to confirm: show them"; undefined if nothing does. */
export function doubtedWords(misfits: number, questions: number): string | undefined {
  const all = misfits + questions;
  if (all === 0) return undefined;
  const measurements = (count: number) => `${count} ${count === 1 ? 'measurement' : 'measurements'}`;
  const unfit = `${measurements(misfits)} ${misfits === 1 ? 'does' : 'do'} not fit`;
  const asked = misfits > 0 ? `, ${questions} to confirm` : `${measurements(questions)} to confirm`;
  return `${misfits > 0 ? unfit : ''}${questions > 0 ? asked : ''}: show ${all === 1 ? 'it' : 'them'}`;
}

/** A row's figure in its own unit. */
export function figureWords(row: Pick<SurveyRow, 'kind'>, value: number, figures: Figures): string {
  return ANGLES.has(row.kind) ? figures.degrees(value) : figures.length(value);
}

/** What a row of the survey is called: by the list, or by its two points. */
export function rowName(row: SurveyRow, list: readonly ListRow[], document: LayoutDocument): string {
  const listed = list.find(({ id }) => id === row.id);
  if (listed) return listed.name;
  if ('from' in row) {
    const kind = {
      straight: 'straight',
      plumb: 'plumbed to the floor',
      level: 'in height',
      behind: 'along the car',
      across: 'across',
    }[row.kind];
    return `${capitalised(pointWords(document, row.from))} to ${pointWords(document, row.to)}, ${kind}`;
  }
  return row.id;
}

/** "24 in: meant inches?" */
export function slipWords(
  { kind, row }: { readonly kind: SlipKind; readonly row: SurveyRow },
  figures: Figures,
): string {
  const question = SLIP_WORDS[kind];
  return kind === 'left-for-right'
    ? capitalised(question)
    : `${figureWords(row, row.value, figures)}: ${question}`;
}

/** "Typed 36 in; the others say 24 1/16 in." */
export function misfitWords(misfit: Misfit, row: SurveyRow, figures: Figures): string {
  const typed = figureWords(row, row.value, figures);
  if (misfit.expected === null) return `${typed} does not go with the others.`;
  return `${typed} does not fit; the others say ${figureWords(row, misfit.expected, figures)}.`;
}

/** "24 mm is far from the plain car's 24 in, …"; "15 1/4 in is far from what such cars have: 4 in ahead to 4 in behind …" */
export function questionWords(
  question: SlipQuestion | FarQuestion,
  row: SurveyRow,
  figures: Figures,
): string {
  if ('usual' in question)
    return `${figureWords(row, row.value, figures)} is far from what such cars have: ${rangeWords(row, question.usual, figures)} (common practice, no published source).`;
  const { drawn } = question;
  return `${figureWords(row, row.value, figures)} is far from the plain car's ${figureWords(row, drawn, figures)}, and nothing checks it.`;
}

/** What a distance along the car or from its middle is called, with its sign and against it. */
const TO_EITHER_SIDE: Partial<Record<SurveyRow['kind'], readonly [plus: string, minus: string]>> = {
  back: ['behind', 'ahead'],
  out: ['on its own side', 'past the centre line'],
};

/** "4 in ahead to 4 in behind" */
function rangeWords(row: SurveyRow, [least, most]: UsualRange, figures: Figures): string {
  const way = TO_EITHER_SIDE[row.kind];
  if (!way || least >= 0) return `${figureWords(row, least, figures)} to ${figureWords(row, most, figures)}`;
  return `${figureWords(row, -least, figures)} ${way[1]} to ${figureWords(row, most, figures)} ${way[0]}`;
}

/** The share of a doubt in words: "nearly all", "two thirds". */
function shareWords(share: number): string {
  if (share > 0.9) return 'nearly all of it';
  if (share > 0.6) return 'two thirds of it';
  if (share > 0.4) return 'half of it';
  if (share > 0.28) return 'a third of it';
  return `${Math.round(share * 100)} % of it`;
}

/** What would help the headline's doubt most: the coordinate that nobody measured, or the row to measure better. */
export function helpWords(
  { shares, unknown }: BumpSteerDoubt,
  rows: readonly SurveyRow[],
  list: readonly ListRow[],
  document: LayoutDocument,
): string {
  const [row] = shares;
  const [coordinate] = unknown;
  if (coordinate && coordinate.share >= (row?.share ?? 0)) {
    if (coordinate.share <= 0) return '';
    const words = freeWords(document, coordinate);
    return `${capitalised(words)} makes ${shareWords(coordinate.share)}: nobody measured it.`;
  }
  const named = rows.find(({ id }) => id === row?.id);
  if (!row || !named || row.share <= 0) return '';
  return `“${rowName(named, list, document)}” makes ${shareWords(row.share)}: measure it again.`;
}

const WAYS = {
  x: ['further forward', 'further back'],
  y: ['further out', 'further in'],
  z: ['higher', 'lower'],
} as const;

/** "The hairpin pivot stands 1 in lower on the right." */
export function differenceWords({ axis, by }: SideDifference, point: string, figures: Figures): string {
  return `The ${point} stands ${figures.length(Math.abs(by))} ${WAYS[axis][by > 0 ? 0 : 1]} on the right.`;
}
