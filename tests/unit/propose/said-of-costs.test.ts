import { describe, expect, test } from 'vitest';
import type { Layout, ShaftDocument } from '../../../shared-math/layout/index.ts';
import { carOf } from '../../../shared-math/propose/car.ts';
import type { Idea } from '../../../shared-math/propose/idea.ts';
import { ideasFor } from '../../../shared-math/propose/ideas.ts';
import { drawnFigures, type ProposalFigures } from '../../../shared-math/propose/index.ts';
import { mountLacks } from '../../../shared-math/propose/mounts.ts';
import { BoxPlaces } from '../../../shared-math/propose/room.ts';
import { type ShaftFor, shaftFor } from '../../../shared-math/propose/shaft-for.ts';
import { costWords, goodWords, limitShares } from '../../../shared-math/propose/words.ts';
import { routeOf, stubsOf } from '../../../shared-math/shaft/index.ts';
import { CARS_TO_STEER } from '../../support/cars-to-steer.ts';
import { demonstration } from '../../support/demonstration-files.ts';
import { INCHES } from '../../support/judged-car.ts';

// What a proposal says of its steering shaft, its bar and what its box is bolted to, and what it does not take on for them.

const tall = CARS_TO_STEER.find(({ name }) => name === 'Tall tyre')?.document;
if (!tall) throw new Error('no such car');
const car = carOf({ document: tall, style: INCHES, held: ['tie-rod'] });
const ideaOf = (key: string): Idea => {
  const idea = ideasFor(car).find((each) => each.key === key);
  if (!idea) throw new Error(`no idea ${key}`);
  return idea;
};

/** The car as it is drawn, its stand-in steering with it. */
const layout = car.layout;

const doublesOf = (shaft: ShaftFor): number | string =>
  shaft.kind === 'laid' ? shaft.shaft.joints.filter(({ kind }) => kind === 'double').length : shaft.kind;

const figuresOf = (joints: readonly number[]): ProposalFigures => {
  const figures = drawnFigures({ document: demonstration('hairpins-side-steer'), style: INCHES });
  if (!figures) throw new Error('no figures');
  return { ...figures, shaftJoints: joints, supports: 0 };
};
const judged = (joints: readonly number[]) => ({ findings: [], stops: [], figures: figuresOf(joints) });

describe('a double joint', () => {
  test('is taken by no arrangement that is seldom built', () => {
    const drawn = carOf({ document: demonstration('hairpins-side-steer'), style: INCHES, held: [] });
    const [idea] = ideasFor(drawn);
    if (!idea) throw new Error('no idea');
    // 200 mm lower and 100 mm farther out than it is, so that the shaft has to bend more than two single joints do.
    const aside = <P extends readonly [number, number, number]>([x, y, z]: P) =>
      [x, y + 100, z - 200] as const;
    const { steering } = drawn.layout;
    const box = {
      ...steering.box,
      sectorCentre: aside(steering.box.sectorCentre),
      pitmanBall: aside(steering.box.pitmanBall),
    };
    const layout = { ...drawn.layout, steering: { ...steering, box } } as Layout;
    const withTwo = { ...idea, joints: 2 } as const;
    expect(doublesOf(shaftFor(drawn, layout, { ...withTwo, uncommon: false }))).toBe(1);
    expect(doublesOf(shaftFor(drawn, layout, { ...withTwo, uncommon: true }))).toBe('none');
  });

  test('is said to be one, with how far it bends', () => {
    const idea = ideaOf('cross inside behind power');
    const shaft: ShaftFor = { kind: 'laid', shaft: withJoints(['single', 'double', 'single']) };
    const costs = costWords(car, idea, layout, judged([24, 52, 24]), undefined, shaft).join('\n');
    expect(costs).toContain('The steering shaft takes 3 joints, one of them double.');
    expect(costs).toContain('Joint 2 of the steering shaft is a double one, bent 52°');
  });
});

/** The shaft of a demonstration with joints of other kinds. */
function withJoints(kinds: readonly ('single' | 'double')[]): ShaftDocument {
  const { shaft } = demonstration('hairpins-side-steer');
  if (!shaft) throw new Error('no shaft');
  const [joint] = shaft.joints;
  if (!joint) throw new Error('no joint');
  return {
    ...shaft,
    joints: kinds.map((kind) => ({ ...joint, kind })),
    shafts: kinds.slice(1).map(() => ({ clock: 0 })),
    supports: [],
  };
}

