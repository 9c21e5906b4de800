import { describe, expect, test } from 'vitest';
import type { JointSide, ShaftEnd } from '../../shared-math/layout/index.ts';
import { jointEndName, meetingName, shaftEndName, stockEnd } from '../../shared-math/shaft/ends.ts';
import { checkMeetings, makingSteps, routeOf } from '../../shared-math/shaft/index.ts';
import { DOUBLE_D_SIDE, SCREW_SIDE, SPLINE, SPLINE_SIDE, shaftOf, WELD_SIDE } from '../support/shafts.ts';

// Every verdict on two ends that meet, as it is read on the bench. Limits, common practice with no published source:
// 0.0005 in too large does not go in, 0.015 in too small rattles; one diameter deep at the least.

const INCHES = { unit: 'in', fraction: 16 } as const;
const MM = { unit: 'mm', fraction: 0 } as const;
const IN = 25.4;

/** The column's end, `along` the axis from the first joint's centre, in that joint's column side. */
function atColumn(fit: ShaftEnd | undefined, columnSide: JointSide | undefined, along = 20) {
  const shaft = shaftOf({
    column: { end: [-1400, 300, 700], axis: [1, 0, 0], ...(fit ? { fit } : {}) },
    joints: [
      { kind: 'single', centre: [-1400 + along, 300, 700], ...(columnSide ? { columnSide } : {}) },
      { kind: 'single', centre: [-1020, 452, 486] },
    ],
  });
  return { shaft, of: (style: typeof INCHES | typeof MM) => checkMeetings(shaft, routeOf(shaft), style)[0]! };
}

/** Shaft 1's end at the box, in the column side of joint 2. */
function atShaft(stock: object, columnSide: JointSide, style: typeof INCHES | typeof MM = INCHES) {
  const shaft = shaftOf({
    joints: [
      { kind: 'single', centre: [-1346.5, 332.5, 735.5] },
      { kind: 'single', centre: [-1020, 452, 486], columnSide },
    ],
    shafts: [{ clock: 0, stock }],
  });
  return checkMeetings(shaft, routeOf(shaft), style)[2]!;
}

const round = (diameter: number) => ({ kind: 'round', diameter }) as const;
const doubleD = (diameter: number, acrossFlats: number) =>
  ({ kind: 'double-d', diameter, acrossFlats }) as const;
const spline = (over: object = {}) =>
  ({ kind: 'spline', ...SPLINE, ...over }) as Extract<ShaftEnd, { kind: 'spline' }>;
const splineSide = (over: object = {}) => ({ ...SPLINE_SIDE, ...over }) as JointSide;
const DD = doubleD(19.05, 14.2);

