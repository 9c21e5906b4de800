import { execFile } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { describe, expect, test } from 'vitest';
import { createState, prepareFrontEnd, solveFrontEnd } from '../../shared-math/linkage/index.ts';
import { DEGREE, expectClose } from '../support/close.ts';
import { layoutOf, rawLayout } from '../support/layouts.ts';

const root = resolve(import.meta.dirname, '../..');
const folder = mkdtempSync(join(tmpdir(), 'toeboard-line-'));

interface Answer {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}

function toeboard(...args: string[]): Promise<Answer> {
  return new Promise((done) => {
    execFile(
      process.execPath,
      [join(root, 'src-main/command-line.ts'), ...args],
      { cwd: root, maxBuffer: 64e6 },
      (error, out, err) => done({ code: error ? Number(error.code) : 0, out, err }),
    );
  });
}

function file(name: string, content: unknown): string {
  const path = join(folder, name);
  writeFileSync(
    path,
    typeof content === 'string' || content instanceof Buffer ? content : JSON.stringify(content),
  );
  return path;
}

const good = file('good.json', rawLayout());
const demonstrations = readdirSync(join(root, 'projects')).filter(
  (name) => name.endsWith('.json') && name !== 'shop.json',
);

describe('sweep', () => {
  test.each(demonstrations)('answers for %s: 31 poses over its travel, all ok', async (name) => {
    const { code, out, err } = await toeboard('sweep', `projects/${name}`);
    expect({ code, err }).toEqual({ code: 0, err: '' });
    const answer = JSON.parse(out);
    const { travel, name: layout } = JSON.parse(readFileSync(join(root, 'projects', name), 'utf8'));
    expect(answer).toMatchObject({ format: 'toeboard-sweep', version: 1, layout });
    expect(answer.rows).toHaveLength(31);
    expect(answer.rows[0].heave).toBe(-travel.rebound);
    expect(answer.rows[30].heave).toBe(travel.bump);
    for (const row of answer.rows) expect(row).toMatchObject({ roll: 0, handwheel: 0, status: 'ok' });
  });

  test('rows have the shape and the order of the contract, and the figures of the core', async () => {
    const { code, out } = await toeboard(
      'sweep',
      good,
      '--heave=-75:75:75',
      '--roll',
      '-2:2:2',
      '--handwheel',
      '0:90:45',
    );
    expect(code).toBe(0);
    const { rows } = JSON.parse(out);
    expect(
      rows.map((row: { heave: number; roll: number; handwheel: number }) => [
        row.heave,
        row.roll,
        row.handwheel,
      ]),
    ).toEqual(
      [-75, 0, 75].flatMap((heave) =>
        [-2, 0, 2].flatMap((roll) => [0, 45, 90].map((wheel) => [heave, roll, wheel])),
      ),
    );
    const row = rows[25];
    expect(Object.keys(row)).toEqual([
      'heave',
      'roll',
      'handwheel',
      'status',
      'left',
      'right',
      'meanSteer',
      'bumpSteer',
      'totalToeIn',
      'axle',
      'bind',
    ]);
    expect(Object.keys(row.left)).toEqual([
      'steer',
      'toeIn',
      'camber',
      'caster',
      'kingpinInclination',
      'wheelRise',
    ]);
    expect(Object.keys(row.axle)).toEqual(['x', 'y', 'pitch', 'yaw', 'twist']);
    const frontEnd = prepareFrontEnd(layoutOf());
    const state = createState();
    solveFrontEnd(frontEnd, 0, 0, 45 * DEGREE, state);
    const atRide = state.meanSteer;
    solveFrontEnd(frontEnd, 75, 2 * DEGREE, 45 * DEGREE, state);
    expectClose(row.left.steer, state.left.steer / DEGREE, 1e-8, 'steer');
    expectClose(row.bumpSteer, (state.meanSteer - atRide) / DEGREE, 1e-8, 'bump steer');
    expectClose(row.left.wheelRise, state.left.wheelRise, 1e-6, 'rise');
    expectClose(row.axle.twist, state.axle.twist / DEGREE, 1e-8, 'twist');
  });

  test('TO is included where it falls on the step within 1e-9, and not beyond', async () => {
    const heaves = async (range: string) => {
      const { out } = await toeboard('sweep', good, `--heave=${range}`);
      return JSON.parse(out).rows.map((row: { heave: number }) => row.heave);
    };
    expect(await heaves('0:0.3:0.1')).toEqual([0, 0.1, 0.2, 0.3]);
    expect(await heaves('0:10:4')).toEqual([0, 4, 8]);
    expect(await heaves('10:-10:-10')).toEqual([10, 0, -10]);
    expect(await heaves('5:5:0')).toEqual([5]);
    expect(await heaves('-5')).toEqual([-5]);
  });

  test('a pose out of reach has its inputs and status alone; so has a row whose ride height is', async () => {
    const steering = structuredClone(rawLayout()['steering']) as { box: { sectorCentre: number[] } };
    steering.box.sectorCentre = [-800, 500, 600];
    const path = file('long-arm.json', rawLayout({ steering }));
    const { code, out } = await toeboard('sweep', path, '--handwheel', '0:1280:1280', '--heave', '-50:50:50');
    expect(code).toBe(0);
    const { rows } = JSON.parse(out);
    expect(rows[1]).toEqual({ heave: -50, roll: 0, handwheel: 1280, status: 'out-of-reach' });
    expect(rows[3]).toEqual({ heave: 0, roll: 0, handwheel: 1280, status: 'out-of-reach' });
    expect(rows[0].status).toBe('ok');
    expect(out).not.toMatch(/NaN|null|Infinity/);
  });

  test('an axle left free is no-pose in every row', async () => {
    const location = { kind: 'hairpins', left: { framePivot: [0, 415, 330] }, right: 'mirror' };
    const { code, out } = await toeboard(
      'sweep',
      file('free.json', rawLayout({ location })),
      '--heave',
      '-10:10:10',
    );
    expect(code).toBe(0);
    expect(JSON.parse(out).rows).toEqual(
      [-10, 0, 10].map((heave) => ({ heave, roll: 0, handwheel: 0, status: 'no-pose' })),
    );
  });

  test('--csv gives one line a pose under one line of names', async () => {
    const json = JSON.parse((await toeboard('sweep', good, '--heave', '-10:10:10')).out).rows;
    const lines = (await toeboard('sweep', good, '--heave', '-10:10:10', '--csv')).out.trimEnd().split('\n');
    expect(lines).toHaveLength(4);
    const names = lines[0]!.split(',');
    const cells = lines[3]!.split(',');
    expect(cells).toHaveLength(names.length);
    expect(Number(cells[names.indexOf('left.steer')])).toBe(json[2].left.steer);
    expect(Number(cells[names.indexOf('axle.yaw')])).toBe(json[2].axle.yaw);
    expect(cells[names.indexOf('status')]).toBe('ok');
  });
});

