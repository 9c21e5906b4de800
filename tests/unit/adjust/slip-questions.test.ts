import { expect, test } from 'vitest';
import type { SurveyRow } from '../../../shared-math/adjust/index.ts';
import { slipQuestions } from '../../../shared-math/adjust/list/index.ts';
import { documentOf, rawLayout } from '../../support/layouts.ts';

const document = documentOf(rawLayout());
const PIVOT = 'location.left.framePivot';
/** The pivot is drawn 890 mm behind the axle, 415 out, 335 up. */
const row = (kind: 'back' | 'out' | 'up', value: number): SurveyRow => ({ id: kind, kind, of: PIVOT, value });

function asked(figure: SurveyRow, unchecked = new Set([figure.id])) {
  return slipQuestions(document, [figure], unchecked).map(
    ({ id, slip }) => `${id}: ${slip.kind} ${Math.round(slip.row.value)}`,
  );
}

test('a figure that nothing checks and that lies far from the drawing is asked about, with its slip', () => {
  // 900 mm ahead instead of behind; 16 1/4 in taken as millimetres; millimetres taken as inches.
  expect(asked(row('back', -900))).toEqual(['back: wrong-side 900']);
  expect(asked(row('back', 35))).toEqual(['back: inches-as-millimetres 889']);
  expect(asked(row('up', 335 * 25.4))).toEqual(['up: millimetres-as-inches 335']);
});

test('a figure near the drawing, one without a slip that would explain it, and one that others check are not', () => {
  expect(asked(row('back', 1100))).toEqual([]);
  expect(asked(row('up', 15_000))).toEqual([]);
  expect(asked(row('back', -900), new Set())).toEqual([]);
});