describe('forms that do not go together, and all that would mend it', () => {
  const flats = 'double-D 0.752 in, 0.563 in across the flats';
  const teeth = 'spline of 36 teeth on 0.771 in, 48/96 pitch, involute 45°';
  test.each<[ShaftEnd, JointSide, string, string[]]>([
    [
      DD,
      WELD_SIDE,
      'flats leave two gaps in a round bore, so the weld has nothing to hold there',
      [
        'Take joint 1 with a double-D 3/4 in, 0.559 in across the flats, with set screw or pinch bolt, toward the column.',
      ],
    ],
    [
      spline(),
      WELD_SIDE,
      'a splined end does not belong in a round bore to weld',
      [`Take joint 1 with a ${teeth}, with pinch bolt, toward the column.`],
    ],
    [
      round(19.05),
      SCREW_SIDE,
      'a round end has no flats and does not go into a double-D bore',
      ['Take joint 1 with a round bore 3/4 in to weld, toward the column.'],
    ],
    [
      spline(),
      DOUBLE_D_SIDE,
      'a splined end does not go into a double-D bore',
      [
        `Take joint 1 with a ${teeth}, with pinch bolt, toward the column.`,
        `Put an adapter between: ${teeth} to ${flats}, with pinch bolt.`,
      ],
    ],
    [
      round(19.05),
      SPLINE_SIDE,
      `round 3/4 in does not go into a ${teeth}, with pinch bolt`,
      ['Take joint 1 with a round bore 3/4 in to weld, toward the column.'],
    ],
    [
      DD,
      SPLINE_SIDE,
      `double-D 3/4 in, 0.559 in across the flats does not go into a ${teeth}, with pinch bolt`,
      [
        'Take joint 1 with a double-D 3/4 in, 0.559 in across the flats, with set screw or pinch bolt, toward the column.',
        `Put an adapter between: double-D 3/4 in, 0.559 in across the flats to ${teeth}, with pinch bolt.`,
      ],
    ],
    [
      spline({ teeth: 30 }),
      SPLINE_SIDE,
      '30 teeth do not go into a spline of 36',
      [
        `Take joint 1 with a ${teeth.replace('36', '30')}, with pinch bolt, toward the column.`,
        `Put an adapter between: ${teeth.replace('36', '30')} to ${teeth}, with pinch bolt.`,
      ],
    ],
  ])('%o in %o', (end, side, reason, remedies) => {
    const told = atColumn(end, side).of(INCHES);
    expect(told).toMatchObject({ name: 'Column and joint 1', status: 'mismatch', reason });
    expect(told.remedies.map(({ sentence }) => sentence)).toEqual(remedies);
    expect(told.remedies.map(({ kind }) => kind)).toEqual(['joint-end', 'adapter'].slice(0, remedies.length));
  });

  test('a shaft that is yet to be made can be another stock', () => {
    const told = atShaft(round(19.05), DOUBLE_D_SIDE);
    expect(told.remedies).toEqual([
      { kind: 'joint-end', sentence: 'Take joint 2 with a round bore 3/4 in to weld, toward the column.' },
      { kind: 'stock', sentence: `Take stock for shaft 1 with a ${flats} end, toward the box.` },
    ]);
    const shaft = shaftOf({
      joints: [
        { kind: 'single', centre: [-1346.5, 332.5, 735.5], boxSide: WELD_SIDE },
        { kind: 'single', centre: [-1020, 452, 486] },
      ],
      shafts: [{ clock: 0, stock: DD }],
    });
    expect(checkMeetings(shaft, routeOf(shaft), MM)[1]!.remedies).toEqual([
      {
        kind: 'joint-end',
        sentence:
          'Take joint 1 with a double-D 19.05 mm, 14.2 mm across the flats, with set screw or pinch bolt, toward the box.',
      },
      { kind: 'stock', sentence: 'Take stock for shaft 1 with a round end 19.1 mm, toward the column.' },
    ]);
  });
});

describe('sizes', () => {
  const exact = { ...WELD_SIDE, bore: 19.05 };
  // 0.0005 in is 0.0127 mm; 0.015 in is 0.381 mm.
  test.each<[ShaftEnd, JointSide, string]>([
    [round(19.05 + 0.0126), exact, ''],
    [round(19.05 + 0.0128), exact, 'round 0.751 in does not go into 3/4 in'],
    [round(19.05 - 0.38), exact, ''],
    [round(19.05 - 0.384), exact, 'round 0.735 in is 0.0151 in loose in 3/4 in, more than 0.015 in'],
    // Both within a hundredth of a millimetre of 3/4 in, and yet the one does not go into the other.
    [round(19.059), { ...WELD_SIDE, bore: 19.042 }, 'round 0.7504 in does not go into 0.7497 in'],
    [round(12.7), exact, 'round 1/2 in is 1/4 in loose in 3/4 in, more than 0.015 in'],
    [round(25.4), exact, 'round 1 in does not go into 3/4 in'],
    [doubleD(25.4, 14.2), SCREW_SIDE, 'double-D 1 in does not go into 0.752 in'],
    [doubleD(12.7, 10), SCREW_SIDE, 'double-D 1/2 in is 0.252 in loose in 0.752 in, more than 0.015 in'],
    [doubleD(19.05, 15.875), SCREW_SIDE, 'across the flats, 5/8 in does not go into 0.563 in'],
    [
      doubleD(19.05, 12.7),
      DOUBLE_D_SIDE,
      'across the flats, 1/2 in is 0.063 in loose in 0.563 in, more than 0.015 in',
    ],
    [spline({ diameter: 25.4 }), splineSide(), 'a spline of 1 in does not go into 0.771 in'],
  ])('%o in %o: "%s"', (end, side, reason) => {
    const told = atColumn(end, side).of(INCHES);
    expect(told).toMatchObject({ status: reason === '' ? 'fits' : 'mismatch', reason });
  });
});

