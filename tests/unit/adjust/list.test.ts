import { describe, expect, test } from 'vitest';
import { adjust, readSurvey, type SurveyRow } from '../../../shared-math/adjust/index.ts';
import {
  type CarSurvey,
  EMPTY_CAR_SURVEY,
  freeCoordinates,
  freeWords,
  type ListRow,
  rowsAsDrawn,
  rowsFor,
  surveyList,
  type Taken,
  USUAL_INSTRUMENTS,
  unknownWithout,
  withTaken,
} from '../../../shared-math/adjust/list/index.ts';
import { type LayoutDocument, resolveLayout } from '../../../shared-math/layout/index.ts';
import { COMBINATIONS, CROSS_STEER, documentOf, rawLayout, SIDE_STEER } from '../../support/layouts.ts';
import { plainValue } from '../../support/survey-peer.ts';
import { pointsOf } from '../../support/surveys.ts';

const WAYS_OF_STEERING = { 'side steer': SIDE_STEER, 'cross steer': CROSS_STEER };

function freeOf(document: LayoutDocument, rows: readonly SurveyRow[]): string[] {
  const outcome = adjust(document, rows, { pointsOnly: true });
  if (!outcome.ok) throw new Error(outcome.failure.kind);
  return freeCoordinates(document, outcome.value.points).map((each) => freeWords(document, each));
}

/** The same car with each right side spelled out. */
function spelledOut(document: LayoutDocument): LayoutDocument {
  const { axle, location } = resolveLayout(document);
  return documentOf({ ...document, axle, location });
}

describe.each(COMBINATIONS)('$label', ({ over }) => {
  test.each(Object.keys(WAYS_OF_STEERING))('%s: the list, filled once, leaves nothing free', (steering) => {
    const document = documentOf(
      rawLayout({ ...over, steering: WAYS_OF_STEERING[steering as keyof typeof WAYS_OF_STEERING] }),
    );
    for (const each of [document, spelledOut(document)]) {
      const list = surveyList(each);
      expect(new Set(list.map(({ id }) => id)).size).toBe(list.length);
      const rows = rowsAsDrawn(each, list);
      expect(readSurvey({ format: 'toeboard-survey', version: 1, rows }, each).ok).toBe(true);
      // The figures are those of another computation of the same definitions.
      const drawn = pointsOf(each);
      for (const row of rows) expect(row.value, row.id).toBeCloseTo(plainValue(row, drawn, drawn), 6);
      expect(freeOf(each, rows)).toEqual([]);
    }
  });
});

describe('a row that stays open', () => {
  const document = documentOf(rawLayout());
  const list = surveyList(document);
  test.each([
    ['pivot-up', ["the hairpin pivot's height"]],
    ['pivot-back', []],
    ['box-up', []],
    ['drag-link', []],
    ['kingpin-back', []],
  ])('%s leaves unknown what it alone tells', (id, words) => {
    expect(unknownWithout(document, list, id)).toEqual(words);
  });
  test('the sides are told apart where they differ', () => {
    const both = spelledOut(document);
    expect(unknownWithout(both, surveyList(both), 'pivot-up-right')).toEqual([
      "the right hairpin pivot's height",
    ]);
  });
});

