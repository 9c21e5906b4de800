import type { LayoutDocument } from '../layout/index.ts';
import { MM_PER_INCH } from '../units/index.ts';
import { adjust, FITS_WITHIN } from './adjust.ts';
import type { FurtherOf } from './further.ts';
import { pointsNamed, type SurveyRow, surveyedPoints } from './survey.ts';

/** What usually goes wrong when a tape is read and a figure written down. */
export type SlipKind =
  /** Written on the wrong side of the line that it is counted from. */
  | 'wrong-side'
  /** A figure in millimetres taken as inches, and the other way round. */
  | 'millimetres-as-inches'
  | 'inches-as-millimetres'
  /** A foot or an inch more or less than was there: a foot mark misread, the tape held at its first inch. */
  | 'a-foot'
  | 'an-inch'
  /** Half of it, or twice: a radius for a diameter, a half for the whole. */
  | 'half-or-twice'
  /** Measured on the other side of the car. */
  | 'left-for-right';

export interface Slip {
  readonly kind: SlipKind;
  /** The row as it would read without the slip. */
  readonly row: SurveyRow;
  /** How far it then is from what the other rows say, in standard deviations. */
  readonly w: number;
}

const FOOT = 12 * MM_PER_INCH;

/** Kinds whose value has a side: the sign says on which side of a line or of another point. */
const SIDED = new Set<SurveyRow['kind']>([
  'back',
  'out',
  'level',
  'behind',
  'across',
  'caster',
  'inclination',
  'steer-change',
]);
const ANGLES = new Set<SurveyRow['kind']>(['caster', 'inclination', 'steer-change']);

/** A row as it would read without each of the slips that it can have suffered. */
export function possibleSlips(
  document: LayoutDocument,
  row: SurveyRow,
): { kind: SlipKind; row: SurveyRow }[] {
  const { value } = row;
  const values: [SlipKind, number][] = [];
  if (SIDED.has(row.kind)) values.push(['wrong-side', -value]);
  if (!ANGLES.has(row.kind)) {
    values.push(
      ['millimetres-as-inches', value / MM_PER_INCH],
      ['inches-as-millimetres', value * MM_PER_INCH],
    );
    values.push(
      ['a-foot', value - FOOT],
      ['a-foot', value + FOOT],
      ['an-inch', value - MM_PER_INCH],
      ['an-inch', value + MM_PER_INCH],
    );
    values.push(['half-or-twice', value / 2], ['half-or-twice', value * 2]);
  }
  const needsLength = ['straight', 'plumb', 'arm', 'sector-arm'].includes(row.kind);
  const slips = values
    .filter(([, other]) => other !== value && (!needsLength || other > 0))
    .map(([kind, other]) => ({ kind, row: { ...row, value: other } }));
  const known = new Set(surveyedPoints(document).map(({ id }) => id));
  for (const other of withSidesSwapped(row)) {
    const named = pointsNamed(other);
    if (named.every((id) => known.has(id)) && new Set(named).size === named.length)
      slips.push({ kind: 'left-for-right' as const, row: other });
  }
  return slips;
}

function otherSide(id: string): string {
  if (id.includes('.left.')) return id.replace('.left.', '.right.');
  return id.replace('.right.', '.left.');
}

/** The row with one of its points, or its side, on the other side of the car. */
function withSidesSwapped(row: SurveyRow): SurveyRow[] {
  const swapped: SurveyRow[] = [];
  if ('side' in row) swapped.push({ ...row, side: row.side === 'left' ? 'right' : 'left' });
  if ('of' in row && otherSide(row.of) !== row.of) swapped.push({ ...row, of: otherSide(row.of) });
  if ('from' in row) {
    if (otherSide(row.from) !== row.from) swapped.push({ ...row, from: otherSide(row.from) });
    if (otherSide(row.to) !== row.to) swapped.push({ ...row, to: otherSide(row.to) });
  }
  return swapped;
}

/**
 * The slips that would explain a row which does not fit: put right, the row fits the others, judged by adjusting anew.
 * Nearest to the others first. Empty if none does.
 */
export function likelySlips(
  document: LayoutDocument,
  rows: readonly SurveyRow[],
  id: string,
  aside: ReadonlySet<string> = new Set(),
  further?: FurtherOf,
): Slip[] {
  const suspect = rows.find((row) => row.id === id);
  if (!suspect) return [];
  const others = new Set([...aside].filter((other) => other !== id));
  const slips = possibleSlips(document, suspect).flatMap(({ kind, row }) => {
    const outcome = adjust(
      document,
      rows.map((other) => (other.id === id ? row : other)),
      { aside: others, pointsOnly: true, further },
    );
    const w = outcome.ok ? outcome.value.rows.find((entry) => entry.id === id)?.w : undefined;
    return typeof w === 'number' && Math.abs(w) <= FITS_WITHIN ? [{ kind, row, w: Math.abs(w) }] : [];
  });
  return slips.sort((a, b) => a.w - b.w);
}