describe('splines', () => {
  const metric = { form: 'metric-30', teeth: 24, diameter: 25, module: 1 };
  const bare = { form: 'involute-45', teeth: 36, pitch: undefined, diameter: 19.58 };
  test.each<[object, object, string, string]>([
    [{}, {}, 'fits', ''],
    [{ ...metric, diameter: 19.58 }, { ...metric, diameter: 19.6 }, 'fits', ''],
    [
      { form: 'involute-30' },
      {},
      'mismatch',
      'the teeth are of different forms: spline of 36 teeth on 0.771 in, 48/96 pitch, involute 30° into spline of 36 teeth on 0.771 in, 48/96 pitch, involute 45°, with pinch bolt',
    ],
    [{ pitch: 40 }, {}, 'mismatch', 'pitch 40/80 does not go into 48/96'],
    [
      { ...metric, pitch: undefined },
      { ...metric, module: 1.25, pitch: undefined },
      'mismatch',
      'module 1 does not go into module 1.25',
    ],
    [{ pitch: undefined, module: 0.5 }, {}, 'mismatch', 'module 0.5 does not go into 48/96 pitch'],
    [
      bare,
      {},
      'trial-fit',
      'the count is the same, 36, but the pitch is not known on both: trial-fit before ordering',
    ],
    [
      {},
      bare,
      'trial-fit',
      'the count is the same, 36, but the pitch is not known on both: trial-fit before ordering',
    ],
    [
      { form: 'unidentified' },
      {},
      'trial-fit',
      'the count is the same, 36, but the form of the teeth is not known on both: trial-fit before ordering',
    ],
    [
      {},
      { form: 'unidentified' },
      'trial-fit',
      'the count is the same, 36, but the form of the teeth is not known on both: trial-fit before ordering',
    ],
    // Serrations of one count on one diameter have one pitch.
    [{ ...bare, form: 'serrated' }, { ...bare, form: 'serrated' }, 'fits', ''],
  ])('%o in %o', (end, into, status, reason) => {
    const clean = (over: object) =>
      Object.fromEntries(Object.entries({ ...over }).filter(([, value]) => value !== undefined));
    const told = atColumn(
      clean(spline({ ...('module' in end ? { pitch: undefined } : {}), ...end })) as ShaftEnd,
      clean(splineSide({ ...('module' in into ? { pitch: undefined } : {}), ...into })) as JointSide,
    ).of(INCHES);
    expect(told).toMatchObject({ status, reason, ...(status === 'mismatch' ? {} : { remedies: [] }) });
  });
});

