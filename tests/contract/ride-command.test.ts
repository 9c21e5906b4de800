import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { type RideRun, type RoadProfile, runRide } from '../../shared-math/ride/index.ts';
import { DEGREE, expectClose } from '../support/close.ts';
import { toeboard } from '../support/command-line.ts';
import { documentOf, rawLayout } from '../support/layouts.ts';

const folder = mkdtempSync(join(tmpdir(), 'toeboard-ride-'));

const ride = (...args: string[]) => toeboard('ride', ...args);

function file(name: string, content: string): string {
  const path = join(folder, name);
  writeFileSync(path, content);
  return path;
}

const good = file('good.json', JSON.stringify(rawLayout()));
const USAGE = /\nusage: ride LAYOUT\.json --road KIND/;

function core(road: RoadProfile, kmh: number, seconds: number): RideRun {
  const run = runRide(documentOf(rawLayout()), road, { speed: (kmh * 1e6) / 3600, seconds });
  if (!run.ok) throw new Error(run.failure.reason);
  return run.value;
}

describe('ride', () => {
  test('answers with the figures of the core, in mm and degrees, a row each 1/500 s', async () => {
    const { code, out, err } = await ride(
      ...[good, '--road', 'one-wheel:side=right,height=30,start=500', '--speed', '36', '--seconds=0.4'],
    );
    expect({ code, err }).toEqual({ code: 0, err: '' });
    const answer = JSON.parse(out);
    const road: RoadProfile = { kind: 'one-wheel', side: 'right', height: 30, length: 1000, start: 500 };
    expect(answer).toMatchObject({
      format: 'toeboard-ride',
      version: 1,
      layout: 'test layout',
      road,
      speed: 36,
    });
    const run = core(road, 36, 0.4);
    expect(answer.rows).toHaveLength(201);
    const row = answer.rows[60];
    expect(Object.keys(row)).toEqual(
      'time status flags distance roadLeft roadRight heave roll frameRise frameRoll loadLeft loadRight leftSteer rightSteer meanSteer bumpSteer totalToeIn kick'.split(
        ' ',
      ),
    );
    expect(row).toMatchObject({ time: 0.12, status: 'ok' });
    expectClose(row.heave, run.heave[60]!, 1e-12, 'heave');
    expectClose(row.roll * DEGREE, run.roll[60]!, 1e-14, 'roll');
    expectClose(row.kick * DEGREE, run.kick[60]!, 1e-12, 'kick');
    // The right wheel is up, so the left side is down.
    expect(row.roll).toBeLessThan(-0.5);
    const worst = answer.rows.reduce((a: typeof row, b: typeof row) =>
      Math.abs(b.bumpSteer) > Math.abs(a.bumpSteer) ? b : a,
    );
    expect(answer.worst.bumpSteer).toEqual({ value: worst.bumpSteer, time: worst.time });
    expect(answer.ride.origin).toMatchObject({ springRate: 'usual', sprungMass: 'worked-out' });
  });

  test('as a table: a heading, then the same rows', async () => {
    const args = [good, '--road=random', '--class=b', '--seed=7', '--speed=80', '--seconds=0.1'];
    const { code, out } = await ride(...args, '--csv');
    expect(code).toBe(0);
    const [heading, ...lines] = out.trimEnd().split('\n');
    const { rows } = JSON.parse((await ride(...args)).out);
    expect(lines).toHaveLength(51);
    const names = heading!.split(',');
    for (const i of [0, 17, 50]) {
      const cells = lines[i]!.split(',');
      for (const [at, name] of names.entries())
        expect(cells[at]).toBe(name === 'flags' ? rows[i].flags.join(' ') : String(rows[i][name]));
    }
    // The same seed is the same road, another is another.
    expect((await ride(...args, '--csv')).out).toBe(out);
    expect((await ride(...args.with(3, '--seed=8'), '--csv')).out).not.toBe(out);
  });

  test('a measured road is driven as it is; a wrong one is refused with its line', async () => {
    const table = 'distance;left;right\n# by laser\n0;0;0\n\n500;12.5;0\n1000;0;0\n';
    const { out } = await ride(
      ...[good, `--road=measured:file=${file('road, left lane.csv', table)}`, '--speed=36', '--seconds=0.1'],
    );
    const { road, rows } = JSON.parse(out);
    expect(road).toEqual({ kind: 'measured', rows: 3, from: 0, to: 1000 });
    expectClose(rows[25].roadLeft, 12.5, 1e-9, 'crest');
    expectClose(rows[40].roadLeft, 5, 1e-9, 'beyond');
    for (const [name, text, reason] of [
      ['empty.csv', '', 'holds no road: there is no line with three numbers'],
      ['head.csv', 'distance,left,right\n', 'holds no road: there is no line with three numbers'],
      ['one.csv', '0,0,0\n', 'holds one place only: a road needs at least two lines'],
      ['word.csv', '0,0,0\n\n100,flat,0\n', 'line 3: "flat" is not a number'],
      [
        'two.csv',
        '0,0,0\n100,1\n',
        'line 2: expected three numbers (distance, left, right in mm), found 2 entries',
      ],
      ['back.csv', '0,0,0\n100,1,1\n90,0,0\n', 'line 3: the distance must grow: 90 comes after 100'],
      ['high.csv', '0,0,0\n100,1,5000\n', 'line 2: heights go from -1000 to 1000 mm, found 1 and 5000'],
    ] as const) {
      const path = file(name, text);
      const { code, out: none, err } = await ride(good, '--road', `measured:file=${path}`, '--speed', '36');
      expect({ code, out: none, err }).toEqual({ code: 1, out: '', err: `${path}: ${reason}\n` });
    }
  });

  test.each([
    [['--speed=36'], /^--road is missing\n/],
    [['--road=bump'], /^--speed is missing\n/],
    [['--road=bump', '--speed=0'], /^--speed must be more than 0 and at most 300, found 0\n/],
    [['--road=bump', '--speed=-5'], /^--speed must be more than 0/],
    [['--road=bump', '--speed=fast'], /^--speed: "fast" is not a number\n/],
    [['--road=moon', '--speed=36'], /^--road: there is no road "moon"; there are flat, one-wheel, bump/],
    [
      ['--road=bump:hight=3', '--speed=36'],
      /^--road: "hight=3" tells nothing of bump; it takes height=…, length=…, start=…\n/,
    ],
    [['--road=bump:height=3,height=4', '--speed=36'], /^--road: height is given twice\n/],
    [['--road=bump:height=tall', '--speed=36'], /^--road: height "tall" is not a number\n/],
    [['--road=bump:length=0', '--speed=36'], /^--road: road\.length: goes from 20 to 100000 mm, found 0\n/],
    [['--road=one-wheel:side=both', '--speed=36'], /^--road: side is left or right, found "both"\n/],
    [
      ['--road=kerb:height=340', '--speed=36'],
      /^--road: road\.height: a kerb of 340 mm is no lower than the wheel's middle/,
    ],
    [['--road=random', '--class=Q', '--speed=36'], /^--road: road\.class: expected one of A, B/],
    [
      ['--road=random', '--seed=1.5', '--speed=36'],
      /^--road: road\.seed: expected a whole number, found 1\.5\n/,
    ],
    [['--road=bump', '--seed=2', '--speed=36'], /^--seed belongs to --road random\n/],
    [['--road=measured', '--speed=36'], /^--road measured needs its table/],
    [
      ['--road=bump', '--speed=36', '--seconds=0'],
      /^--seconds must be more than 0 and at most 120, found 0\n/,
    ],
  ])('wrong use is one line and the usage, exit 2: %j', async (args, message) => {
    const { code, out, err } = await ride(good, ...args);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toMatch(message);
    expect(err).toMatch(USAGE);
  });

  test('a car that cannot ride is refused with its place, exit 1', async () => {
    for (const [name, own, reason] of [
      ['negative', { sprungMass: -300 }, 'ride.sprungMass: must be more than 0, found -300'],
      [
        'light',
        { sprungMass: 600 },
        'ride.sprungMass: 600 kg (1323 lb) is more than the front axle load of 4900 N leaves for the springs to carry: 499.7 kg (1102 lb) with the axle itself',
      ],
      [
        'heavy',
        { unsprungMass: 800 },
        'ride.unsprungMass: 800 kg (1764 lb) is all that the front axle load of 4900 N comes to, 499.7 kg (1102 lb): nothing is left for the springs to carry',
      ],
      [
        'stiff',
        { unsprungMass: 2, tyreRate: 3000 },
        /^ride: springs and tyres are so stiff for these masses that the axle would swing \d+ times a second; the steps follow at most 80$/,
      ],
      [
        'strong',
        { damper: { bump: 90, rebound: 90 } },
        'ride.damper: the dampers are so strong for these masses that the steps cannot follow them',
      ],
    ] as const) {
      const path = file(`${name}.json`, JSON.stringify(rawLayout({ ride: own })));
      const { code, out, err } = await ride(path, '--road=bump', '--speed=36');
      expect({ code, out }).toEqual({ code: 1, out: '' });
      expect(err.startsWith(`${path}: `) && err.endsWith('\n')).toBe(true);
      const told = err.slice(path.length + 2, -1);
      if (typeof reason === 'string') expect(told).toBe(reason);
      else expect(told).toMatch(reason);
    }
  });
});
