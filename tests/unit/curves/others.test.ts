import { describe, expect, test } from 'vitest';
import { joined, otherCurve } from '../../../src-renderer/curves/others.ts';
import { nextRange } from '../../../src-renderer/curves/ranges.ts';
import { COMPARE_DASHES } from '../../../src-renderer/look/compare.ts';
import { PERCENT_LADDER } from '../../../src-renderer/places/turn/turn-data.ts';

describe('curves of other variants', () => {
  test('known at other places come onto one axis: lines run through, gaps stay gaps', () => {
    const { at, columns } = joined([
      { at: [-2, 0, 2], columns: { ratio: [18, null, 16] } },
      { at: [-3, 0, 1], columns: { ratio: [20, 19, 18] } },
    ]);
    expect(at).toEqual([-3, -2, 0, 1, 2]);
    expect(columns[0]?.ratio).toEqual([undefined, 18, null, undefined, 16]);
    expect(columns[1]?.ratio).toEqual([20, undefined, 19, 18, undefined]);
  });

  test('alone stay as they are', () => {
    const table = { at: [1, 2], columns: { ratio: [3, 4] } };
    expect(joined([table])).toEqual({ at: table.at, columns: [table.columns] });
  });

  test('are dashed by their letter and say whose they are', () => {
    const curve = otherCurve({ letter: 'C' }, 'Box on the rail', [1, 2], 1.5);
    expect(curve).toMatchObject({ name: 'C', whose: 'Box on the rail', column: [1, 2], now: 1.5 });
    expect(curve.ink.dash).toBe(COMPARE_DASHES.C);
    const dashes = Object.values(COMPARE_DASHES).map((dash) => dash.join(' '));
    expect(new Set(dashes).size).toBe(dashes.length);
  });

  test('with nothing at a row do not move a plot’s range', () => {
    const range = nextRange(undefined, [undefined, 110, null], 100, PERCENT_LADDER, true);
    expect(range).toEqual({ middle: 100, rung: PERCENT_LADDER[0] });
  });
});
