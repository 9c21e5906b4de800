import Papa from 'papaparse';
import { describe, expect, test } from 'vitest';
import {
  EMPTY_CAR_SURVEY,
  surveyList,
  USUAL_INSTRUMENTS,
  withTaken,
} from '../../../shared-math/adjust/list/index.ts';
import { measuringCsv, readMeasuringCsv } from '../../../src-main/files/index.ts';
import { documentOf, rawLayout, STEERED } from '../../support/layouts.ts';

const LIST = surveyList(documentOf(rawLayout()));

function withFigure(id: string, typed: string, figure: number) {
  const outcome = withTaken(LIST, EMPTY_CAR_SURVEY, id, { way: 'plain', typed, figure }, USUAL_INSTRUMENTS);
  if (!outcome.ok) throw new Error(outcome.failure);
  return outcome.value;
}

describe('the list as a table', () => {
  test('has a line for each row of every list, read by an independent reader, and every figure open', () => {
    for (const { over } of STEERED) {
      const list = surveyList(documentOf(rawLayout(over)));
      const { data, errors } = Papa.parse<string[]>(
        measuringCsv(list, EMPTY_CAR_SURVEY, 'mm').slice(1).trim(),
      );
      expect(errors).toEqual([]);
      expect(data.slice(1).map(([row]) => row)).toEqual(list.map(({ id }) => id));
      expect(data.slice(1).map((cells) => cells[1])).toEqual(list.map(({ name }) => name));
      for (const [i, row] of list.entries()) {
        expect(data[i + 1]?.[4]).toBe(row.ways[0]?.unit === 'angle' ? 'degrees' : 'mm');
        expect(data[i + 1]?.[5]).toBe('');
      }
    }
  });

  test('comes back with what was typed, also where a spreadsheet would take it for a formula', () => {
    const car = withFigure('tie-ball-back', '-5 3/4 in', -146.05);
    const text = measuringCsv(LIST, car, 'in');
    expect(text).toContain("'-5 3/4 in");
    expect(readMeasuringCsv(text)).toEqual({
      ok: true,
      value: [
        {
          line: LIST.findIndex(({ id }) => id === 'tie-ball-back') + 2,
          row: 'tie-ball-back',
          counted: LIST.find(({ id }) => id === 'tie-ball-back')?.ways[0]?.name,
          unit: 'in',
          figure: '-5 3/4 in',
        },
      ],
    });
  });

  test('is read with semicolons, columns in another order, further columns, and empty lines', () => {
    const text = 'figure;unit;row;remark\r\n24,125;in;track;by two\r\n\r\n;mm;hub-height;\r\n';
    expect(readMeasuringCsv(text)).toEqual({
      ok: true,
      value: [{ line: 2, row: 'track', counted: '', unit: 'in', figure: '24,125' }],
    });
  });

  test.each([
    ['', 'there is nothing in it'],
    ['row,what\ntrack,1', 'there is no column "figure": the first line has to say what each column is'],
    ['row,figure\ntrack,', 'no line of it has a figure'],
    ['row,figure\n,12', 'line 2: has a figure and no row'],
    ['row,figure\ntrack,12\ntrack,13', 'line 3: the row "track" stands on line 2 too'],
    ['row,unit,figure\ntrack,furlong,12', 'line 2: "furlong" is no unit: in, mm or degrees'],
    ['row,figure\ntrack,"12', 'line 2: a quotation mark is opened and not closed as it should be'],
    [`row,figure\n${'track,1\n'.repeat(60_000)}`, 'a list of 400,000 characters at most'],
  ])('%#: is refused in a line', (text, reason) => {
    expect(readMeasuringCsv(text)).toEqual({ ok: false, failure: reason });
  });
});