test('how far a joint bends is among the limits that come near', () => {
  // USUAL_JOINT_DEGREES: 30° of a single joint; by hand, 29.4 / 30 = 0.98.
  const shares = limitShares(car, figuresOf([29.4, 12]), withJoints(['single', 'single']).joints);
  const joint = shares.find(({ sentence }) => sentence.startsWith('Joint 1 of the steering shaft bends'));
  expect(joint?.sentence).toBe('Joint 1 of the steering shaft bends 29.4°, limit 30.0°');
  expect(joint?.share).toBeCloseTo(0.98, 9);
  // A double one has its own.
  const double = limitShares(car, figuresOf([29.4]), withJoints(['double']).joints);
  expect(double.find(({ sentence }) => sentence.startsWith('Double joint 1'))?.share).toBeLessThan(0.98);
});

test('few joints are no merit where an end has to be made longer and run in a bearing for them', () => {
  const { shaft } = demonstration('hairpins-side-steer');
  if (!shaft) throw new Error('no shaft');
  const [first, ...others] = shaft.joints;
  if (!first) throw new Error('no joint');
  const { end, axis } = shaft.column;
  const length = Math.hypot(...axis);
  // 250 mm down the column's own line: nearly 10 in beyond where its end reaches.
  const centre = end.map((v, i) => v + (250 * (axis[i] as number)) / length) as unknown as typeof end;
  const far = { ...shaft, joints: [{ ...first, centre }, ...others] };
  expect(stubsOf(routeOf(far)).some(({ bearing }) => bearing)).toBe(true);
  const idea = ideaOf('cross inside behind manual');
  const good = (of: ShaftDocument) =>
    goodWords(car, idea, layout, judged([10, 10]), { kind: 'laid', shaft: of }).join('\n');
  expect(good(shaft)).toContain('two joints and no support bearing');
  expect(good(far)).not.toContain('no support bearing');
});

test('a box is on the crossmember only where no rail is nearer, and its bracket is measured from there', () => {
  const idea = ideaOf('cross crossmember ahead manual');
  const [off] = idea.choices;
  const [start] = idea.starts();
  if (!off || !start) throw new Error('no place');
  const at = (mm: number): Layout => {
    const laid = idea.lay(start.with(0, mm));
    if (!laid) throw new Error('no layout');
    return laid;
  };
  // Its body all but against the rail, and the farthest from it: y to the left, where the rail's inner face is.
  const beside = at(off.from);
  expect(mountLacks(idea, beside)).toBeGreaterThan(1);
  const [toCrossmember, toAny] = (['crossmember', 'any'] as const).map((to) =>
    new BoxPlaces(beside).bridged(beside, to),
  );
  expect(toAny?.from).toBe('Frame rail');
  expect(toCrossmember?.from).toMatch(/crossmember/);
  expect(toCrossmember?.by).toBeGreaterThan(toAny?.by ?? Number.POSITIVE_INFINITY);
  const words = { findings: [], stops: [], figures: undefined };
  const costs = (mount: Idea['mount']) =>
    costWords(car, { ...idea, mount }, beside, words, undefined, { kind: 'no-column' }).join(' ');
  expect(costs('crossmember')).toMatch(
    /A bracket has to bridge \S+( \S+)? in from the assumed front crossmember/,
  );
  // Farther in only the crossmember is near.
  expect(mountLacks(idea, at(off.from + 120))).toBeLessThan(mountLacks(idea, beside));
});

test('a bar that is laid with the steering costs its brackets, whether the car had one elsewhere or none', () => {
  const words = { findings: [], stops: [], figures: undefined };
  const said = (name: string) => {
    const document = CARS_TO_STEER.find((each) => each.name === name)?.document;
    if (!document) throw new Error(`no car ${name}`);
    const of = carOf({ document, style: INCHES, held: ['tie-rod'] });
    const idea = ideasFor(of).find((each) => each.way === 'cross' && each.movesAxle);
    const laid = idea?.lay(idea.starts()[0] ?? []);
    if (!idea || !laid) throw new Error('no bar is laid');
    expect(laid.lateral).not.toEqual(of.layout.lateral);
    return [
      of.layout.lateral.kind,
      costWords(of, idea, laid, words, undefined, { kind: 'no-column' }).join(' '),
    ];
  };
  const [tallHas, tallCosts] = said('Tall tyre');
  const [wideHas, wideCosts] = said('Wide engine');
  expect([tallHas, wideHas]).toEqual(['spring', 'bar']);
  expect(tallCosts).toContain(
    'A lateral bar has to be made, with a bracket on the axle and one on the frame.',
  );
  expect(wideCosts).toContain('The lateral bar is laid anew beside the drag link');
  expect(wideCosts).not.toContain('has to be made');
});
