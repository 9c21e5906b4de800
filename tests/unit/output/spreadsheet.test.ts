import { describe, expect, test } from 'vitest';
import { readPointsCsv } from '../../../src-main/files/index.ts';
import { forSpreadsheet, TABLE_NAMES, TABLES } from '../../../src-main/output/tables/index.ts';
import { toeboard } from '../../support/command-line.ts';
import { DEMONSTRATIONS } from '../../support/demonstration-files.ts';

const [, document] = DEMONSTRATIONS[0] as (typeof DEMONSTRATIONS)[0];
const whole = (pieces: Iterable<string>) => [...pieces].join('');

describe('tables for a spreadsheet', () => {
  test.each(['turn', 'points', 'travel'] as const)(
    '%s: the figures of the plain one, rounded, by point and by comma',
    (name) => {
      const { of, columns } = TABLES[name];
      const plain = whole(of(document)).split('\n');
      const point = whole(forSpreadsheet(of(document), columns, 'point')).split('\n');
      const comma = whole(forSpreadsheet(of(document), columns, 'comma')).split('\n');
      expect([point.length, comma.length]).toEqual([plain.length, plain.length]);
      const bare = (line: string) => line.replaceAll(/"[^"]*"/g, 'quoted');
      plain.slice(1, -1).forEach((line, i) => {
        const [own, points, commas] = [
          bare(line).split(','),
          bare(point[i + 1] as string).split(','),
          bare(comma[i + 1] as string).split(';'),
        ];
        expect([points.length, commas.length]).toEqual([own.length, own.length]);
        own.forEach((cell, at) => {
          const value = Number(cell);
          if (cell === '' || Number.isNaN(value)) return;
          expect(points[at]).toBe((commas[at] as string).replace(',', '.'));
          // To a hundredth of a millimetre, a thousandth of a degree, a tenth of a per cent, or finer.
          expect(Math.abs(Number(points[at]) - value)).toBeLessThanOrEqual(0.05 + 1e-9);
          // What is not nothing does not read as nothing.
          if (Math.abs(value) > 1e-9) expect(Number(points[at])).not.toBe(0);
        });
      });
    },
  );

  test('heads say their units, and the points so written come back', () => {
    const { of, columns } = TABLES.points;
    for (const numbers of ['point', 'comma'] as const) {
      const text = whole(forSpreadsheet(of(document), columns, numbers));
      const read = readPointsCsv(text);
      expect(read.ok && read.value.unit).toBe('mm');
    }
    const head = whole(forSpreadsheet(TABLES.turn.of(document), TABLES.turn.columns, 'comma')).split('\n')[0];
    expect(head).toContain('handwheel, degrees;leftSteer, degrees');
    expect(head).toContain('ackermannPercent, %');
  });

  test('the command prints each, and the plain form is what it was', async () => {
    for (const name of TABLE_NAMES.filter((each) => each !== 'map')) {
      const { code, out } = await toeboard('table', 'projects/four-bar-cross-steer.json', '--of', name);
      expect(code).toBe(0);
      const [, layout] = DEMONSTRATIONS.find(
        ([file]) => file === 'four-bar-cross-steer.json',
      ) as (typeof DEMONSTRATIONS)[0];
      expect(out).toBe(whole(TABLES[name].of(layout)));
    }
    expect((await toeboard('table', 'projects/four-bar-cross-steer.json', '--numbers', 'dots')).code).toBe(2);
  });
});
