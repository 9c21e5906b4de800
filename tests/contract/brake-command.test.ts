import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { DEGREE, expectClose } from '../support/close.ts';
import { toeboard } from '../support/command-line.ts';
import { LOCATIONS, rawLayout } from '../support/layouts.ts';

const folder = mkdtempSync(join(tmpdir(), 'toeboard-brake-'));
function file(name: string, content: unknown): string {
  const path = join(folder, name);
  writeFileSync(path, JSON.stringify(content));
  return path;
}

const LEAF_DEMONSTRATION = 'projects/parallel-leaf-cross-steer.json';
const braked = async (...args: string[]) => {
  const { code, out, err } = await toeboard('brake', ...args);
  expect({ code, err }).toEqual({ code: 0, err: '' });
  return JSON.parse(out);
};

describe('brake', () => {
  test('answers for the leaf demonstration: caster falls from 5.2° to about 1° at 0.5 and below none at 0.8', async () => {
    const answer = await braked(LEAF_DEMONSTRATION, '--grip', '0:0.9:0.1');
    expect(answer).toMatchObject({ format: 'toeboard-brake', version: 1, heave: 0, roll: 0, handwheel: 0 });
    expect(answer.windUp.by).toBe('leaves');
    expect(answer.origin).toEqual({ frontShare: 'usual', gravityHeight: 'usual', stiffness: 'worked-out' });
    const caster = answer.rows.map((row: { left: { caster: number } }) => row.left.caster);
    expectClose(caster[0], 5.19, 0.01, 'at rest');
    expectClose(caster[5], 1.1, 0.1, 'at 0.5');
    expect(caster[8]).toBeLessThan(0);
  });

  test('its figures are the handbook’s formulas, worked out by themselves', async () => {
    const { rows, windUp } = await braked(LEAF_DEMONSTRATION, '--grip', '0.5');
    const { car, ride } = JSON.parse(readFileSync(LEAF_DEMONSTRATION, 'utf8'));
    const { length, width, thickness } = ride.spring;
    // Seat 510 from the front eye of 1070: the leaf's 1090 mm are split so. Four cut leaves, one full.
    const [a, b] = [(length * 510) / 1070, (length * 560) / 1070];
    const rate = (206_000 * width * thickness ** 3 * (2 * 4 + 3)) / 12 / ((a * a * b * b) / (a + b));
    expectClose(windUp.stiffness, (2 * rate * a * b * DEGREE) / 1000, 1e-6, 'N·m for each degree');
    const front = car.frontAxleLoad + (0.5 * (car.frontAxleLoad / 0.5) * 1.5 * 355) / car.wheelbase;
    expectClose(rows[0].frontLoad, front, 1e-6, 'front load');
    // The seat is 330 above the road.
    expectClose(rows[0].moment, (0.5 * front * 330) / 1000, 1e-6, 'moment');
    expectClose(rows[0].windUp.left, rows[0].moment / windUp.stiffness, 1e-9, 'wind-up');
  });

  test('says which single change helps the leaf demonstration most, each as the command itself has it for the changed car', async () => {
    const { changes, rows } = await braked(LEAF_DEMONSTRATION, '--grip', '0.7');
    expect(changes.map(({ id }: { id: string }) => id)).toEqual([
      'radius-rods',
      'wedges',
      'thicker',
      'full-leaf',
      'seat',
      'as-it-is',
    ]);
    const of = (id: string) => changes.find((change: { id: string }) => change.id === id);
    expectClose(of('as-it-is').caster, rows[0].left.caster, 1e-9, 'as it is');
    const document = JSON.parse(readFileSync(LEAF_DEMONSTRATION, 'utf8'));
    const changed = async (name: string, over: Record<string, unknown>) => {
      const answer = await braked(file(name, { ...document, ...over }), '--grip', '0.7');
      return answer.rows[0] as { left: { caster: number }; brakeSteer: number };
    };
    const { spring } = document.ride;
    const thicker = await changed('thicker.json', {
      ride: { ...document.ride, spring: { ...spring, thickness: 1.1 * spring.thickness } },
    });
    expectClose(of('thicker').caster, thicker.left.caster, 1e-9, 'thicker');
    expectClose(of('thicker').rideRateTimes, 1.1 ** 3, 1e-9, 'a third stiffer');
    const fuller = await changed('fuller.json', {
      ride: { ...document.ride, spring: { ...spring, leaves: 6, fullLeaves: 2 } },
    });
    expectClose(of('full-leaf').caster, fuller.left.caster, 1e-9, 'one more leaf');
    // Of 2 · 4 + 3 to 2 · 4 + 6, the handbook's formula.
    expectClose(of('full-leaf').rideRateTimes, 14 / 11, 1e-9, 'stiffer by a leaf');
    const held = await changed('held.json', { braking: { windUpStiffness: 1e6 } });
    expectClose(of('radius-rods').caster, held.left.caster, 0.01, 'held');
    // Wedges tip everything on the axle back by 2° about its line.
    expectClose(of('wedges').caster, rows[0].left.caster + 2, 0.01, 'wedges');
  });

  test('an axle that nothing holds has no pose: a name, and no angles', async () => {
    const loose = file('loose.json', rawLayout({ braking: { windUpStiffness: 10 } }));
    const { rows } = await braked(loose, '--grip', '0:0.4:0.2');
    expect(rows.map(({ status }: { status: string }) => status)).toEqual(['ok', 'no-pose', 'no-pose']);
    expect(rows[1]).not.toHaveProperty('left');
    expect(rows[1].windUp.left).toBeGreaterThan(30);
  });

  test('links resist: no wind-up and no stiffness, unless one is typed', async () => {
    const held = await braked(file('links.json', rawLayout()), '--grip', '0.8');
    expect(held.windUp).toMatchObject({ by: 'links', stiffness: null });
    expect(held.rows[0]).toMatchObject({ windUp: { left: 0, right: 0 }, brakeSteer: 0 });
    const gives = await braked(
      file(
        'gives.json',
        rawLayout({ braking: { windUpStiffness: 900, frontShare: 0.48, gravityHeight: 500 } }),
      ),
      '--grip',
      '0.8',
    );
    expect(gives.windUp).toMatchObject({ by: 'typed', stiffness: 900 });
    expect(gives.origin).toEqual({ frontShare: 'told', gravityHeight: 'told', stiffness: 'told' });
    const [row] = gives.rows;
    expectClose(row.windUp.left, row.moment / 900, 1e-9, 'degrees');
    // Rods that give at their brackets: the kingpin goes over by all of it.
    expectClose(held.rows[0].left.caster - row.left.caster, row.windUp.left, 1e-6, 'caster');
  });

  test('--csv has the figures of the JSON', async () => {
    const { rows } = await braked(LEAF_DEMONSTRATION);
    const csv = (await toeboard('brake', LEAF_DEMONSTRATION, '--csv')).out.trimEnd().split('\n');
    expect(csv[0]).toBe(
      'grip,status,deceleration,frontLoad,brakeForce,moment,windUp.left,windUp.right,left.caster,left.steer,right.caster,right.steer,brakeSteer',
    );
    expect(csv).toHaveLength(1 + rows.length);
    expect(rows.map(({ grip }: { grip: number }) => grip)).toEqual([0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9]);
    rows.forEach((row: { grip: number; brakeSteer: number; left: { caster: number } }, i: number) => {
      const cells = (csv[i + 1] as string).split(',');
      expect([Number(cells[0]), Number(cells[8]), Number(cells[12])]).toEqual([
        row.grip,
        row.left.caster,
        row.brakeSteer,
      ]);
    });
  });

  test.each([
    [['--grip', '-0.1'], 2, /^--grip is a share of the load, from 0 to 2\n/],
    [['--grip', '0:3:0.5'], 2, /^--grip is a share of the load/],
    [['--grip', 'dry'], 2, /^--grip: "dry" is not a number\n/],
    [['--hard'], 2, /^unknown option --hard\n/],
  ])('%j is refused', async (args, code, line) => {
    const answer = await toeboard('brake', LEAF_DEMONSTRATION, ...args);
    expect(answer).toMatchObject({ code, out: '' });
    expect(answer.err).toMatch(line);
  });

  test('masses that cannot be are wrong input', async () => {
    const heavy = file(
      'heavy.json',
      rawLayout({ location: LOCATIONS['parallel-leaf'], ride: { sprungMass: 5000 } }),
    );
    const { code, err } = await toeboard('brake', heavy);
    expect(code).toBe(1);
    expect(err).toMatch(/^\S*heavy\.json: ride\.sprungMass: /);
  });

  test('a share that no car has is refused by its path', async () => {
    const { code, err } = await toeboard(
      'brake',
      file('share.json', rawLayout({ braking: { frontShare: 0.95 } })),
    );
    expect(code).toBe(1);
    expect(err).toMatch(/braking\.frontShare/);
  });
});
