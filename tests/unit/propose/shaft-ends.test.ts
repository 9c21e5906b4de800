import { describe, expect, test } from 'vitest';
import type { LayoutDocument, ShaftDocument } from '../../../shared-math/layout/index.ts';
import { resolveLayout } from '../../../shared-math/layout/index.ts';
import { carOf } from '../../../shared-math/propose/car.ts';
import { closeIn } from '../../../shared-math/propose/close-in.ts';
import { ideasFor } from '../../../shared-math/propose/ideas.ts';
import { gatherProposals, type Proposal } from '../../../shared-math/propose/index.ts';
import { newPartsOf } from '../../../shared-math/propose/new-parts.ts';
import type { HoldName } from '../../../shared-math/propose/question.ts';
import { endsLeftOpen, inputFit, onEnd, withEnds } from '../../../shared-math/propose/shaft-ends.ts';
import { shaftFor } from '../../../shared-math/propose/shaft-for.ts';
import { type Stub, stubSentence } from '../../../shared-math/shaft/index.ts';
import { type ShelfPartInput, shelfPartSchema } from '../../../shared-math/shelf/index.ts';
import { formatLength } from '../../../shared-math/units/index.ts';
import { demonstration } from '../../support/demonstration-files.ts';
import { INCHES } from '../../support/judged-car.ts';

const SPLINE = { form: 'involute-45', teeth: 36, pitch: 48, diameter: 19.58 } as const;
const TAKES_SPLINE = {
  kind: 'spline-pinch-bolt',
  ...SPLINE,
  depth: 28,
  reach: 42,
  bolt: { diameter: 9.525, fromFace: 14, offset: 12 },
} as const;
const TAKES_FLATS = {
  kind: 'double-d-pinch-bolt',
  bore: 19.1,
  acrossFlats: 14.3,
  depth: 32,
  reach: 45,
} as const;
const JOINT: ShelfPartInput = {
  kind: 'joint',
  name: 'Spline to flats',
  joint: 'single',
  ends: [TAKES_FLATS, TAKES_SPLINE],
};
const BAR: ShelfPartInput = {
  kind: 'stock',
  name: 'Flats',
  stock: { kind: 'double-d', diameter: 19.05, acrossFlats: 14.2 },
  length: 900,
};

const shelfOf = (...parts: ShelfPartInput[]) =>
  parts.map((part, i) => ({ id: String(i), part: shelfPartSchema.parse(part) }));

const carWith = (parts: ShelfPartInput[], held: readonly HoldName[] = [], document = side) =>
  carOf({ document, style: INCHES, held, shelf: shelfOf(...parts) });

const side = demonstration('hairpins-side-steer');
const fit = { kind: 'spline', ...SPLINE } as const;

/** Two joints 400 mm apart on one line, each so far from the end that it sits on. */
const shaftAt = (fromColumn: number, fromBox: number, box: ShaftDocument['box']['fit']): ShaftDocument => ({
  column: { end: [-1000, 300, 700], axis: [1, 0, 0], fit },
  box: { end: [-600 + fromColumn + fromBox, 300, 700], axis: [1, 0, 0], ...(box ? { fit: box } : {}) },
  joints: [
    { kind: 'single', centre: [-1000 + fromColumn, 300, 700] },
    { kind: 'single', centre: [-600 + fromColumn, 300, 700] },
  ],
  shafts: [{ clock: 0 }],
  supports: [],
});

