import { describe, expect, test } from 'vitest';
import { analyse } from '../../../shared-math/findings/index.ts';
import type { Layout } from '../../../shared-math/layout/index.ts';
import { prepareFrontEnd } from '../../../shared-math/linkage/index.ts';
import { carOf } from '../../../shared-math/propose/car.ts';
import type { Idea } from '../../../shared-math/propose/idea.ts';
import { ideasFor } from '../../../shared-math/propose/ideas.ts';
import { type HoldName, proposeTasks } from '../../../shared-math/propose/index.ts';
import { Keeper } from '../../../shared-math/propose/keeper.ts';
import { armOf, isAhead, mountLacks, mountOf, planTurnOf } from '../../../shared-math/propose/mounts.ts';
import { sectorOut, tooLow } from '../../../shared-math/propose/room.ts';
import { costWords } from '../../../shared-math/propose/words.ts';
import { ALL_TO_STEER, CARS_FOR_ONE_WAY } from '../../support/cars-to-steer.ts';
import { expectClose } from '../../support/close.ts';
import { demonstration } from '../../support/demonstration-files.ts';
import { INCHES } from '../../support/judged-car.ts';

const CARS = [...ALL_TO_STEER, ...CARS_FOR_ONE_WAY];

function carNamed(name: string, held: readonly HoldName[] = []) {
  const document = CARS.find((each) => each.name === name)?.document;
  if (!document) throw new Error(`no car ${name}`);
  return carOf({ document, style: INCHES, held });
}

/** What an idea lays at its first likely places. */
const laidBy = (idea: Idea): Layout[] => idea.starts().flatMap((x) => idea.lay(x) ?? []);

describe('where a box is bolted', () => {
  test('every idea lays its box where its name says, its arm the way that it says', () => {
    let seen = 0;
    let asNamed = 0;
    for (const { document } of [...CARS.slice(0, 5), ...CARS_FOR_ONE_WAY]) {
      const car = carOf({ document, style: INCHES, held: [] });
      for (const idea of ideasFor(car))
        for (const layout of laidBy(idea)) {
          expect({ key: idea.key, arm: armOf(layout) }).toEqual({ key: idea.key, arm: idea.arm });
          // A box that does not come to lie on its rail or crossmember is no proposal.
          if (mountLacks(idea, layout) > 0 || idea.mount === 'crossmember') continue;
          seen += 1;
          if (idea.way === 'cross') continue;
          // Beside a crossmember a box is on that; one that is higher than the rail's top is read as on it.
          const read = mountOf(layout);
          if (read === 'crossmember' || (idea.mount !== 'top' && read === 'top')) continue;
          expect({ key: idea.key, mount: read }).toEqual({ key: idea.key, mount: idea.mount });
          asNamed += 1;
        }
    }
    expect(asNamed).toBeGreaterThan(0.5 * seen);
  });

  test('the demonstrations are read as their builders drew them', () => {
    const read = (name: string) => {
      const car = carOf({ document: demonstration(name), style: INCHES });
      return [mountOf(car.layout), armOf(car.layout), isAhead(car.layout)];
    };
    expect(read('hairpins-side-steer')).toEqual(['outside', 'down', false]);
    expect(read('wishbone-side-steer')).toEqual(['outside', 'down', false]);
    expect(read('four-bar-cross-steer')).toEqual(['inside', 'down', false]);
    expect(read('parallel-leaf-cross-steer')).toEqual(['inside', 'down', false]);
  });

  test('what is held of it is kept: other ideas are not looked at', () => {
    const document = demonstration('hairpins-side-steer');
    const words = (held: readonly HoldName[]) =>
      proposeTasks({ document, held, style: INCHES }).map((task) => task.words);
    const all = words(['tie-rod']);
    expect(all.some((each) => each.includes('on top of'))).toBe(true);
    expect(all.some((each) => each.includes('arm up'))).toBe(true);
    expect(words(['tie-rod', 'mount', 'way']).every((each) => each.includes('outside the left rail'))).toBe(
      true,
    );
    expect(words(['tie-rod', 'arm-way']).some((each) => /arm up|over the box/.test(each))).toBe(false);
    expect(words(['tie-rod', 'axle-side']).every((each) => each.includes('behind the axle'))).toBe(true);
    for (const held of ['mount', 'arm-way', 'axle-side'] as const)
      expect(words(['tie-rod', held]).length).toBeLessThan(all.length);
  });

  test('a box that is held turned is laid turned, one that is not stands square', () => {
    const document = demonstration('hairpins-side-steer');
    const turn = 0.1;
    const turned = {
      ...document,
      steering: {
        ...document.steering,
        box: {
          ...document.steering.box,
          sectorAxis: [Math.sin(turn), -Math.cos(turn), 0] as const,
        },
      },
    };
    for (const [held, expected] of [
      [['box-turn'], turn],
      [[], 0],
    ] as const) {
      const car = carOf({ document: turned, held, style: INCHES });
      for (const idea of ideasFor(car).filter(({ way }) => way === 'side'))
        for (const layout of laidBy(idea)) expectClose(planTurnOf(layout), expected, 1e-12);
    }
  });
});

