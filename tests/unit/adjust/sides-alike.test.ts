import { describe, expect, test } from 'vitest';
import type { SurveyRow } from '../../../shared-math/adjust/index.ts';
import { rowsAsDrawn, sideDifferences, surveyList } from '../../../shared-math/adjust/list/index.ts';
import { documentOf, PLAIN_HALF, rawLayout } from '../../support/layouts.ts';
import { plainValue } from '../../support/survey-peer.ts';
import { pointsOf, seededNormal } from '../../support/surveys.ts';

const mirrored = documentOf(rawLayout());
const both = surveyList(mirrored, { bothSides: true });

/** The rows of both sides as another car has them, with noise of each row's doubt. */
function measuredOn(raw: object, noise: () => number): SurveyRow[] {
  const car = pointsOf(documentOf(raw));
  return rowsAsDrawn(mirrored, both).map((row) => ({
    ...row,
    value:
      plainValue(row, car, car) + noise() * (row.kind === 'caster' || row.kind === 'inclination' ? 0.3 : 1.6),
  })) as SurveyRow[];
}

describe('left and right taken as alike', () => {
  test('sides that are alike are not told apart by the noise of a tape, in 60 surveys', () => {
    for (let seed = 1; seed <= 60; seed += 1)
      expect(sideDifferences(mirrored, measuredOn(rawLayout(), seededNormal(seed)))).toEqual([]);
  });

  test('a hairpin pivot that hangs lower on the right is named, by how much', () => {
    const low = rawLayout({
      location: {
        kind: 'hairpins',
        left: { framePivot: [-890, 415, 335] },
        right: { framePivot: [-890, -415, 310] },
      },
    });
    const [first, ...others] = sideDifferences(mirrored, measuredOn(low, seededNormal(5)));
    expect(first).toMatchObject({ id: 'location.left.framePivot', axis: 'z' });
    expect(Math.abs((first?.by ?? 0) + 25)).toBeLessThan(3 * (first?.doubt ?? 0));
    expect(others).toEqual([]);
  });

  test('a kingpin set back on the right is named', () => {
    const right = {
      ...PLAIN_HALF,
      kingpinTop: [-37, -631, 395],
      kingpinBottom: [-23, -649, 265],
      wheelCentre: [0, -710, 330],
      tieRodBall: [-150, -606, 292],
    };
    const back = rawLayout({ axle: { beam: 'tube', left: PLAIN_HALF, right } });
    const found = sideDifferences(mirrored, measuredOn(back, seededNormal(7)));
    expect(found.map(({ id, axis }) => `${id} ${axis}`).sort()).toEqual([
      'axle.left.kingpinBottom x',
      'axle.left.kingpinTop x',
    ]);
    for (const { by } of found) expect(by).toBeLessThan(-20);
  });

  test('one side alone says nothing of the other', () => {
    expect(sideDifferences(mirrored, rowsAsDrawn(mirrored, surveyList(mirrored)))).toEqual([]);
  });
});
