import { describe, expect, test } from 'vitest';
import type { Point } from '../../../shared-math/geometry/points.ts';
import type { Layout } from '../../../shared-math/layout/index.ts';
import { carOf } from '../../../shared-math/propose/car.ts';
import { ideasFor } from '../../../shared-math/propose/ideas.ts';
import {
  openRooms,
  type ProposeQuestion,
  proposeFreedoms,
  proposeTask,
  proposeTasks,
  type RoomName,
  type Rooms,
  readRoom,
  readWordedRoom,
  roomsWords,
  whyNothingFits,
  withSteeringForgotten,
} from '../../../shared-math/propose/index.ts';
import { relaxationsOf } from '../../../shared-math/propose/relaxations.ts';
import { shaftFor } from '../../../shared-math/propose/shaft-for.ts';
import { demonstration } from '../../support/demonstration-files.ts';
import { INCHES } from '../../support/judged-car.ts';

const document = withSteeringForgotten(demonstration('hairpins-side-steer'));
const asked = (rooms: Rooms): ProposeQuestion => ({ document, style: INCHES, held: ['lateral'], rooms });

/** mm from a point to a line (Pythagoras). */
function fromLine(point: Point, on: Point, along: Point): number {
  const to = point.map((value, i) => value - (on[i] as number));
  const dot = (a: readonly number[], b: readonly number[]) =>
    a.reduce((sum, value, i) => sum + value * (b[i] as number), 0);
  return Math.sqrt(dot(to, to) - dot(to, along) ** 2 / dot(along, along));
}

describe('a room as it is typed', () => {
  test.each<[RoomName, string, readonly number[]]>([
    ['pitman-arm', '5 to 7 in', [127, 177.8]],
    ['pitman-arm', '5..7', [127, 177.8]],
    ['pitman-arm', '4 1/2 – 6', [114.3, 152.4]],
    ['steering-arm', '120 mm to 150 mm', [120, 150]],
    ['steering-arm', '6', [152.4, 152.4]],
    ['box', '-12 to 40', [-304.8, 1016]],
    ['stops', '28° to 32°', [28, 32]],
    ['shaft', '1:2', [1, 2]],
    ['box-turn', '-2.5° to 4', [-2.5, 4]],
    ['box-kind', '14 to 20', [14, 20]],
  ])('%s, %s', (name, text, wanted) => {
    const read = readRoom(name, text, INCHES);
    if (!read.ok) throw new Error(read.failure);
    for (const [i, value] of wanted.entries()) expect(read.value[i]).toBeCloseTo(value, 9);
  });

  test.each<[RoomName, string, string]>([
    ['pitman-arm', '7 to 5', 'the range runs backwards: 7 in is more than 5 in'],
    ['pitman-arm', '5 to', 'two figures are expected, from and to, found "5 to"'],
    ['pitman-arm', '5 to 6 to 7', 'two figures are expected, from and to, found "5 to 6 to 7"'],
    ['pitman-arm', '1/4 to 6', 'how long the arm is: from 1 15/16 in to 15 3/4 in can be asked for'],
    [
      'box-turn',
      '-11 to 2',
      'how far a side steer box is turned in plan, the end that its shaft goes into toward the middle of the car above 0: from -10° to 10° can be asked for',
    ],
    ['stops', 'far to 30', '"far" is not an angle; write for example 2.5'],
    ['shaft', '1.5 to 2', '"1.5" is no number of joints; write for example 2'],
    ['shaft', '2 to 4', 'how many joints: from 1 to 3 can be asked for'],
    ['box-kind', 'quick', '"quick" is no ratio; write for example 16'],
  ])('%s, %s is refused in one line', (name, text, reason) => {
    expect(readRoom(name, text, INCHES)).toEqual({ ok: false, failure: reason });
  });
});

