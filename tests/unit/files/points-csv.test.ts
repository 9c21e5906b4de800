import { describe, expect, test } from 'vitest';
import { hardpoints, readLayout } from '../../../shared-math/layout/index.ts';
import { readPointsCsv } from '../../../src-main/files/index.ts';
import { TABLES } from '../../../src-main/output/tables/index.ts';
import { pointsTaken } from '../../../src-renderer/places/measure/drawings/points-file.ts';
import { DEMONSTRATIONS } from '../../support/demonstration-files.ts';
import { documentOf, rawLayout } from '../../support/layouts.ts';

const table = (text: string) => {
  const read = readPointsCsv(text);
  if (!read.ok) throw new Error(read.failure);
  return {
    ...read.value,
    lines: read.value.lines.map((line) => ({ ...line, at: [...line.at] as [string, string, string] })),
  };
};

describe('a table of points', () => {
  test.each([
    ['point,x,y,z\nA,1,2,3', undefined],
    ['point,"x, mm","y, mm","z, mm"\nA,1,2,3', 'mm'],
    ['number;x (in);y (in);z (in)\nA;1;2;3', 'in'],
    ['name\tX [mm]\tY [mm]\tZ [mm]\nA\t1\t2\t3', 'mm'],
  ])('%j is read, its unit by its head', (text, unit) => {
    expect(table(text)).toEqual({ unit, lines: [{ line: 2, point: 'A', at: ['1', '2', '3'] }] });
  });

  test.each([
    ['', 'there is nothing in it'],
    ['point,x,y\nA,1,2', 'there is no column "z": the first line has to say what each column is, as "z, mm"'],
    ['x,y,z\n1,2,3', 'there is no column "point", "name" or "number"'],
    ['point,x (mm),y (in),z (mm)\nA,1,2,3', 'x, y and z are not in one unit'],
    ['point,x (ells),y (ells),z (ells)\nA,1,2,3', '"ells" is no unit: mm or in'],
    ['point,x,y,z\n,1,2,3', 'line 2: has figures and no point'],
    ['point,x,y,z\n', 'no line of it has a point'],
  ])('%j is refused: %s', (text, reason) => {
    expect(readPointsCsv(text)).toEqual({ ok: false, failure: reason });
  });

  test.each(DEMONSTRATIONS)('of %s: what went out comes back and moves nothing', (_, document) => {
    const { unit, lines } = table([...TABLES.points.of(document)].join(''));
    const taken = pointsTaken(document, lines, unit ?? 'mm');
    expect(taken.refused).toEqual([]);
    expect(taken.moves).toEqual([]);
    expect(taken.same).toBe(hardpoints(document).length);
    expect(hardpoints(taken.document).map(({ at }) => at)).toEqual(hardpoints(document).map(({ at }) => at));
  });

  test('by id, name or number, in inches with fractions; empty figures stay; what it names is planned', () => {
    const document = documentOf(rawLayout());
    const lines = table(
      'point,x (in),y (in),z (in)\nsteering.box.pitmanBall,-31 1/2,,13 3/4\nWheel centre,0,0,0\nLeft hairpin pivot,,,10',
    ).lines;
    const taken = pointsTaken(document, lines, 'in');
    expect(taken.refused).toEqual(['Line 3, "Wheel centre": this layout has no point "Wheel centre"']);
    expect(taken.moves.map(({ point, to }) => [point.id, to])).toEqual([
      ['steering.box.pitmanBall', [-800.1, 500, 349.25]],
      ['location.left.framePivot', [-890, 415, 254]],
    ]);
    expect(taken.document.origins).toEqual({
      'steering.box.pitmanBall': 'plan',
      'location.left.framePivot': 'plan',
    });
    expect(readLayout(taken.document).ok).toBe(true);
    const numbered = pointsTaken(document, table('number,x,y,z\n1,-8,631,395').lines, 'mm');
    expect(numbered.moves.map(({ point, far }) => [point.id, far])).toEqual([['axle.left.kingpinTop', 1]]);
  });

  test('a box and its ball both go where the table puts them, whichever stands first', () => {
    const document = documentOf(rawLayout());
    for (const text of [
      'point,x,y,z\nsteering.box.pitmanBall,-810,505,340\nsteering.box.sectorCentre,-790,490,480',
      'point,x,y,z\nsteering.box.sectorCentre,-790,490,480\nsteering.box.pitmanBall,-810,505,340',
    ]) {
      const { box } = pointsTaken(document, table(text).lines, 'mm').document.steering;
      expect(box.pitmanBall).toEqual([-810, 505, 340]);
      expect(box.sectorCentre).toEqual([-790, 490, 480]);
    }
  });

  test('lines that contradict one another are refused by line and reason', () => {
    const document = documentOf(rawLayout());
    const taken = pointsTaken(
      document,
      table(
        'point,x,y,z\naxle.left.kingpinTop,-7,631,400\naxle.right.kingpinTop,-7,-620,400\naxle.left.kingpinTop,0,0,0\nPitman ball,a,,',
      ).lines,
      'mm',
    );
    expect(taken.refused).toEqual([
      'Line 3, Right kingpin, top: is the mirror image of Left kingpin, top on line 2, and does not stand there',
      'Line 4, Left kingpin, top: line 2 names the same point',
      'Line 5, "Pitman ball": x: "a" is not a length; write for example 3 1/4, 3.25 in or 82.5 mm',
    ]);
    expect(taken.moves).toHaveLength(1);
  });
});