describe('turn', () => {
  test.each(demonstrations)('answers for %s: locks, ratio, circle', async (name) => {
    const { code, out, err } = await toeboard('turn', `projects/${name}`);
    expect({ code, err }).toEqual({ code: 0, err: '' });
    const answer = JSON.parse(out);
    expect(answer).toMatchObject({ format: 'toeboard-turn', version: 1, status: 'ok' });
    expect(answer.rows).toHaveLength(41);
    expect(answer.rows[0].handwheel).toBe(answer.right.handwheel);
    expect(answer.rows[40].handwheel).toBe(answer.left.handwheel);
    expect(answer.left.inner).toBeGreaterThan(answer.left.outer);
    expect(answer.left.circleBetweenWalls).toBeGreaterThan(answer.left.circleBetweenKerbs);
  });

  test('its rows are those of the sweep at the same poses', async () => {
    const { rows } = JSON.parse((await toeboard('turn', good, '--heave', '30', '--roll=-1')).out);
    for (const entry of [rows[3], rows[30]]) {
      const swept = await toeboard(
        'sweep',
        good,
        '--heave',
        '30',
        '--roll=-1',
        `--handwheel=${entry.handwheel}`,
      );
      const [row] = JSON.parse(swept.out).rows;
      expectClose(row.left.steer, entry.leftSteer, 1e-7, 'left');
      expectClose(row.meanSteer, entry.meanSteer, 1e-7, 'mean');
    }
    const csv = (await toeboard('turn', good, '--csv')).out.trimEnd().split('\n');
    expect(csv).toHaveLength(42);
  });
});