describe('the ends of a proposed shaft', () => {
  test('a joint of the shelf is taken, turned as it has to be, as long as it lasts', () => {
    const both = withEnds(carWith([{ ...JOINT, count: 2 }, BAR]), shaftAt(15, 15, fit));
    expect(both.joints[0]).toMatchObject({ columnSide: TAKES_SPLINE, boxSide: TAKES_FLATS });
    expect(both.joints[1]).toMatchObject({ columnSide: TAKES_FLATS, boxSide: TAKES_SPLINE });
    expect(both.shafts[0]?.stock).toMatchObject({ kind: 'double-d', acrossFlats: 14.2 });
    const one = withEnds(carWith([JOINT, BAR]), shaftAt(15, 15, fit));
    expect(one.joints[0]).toMatchObject({ columnSide: TAKES_SPLINE });
    // The second has to be bought: what it takes is chosen, how deep it is bored is not known.
    expect(one.joints[1]?.boxSide).toEqual({ kind: 'spline-pinch-bolt', ...SPLINE });
    expect(one.joints[1]?.columnSide).toMatchObject({ kind: 'double-d-pinch-bolt' });
  });

  test('parts of the shelf do not count as new, those beyond it do', () => {
    const count = (parts: ShelfPartInput[]) => {
      const car = carWith(parts);
      const shaft = withEnds(car, shaftAt(15, 15, fit));
      return newPartsOf(car, { ...side, shaft })
        .filter(({ words }) => /joint|^Shaft/.test(words))
        .reduce((sum, part) => sum + part.count - part.onShelf, 0);
    };
    expect([count([]), count([JOINT]), count([{ ...JOINT, count: 2 }, BAR])]).toEqual([3, 2, 0]);
  });

  test('a joint that bends further than its maker allows stays on the shelf', () => {
    const bent = shaftAt(15, 15, fit);
    const [first, second] = bent.joints as [ShaftDocument['joints'][0], ShaftDocument['joints'][0]];
    // 100 mm over 400 mm: 14 degrees at each joint.
    const lower = { ...second, centre: [second.centre[0], 300, 600] as const };
    const shaft = { ...bent, joints: [first, lower], box: { ...bent.box, end: [-570, 300, 600] as const } };
    const taken = (limit: number) =>
      withEnds(carWith([{ ...JOINT, limit, count: 2 }, BAR]), shaft as ShaftDocument).joints.map(
        (joint) => joint.limit,
      );
    expect([taken(13), taken(15)]).toEqual([
      [undefined, undefined],
      [15, 15],
    ]);
  });

  test('what nobody gave is left open', () => {
    const shaft = withEnds(carWith([{ ...JOINT, count: 2 }, BAR]), shaftAt(15, 15, undefined));
    expect(shaft.joints[1]).not.toHaveProperty('boxSide');
    expect(endsLeftOpen(shaft)).toEqual({ notGiven: ['box'], stubs: [] });
  });

  test('a joint on a longer end: how much longer, and from two inches on in a bearing', () => {
    const shaft = withEnds(carWith([{ ...JOINT, count: 2 }, BAR]), shaftAt(15, 148.5, fit));
    // What the stub ends in is still to be chosen: the joint's side on it stays open.
    expect(shaft.joints[1]).not.toHaveProperty('boxSide');
    const { stubs } = endsLeftOpen(shaft);
    expect(stubs.map(({ part, bearing }) => [part, bearing])).toEqual([['box', true]]);
    // 148.5 mm out, 12 mm of it where a joint pushed home stands: 136.5 mm, 5 3/8 in.
    expect(stubSentence(stubs[0] as Stub, (mm) => formatLength(mm, INCHES))).toBe(
      'The box’s input has to be 5 3/8 in longer: a stub coupled onto it, in a support bearing close to the joint.',
    );
    const words = newPartsOf(carWith([]), { ...side, shaft }).map((part) => part.words);
    expect(words).toContain('Stub on the box’s input, 5 3/8 in past its end, with its coupling');
    expect(words).toContain('Support bearing for what makes the box’s input longer');
    const short = endsLeftOpen(shaftAt(40, 15, fit)).stubs;
    expect(short.map(({ part, bearing }) => [part, bearing])).toEqual([['column', false]]);
  });

  test('joints stand where those of the shelf hold the end: past its diameter, and no deeper than the bore', () => {
    const [least, most] = onEnd(carWith([JOINT]), fit);
    expect(least).toBeCloseTo(42 - 28, 9);
    expect(most).toBeCloseTo(42 - 19.58, 9);
  });

  test('the box’s input is the shelf’s box’s own, the drawn one where that box is held, else not given', () => {
    const shelved = shelfOf({
      kind: 'box',
      name: 'Box',
      mounting: 'side',
      assist: 'manual',
      ratio: 16,
      sectorTravel: 36,
      turns: 'clockwise',
      input: { ...SPLINE, teeth: 30 },
    })[0];
    const kind = { mounting: 'side', assist: 'manual', ratio: 16, sectorTravel: 36 } as const;
    expect(inputFit(carWith([]), shelved && { ...kind, shelved })).toMatchObject({ teeth: 30 });
    expect(inputFit(carWith([]), kind)).toBeUndefined();
    expect(inputFit(carWith([], ['box-kind']), kind)).toEqual(side.shaft?.box.fit);
  });
});