describe('ways of taking a figure', () => {
  const document = documentOf(rawLayout());
  const list = surveyList(document);
  const named = (id: string) => list.find((row) => row.id === id) as ListRow;
  const take = (car: CarSurvey, id: string, way: string, figure: number, more: Partial<Taken> = {}) =>
    withTaken(list, car, id, { way, typed: String(figure), figure, ...more }, USUAL_INSTRUMENTS);
  const taken = (car: CarSurvey, id: string, way: string, figure: number, more?: Partial<Taken>) => {
    const outcome = take(car, id, way, figure, more);
    if (!outcome.ok) throw new Error(outcome.failure);
    return outcome.value;
  };
  const rowOf = (car: CarSurvey, id: string) => car.survey.rows.find((row) => row.id === id);

  test("a hub's height is half the tyre's, in half its doubt", () => {
    const car = taken(EMPTY_CAR_SURVEY, 'hub-height', 'tyre-height', 660);
    expect(rowOf(car, 'hub-height')).toEqual({
      id: 'hub-height',
      kind: 'up',
      of: 'axle.left.wheelCentre',
      value: 330,
      doubt: 0.8,
    });
    expect(car.taken['hub-height']).toEqual({ way: 'tyre-height', typed: '660', figure: 660 });
  });

  test('a pivot counted from the rail follows the rail, and keeps what was typed', () => {
    const alone = take(EMPTY_CAR_SURVEY, 'pivot-up', 'down-from-rail', 80);
    expect(alone.ok ? '' : alone.failure).toMatch(/^Rail, top edge up from the floor, is missing/);
    let car = taken(EMPTY_CAR_SURVEY, 'rail-top', 'plain', 420);
    expect(car.survey.rows).toEqual([]);
    car = taken(car, 'pivot-up', 'down-from-rail', 80);
    expect(rowOf(car, 'pivot-up')?.value).toBe(340);
    // Two readings of 1.6 mm, one upon the other.
    expect(rowOf(car, 'pivot-up')?.doubt).toBeCloseTo(2.263, 3);
    car = taken(car, 'rail-top', 'plain', 430);
    expect(rowOf(car, 'pivot-up')?.value).toBe(350);
    expect(car.taken['pivot-up']?.typed).toBe('80');
    const gone = withTaken(list, car, 'rail-top', undefined, USUAL_INSTRUMENTS);
    expect(gone.ok && rowOf(gone.value, 'pivot-up')).toBe(undefined);
    expect(gone.ok && gone.value.taken['pivot-up']?.figure).toBe(80);
  });

  test("a pitman arm's lean is the ball's distance behind its shaft", () => {
    let car = taken(EMPTY_CAR_SURVEY, 'pitman-arm', 'plain', 150);
    expect(rowOf(car, 'pitman-arm')).toMatchObject({ kind: 'sector-arm', of: 'steering.box.pitmanBall' });
    car = taken(car, 'pitman-lean', 'lean', -30);
    // 150 mm · sin 30° is 75 mm, ahead of the shaft.
    expect(rowOf(car, 'pitman-lean')?.value).toBeCloseTo(-75, 9);
    expect(rowOf(car, 'pitman-lean')?.kind).toBe('behind');
    // 150 mm · cos 30° · 0.3°.
    expect(rowOf(car, 'pitman-lean')?.doubt).toBeCloseTo(0.6802, 4);
  });

  test('every way is undone by its own way back', () => {
    const others = new Map([
      ['rail-outer', 380],
      ['rail-top', 420],
      ['pitman-arm', 150],
    ]);
    for (const row of list)
      for (const way of row.ways) {
        const figure = way.figure(17.5, others);
        expect(figure, row.id).toBeTypeOf('number');
        expect(way.typed(figure as number, others), row.id).toBeCloseTo(17.5, 9);
      }
  });

  test('rows stand in the order of the list, whenever they were typed', () => {
    let car = taken(EMPTY_CAR_SURVEY, 'tie-rod', 'plain', 1210);
    car = taken(car, 'hub-height', 'plain', 330);
    car = taken(car, 'pivot-up', 'plain', 335);
    expect(car.survey.rows.map(({ id }) => id)).toEqual(['hub-height', 'pivot-up', 'tie-rod']);
    car = taken(car, 'hub-height', 'plain', 331);
    expect(car.survey.rows.map(({ value }) => value)).toEqual([331, 335, 1210]);
  });

  test("a row's own doubt and instrument hold for it alone", () => {
    const car = taken(EMPTY_CAR_SURVEY, 'tie-rod', 'plain', 1210, { instrument: 'caliper' });
    expect(rowOf(car, 'tie-rod')?.doubt).toBe(0.1);
    expect(rowOf(taken(car, 'tie-rod', 'plain', 1210, { doubt: 5 }), 'tie-rod')?.doubt).toBe(5);
  });

  test('what a survey cannot hold is refused in one line', () => {
    for (const [id, figure] of [
      ['tie-rod', -3],
      ['tie-rod', 0],
      ['tie-rod', 30_000],
      ['caster', 120],
      ['nobody', 3],
    ] as const) {
      const outcome = take(EMPTY_CAR_SURVEY, id, 'plain', figure);
      expect(outcome.ok ? '' : outcome.failure, id).toMatch(/^[^\n]+$/);
    }
  });

  test('a variant of another arrangement takes the rows whose points it has', () => {
    let car = taken(EMPTY_CAR_SURVEY, 'pivot-up', 'plain', 335);
    car = taken(car, 'track', 'plain', 1420);
    const wishbone = documentOf(rawLayout({ location: { kind: 'wishbone', framePivot: [-1010, 0, 340] } }));
    const { rows, elsewhere } = rowsFor(wishbone, car);
    expect(rows.map(({ id }) => id)).toEqual(['track']);
    expect(elsewhere).toBe(1);
    expect(named('track').view).not.toBe('side');
  });
});
