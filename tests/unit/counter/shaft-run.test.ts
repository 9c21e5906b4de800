import { describe, expect, test } from 'vitest';
import {
  answerOf,
  newQuestion,
  pointing,
  type QuestionOf,
  shaftRun,
  USUAL_COLUMN_FALL,
} from '../../../shared-math/counter/index.ts';
import { angleBetween, USUAL_SEAT } from '../../../shared-math/shaft/index.ts';
import { DEGREE, expectClose } from '../../support/close.ts';

const MM = { unit: 'mm', fraction: 16 } as const;
type Shaft = QuestionOf<'shaft'>;

const asked = (said: Partial<Shaft>): Shaft => ({ ...newQuestion('shaft'), ...said });

function runOf(said: Partial<Shaft>) {
  const run = shaftRun(asked(said), MM);
  if (!run.ok) throw new Error(run.failure.words);
  return run.value;
}

/** From the column's end to the box's input, mm: ahead, out, up. */
function way(said: Partial<Shaft>): number[] {
  const { column, box } = runOf(said);
  return box.end.map((value, i) => value - (column.end[i] as number));
}

/** The bends that the answer names, degrees, in order from the column. */
function bendsOf(said: Partial<Shaft>): number[] {
  const { parts } = answerOf(asked(said), MM, {});
  const lines = parts.find(({ title }) => title === 'The run')?.lines ?? [];
  return lines.flatMap(({ words }) => {
    const bend = /bends (\d+\.\d)°/.exec(words)?.[1];
    return bend === undefined ? [] : [Number(bend)];
  });
}

describe('what was measured with a tape, as places', () => {
  test('a box of 3, 4 and 12: thirteen apart, as Pythagoras has it', () => {
    for (const [driverSide, sign] of [
      ['left', 1],
      ['right', -1],
    ] as const) {
      const [ahead, out, up] = way({ apart: 1300, lower: 400, out: 300, driverSide });
      expectClose(ahead as number, 1200, 1e-9);
      expectClose(out as number, sign * 300, 1e-9);
      expectClose(up as number, -400, 1e-9);
    }
  });

  test('not said how much lower: on the column’s own line, which is said', () => {
    const [ahead, , up] = way({ apart: 1000 });
    expectClose(Math.atan2(-(up as number), ahead as number) / DEGREE, USUAL_COLUMN_FALL, 1e-9);
    expectClose(Math.hypot(ahead as number, up as number), 1000, 1e-9);
    // 1000 sin 30° lower.
    expect(runOf({ apart: 1000 }).assumed.find(({ field }) => field === 'lower')?.figure).toBe('500.0 mm');
  });

  test('each in the car: behind is behind, and the driver’s side is the side', () => {
    const places = { columnBack: 1100, columnOut: 340, columnUp: 850, boxBack: 500, boxOut: 400, boxUp: 560 };
    const run = runOf({ by: 'places', ...places, driverSide: 'right' });
    expect(run.column.end).toEqual([-1100, -340, 850]);
    expect(run.box.end).toEqual([-500, -400, 560]);
  });

  test.each<[string, Partial<Shaft>, 'asks' | 'cannot']>([
    ['nothing', {}, 'asks'],
    ['a place of six', { by: 'places', columnBack: 1000 }, 'asks'],
    ['lower than it is far', { apart: 500, lower: 600 }, 'cannot'],
    ['farther out than it is far', { apart: 500, out: -600 }, 'cannot'],
    ['on one another', { apart: 50 }, 'cannot'],
  ])('%s is no run, and says so', (_, said, kind) => {
    const run = shaftRun(asked(said), MM);
    expect(run.ok ? 'ok' : run.failure.kind).toBe(kind);
  });

  test('everything that was said is nothing that is assumed', () => {
    const fields = (said: Partial<Shaft>) => runOf(said).assumed.map(({ field }) => field);
    expect(fields({ apart: 800 }).sort()).toEqual(
      ['lower', 'out', 'columnFalls', 'columnPoints', 'boxFalls', 'boxPoints', 'driverSide', 'stock'].sort(),
    );
    const all: Partial<Shaft> = {
      apart: 800,
      lower: 0,
      out: 0,
      columnFalls: 0,
      columnPoints: 0,
      boxFalls: 0,
      boxPoints: 0,
      driverSide: 'left',
      stock: { kind: 'round', diameter: 19.05 },
    };
    expect(fields(all)).toEqual([]);
  });
});

describe('the angles of the answer', () => {
  test('two planes square to one another make cos c = cos a · cos b, the spherical Pythagoras', () => {
    for (const [falls, points] of [
      [30, 10],
      [15, 25],
      [45, 45],
    ] as const) {
      const seen = angleBetween(pointing(falls, 0, 1), pointing(0, points, 1)) / DEGREE;
      const expected = Math.acos(Math.cos(falls * DEGREE) * Math.cos(points * DEGREE)) / DEGREE;
      expectClose(seen, expected, 1e-9);
    }
  });

  test('side by side and level: both joints bend by the offset over what is left between them, worked by hand', () => {
    // Two joints pushed home stand 12 mm past each end (44 from face to centre, 32 of it bored): 600 - 24 is left along.
    // Offsets of 100 down and 75 out are 125 across: atan(125 / 576) = 12.24°.
    const home = USUAL_SEAT.reach - USUAL_SEAT.depth;
    expect(home).toBe(12);
    const apart = Math.hypot(600, 100, 75);
    const bends = bendsOf({ apart, lower: 100, out: 75, columnFalls: 0, joints: 2 });
    expect(bends).toEqual([12.2, 12.2]);
  });

  test('in the mirror the same bends, and the yokes turned the other way', () => {
    const said = { apart: 762, lower: 250, out: 100, columnFalls: 25, columnPoints: 5 } as const;
    const clocks = (driverSide: 'left' | 'right') => {
      const { parts } = answerOf(asked({ ...said, driverSide }), MM, {});
      return parts.find(({ title }) => title === 'What to clock')?.lines?.[0]?.words ?? '';
    };
    expect(bendsOf({ ...said, driverSide: 'right' })).toEqual(bendsOf({ ...said, driverSide: 'left' }));
    const other = (words: string) =>
      words.replace(/counter-clockwise|clockwise/, (way) =>
        way === 'clockwise' ? 'counter-clockwise' : 'clockwise',
      );
    expect(clocks('right')).toBe(other(clocks('left')));
    expect(clocks('left')).toMatch(/turn its yoke/);
  });
});
