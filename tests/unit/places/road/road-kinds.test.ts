import { readFileSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { RoadKind, RoadProfile } from '../../../../shared-math/ride/index.ts';
import type { RoadKindOf } from '../../../../shared-math/ride/roads/road-kind.ts';
import { useFreshModules } from '../../../support/fresh-modules.ts';

// A kind of road is one file and one line: a dummy in the table of kinds shows up wherever roads are offered or read.

interface Ramp {
  readonly kind: 'ramp';
  readonly height: number;
  readonly way: 'up' | 'down';
  readonly steps: number;
  readonly start: number;
}

const ramp: RoadKindOf<Ramp> = {
  usual: { kind: 'ramp', height: 30, way: 'up', steps: 4, start: 2000 },
  fields: [
    { key: 'height', words: 'Height in all', holds: 'length' },
    {
      key: 'way',
      words: 'Goes',
      holds: 'choice',
      choices: [
        ['up', 'up the ramp'],
        ['down', 'down the ramp'],
      ],
    },
    { key: 'steps', words: 'Steps', holds: 'number', option: { name: 'steps', values: '1-9' } },
  ],
  board: { words: 'Ramp', figures: { height: 25.4, way: 'down', steps: 3 }, seconds: 7 },
  problem: ({ height }) => (height > 100 ? { path: 'road.height', reason: 'too high' } : undefined),
  prepare: ({ height, start }) => ({
    leftAt: (distance) => (distance > start ? height : 0),
    rightAt: () => 0,
  }),
};

type Modules = {
  ride: typeof import('../../../../shared-math/ride/index.ts');
  argument: typeof import('../../../../src-main/commands/road-argument.ts');
  command: typeof import('../../../../src-main/commands/ride.ts');
  choice: typeof import('../../../../src-renderer/places/road/road-choice.ts');
  words: typeof import('../../../../src-renderer/places/road/road-words.ts');
};
let the: Modules;

useFreshModules();

beforeAll(async () => {
  const ride = await import('../../../../shared-math/ride/index.ts');
  // The table is filled before those are loaded that read it.
  (ride.ROAD_KINDS as Record<string, unknown>)['ramp'] = ramp;
  the = {
    ride,
    argument: await import('../../../../src-main/commands/road-argument.ts'),
    command: await import('../../../../src-main/commands/ride.ts'),
    choice: await import('../../../../src-renderer/places/road/road-choice.ts'),
    words: await import('../../../../src-renderer/places/road/road-words.ts'),
  };
});
afterAll(() => {
  delete (the.ride.ROAD_KINDS as Record<string, unknown>)['ramp'];
});

const read = (text: string, options: Record<string, string> = {}) =>
  the.argument.readRoad(text, new Map(Object.entries(options)));

describe('a kind of road added in one place', () => {
  test('is judged and made ready by name', () => {
    const road = { ...ramp.usual, height: 200 } as unknown as RoadProfile;
    expect(the.ride.roadProblem(road, 330)).toEqual({ path: 'road.height', reason: 'too high' });
    const made = the.ride.prepareRoad(ramp.usual as unknown as RoadProfile, 330);
    expect([made.leftAt(0), made.leftAt(2001), made.rightAt(2001)]).toEqual([0, 30, 0]);
  });

  test('is read by the command line, with its choices, numbers and options', () => {
    expect(read('ramp')).toEqual(ramp.usual);
    expect(read('ramp:height=50,way=down,start=10', { steps: '6' })).toEqual({
      kind: 'ramp',
      height: 50,
      way: 'down',
      steps: 6,
      start: 10,
    });
    expect(() => read('ramp:way=over')).toThrow('--road: way is up or down, found "over"');
    expect(() => read('ramp:length=5')).toThrow(/it takes height=…, way=…, start=…/);
    expect(() => read('bump', { steps: '6' })).toThrow('--steps belongs to --road ramp');
    expect(() => read('moon')).toThrow(/there are flat, .*, ramp/);
  });

  test('stands in the help', () => {
    expect(the.command.ride.about).toMatch(/Roads: flat, .*ramp/);
    expect(the.command.ride.usage).toContain('[--class A-H] [--seed N] [--steps 1-9]');
  });

  test('is offered on the board, with its own figures, words and seconds', () => {
    const kind = 'ramp' as RoadKind;
    expect(the.words.ROAD_WORDS).toContainEqual(['ramp', 'Ramp']);
    const chosen = { ...the.choice.FIRST_ROAD, kind };
    expect(the.choice.secondsOf(chosen)).toBe(7);
    expect(the.choice.profileOf(chosen)).toMatchObject({
      kind: 'ramp',
      height: 25.4,
      way: 'down',
      steps: 3,
    });
    const changed = { ...chosen, ...the.choice.withFigure(chosen, 'steps', 5) };
    expect(the.choice.profileOf(changed)).toMatchObject({ height: 25.4, steps: 5 });
    expect(the.choice.profileOf({ ...changed, kind: 'bump' })).toMatchObject({ kind: 'bump', height: 50.8 });
  });

  test('the form asks what the kind says, and knows no kind by its figures', () => {
    const form = readFileSync('src-renderer/places/road/RoadFields.svelte', 'utf8');
    expect(form).toContain('roadKind(choice.kind).fields');
    for (const kind of Object.keys(the.ride.ROAD_KINDS))
      if (kind !== 'measured') expect(form).not.toContain(`'${kind}'`);
  });

  test('what the board does not offer is not offered: level ground', () => {
    expect(the.words.ROAD_WORDS.map(([kind]) => kind)).not.toContain('flat');
  });
});
