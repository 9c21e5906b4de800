import { describe, expect, test } from 'vitest';
import { toeboard } from '../../support/command-line.ts';

const LAYOUT = 'projects/hairpins-side-steer.json';

describe('the command propose', () => {
  test.each([
    ['--hold=engine', '--hold: "engine" is not known; there are way, box,'],
    ['--room=way=cross', '--room: way stands as drawn, as steering-arm is held'],
    ['--hold=box,box', '--hold: box is given twice'],
    ['--hold=none,box', '--hold: "none" is not known'],
    ['--room=wheel=1:2', '--room: "wheel" is not known; there are way, box, mount,'],
    ['--hold=none,', '--hold: "none" is not known'],
    ['--room=lateral=80:60', '--room lateral: the range runs backwards: 80.0 mm is more than 60.0 mm'],
    ['--room=stops', '--room expects stops=FROM:TO, found "stops"'],
    ['--room=box-turn=-12:3', '--room: box-turn stands as drawn, as box is held; leave box out of --hold'],
    ['--room=mount=outside,top', '--room: mount stands as drawn, as box is held; leave box out of --hold'],
    ['--room=stops=28:30,top', '--room: "top" is not known; there are way, box, mount,'],
    ['--room=shaft=1:2=3', '--room expects shaft=FROM:TO, found "shaft=1:2=3"'],
    ['--room=box=300:900', '--room: box is held as drawn; leave it out of --hold to give it room'],
    ['--room=shaft=1:2,shaft=1:3', '--room: shaft is given twice'],
    ['--seed=x', '--seed expects a whole number'],
    ['--colour=red', 'unknown option --colour'],
  ])('%s is wrong usage, in one line', async (option, reason) => {
    const { code, out, err } = await toeboard('propose', LAYOUT, option);
    expect([code, out]).toEqual([2, '']);
    expect(err.split('\n')[0]).toContain(reason);
  });

  test.each([
    [
      'mount=outside,roof',
      '--room mount: "roof" is not known; there are outside, inside, top, through, crossmember',
    ],
    ['mount=outside,top,mount=inside', '--room: mount is given twice'],
    ['axle-side=1:2', '--room axle-side: "1:2" is not known; there are behind, ahead'],
    ['box-turn=-12:3', '--room box-turn: how far a side steer box is turned in plan'],
    ['way=1:2', '--room way: "1:2" is not known; there are side, cross'],
    ['arm-way=down,sideways', '--room arm-way: "sideways" is not known; there are down, up'],
    ['arm-way=', '--room arm-way: at least one of these is expected: down, up'],
    ['way', '--room way: at least one of these is expected: side, cross'],
    ['way=side,cross,side', '--room way: side is given twice'],
    ['box-turn=far', '--room box-turn: "far" is not an angle; write for example 2.5'],
  ])('with nothing held, --room %s is wrong usage, in one line', async (rooms, reason) => {
    const { code, out, err } = await toeboard('propose', LAYOUT, '--hold=none', `--room=${rooms}`);
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
