import { mkdtempSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { describe, expect, test } from 'vitest';
import { createState, prepareFrontEnd, solveFrontEnd } from '../../shared-math/linkage/index.ts';
import { COMMANDS } from '../../src-main/commands/index.ts';
import { DEGREE, expectClose } from '../support/close.ts';
import { toeboard } from '../support/command-line.ts';
import { layoutOf, rawLayout } from '../support/layouts.ts';
import { measured } from '../support/vector-chain.ts';

const root = resolve(import.meta.dirname, '../..');
const folder = mkdtempSync(join(tmpdir(), 'toeboard-line-'));

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

describe('turn through the steering shaft', () => {
  test('adds what the shaft does at the wheels, and changes nothing else', async () => {
    const file = 'projects/parallel-leaf-cross-steer.json';
    const plain = JSON.parse((await toeboard('turn', file)).out);
    const { shaft, ...rest } = JSON.parse((await toeboard('turn', file, '--shaft')).out);
    expect(rest).toEqual(plain);
    expect(shaft.rows.length).toBe(plain.rows.length);
    expect(shaft.swing).toBeGreaterThan(2);
    expect(shaft.worstOff).toBeGreaterThan(0);
    const ahead = shaft.rows.map(
      ({ handwheel, boxHandwheel }: Record<string, number>) =>
        (boxHandwheel as number) - (handwheel as number),
    );
    expect(Math.max(...ahead.map(Math.abs))).toBeLessThanOrEqual(shaft.swing);
    expect(Math.max(...ahead.map(Math.abs))).toBeGreaterThan(shaft.swing / 4);
    const [head, first] = (await toeboard('turn', file, '--shaft', '--csv')).out.split('\n') as [
      string,
      string,
    ];
    expect(head).toMatch(/,returnMoment,boxHandwheel,.*,shaftOff$/);
    expect(first.split(',').length).toBe(head.split(',').length);
    expect((await toeboard('turn', good, '--shaft')).code).toBe(1);
    expect((await toeboard('turn', good, '--shaft')).err).toMatch(/shaft: there is no steering shaft/);
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
    expect(answer.left.circleByOuterWheel).toBeLessThan(answer.left.circleBetweenKerbs);
    expect(answer.left.circleByInnerWheel).toBeGreaterThan(answer.left.circleBetweenKerbs);
    const { car } = JSON.parse(readFileSync(`projects/${name}`, 'utf8'));
    if (car.noseAhead === undefined || car.noseWidth === undefined)
      expect(answer.left.circleBetweenWalls).toBeNull();
    else expect(answer.left.circleBetweenWalls).toBeGreaterThan(answer.left.circleBetweenKerbs);
    const straight = answer.rows.filter((row: { meanSteer: number }) => Math.abs(row.meanSteer) < 3);
    expect(straight.length).toBeGreaterThan(0);
    for (const row of straight) expect(row.ackermannPercent).toBeNull();
    expect(answer.parkingEffort.worst.rim).toBeGreaterThanOrEqual(answer.parkingEffort.rim);
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

  test.each(['projects/wishbone-side-steer.json', 'projects/parallel-leaf-cross-steer.json'])(
    'aim’s figure with one wheel over a bump is the most that sweep finds within each wheel’s travel: %s',
    async (path) => {
      const { worstBumpSteer } = JSON.parse((await toeboard('aim', path)).out);
      const { travel, axle } = JSON.parse(readFileSync(path, 'utf8'));
      // Half the distance across of the wheel centres; the demonstrations’ right sides mirror their left ones.
      const half = axle.left.wheelCentre[1];
      const { roll } = travel;
      const swept = await toeboard(
        'sweep',
        path,
        `--heave=${-travel.rebound}:${travel.bump}:${travel.bump / 60}`,
        `--roll=${-roll}:${roll}:${roll / 10}`,
      );
      const inside = (mm: number) => mm >= -travel.rebound - 1e-6 && mm <= travel.bump + 1e-6;
      const rows = (
        JSON.parse(swept.out).rows as { heave: number; roll: number; bumpSteer: number }[]
      ).filter((row) => {
        const apart = half * Math.sin((row.roll * Math.PI) / 180);
        return inside(row.heave + apart) && inside(row.heave - apart);
      });
      const most = Math.max(...rows.map((row) => Math.abs(row.bumpSteer)));
      expect(worstBumpSteer.oneWheel).toBeGreaterThan(0.999 * most);
      // The grid stops up to a step short of the edge on which the figure is largest.
      expect(worstBumpSteer.oneWheel).toBeLessThan(1.03 * most);
      expect(worstBumpSteer.oneWheel).toBeGreaterThan(1.1 * worstBumpSteer.drawn);
    },
  );

  test('check says what it read', async () => {
    expect(JSON.parse((await toeboard('check', good)).out)).toEqual({
      format: 'toeboard-check',
      version: 1,
      layout: 'test layout',
      layoutVersion: 4,
      valid: true,
      tyresIntoGround: { left: 0, right: 0 },
      stops: [],
      points: { measured: 0, planned: 0, guessed: 8, all: 8 },
      guessed: [
        'axle.left.kingpinTop',
        'axle.left.kingpinBottom',
        'axle.left.wheelCentre',
        'axle.left.tieRodBall',
        'location.left.framePivot',
        'steering.dragLinkBall',
        'steering.box.pitmanBall',
        'steering.box.sectorCentre',
      ],
    });
  });

  test('check tells what is given from what is assumed', async () => {
    const origins = {
      'axle.right.kingpinTop': 'tape',
      'steering.box.pitmanBall': 'plan',
      'steering.dragLinkBall': 'photo',
    };
    const { points, guessed } = JSON.parse(
      (await toeboard('check', file('known.json', rawLayout({ origins })))).out,
    );
    expect(points).toEqual({ measured: 2, planned: 1, guessed: 5, all: 8 });
    expect(guessed).not.toContain('axle.left.kingpinTop');
    expect(guessed).toContain('steering.box.sectorCentre');
  });

  test('check names the gap where tyres and ground disagree', async () => {
    const sunk = file(
      'sunk.json',
      rawLayout({ car: { ...(rawLayout()['car'] as object), tyreRadius: 406.4 } }),
    );
    const { code, out } = await toeboard('check', sunk);
    expect(code).toBe(0);
    const { tyresIntoGround, stops } = JSON.parse(out);
    expect(tyresIntoGround.left).toBeCloseTo(76.4, 9);
    expect(stops).toEqual([
      'The tyres reach 76.4 mm into the ground: wheel centre 330.0 mm up, tyre radius 406.4 mm',
    ]);
  });
});

describe('shaft', () => {
  const route = {
    column: { end: [-1500, 300, 800], axis: [0.8, 0, -0.3] },
    box: { end: [-950, 500, 486], axis: [2, 0, 0] },
    joints: [
      { kind: 'single', centre: [-1404, 303, 760] },
      { kind: 'double', centre: [-1200, 420, 560], limit: 45 },
      { kind: 'single', centre: [-1000, 500, 490] },
    ],
    shafts: [{ clock: 10 }, { clock: -75.5 }],
    supports: [{ shaft: 0, at: 0.5 }],
  };

  test('has the shape and the order of the contract, and the figures of the core', async () => {
    const { code, out, err } = await toeboard('shaft', file('shaft.json', rawLayout({ shaft: route })));
    expect({ code, err }).toEqual({ code: 0, err: '' });
    const answer = JSON.parse(out);
    expect(Object.keys(answer)).toEqual([
      'format',
      'version',
      'joints',
      'shafts',
      'ratio',
      'best',
      'offAxis',
    ]);
    expect(answer).toMatchObject({ format: 'toeboard-shaft', version: 1 });
    expect(answer.joints.map(Object.keys)).toEqual(Array(3).fill(['kind', 'angle', 'limit']));
    expect(answer.joints.map(({ kind, limit }: { kind: string; limit: number }) => [kind, limit])).toEqual([
      ['single', 30],
      ['double', 45],
      ['single', 30],
    ]);
    expect(answer.shafts.map(Object.keys)).toEqual(Array(2).fill(['length', 'clock', 'bestClock']));
    expect(answer.shafts.map(({ clock }: { clock: number }) => clock)).toEqual([10, -75.5]);
    for (const part of ['ratio', 'best']) expect(Object.keys(answer[part])).toEqual(['min', 'max', 'swing']);
    expect(Object.keys(answer.offAxis)).toEqual(['column', 'box']);

    // By hand: the first joint's angle, the first length, and how far the ends lie off their axes.
    const [d0, d1] = [
      [0.8, 0, -0.3],
      [204, 117, -200],
    ];
    const cosine = (0.8 * 204 + 0.3 * 200) / Math.hypot(...d0) / Math.hypot(...d1);
    expectClose(answer.joints[0].angle, Math.acos(cosine) / DEGREE, 1e-9, 'angle');
    expectClose(answer.shafts[0].length, Math.hypot(...d1), 1e-9, 'length');
    const off = (0.8 * -40 + 0.3 * 96) / Math.hypot(...d0);
    expectClose(answer.offAxis.column, Math.hypot(3, off), 1e-9, 'off the column');
    expectClose(answer.offAxis.box, 4, 1e-9, 'off the box');
    // Against vectors composed directly, as drawn and as reported to be best.
    const directions = [d0, d1, [200, 80, -70], [2, 0, 0]] as [number, number, number][];
    const kinds = ['single', 'double', 'single'] as const;
    for (const [part, clocks] of [
      ['ratio', [10, -75.5]],
      ['best', answer.shafts.map(({ bestClock }: { bestClock: number }) => bestClock)],
    ] as const) {
      const seen = measured({ directions, kinds, clocks: clocks.map((clock: number) => clock * DEGREE) });
      expectClose(seen.swing / DEGREE, answer[part].swing, 1e-3, `${part} swing`);
      expectClose(seen.min, answer[part].min, 1e-4, `${part} min`);
      expectClose(seen.max, answer[part].max, 1e-4, `${part} max`);
    }
    expect(answer.best.swing).toBeLessThan(answer.ratio.swing);
  });

  test('one joint: no shafts; a folded one: no ratio; no shaft at all: said', async () => {
    const alone = { ...route, joints: [route.joints[0]], shafts: [], supports: [] };
    const one = JSON.parse((await toeboard('shaft', file('one.json', rawLayout({ shaft: alone })))).out);
    expect(one.shafts).toEqual([]);
    expect(one.best).toEqual(one.ratio);
    expectClose(one.ratio.min, Math.cos(one.joints[0].angle * DEGREE), 1e-12);
    const back = { ...alone, box: { end: [-1500, 300, 486], axis: [-1, 0, 0] } };
    const folded = JSON.parse((await toeboard('shaft', file('back.json', rawLayout({ shaft: back })))).out);
    expect(folded).toMatchObject({ ratio: null, best: null });
    expect(folded.joints[0].angle).toBeGreaterThan(90);
    expect(await toeboard('shaft', good)).toEqual({
      code: 1,
      out: '',
      err: `${good}: shaft: there is no steering shaft in this layout\n`,
    });
  });

  test('a bad shaft is one line with its place, exit 1', async () => {
    const path = file('short.json', rawLayout({ shaft: { ...route, shafts: [{ clock: 0 }] } }));
    const { code, out, err } = await toeboard('shaft', path);
    expect({ code, out }).toEqual({ code: 1, out: '' });
    expect(err).toBe(
      `${path}: shaft.shafts: expected 2 for 3 joints (one between each joint and the next), found 1\n`,
    );
  });
});

describe('spline', () => {
  const answered = async (...args: string[]) => {
    const { code, out, err } = await toeboard('spline', ...args);
    expect({ code, err }).toEqual({ code: 0, err: '' });
    return JSON.parse(out);
  };

  test('from a full count, in inches or in mm; from a half count', async () => {
    const inches = await answered('--diameter', '0.7708 in', '--count', '36');
    expect(inches).toMatchObject({
      format: 'toeboard-spline',
      version: 1,
      measured: { counted: 36, over: 'circle', missing: 0 },
      teeth: 36,
      tradeName: '3/4-36',
      verdict: 'choose',
    });
    expectClose(inches.measured.outsideDiameter, 19.57832, 1e-9);
    expect(inches.candidates[0]).toMatchObject({
      teeth: 36,
      pitch: 48,
      standard: expect.stringMatching(/B92\.1/),
    });
    expect(inches.neighbours[0].between).toHaveLength(2);
    const half = await answered('--diameter=19.57832mm', '--half=18');
    expect(half.candidates).toEqual(inches.candidates);
    expect(half.measured).toMatchObject({ counted: 18, over: 'half' });
    const blank = await answered('--diameter', '0.7708', '--count', '32', '--missing', '4');
    expect(blank.teeth).toBe(36);
  });

  test('where nothing standard fits it says so and asks for a trial fit', async () => {
    const answer = await answered('--diameter', '0.71', '--count', '30');
    expect(answer).toMatchObject({ verdict: 'trial-fit', candidates: [] });
    expect(answer.sentence).toMatch(/Trial-fit/);
  });

  test('a full count stands, also as two halves; a misread caliper still names the nearest form', async () => {
    for (const count of [
      ['--count', '36'],
      ['--half', '18', '--other-half', '18'],
    ]) {
      const answer = await answered('--diameter', '3/4', ...count);
      expect(answer).toMatchObject({ teeth: 36, verdict: 'trial-fit' });
      expect(answer.candidates[0]).toMatchObject({ teeth: 36, pitch: 48, module: null, fit: 'under' });
    }
    const over = await answered('--diameter', '25.1 mm', '--count', '24');
    expect(over.candidates).toContainEqual(
      expect.objectContaining({ module: 1, form: 'metric-30', note: '0.0039 in over: measure again' }),
    );
  });

  test('a measure that is none is one line, exit 1', async () => {
    const { code, out, err } = await toeboard('spline', '--diameter', '99 in', '--count', '30');
    expect({ code, out }).toEqual({ code: 1, out: '' });
    expect(err).toBe('spline: the outside diameter must be 5 to 150 mm\n');
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
    'brackets without end': [
      file('deep.json', '['.repeat(1_900_000)),
      /deep\.json: brackets stand in one another more than 64 deep$/,
    ],
    'a name that would turn a line around': [
      join(folder, `\u001b[31m\u202e\n${'x'.repeat(180)}.json`),
      /^…x{20,54}\.json: no such file$/,
    ],
    'an empty file': [file('empty.json', ''), /not JSON/],
    'an endless device': ['/dev/zero', /too large to be a layout document/],
  };
  test.each(Object.entries(cases))('%s', async (_, [path, line]) => {
    for (const command of ['sweep', 'turn', 'aim', 'shaft', 'check']) {
      const { code, out, err } = await toeboard(command, path);
      expect({ code, out }).toEqual({ code: 1, out: '' });
      expect(err.trimEnd()).toMatch(line);
      expect(err.trimEnd().split('\n')).toHaveLength(1);
      expect(err.trimEnd()).not.toMatch(/\p{Cc}/u);
    }
  });
});

describe('wrong usage is told, exit 2', () => {
  const harm = `\u001b[31m\u202e\r\n${'x'.repeat(200)}`;
  test.each([
    [[harm]],
    [['sweep', good, harm]],
    [['sweep', good, `--${harm}`]],
    [['sweep', good, '--heave', harm]],
    [['sheet', good, '--out', 'x.pdf', '--paper', harm]],
    [['ride', good, '--speed', '30', '--road', harm]],
    [['tune', good, '--free', harm]],
    [['spline', '--diameter', harm, '--count', '30']],
  ])(
    'in one line that shows nothing of an argument that could do harm, and sixty signs of it: %#',
    async (args) => {
      const { code, out, err } = await toeboard(...args);
      expect({ code, out }).toEqual({ code: 2, out: '' });
      const [line = '', ...others] = err.trimEnd().split('\n');
      expect(others.every((other) => other.startsWith('usage: '))).toBe(true);
      expect(line).not.toMatch(/[\p{Cc}\p{Cf}]|x{61}/u);
      expect(line).toContain('x…');
    },
  );

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
    [['shaft']],
    [['shaft', good, good]],
    [['shaft', good, '--clock', '3']],
    [['spline']],
    [['spline', '--count', '36']],
    [['spline', '--diameter', '3/4']],
    [['spline', '--diameter', '3/4', '--count', '36', '--half', '18']],
    [['spline', '--diameter', 'wide', '--count', '36']],
    [['spline', '--diameter', '3/4', '--count', '36.5']],
    [['spline', '--diameter', '3/4', '--count', '-36']],
    [['spline', good, '--diameter', '3/4', '--count', '36']],
  ])('%j', async (args) => {
    const { code, out, err } = await toeboard(...args);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).not.toBe('');
    expect(err).not.toMatch(/ at .*\.ts|Error/);
  });

  test('help is an answer', async () => {
    const { code, out } = await toeboard('--help');
    expect(code).toBe(0);
    for (const word of ['sweep', 'turn', 'aim', 'shaft', 'spline', 'check']) expect(out).toContain(word);
  });

  test.each(COMMANDS.map((command) => [command.name, command] as const))(
    '%s answers --help, alone or beside anything else, on stdout',
    async (name, { usage, about }) => {
      for (const args of [['--help'], ['-h', 'no-such-file.json', '--no-such-option']]) {
        const { code, out, err } = await toeboard(name, ...args);
        expect({ code, err }).toEqual({ code: 0, err: '' });
        expect(out).toContain(usage);
        expect(out).toContain(about);
      }
    },
  );
});

describe('map', () => {
  test.each(demonstrations)(
    'answers for %s: a window about the pitman ball, its least and its ridge',
    async (name) => {
      const { code, out, err } = await toeboard('map', `projects/${name}`, '--points', '12x9');
      expect({ code, err }).toEqual({ code: 0, err: '' });
      const answer = JSON.parse(out);
      expect(answer).toMatchObject({ format: 'toeboard-map', version: 1 });
      expect(answer.across).toHaveLength(12);
      expect(answer.up).toHaveLength(9);
      expect(answer.worstBumpSteer).toHaveLength(9);
      for (const row of answer.worstBumpSteer) expect(row).toHaveLength(12);
      expect(answer.status.flat()).toHaveLength(108);
      const figures = answer.worstBumpSteer.flat().filter((value: number | null) => value !== null);
      expect(answer.least.worstBumpSteer).toBe(Math.min(...figures));
      expect(answer.bestSpot.worstBumpSteer).toBeLessThanOrEqual(answer.least.worstBumpSteer);
      expect(answer.ridge.length).toBeGreaterThan(5);
      expect(out).not.toMatch(/NaN|Infinity/);
    },
  );

  test('a place of it is what a sweep with the pitman ball there says', async () => {
    const { out } = await toeboard('map', good, '--window=-900:-700,300:400', '--points', '3');
    const answer = JSON.parse(out);
    expect(answer.axes).toEqual(['x', 'z']);
    expect(answer.kept).toEqual({ y: 500 });
    const steering = structuredClone(rawLayout()['steering']) as { box: Record<string, unknown> };
    steering.box = { ...steering.box, pitmanBall: [-800, 500, 400], sectorCentre: [-800, 500, 540] };
    const swept = await toeboard('sweep', file('there.json', rawLayout({ steering })));
    const worst = Math.max(
      ...JSON.parse(swept.out).rows.map((row: { bumpSteer: number }) => Math.abs(row.bumpSteer)),
    );
    expectClose(answer.worstBumpSteer[2][1], worst, 1e-9, 'worst');
  });

  test('--each-wheel judges a place with each wheel anywhere in its own travel, as aim does there', async () => {
    const args = ['map', good, '--window=-900:-700,300:400', '--points', '3'];
    const heave = JSON.parse((await toeboard(...args)).out);
    const each = JSON.parse((await toeboard(...args, '--each-wheel')).out);
    expect([heave.over, each.over]).toEqual(['heave', 'each-wheel']);
    const steering = structuredClone(rawLayout()['steering']) as { box: Record<string, unknown> };
    steering.box = { ...steering.box, pitmanBall: [-800, 500, 400], sectorCentre: [-800, 500, 540] };
    const there = JSON.parse((await toeboard('aim', file('each.json', rawLayout({ steering })))).out);
    expectClose(each.worstBumpSteer[2][1] / there.worstBumpSteer.oneWheel, 1, 0.01);
    expectClose(heave.worstBumpSteer[2][1], there.worstBumpSteer.drawn, 1e-9);
  });

  test('--csv gives a line for each place, lowest row first, and names what is hit', async () => {
    const obstacles = [
      {
        name: 'Wall',
        role: 'other',
        kind: 'box',
        centre: [-700, 500, 340],
        size: [20, 300, 400],
        mirrored: false,
      },
    ];
    const path = file('wall.json', rawLayout({ obstacles }));
    const { code, out } = await toeboard(
      'map',
      path,
      '--window',
      '-900:-500,250:450',
      '--points',
      '5x3',
      '--csv',
    );
    expect(code).toBe(0);
    const lines = out.trimEnd().split('\n');
    expect(lines[0]).toBe('x,z,worstBumpSteer,status,hit');
    expect(lines).toHaveLength(16);
    expect(lines[1]).toMatch(/^-900,250,[\d.]+,hit,drag-link\|obstacle-0$/);
    expect(lines[15]!.split(',').slice(0, 2)).toEqual(['-500', '450']);
  });

  test('an axle left free has no map: one line, exit 1', async () => {
    const location = { kind: 'hairpins', left: { framePivot: [0, 415, 330] }, right: 'mirror' };
    const { code, out, err } = await toeboard('map', file('free-map.json', rawLayout({ location })));
    expect({ code, out }).toEqual({ code: 1, out: '' });
    expect(err.trimEnd()).toMatch(
      /free-map\.json: the links leave the axle free to move, so there is nothing to map$/,
    );
  });
});

describe('tune', () => {
  const bad = 'projects/hairpins-box-too-low.json';

  test('answers with a proposal that reads, its figures before and after, and every hold', async () => {
    const { code, out, err } = await toeboard(
      'tune',
      bad,
      '--free',
      'box-up=90,box-along',
      '--within=-120:30',
      '--json',
    );
    expect({ code, err }).toEqual({ code: 0, err: '' });
    const answer = JSON.parse(out);
    expect(answer).toMatchObject({ format: 'toeboard-tune', version: 1, seed: 1, improved: true });
    expect(answer.after.worstBumpSteerHeave).toBeLessThan(answer.before.worstBumpSteerHeave / 5);
    const { out: aimed } = await toeboard('aim', file('aimed.json', answer.proposal));
    expect(answer.after.worstBumpSteerOneWheel).toBe(JSON.parse(aimed).worstBumpSteer.oneWheel);
    expect(Object.keys(answer.moves)).toEqual(['box-up', 'box-along']);
    expect(answer.moves['box-along']).toBeGreaterThanOrEqual(-120);
    expect(Object.keys(answer.holds)).toEqual(expect.arrayContaining(['reach', 'clearance']));
    // The proposal is a layout, and sweeps to what it promises.
    const swept = await toeboard('sweep', file('proposal.json', answer.proposal));
    const rows = JSON.parse(swept.out).rows as { bumpSteer: number }[];
    expectClose(
      Math.max(...rows.map((row) => Math.abs(row.bumpSteer))),
      answer.after.worstBumpSteerHeave,
      1e-9,
    );
    const again = await toeboard(
      'tune',
      bad,
      '--free',
      'box-up=90,box-along',
      '--within=-120:30',
      '--json',
      '--seed',
      '1',
    );
    expect(again.out).toBe(out);
  });

  test('in words: what to move, before and after', async () => {
    const { code, out } = await toeboard('tune', bad, '--free', 'box-up', '--hold', 'ratio=10:20,tilt');
    expect(code).toBe(0);
    expect(out).toMatch(/^Side steer, box too low\nProposed:\n {2}box-up +\+\d+\.\d\d mm\n/);
    expect(out).toMatch(/Bump steer over heave +\d+\.\d{3}° +\d+\.\d{3}°/);
  });

  test.each([
    [
      ['--free', 'bar-axle-up'],
      /bar-axle-up: the spring keeps the axle centred: there is no lateral bar to move$/,
    ],
    [
      ['--free', 'box-up=5', '--hold', 'circle=4000'],
      /not everything can hold within these bounds; at best misses the turning circle by [\d.]+ mm$/,
    ],
  ])('%j cannot be: one line, exit 1', async (options, line) => {
    const { code, out, err } = await toeboard('tune', bad, ...options);
    expect({ code, out }).toEqual({ code: 1, out: '' });
    expect(err.trimEnd()).toMatch(line);
    expect(err.trimEnd().split('\n')).toHaveLength(1);
  });
});

describe('map and tune: a wrong input is one line, wrong usage exit 2', () => {
  test('a missing file, and one that is no layout', async () => {
    for (const [path, line] of [
      [join(folder, 'none.json'), /none\.json: no such file$/],
      [
        file(
          'no-size.json',
          rawLayout({
            obstacles: [
              { kind: 'box', name: 'A', role: 'other', centre: [0, 0, 0], size: [0, 1, 1], mirrored: false },
            ],
          }),
        ),
        /obstacles\[0\]\.size\[0\]: must be more than 0/,
      ],
    ] as const)
      for (const command of [['map'], ['tune', '--free', 'box-up']]) {
        const { code, out, err } = await toeboard(...command, path);
        expect({ code, out }).toEqual({ code: 1, out: '' });
        expect(err.trimEnd()).toMatch(line);
        expect(err.trimEnd().split('\n')).toHaveLength(1);
      }
  });

  test.each([
    [['map']],
    [['map', good, '--window', '1:2']],
    [['map', good, '--window', '-900:-900,200:300']],
    [['map', good, '--window', '-900:-800,300:300']],
    [['map', good, '--window', 'a:b,c:d']],
    [['map', good, '--window', '-1e9:0,0:1']],
    [['map', good, '--points', '1']],
    [['map', good, '--points', '96x']],
    [['map', good, '--points', '99999']],
    [['map', good, '--free', 'box-up']],
    [['tune', good]],
    [['tune', good, '--free', '']],
    [['tune', good, '--free', 'box-sideways']],
    [['tune', good, '--free', 'box-up,box-up']],
    [['tune', good, '--free', 'box-up', '--within', '0']],
    [['tune', good, '--free', 'box-up', '--within', '20:-20']],
    [['tune', good, '--free', 'box-up=20:-20']],
    [['tune', good, '--free', 'box-up', '--within=-5']],
    [['tune', good, '--free', 'box-up=much']],
    [['tune', good, '--free', 'box-up', '--hold', 'circle']],
    [['tune', good, '--free', 'box-up', '--hold', 'ratio=20:10']],
    [['tune', good, '--free', 'box-up', '--hold', 'colour']],
    [['tune', good, '--free', 'box-up', '--hold', 'tilt,tilt']],
    [['tune', good, '--free', 'box-up', '--seed', '-1']],
    [['tune', good, '--free', 'box-up', '--seed', 'one']],
  ])('%j', async (args) => {
    const { code, out, err } = await toeboard(...args);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toMatch(/\nusage: (map|tune) LAYOUT\.json/);
    expect(err).not.toMatch(/ at .*\.ts|Error/);
  });

  test('both are in the help', async () => {
    const { out } = await toeboard('--help');
    expect(out).toContain('map LAYOUT.json');
    expect(out).toContain('tune LAYOUT.json --free');
  });
});