describe('a room in words', () => {
  test('is read in the order in which its ways are offered', () => {
    expect(readWordedRoom('mount', ['top', 'outside'])).toEqual({ ok: true, value: ['outside', 'top'] });
    expect(readWordedRoom('way', ['cross'])).toEqual({ ok: true, value: ['cross'] });
  });

  test('is refused in one line where it is none', () => {
    const refused = (...ways: string[]) => {
      const read = readWordedRoom('axle-side', ways);
      return read.ok ? '' : read.failure;
    };
    expect(refused('')).toBe('at least one of these is expected: behind, ahead');
    expect(refused('beside')).toBe('"beside" is not known; there are behind, ahead');
    expect(refused('ahead', 'ahead')).toBe('ahead is given twice');
  });

  // Where things are is read off the laid layouts: rails from the document, the axle at x = 0, z up, y to the left.
  const outerFace = Math.max(
    ...document.rails.flatMap(({ path, width }) => path.map(([, y]) => Math.abs(y) + width / 2)),
  );
  test.each<[Rooms, string, (layout: Layout) => boolean]>([
    [
      { way: ['side'], mount: ['outside'] },
      'the box outboard of the rail',
      ({ steering }) => steering.box.sectorCentre[1] > outerFace - 60,
    ],
    [
      { 'axle-side': ['ahead'] },
      'the box ahead of the axle',
      ({ steering }) => steering.box.sectorCentre[0] > 0,
    ],
    [
      { way: ['side'], 'arm-way': ['up'] },
      'the ball above the sector shaft',
      ({ steering }) => steering.box.pitmanBall[2] > steering.box.sectorCentre[2],
    ],
    [{ way: ['cross'] }, 'the link to the far wheel', ({ steering }) => steering.dragLinkTo === 'right'],
  ])('%j is kept by everything that can be laid: %s', (rooms, _, isKept) => {
    const ideas = ideasFor(carOf(asked(rooms)));
    const all = ideasFor(carOf(asked({})));
    expect(ideas.length).toBeGreaterThan(0);
    expect(ideas.length).toBeLessThan(all.length);
    const laid = (of: typeof ideas) =>
      of.flatMap((idea) => idea.starts().flatMap((start) => idea.lay(start) ?? []));
    expect(laid(ideas).filter((layout) => !isKept(layout))).toEqual([]);
    // The same question without it lays others.
    expect(laid(all).every(isKept)).toBe(false);
  });

  test('of how the box is turned holds in side steer, its input end toward the middle of the car above 0', () => {
    const ideas = ideasFor(carOf(asked({ 'box-turn': [2, 5] })));
    const turns = ideas
      .filter(({ way }) => way === 'side')
      .flatMap((idea) => {
        const { choice = 0, most = 0 } = idea.turn ?? {};
        return idea
          .starts()
          .flatMap((start) => [start, start.with(choice, most)].flatMap((x) => idea.lay(x) ?? []));
      })
      .map(({ steering }) => {
        const [x, y] = steering.box.sectorAxis;
        // Square to the sector shaft, back along the car; the box is on the left, so that the middle is to the right.
        const [back, right] = y > 0 ? [y, x] : [-y, -x];
        return (Math.atan2(-right, back) * 180) / Math.PI;
      });
    expect(turns.length).toBeGreaterThan(20);
    expect(Math.min(...turns)).toBeGreaterThan(2 - 1e-9);
    expect(Math.max(...turns)).toBeLessThan(5 + 1e-9);
    expect(ideas.some(({ way }) => way === 'cross')).toBe(true);
  });

  test('stands beside its freedom, goes with a box that stands, and is let go where it keeps everything out', () => {
    const question = asked({ mount: ['outside', 'top'], 'box-turn': [0, 3] });
    const mount = proposeFreedoms(question).find(({ name }) => name === 'mount');
    expect(mount?.ways?.filter(({ open }) => open).map(({ words }) => words)).toEqual([
      'outside the rail',
      'on top of the rail',
    ]);
    expect(mount?.ways).toHaveLength(5);
    expect(roomsWords(question.rooms ?? {}, INCHES)).toBe(
      'As far as given: the steering box outside the rail or on top of the rail; the steering box turned 0° to 3° in plan in side steer; in cross steer leaning back as is usual.',
    );
    const letGo = relaxationsOf(question).find(({ key }) => key === 'room mount');
    expect(letGo?.stands).toBe('the steering box outside the rail or on top of the rail');
    expect(letGo?.most).toMatchObject({ words: 'the box on another part of the frame' });
    expect(letGo?.most.question.rooms).toEqual({ 'box-turn': [0, 3] });
    expect(openRooms(question.rooms ?? {}, ['mount', 'lateral'])).toEqual({ 'box-turn': [0, 3] });
    const stands = { ...question, held: ['box'] as const };
    expect(carOf(stands).rooms).toEqual({});
    expect(proposeFreedoms(stands).find(({ name }) => name === 'mount')?.with).toBe('the steering box');
  });

  test('that leaves no idea is the reason why nothing fits', { timeout: 60_000 }, () => {
    const question = asked({ way: ['cross'], mount: ['top'] });
    expect(proposeTasks(question)).toEqual([]);
    const search = whyNothingFits({ ...question, seed: 1 }, []);
    let step = search.next();
    while (!step.done && !step.value.doing.includes('on another part of the frame')) step = search.next();
    expect(step.done).toBe(false);
  });
});