describe('limits of a box’s place', () => {
  const car = carNamed('hairpins-side-steer');
  const ideas = ideasFor(car);
  const ideaOf = (key: string): Idea => {
    const idea = ideas.find((each) => each.key === key);
    if (!idea) throw new Error(`no idea ${key}`);
    return idea;
  };
  const first = (idea: Idea): Layout => {
    const layout = laidBy(idea)[0];
    if (!layout) throw new Error('no layout');
    return layout;
  };
  const movedUp = (layout: Layout, by: number): Layout => {
    const { steering } = layout;
    const up = ([x, y, z]: readonly [number, number, number]) => [x, y, z + by] as const;
    const box = {
      ...steering.box,
      sectorCentre: up(steering.box.sectorCentre),
      pitmanBall: up(steering.box.pitmanBall),
    };
    return { ...layout, steering: { ...steering, box } };
  };

  test('no sector shaft reaches further out of its box than one is made, with any choice of an idea', () => {
    // 4 1/2 in; common practice, no published source.
    for (const idea of ideas.filter(({ way }) => way === 'side')) {
      const widest = idea.choices.map(({ to }) => to);
      const layout = idea.lay(widest);
      if (layout) expect(sectorOut(layout)).toBeLessThanOrEqual(4.5 * 25.4 + 12);
    }
    const layout = first(ideaOf('side through behind manual'));
    const keeper = new Keeper(car, prepareFrontEnd(layout), ideaOf('side through behind manual'));
    const [x, y, z] = layout.steering.box.pitmanBall;
    const far: Layout = {
      ...layout,
      steering: { ...layout.steering, box: { ...layout.steering.box, pitmanBall: [x, y + 60, z] } },
    };
    const limits = (of: Layout) => [...keeper.missedByPlace(of)].map(({ limit }) => limit);
    expect(limits(far)).toContain('sector-shaft');
    expect(limits(layout)).not.toContain('sector-shaft');
  });

  test('a box stays clear of the road at full bump', () => {
    const layout = first(ideaOf('side outside behind manual'));
    // 44 mm around the sector shaft of a usual box, 2 in over the road when the frame has gone down.
    const lowest = layout.steering.box.sectorCentre[2] - 44 - layout.travel.bump - 50.8;
    expect(tooLow(movedUp(layout, -lowest + 1))).toBe(0);
    expectClose(tooLow(movedUp(layout, -lowest - 7)), 7, 1e-9);
  });

  test('a box that hangs low under its rail is said to', () => {
    const layout = first(ideaOf('side outside behind manual'));
    const judged = { findings: [], stops: [], figures: undefined };
    const costs = (of: Layout) =>
      costWords(car, ideaOf('side outside behind manual'), of, judged, undefined, { kind: 'no-column' });
    expect(costs(layout).join(' ')).not.toContain('below the rail');
    // 44 mm around the sector shaft: its underside comes to 6 in over the road.
    const low = movedUp(layout, 6 * 25.4 + 44 - layout.steering.box.sectorCentre[2]);
    expect(costs(low).join(' ')).toMatch(
      /The box hangs \d.* below the rail, 6 in over the road at ride height/,
    );
  });

  test('a box on top of the rail lies on it: neither in it nor over a plate’s reach', () => {
    const idea = ideaOf('side top behind manual');
    const layout = laidBy(idea).find((each) => mountLacks(idea, each) === 0);
    if (!layout) throw new Error('no place on top');
    expect(mountLacks(idea, movedUp(layout, 70))).toBeGreaterThan(0);
    expect(mountLacks(idea, movedUp(layout, -70))).toBeGreaterThan(0);
  });

  test('a long bracket, and a box that lies upside down, are among the costs', () => {
    const judged = { findings: [], stops: [], figures: undefined };
    const costs = (idea: Idea, of: Layout) =>
      costWords(car, idea, of, judged, undefined, { kind: 'no-column' }).join(' ');
    const idea = ideaOf('side outside behind manual');
    const layout = first(idea);
    const { box } = layout.steering;
    // Behind x = -640 this car's rails go from 340 to 430 mm out over 1660 mm, 50 mm wide; the box reaches 52 mm inboard.
    const [x, , z] = [box.sectorCentre[0], 0, 430];
    const face = 340 + ((-640 - x) / 1660) * 90 + 25;
    const at = (gap: number): Layout => {
      const y = face + gap + 52;
      const sectorCentre = [x, y, z] as const;
      const pitmanBall = [box.pitmanBall[0], y + 20, z - 146] as const;
      return { ...layout, steering: { ...layout.steering, box: { ...box, sectorCentre, pitmanBall } } };
    };
    expect(x).toBeLessThan(-640);
    // 44 mm further back the rail is 2.4 mm further out: 48.4 mm, between 1 7/8 and 1 15/16 in.
    expect(costs(idea, at(50.8))).toMatch(
      /A bracket has to bridge 1 (7\/8|15\/16) in from the frame rail to the box\./,
    );
    expect(costs(idea, at(12.7))).not.toContain('A bracket');
    const over = ideaOf('cross inside-up behind manual');
    expect(costs(over, first(over))).toContain('The box lies upside down');
  });

  test('a crossmember that nobody has drawn is said to be taken for granted', () => {
    const idea = ideas.find(({ mount }) => mount === 'crossmember');
    if (!idea) throw new Error('no such idea');
    const layout = first(idea);
    const judged = { findings: [], stops: [], figures: undefined };
    expect(costWords(car, idea, layout, judged, undefined, { kind: 'no-column' }).join(' ')).toContain(
      'No front crossmember is drawn: one from rail to rail',
    );
    // It is not written into the car.
    expect(car.layout.obstacles.some(({ name }) => name === 'Assumed front crossmember')).toBe(false);
    const withOwn = carOf({
      document: {
        ...car.document,
        obstacles: [
          ...car.document.obstacles,
          {
            kind: 'box',
            role: 'crossmember',
            name: 'Front crossmember',
            mirrored: false,
            centre: [400, 0, 500],
            size: [50, 560, 80],
          },
        ],
      },
      held: [],
      style: INCHES,
    });
    expect(ideasFor(withOwn).filter(({ mount }) => mount === 'crossmember')[0]?.assumes).toBeUndefined();
  });

  test('roll oversteer is missed in the cascade by what the verdict finds of it', () => {
    const idea = ideaOf('side outside behind manual');
    const [layout] = laidBy(idea);
    if (!layout) throw new Error('no layout');
    // The pitman ball lowered by an inch and more: the wheels then steer into the turn, or out of it where it is raised.
    const slopes = [-30, -10, 0, 10, 30].map((by) => {
      const { steering } = layout;
      const [x, y, z] = steering.box.pitmanBall;
      const moved: Layout = {
        ...layout,
        steering: { ...steering, box: { ...steering.box, pitmanBall: [x, y, z + by] } },
      };
      const keeper = new Keeper(car, prepareFrontEnd(moved), idea);
      const missed = [...keeper.missed(prepareFrontEnd(moved))].find(({ limit }) => limit === 'roll-steer');
      return { slope: analyse(moved).rollSummary.slopeAtRide, by: missed?.by ?? 0 };
    });
    let past = 0;
    for (const { slope, by } of slopes) {
      // Tenths of a degree beyond 0.1 for each degree, less what is kept to spare.
      const expected = Math.max(0, 10 * (-slope - 0.1 + 0.003));
      expect(Math.abs(by - expected)).toBeLessThan(0.02);
      if (expected > 0) past += 1;
    }
    expect(past).toBeGreaterThan(0);
    expect(past).toBeLessThan(slopes.length);
  });
});