describe('aim and check', () => {
  test.each(demonstrations)('aim answers for %s', async (name) => {
    const { code, out } = await toeboard('aim', `projects/${name}`);
    expect(code).toBe(0);
    const answer = JSON.parse(out);
    expect(answer).toMatchObject({ format: 'toeboard-aim', version: 1, status: 'ok' });
    expect(answer.worstBumpSteer.bestSpot).toBeLessThanOrEqual(answer.worstBumpSteer.drawn);
    expect(answer.worstBumpSteer.bestSpot).toBeLessThan(0.01);
  });

  test('check says what it read', async () => {
    expect(JSON.parse((await toeboard('check', good)).out)).toEqual({
      format: 'toeboard-check',
      version: 1,
      layout: 'test layout',
      layoutVersion: 1,
      valid: true,
    });
  });
});

describe('a wrong input is one line on stderr, nothing on stdout, exit 1', () => {
  const rubbish = Buffer.alloc(10_000_000);
  for (let i = 0; i < rubbish.length; i += 1) rubbish[i] = (i * 2654435761) >>> 24;
  const cases: Record<string, [string, RegExp]> = {
    'missing file': [join(folder, 'none.json'), /none\.json: no such file$/],
    'a folder': [folder, /is a folder, not a file$/],
    'not JSON': [file('words.json', 'steer left'), /words\.json: not JSON: /],
    'control characters': [file('bell.json', '{"\u0007\n\r": \u001b[31m'), /bell\.json: not JSON: /],
    'a number that JSON has not': [
      file('nan.json', JSON.stringify(rawLayout()).replace('2640', 'NaN')),
      /not JSON/,
    ],
    'a number beyond doubles': [
      file('huge.json', JSON.stringify(rawLayout()).replace('2640', '1e999')),
      /car\.wheelbase: expected a number/,
    ],
    'another format': [join(root, 'package.json'), /package\.json: format: expected "toeboard-layout"/],
    'a newer version': [
      file('new.json', rawLayout({ version: 7 })),
      /new\.json: version: this document is version 7/,
    ],
    'an unknown key': [file('key.json', rawLayout({ colour: 1 })), /key\.json: unknown key "colour"$/],
    'ten megabytes of rubbish': [
      file('rubbish.json', rubbish),
      /rubbish\.json: too large to be a layout document/,
    ],
    'an empty file': [file('empty.json', ''), /not JSON/],
    'an endless device': ['/dev/zero', /too large to be a layout document/],
  };
  test.each(Object.entries(cases))('%s', async (_, [path, line]) => {
    for (const command of ['sweep', 'turn', 'aim', 'check']) {
      const { code, out, err } = await toeboard(command, path);
      expect({ code, out }).toEqual({ code: 1, out: '' });
      expect(err.trimEnd()).toMatch(line);
      expect(err.trimEnd().split('\n')).toHaveLength(1);
      expect(err.trimEnd()).not.toMatch(/\p{Cc}/u);
    }
  });
});

describe('wrong usage is told, exit 2', () => {
  test.each([
    [[]],
    [['swoop', good]],
    [['sweep']],
    [['sweep', good, good]],
    [['sweep', good, '--heave']],
    [['sweep', good, '--heave', '1:2']],
    [['sweep', good, '--heave', '0:10:0']],
    [['sweep', good, '--heave', '0:10:-1']],
    [['sweep', good, '--heave', '0:ten:1']],
    [['sweep', good, '--heave', '0:1e300:1e299']],
    [['sweep', good, '--heave', '0:1:1e-9']],
    [['sweep', good, '--roll', 'NaN:1:1']],
    [['sweep', good, '--csv=yes']],
    [['sweep', good, '--heave=0:1:1', '--heave=0:1:1']],
    [['sweep', good, '--wheels', '4']],
    [['aim', good, '--heave', '0:1:1']],
    [['turn', good, '--heave', '0:2:1']],
  ])('%j', async (args) => {
    const { code, out, err } = await toeboard(...args);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).not.toBe('');
    expect(err).not.toMatch(/ at .*\.ts|Error/);
  });

  test('help is an answer', async () => {
    const { code, out } = await toeboard('--help');
    expect(code).toBe(0);
    for (const word of ['sweep', 'turn', 'aim', 'check']) expect(out).toContain(word);
  });
});
