import { describe, expect, test } from 'vitest';
import type { SurveyRow } from '../../../shared-math/adjust/index.ts';
import { farQuestions, rowsAsDrawn, surveyList } from '../../../shared-math/adjust/list/index.ts';
import { PLAIN_LAYOUT } from '../../../shared-math/layout/index.ts';
import { documentOf, rawLayout, STEERED } from '../../support/layouts.ts';
import { DEMONSTRATIONS, demonstration } from '../../support/printed.ts';

const TOP = 'axle.left.kingpinTop';
const NOBODY: ReadonlySet<string> = new Set();
const asked = (row: SurveyRow, answered = NOBODY) => farQuestions([row], answered).map(({ id }) => id);

describe('a figure that such cars do not have', () => {
  test.each([
    // 15 1/4 in behind the hubs' line, where a kingpin carries its wheel.
    [{ id: 'a', kind: 'back', of: TOP, value: 387 }],
    [{ id: 'a', kind: 'back', of: 'axle.right.kingpinBottom', value: -300 }],
    [{ id: 'a', kind: 'up', of: 'axle.left.wheelCentre', value: 1200 }],
    [{ id: 'a', kind: 'out', of: 'location.left.framePivot', value: 4150 }],
    [{ id: 'a', kind: 'straight', from: 'axle.left.wheelCentre', to: 'axle.right.wheelCentre', value: 145 }],
    [{ id: 'a', kind: 'arm', of: 'steering.dragLinkBall', side: 'left', value: 15 }],
    [{ id: 'a', kind: 'caster', side: 'left', value: 61 }],
  ] satisfies [SurveyRow][])('is asked about, once: %o', (row) => {
    expect(asked(row)).toEqual(['a']);
    expect(asked(row, new Set(['a']))).toEqual([]);
  });

  test.each([
    [{ id: 'a', kind: 'back', of: TOP, value: 387 }, [-100, 100]],
    [{ id: 'a', kind: 'inclination', side: 'left', value: 45 }, [-2, 20]],
  ] satisfies [SurveyRow, readonly number[]][])('comes with what they have: %o', (row, usual) => {
    expect(farQuestions([row], NOBODY)).toEqual([{ id: 'a', usual }]);
  });
});

test.each([
  ['the plain car', PLAIN_LAYOUT] as const,
  ...DEMONSTRATIONS.map((file) => [file, demonstration(file)] as const),
  ...STEERED.map(({ label, over }) => [label, documentOf(rawLayout(over))] as const),
])('nothing of a car as it is drawn is asked about: %s', (_, document) => {
  const rows = rowsAsDrawn(document, surveyList(document, { bothSides: true }));
  expect(rows.length).toBeGreaterThan(15);
  expect(farQuestions(rows, NOBODY)).toEqual([]);
});