describe('a room that is given', () => {
  test('is kept by everything that can be laid: arms by the rule, box and stops by their places', () => {
    const rooms: Rooms = {
      'pitman-arm': [120, 130],
      'steering-arm': [180, 200],
      'tie-rod': [150, 155],
      box: [500, 800],
      stops: [30, 31],
      'box-kind': [18, 20],
    };
    const ideas = ideasFor(carOf(asked(rooms)));
    expect(ideas.some(({ way }) => way === 'side')).toBe(true);
    let laid = 0;
    for (const idea of ideas)
      for (let i = 0; i < 40; i += 1) {
        // A lattice without two numbers in step.
        const x = idea.choices.map(({ from, to }, k) => from + ((i * (k + 1) * 0.618034) % 1) * (to - from));
        const layout = idea.lay(x);
        if (!layout) continue;
        laid += 1;
        const { steering, axle } = layout;
        const { box } = steering;
        const { kingpinTop, kingpinBottom, tieRodBall } = axle[steering.dragLinkTo];
        const along = kingpinTop.map((v, k) => v - (kingpinBottom[k] as number)) as unknown as Point;
        const arms = [
          fromLine(box.pitmanBall, box.sectorCentre, box.sectorAxis),
          fromLine(steering.dragLinkBall, kingpinBottom, along),
          fromLine(tieRodBall, kingpinBottom, along),
        ];
        const kept = (value: number, [from, to]: readonly [number, number]) => {
          expect(value).toBeGreaterThanOrEqual(from - 0.06);
          expect(value).toBeLessThanOrEqual(to + 0.06);
        };
        kept(arms[0] as number, [120, 130]);
        kept(arms[1] as number, [180, 200]);
        kept(arms[2] as number, [150, 155]);
        kept(-box.sectorCentre[0], [500, 800]);
        kept(steering.stopAngle as number, [30, 31]);
        kept(box.ratio, [18, 20]);
      }
    expect(laid).toBeGreaterThan(30);
  });

  test('is kept by a proposal, whose arm is of a usual length within it', () => {
    const question = asked({ 'pitman-arm': [140, 150] });
    const first = ideasFor(carOf(question)).findIndex(({ key }) => /^side outside behind manual/.test(key));
    for (const { found } of proposeTask({ ...question, held: ['tie-rod', 'lateral'] }, first)) {
      const [proposal] = found;
      if (!proposal) continue;
      const { box } = proposal.layout.steering;
      const inches = fromLine(box.pitmanBall, box.sectorCentre, box.sectorAxis) / 25.4;
      expect(inches).toBeGreaterThanOrEqual(140 / 25.4);
      expect(inches).toBeLessThanOrEqual(150 / 25.4);
      expect(Math.abs(8 * inches - Math.round(8 * inches))).toBeLessThan(0.02);
      return;
    }
    throw new Error('nothing was found');
  });

  test('of joints leads no shaft with more', () => {
    const car = carOf({ ...asked({ shaft: [3, 3] }), document: demonstration('hairpins-side-steer') });
    const free = carOf({ ...asked({}), document: demonstration('hairpins-side-steer') });
    const [idea] = ideasFor(free);
    if (!idea) throw new Error('no idea');
    const joints = (of: typeof car) => {
      const shaft = shaftFor(of, of.layout, idea);
      return shaft.kind === 'laid' ? shaft.shaft.joints.length : shaft.kind;
    };
    expect([joints(free), joints(car)]).toEqual([2, 3]);
  });

  test('stands beside its freedom in words, and is let go where it is what keeps everything out', () => {
    const question = asked({ 'pitman-arm': [127, 152.4], shaft: [1, 1] });
    const arm = proposeFreedoms(question).find(({ name }) => name === 'pitman-arm');
    expect(arm).toMatchObject({
      room: 'on an arm 5 in to 6 in long',
      figures: { of: 'how long the arm is', given: '5 in to 6 in' },
    });
    expect(roomsWords(question.rooms ?? {}, INCHES)).toBe(
      'As far as given: the pitman ball on an arm 5 in to 6 in long; a steering shaft with 1 joint.',
    );
    const letGo = relaxationsOf(question).find(({ key }) => key === 'room pitman-arm');
    expect(letGo?.stands).toBe('the pitman ball on an arm 5 in to 6 in long');
    expect(letGo?.most?.question.rooms).toEqual({ shaft: [1, 1] });
    // What stands as drawn has no room.
    expect(carOf({ ...question, held: ['pitman-arm'] }).rooms).toEqual({ shaft: [1, 1] });
  });
});
