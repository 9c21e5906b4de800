import { describe, expect, test } from 'vitest';
import { toeboard } from '../../support/command-line.ts';

const LAYOUT = 'projects/hairpins-side-steer.json';

describe('the command propose', () => {
  test.each([
    ['--hold=engine', '--hold: "engine" is not known; there are way, box,'],
    ['--hold=box,box', '--hold: box is given twice'],
    ['--hold=none,box', '--hold: "none" is not known'],
    ['--room=way=1:2', '--room: "way" has no room in figures; there are box, box-kind,'],
    ['--room=lateral=80:60', '--room lateral: the range runs backwards: 80.0 mm is more than 60.0 mm'],
    ['--room=stops', '--room expects stops=FROM:TO, found "stops"'],
    ['--room=box=300:900', '--room: box is held as drawn; leave it out of --hold to give it room'],
    ['--room=shaft=1:2,shaft=1:3', '--room: shaft is given twice'],
    ['--seed=x', '--seed expects a whole number'],
    ['--colour=red', 'unknown option --colour'],
  ])('%s is wrong usage, in one line', async (option, reason) => {
    const { code, out, err } = await toeboard('propose', LAYOUT, option);
    expect([code, out]).toEqual([2, '']);
    expect(err.split('\n')[0]).toContain(reason);
  });

  test('a shelf that is none, or is not there, is named', async () => {
    const wrong = await toeboard('propose', LAYOUT, '--shelf', 'package.json');
    expect(wrong.code).toBe(1);
    expect(wrong.err).toMatch(/^package\.json: .+\n$/);
    const missing = await toeboard('propose', LAYOUT, '--shelf', 'no-such.csv');
    expect(missing).toMatchObject({ code: 1, err: 'no-such.csv: no such file\n' });
  });
});