describe('depth', () => {
  test('nothing is told where a dimension is missing', () => {
    const { reach: _, ...faceless } = WELD_SIDE;
    const { depth: __, ...bottomless } = WELD_SIDE;
    expect(atColumn(round(19.05), faceless, 90).of(MM)).toMatchObject({ status: 'fits', engaged: undefined });
    expect(atColumn(round(19.05), bottomless, 90).of(MM)).toMatchObject({
      status: 'fits',
      engaged: undefined,
    });
  });
  test.each<[number, JointSide, string, string]>([
    // A bore of 19.1 asks for as much; a shallower bore for no more than it has; 0.05 of rounding is no fault.
    [20.94, WELD_SIDE, '', ''],
    [
      21,
      WELD_SIDE,
      'the column sits only 19 mm deep; at least 19.1 mm is wanted',
      'Slide joint 1 0.1 mm toward the column, or make the column’s end longer.',
    ],
    [15.04, { ...WELD_SIDE, depth: 15, reach: 30 }, '', ''],
    [
      15.1,
      { ...WELD_SIDE, depth: 15, reach: 30 },
      'the column sits only 14.9 mm deep; at least 15 mm is wanted',
      'Slide joint 1 0.1 mm toward the column, or make the column’s end longer.',
    ],
    [
      39.5,
      WELD_SIDE,
      'the column sits only 0.5 mm deep; at least 19.1 mm is wanted',
      'Slide joint 1 18.6 mm toward the column, or make the column’s end longer.',
    ],
    [
      40,
      WELD_SIDE,
      'the column does not reach into the joint; at least 19.1 mm is wanted',
      'Slide joint 1 19.1 mm toward the column, or make the column’s end longer.',
    ],
    [
      50,
      WELD_SIDE,
      'the column does not reach into the joint; at least 19.1 mm is wanted',
      'Slide joint 1 29.1 mm toward the column, or make the column’s end longer.',
    ],
    // 25 deep and 0.05 to spare.
    [14.96, WELD_SIDE, '', ''],
    [
      14.9,
      WELD_SIDE,
      'the column goes 0.1 mm deeper than the bore: it would reach the spider',
      'Slide joint 1 0.1 mm away from the column, or shorten the column’s end.',
    ],
  ])('the joint’s centre %s mm from the column’s end in %o', (along, side, reason, remedy) => {
    const told = atColumn(round(19.05), side, along).of(MM);
    expect(told).toMatchObject({ status: reason === '' ? 'fits' : 'mismatch', reason });
    expect(told.remedies).toEqual(remedy === '' ? [] : [{ kind: 'slide', sentence: remedy }]);
    expect(told.engaged).toBeCloseTo((side.reach ?? 0) - along, 9);
  });
  test('a fixing has to cross the end: its far side counts where it is deeper than a diameter', () => {
    // The screw's middle is 18 from the face, its half 4.7625: 22.76 deep.
    const screwed = { ...SCREW_SIDE, screw: { diameter: 9.525, fromFace: 18 } };
    const bolted = { ...DOUBLE_D_SIDE, bolt: { ...DOUBLE_D_SIDE.bolt, fromFace: 18 } };
    for (const side of [screwed, bolted]) {
      expect(atColumn(DD, side, 45 - 22.75).of(MM).status).toBe('fits');
      expect(atColumn(DD, side, 45 - 22.6).of(MM).reason).toBe(
        'the column sits only 22.6 mm deep; at least 22.76 mm is wanted, or its fixing does not cross it',
      );
    }
    // 10 from the face it is shallower than the diameter, which then counts.
    const near = { ...SCREW_SIDE, screw: { diameter: 9.525, fromFace: 10 } };
    expect(atColumn(DD, near, 45 - 18).of(MM).reason).toBe(
      'the column sits only 18 mm deep; at least 19.1 mm is wanted',
    );
  });
  test('a formed end too short for its joint: stock with a longer one', () => {
    const told = atShaft(
      { kind: 'double-d-end', diameter: 19.05, acrossFlats: 14.2, formed: 12.7, ends: 'box' },
      { ...DOUBLE_D_SIDE, bolt: { diameter: 0.375 * IN, fromFace: 1.0625 * IN, offset: 11.5 } },
    );
    expect(told).toMatchObject({
      status: 'mismatch',
      engaged: 12.7,
      reason: 'shaft 1 sits only 1/2 in deep; at least 1 1/4 in is wanted, or its fixing does not cross it',
      remedies: [
        { kind: 'stock', sentence: 'Take stock for shaft 1 whose formed end is at least 1 1/4 in long.' },
      ],
    });
  });
  test('a formed end longer than the bore fills it, a shorter one goes as far as it is formed', () => {
    const stock = (formed: number) => ({ kind: 'splined', ...SPLINE, formed, ends: 'both' });
    expect(atShaft(stock(60), SPLINE_SIDE).engaged).toBe(28);
    expect(atShaft(stock(25), SPLINE_SIDE).engaged).toBe(25);
    expect(atShaft(round(19.05), WELD_SIDE).engaged).toBe(25);
  });
});