describe('a whole proposal', () => {
  test('with ends that have to be longer comes after one that sits on them, all else alike', () => {
    const figures = { bumpSteer: 0.2, oneWheel: 0.2, rimForceMost: 80, circle: 12_000, band: 0.3 };
    const proposal = (way: string, fromBox: number) =>
      ({
        key: `${way} outside behind manual least`,
        name: way,
        layout: { ...side, shaft: shaftAt(15, fromBox, fit) },
        figures: { ...figures, shaftJoints: [10, 10], supports: 0 },
        costs: [],
        newParts: [],
        pastLimits: 0,
      }) as unknown as Proposal;
    const found = [proposal('cross', 150), proposal('side', 15)];
    const { proposals } = gatherProposals([{ task: 0, found, noFit: undefined, evaluations: 1 }]);
    expect(proposals.map(({ name }) => name)[0]).toBe('side');
  });

  test('of the shelf’s joints, every end goes into what takes it', () => {
    const car = carWith([{ ...JOINT, count: 4 }, BAR], ['tie-rod', 'box', 'box-kind']);
    const [idea] = ideasFor(car);
    if (!idea) throw new Error('no idea');
    const laid = shaftFor(car, car.layout, idea);
    if (laid.kind !== 'laid') throw new Error(laid.kind);
    const { column, box, joints } = laid.shaft;
    expect([column.fit, box.fit]).toEqual([side.shaft?.column.fit, side.shaft?.box.fit]);
    expect(joints.flatMap(({ columnSide, boxSide }) => [columnSide?.kind, boxSide?.kind])).toEqual([
      'spline-pinch-bolt',
      'double-d-pinch-bolt',
      'double-d-pinch-bolt',
      'spline-pinch-bolt',
    ]);
  });

  test('a box whose input does not go into the shaft that stands is stopped, with the reason', () => {
    const held: HoldName[] = ['box', 'pitman-arm', 'steering-arm', 'tie-rod', 'lateral', 'shaft', 'stops'];
    const { ratio, sectorTravel } = side.steering.box;
    const box: ShelfPartInput = {
      kind: 'box',
      name: 'Fine teeth',
      mounting: 'side',
      assist: 'manual',
      ratio,
      sectorTravel,
      turns: 'counter-clockwise',
      input: { ...SPLINE, teeth: 48 },
    };
    const document: LayoutDocument = side;
    const car = carWith([box], held, document);
    const shelved = car.shelf[0];
    const [idea] = ideasFor(car);
    if (!idea || !shelved) throw new Error('no idea');
    const boxes = [{ mounting: 'side', assist: 'manual', ratio, sectorTravel, shelved }] as const;
    const closed = closeIn(car, { ...idea, boxes }, resolveLayout(document), 'as it stands');
    expect(closed.kind).toBe('stopped');
    expect(closed.kind === 'stopped' && closed.noFit.sentences.join(' ')).toMatch(
      /Box and joint 2: 48 teeth do not go into a spline of 36/,
    );
    // A usual box's input nobody gave: the shaft that stands may not go onto it, which is said.
    const usual = [{ mounting: 'side', assist: 'manual', ratio, sectorTravel }] as const;
    const open = closeIn(car, { ...idea, boxes: usual }, resolveLayout(document), 'as it stands');
    expect(open.kind === 'found' && open.proposal.costs.join(' ')).toContain(
      'whether it goes into the shaft that stands has to be seen',
    );
    // Where another box goes in, that one is not looked at.
    expect(idea.boxes.every((kind) => !kind.shelved)).toBe(true);
  });
});
