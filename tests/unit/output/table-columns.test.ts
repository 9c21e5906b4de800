import { afterEach, describe, expect, test } from 'vitest';
import { resolveLayout } from '../../../shared-math/layout/index.ts';
import { createState, prepareFrontEnd, solveFrontEnd } from '../../../shared-math/linkage/index.ts';
import { sweepTurn } from '../../../shared-math/sweep/index.ts';
import { toRadians } from '../../../shared-math/units/index.ts';
import { type Column, headOf, lineOf } from '../../../src-main/output/tables/column.ts';
import { TABLES } from '../../../src-main/output/tables/index.ts';
import { SWEEP_COLUMNS, sweepRow } from '../../../src-main/output/tables/travel.ts';
import { TURN_COLUMNS, turnRow } from '../../../src-main/output/tables/turn.ts';
import { demonstration } from '../../support/printed.ts';

// A column is one line: a dummy in the list shows up in the table that leaves the board and in what commands print.

const document = demonstration('hairpins-side-steer.json');
const linesOf = (name: 'travel' | 'turn') => [...TABLES[name].of(document)].join('').trimEnd().split('\n');

describe('a column added in one place', () => {
  afterEach(() => {
    for (const columns of [SWEEP_COLUMNS, TURN_COLUMNS] as unknown as { name: string }[][])
      if (columns.at(-1)?.name.startsWith('dummy')) columns.pop();
  });

  test('of the travel: head, every line, and the data of a pose', () => {
    const dummy: (typeof SWEEP_COLUMNS)[number] = {
      name: 'dummy.double',
      unit: 'mm',
      of: ({ state }) => 2 * state.bind,
    };
    (SWEEP_COLUMNS as (typeof dummy)[]).push(dummy);
    const [head, ...lines] = linesOf('travel');
    expect(head?.endsWith(',bind,dummy.double')).toBe(true);
    for (const line of lines) {
      const [bind, double] = line.split(',').slice(-2).map(Number) as [number, number];
      expect(double).toBe(2 * bind);
    }
    const state = createState();
    const status = solveFrontEnd(prepareFrontEnd(resolveLayout(document)), 20, toRadians(0), 0, state);
    const row = sweepRow({ at: { heave: 20, roll: 0, handwheel: 0 }, status, state, bump: 0 });
    expect(row['dummy']).toEqual({ double: 2 * state.bind });
    expect(row['left']).toMatchObject({ wheelRise: state.left.wheelRise });
  });

  test('of the turn: head, every line, and the data of a row', () => {
    const dummy: (typeof TURN_COLUMNS)[number] = {
      name: 'dummy',
      unit: 'deg',
      of: () => Math.PI,
    };
    (TURN_COLUMNS as (typeof dummy)[]).push(dummy);
    const [head, ...lines] = linesOf('turn');
    expect(head?.endsWith(',returnMoment,dummy')).toBe(true);
    expect(lines.length).toBeGreaterThan(10);
    for (const line of lines) expect(line.endsWith(',180')).toBe(true);
    const sweep = sweepTurn(prepareFrontEnd(resolveLayout(document)), 0, toRadians(0), 3);
    expect(turnRow(sweep, 1, undefined)['dummy']).toBe(180);
  });

  test('a failed pose keeps its place in every column', () => {
    const head = headOf(SWEEP_COLUMNS).split(',');
    const state = createState();
    const pose = { at: { heave: 5, roll: 1, handwheel: 2 }, status: 'no-pose', state, bump: 0 } as const;
    expect(sweepRow(pose)).toEqual({ heave: 5, roll: 1, handwheel: 2, status: 'no-pose' });
    expect(head.slice(0, 4)).toEqual(['heave', 'roll', 'handwheel', 'status']);
  });
});

test('a line has an empty cell where a row has no value, and degrees where a column is an angle', () => {
  const columns: Column<{ readonly a: number | undefined }>[] = [
    { name: 'angle', unit: 'deg', of: ({ a }) => a },
    { name: 'plain', unit: 'mm', of: ({ a }) => a },
  ];
  expect(lineOf(columns, { a: Math.PI / 2 })).toBe(`90,${Math.PI / 2}`);
  expect(lineOf(columns, { a: undefined })).toBe(',');
});