test('what is not described is said of the one that lacks it', () => {
  const untold = (fit: ShaftEnd | undefined, side: JointSide | undefined) => atColumn(fit, side).of(MM);
  expect(untold(undefined, undefined)).toMatchObject({
    status: 'untold',
    reason: 'neither end is described yet',
    remedies: [],
  });
  expect(untold(DD, undefined)).toMatchObject({
    status: 'untold',
    reason: 'the joint’s end is not described yet',
  });
  expect(untold(undefined, SCREW_SIDE)).toMatchObject({
    status: 'untold',
    reason: 'the shaft’s end is not described yet',
  });
  // And nothing is said to be wrong with it.
  const { shaft } = atColumn(undefined, undefined);
  expect(makingSteps(shaft, routeOf(shaft), MM).some(({ sentence }) => sentence.includes('together'))).toBe(
    false,
  );
});

test('names of ends, counted from the column', () => {
  const place = (part: 'column' | 'box' | number, joint: number, side: 'columnSide' | 'boxSide') => ({
    part,
    joint,
    side,
  });
  const [first, before, after, last] = [
    place('column', 0, 'columnSide'),
    place(1, 1, 'boxSide'),
    place(1, 2, 'columnSide'),
    place('box', 2, 'boxSide'),
  ] as const;
  expect([first, before, after, last].map(meetingName)).toEqual([
    'Column and joint 1',
    'Shaft 2 and joint 2',
    'Shaft 2 and joint 3',
    'Box and joint 3',
  ]);
  expect([first, before, after, last].map(jointEndName)).toEqual([
    'Joint 1, the end at the column',
    'Joint 2, the end at the box',
    'Joint 3, the end at the column',
    'Joint 3, the end at the box',
  ]);
  expect([first, before, after, last].map(shaftEndName)).toEqual([
    'Column shaft, in joint 1',
    'Shaft 2, the end at the column, in joint 2',
    'Shaft 2, the end at the box, in joint 3',
    'Box input, in joint 3',
  ]);
});

describe('the end that stock turns to either side', () => {
  const flat = { kind: 'double-d-end', diameter: 19, acrossFlats: 14, formed: 50 } as const;
  const splined = { kind: 'splined', ...SPLINE, formed: 40 } as const;
  test.each(['column', 'box'] as const)('formed at the %s end, or at both', (toward) => {
    const away = toward === 'column' ? 'box' : 'column';
    for (const ends of [toward, 'both'] as const) {
      expect(stockEnd({ ...flat, ends }, toward)).toEqual({
        kind: 'double-d',
        diameter: 19,
        acrossFlats: 14,
        length: 50,
      });
      expect(stockEnd({ ...splined, ends }, toward)).toEqual({ kind: 'spline', ...SPLINE, length: 40 });
    }
    expect(stockEnd({ ...flat, ends: away }, toward)).toEqual({ kind: 'round', diameter: 19 });
    expect(stockEnd({ ...splined, ends: away }, toward)).toEqual({
      kind: 'round',
      diameter: SPLINE.diameter,
    });
    expect(stockEnd({ kind: 'round', diameter: 19 }, toward)).toEqual({ kind: 'round', diameter: 19 });
    expect(stockEnd({ kind: 'double-d', diameter: 19, acrossFlats: 14 }, toward)).toEqual(doubleD(19, 14));
  });
  test('a metric spline keeps its module, and has no pitch', () => {
    const { pitch: _, ...rest } = splined;
    expect(Object.keys(stockEnd({ ...rest, module: 1, ends: 'both' }, 'box')).sort()).toEqual([
      'diameter',
      'form',
      'kind',
      'length',
      'module',
      'teeth',
    ]);
    expect('module' in stockEnd({ ...splined, ends: 'both' }, 'box')).toBe(false);
  });
});
