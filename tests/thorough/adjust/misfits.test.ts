import { describe, expect, test } from 'vitest';
import {
  adjust,
  doubtOf,
  findMisfits,
  likelySlips,
  possibleSlips,
  type SlipKind,
  type SurveyRow,
} from '../../../shared-math/adjust/index.ts';
import { seededRandom } from '../../../shared-math/solve/random.ts';
import { documentOf, rawLayout } from '../../support/layouts.ts';
import { plainValue } from '../../support/survey-peer.ts';
import { fullyCheckedRows, measured, pointsOf, seededNormal, sideSteerRows } from '../../support/surveys.ts';

const document = documentOf(rawLayout());
const drawn = pointsOf(document);
const taped = sideSteerRows();
const clean = measured(taped, drawn, drawn);
const redundancies = (() => {
  const outcome = adjust(document, clean, { pointsOnly: true });
  if (!outcome.ok) throw new Error(outcome.failure.kind);
  return new Map(outcome.value.rows.map(({ id, redundancy }) => [id, redundancy ?? 0]));
})();

function misfitsOf(rows: readonly SurveyRow[], slips = false) {
  const outcome = findMisfits(document, rows, { slips });
  if (!outcome.ok) throw new Error(outcome.failure.kind);
  return outcome.value.misfits;
}

/** The row that fits worst, with those alike; the first misfit where there is one. */
function firstNamed(rows: readonly SurveyRow[]): string[] {
  const outcome = findMisfits(document, rows, { slips: false });
  if (!outcome.ok) throw new Error(outcome.failure.kind);
  const first = outcome.value.misfits[0] ?? outcome.value.worst!;
  return [first.id, ...first.alike];
}

test('rows that agree have no misfit', () => {
  expect(misfitsOf(clean)).toEqual([]);
});

test('a blunder of six times the doubt, in a row that the others check, is named first in 95 of 100', () => {
  const many = fullyCheckedRows();
  const outcome = adjust(document, measured(many, drawn, drawn), { pointsOnly: true });
  if (!outcome.ok) throw new Error(outcome.failure.kind);
  const checked = outcome.value.rows.filter(({ redundancy }) => redundancy! > 0.5);
  expect(checked.length).toBeGreaterThan(5);
  const random = seededRandom(11);
  let named = 0;
  const tries = 200;
  for (let k = 0; k < tries; k += 1) {
    const noisy = measured(many, drawn, drawn, seededNormal(500 + k));
    const { id } = checked[Math.floor(random() * checked.length)]!;
    const sign = random() < 0.5 ? -1 : 1;
    const rows = noisy.map((row) =>
      row.id === id ? ({ ...row, value: row.value + sign * 6 * doubtOf(row) } as SurveyRow) : row,
    );
    if (firstNamed(rows).includes(id)) named += 1;
  }
  expect(named / tries).toBeGreaterThanOrEqual(0.95);
});

describe('slips', () => {
  /** What a row reads after each slip: the other way round from putting it right. */
  const slipped: Record<SlipKind, (row: SurveyRow) => SurveyRow | undefined> = {
    'wrong-side': (row) =>
      'value' in row && !['up', 'straight', 'plumb', 'arm'].includes(row.kind)
        ? { ...row, value: -row.value }
        : undefined,
    'millimetres-as-inches': (row) => scaled(row, 25.4),
    'inches-as-millimetres': (row) => scaled(row, 1 / 25.4),
    'a-foot': (row) => shifted(row, 304.8),
    'an-inch': (row) => shifted(row, 25.4),
    'half-or-twice': (row) => scaled(row, 2),
    'left-for-right': (row) =>
      'from' in row && row.from.includes('.left.') && !row.to.includes('.right.')
        ? { ...row, from: row.from.replace('.left.', '.right.') }
        : undefined,
  };
  const angular = (row: SurveyRow) => row.kind === 'caster' || row.kind === 'inclination';
  const scaled = (row: SurveyRow, by: number) =>
    angular(row) ? undefined : { ...row, value: row.value * by };
  const shifted = (row: SurveyRow, by: number) =>
    angular(row) ? undefined : { ...row, value: row.value + by };

  test.each(Object.keys(slipped) as SlipKind[])(
    '%s is named, and the figure as it was meant is offered, in 98 of 100',
    (kind) => {
      const cases = clean.flatMap((row) => {
        const after = slipped[kind](row);
        // A slip that moves a figure by a few doubts only (a caster of half a degree, the wrong way) is no slip to find.
        if (!after || redundancies.get(row.id)! <= 0.1) return [];
        const read = kind === 'left-for-right' ? plainValue(after, drawn, drawn) : after.value;
        const change = Math.abs(read - row.value);
        return change > 14 * doubtOf(row) ? [[row, after] as const] : [];
      });
      expect(cases.length).toBeGreaterThan(0);
      let named = 0;
      let offered = 0;
      for (const [k, [row, after]] of cases.entries()) {
        const noisy = measured(taped, drawn, drawn, seededNormal(900 + k));
        const meant = noisy.find(({ id }) => id === row.id)!;
        const wrong = slipped[kind](meant)!;
        const rows = noisy.map((other) => (other.id === row.id ? wrong : other));
        expect(after.id).toBe(wrong.id);
        const [first] = misfitsOf(rows);
        if (first && (first.id === row.id || first.alike.includes(row.id))) named += 1;
        const slips = likelySlips(document, rows, row.id);
        if (slips.some((slip) => slip.kind === kind && Math.abs(slip.row.value - meant.value) < 1e-6))
          offered += 1;
      }
      expect(named / cases.length, 'named').toBeGreaterThanOrEqual(0.98);
      expect(offered / cases.length, 'offered').toBeGreaterThanOrEqual(0.98);
    },
    120_000,
  );

  test('only slips that a row can have suffered are tried', () => {
    const caster: SurveyRow = { id: 'c', kind: 'caster', side: 'left', value: 6 };
    expect(possibleSlips(document, caster).map(({ kind }) => kind)).toEqual(['wrong-side', 'left-for-right']);
    const short: SurveyRow = {
      id: 's',
      kind: 'straight',
      from: 'steering.dragLinkBall',
      to: 'steering.box.pitmanBall',
      value: 20,
    };
    for (const { row } of possibleSlips(document, short)) expect(row.value).toBeGreaterThan(0);
  });
});

test('two wrong rows are found one after the other, and what is left fits', () => {
  const rows = clean.map((row) => {
    if (row.id === 'r12') return { ...row, value: row.value - 304.8 } as SurveyRow;
    if (row.kind === 'behind') return { ...row, value: -row.value } as SurveyRow;
    return row;
  });
  const outcome = findMisfits(document, rows);
  if (!outcome.ok) throw new Error(outcome.failure.kind);
  const { misfits, clean: left } = outcome.value;
  const behind = rows.find(({ kind }) => kind === 'behind')!.id;
  expect(misfits.map(({ id }) => id).sort()).toEqual(['r12', behind].sort());
  const slipOf = (id: string) => misfits.find((misfit) => misfit.id === id)!.slips[0]!.kind;
  expect(slipOf('r12')).toBe('a-foot');
  expect(slipOf(behind)).toBe('wrong-side');
  expect(left.rows.every(({ fits }) => fits !== false)).toBe(true);
});
