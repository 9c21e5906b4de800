import { describe, expect, test } from 'vitest';
import {
  checkRoute,
  endWork,
  makingSteps,
  notchFor,
  partsList,
  routeOf,
  shaftTorques,
} from '../../shared-math/shaft/index.ts';
import { seatWords, torqueWords } from '../../shared-math/shaft/steps.ts';
import { expectClose } from '../support/close.ts';
import { SPLINE, shaftOf } from '../support/shafts.ts';

// Whole sentences, worked out by hand from figures that are round in inches.

const INCHES = { unit: 'in', fraction: 16 } as const;
const MM = { unit: 'mm', fraction: 0 } as const;
const IN = 25.4;

const BOLT = { diameter: 0.375 * IN, fromFace: 0.625 * IN, offset: 0.4475 * IN } as const;
const SCREW = { diameter: 0.375 * IN, fromFace: 0.5 * IN } as const;
const FLATS = { bore: 19.1, acrossFlats: 14.3, depth: 1.25 * IN, reach: 1.75 * IN } as const;
const SCREWED = { kind: 'double-d-set-screw', ...FLATS, screw: SCREW } as const;
const PINCHED = { kind: 'double-d-pinch-bolt', ...FLATS, bolt: BOLT } as const;
const WELDED = { kind: 'weld', bore: 19.1, depth: IN, reach: 1.5 * IN } as const;
const SPLINED = {
  kind: 'spline-pinch-bolt',
  ...SPLINE,
  depth: 1.125 * IN,
  reach: 1.75 * IN,
  bolt: { diameter: 0.375 * IN, fromFace: 0.5 * IN, offset: 0.45 * IN },
} as const;
const DOUBLE_D = { kind: 'double-d', diameter: 19.05, acrossFlats: 14.2 } as const;

type Json = Record<string, unknown>;

/**
 * Two single joints 20 in apart (16 forward, 12 down), level column and box. The column's end is 3/4 in from the first
 * joint's centre, so that it sits 1 in deep in a reach of 1 3/4; the box's 5/8 in, 1 1/8 deep.
 */
function example({ joints = [{}, {}], ...over }: { readonly joints?: readonly Json[] } & Json = {}) {
  const [first, second] = [
    [-1350, 300, 700],
    [-1350 + 16 * IN, 300, 700 - 12 * IN],
  ] as const;
  return shaftOf({
    column: { end: [first[0] - 0.75 * IN, 300, first[2]], axis: [1, 0, 0], fit: DOUBLE_D },
    box: {
      end: [second[0] + 0.625 * IN, 300, second[2]],
      axis: [1, 0, 0],
      fit: { kind: 'spline', ...SPLINE },
    },
    joints: [
      { kind: 'single', centre: first, columnSide: SCREWED, boxSide: WELDED, ...joints[0] },
      { kind: 'single', centre: second, columnSide: PINCHED, boxSide: SPLINED, ...joints[1] },
    ],
    shafts: [
      {
        clock: 0,
        stock: { ...DOUBLE_D, kind: 'double-d-end', formed: 2 * IN, ends: 'box', material: 'steel' },
      },
    ],
    supports: [{ shaft: 0, at: 0.25 }],
    ...over,
  });
}

const stepsOf = (shaft: ReturnType<typeof example>, style: typeof INCHES | typeof MM = INCHES) =>
  makingSteps(shaft, routeOf(shaft), style);
const sentences = (
  shaft: ReturnType<typeof example>,
  kind: string,
  style: typeof INCHES | typeof MM = INCHES,
) =>
  stepsOf(shaft, style)
    .filter((step) => step.kind === kind)
    .map(({ sentence }) => sentence);

/** What stands before the steps of whatever is welded and held by set screws. */
const BEFORE = {
  welding: 'Welding is for a qualified welder, where the local rule allows it at all.',
  screws: 'A second set screw at a right angle does not double the hold.',
};
const WELDING =
  'tack, check the clock and that it runs true, then weld in short runs with pauses. Keep the joint’s needle bearings and seals cool: take the spider out, or wrap it in wet rag, and never let current pass through the needles.';

test('every step of a shaft with welded, flat and splined ends, in inches', () => {
  expect(stepsOf(example())).toEqual([
    {
      kind: 'warning',
      part: '',
      sentence:
        'Nothing in this shaft slides. A frame that flexes and a column that collapses want 1/2 in to 1 in of slip, or two angles in the run that can fold.',
    },
    { kind: 'warning', part: 'Joint 1, the end at the box', sentence: BEFORE.welding },
    { kind: 'warning', part: '', sentence: BEFORE.screws },
    {
      kind: 'cut',
      part: 'Shaft 1',
      // 20 in, less 1/2 in at each end from the joint's centre to the tip.
      sentence:
        'Cut Shaft 1 from round 3/4 in with double-D 3/4 in, 0.559 in across the flats, 2 in long at the box end, plain steel, 19 in long. Deburr both ends.',
    },
    {
      kind: 'dimple',
      part: 'Column shaft, in joint 1',
      sentence:
        'Column shaft, in joint 1: push it 1 in into joint 1, as drawn, which is 1/4 in short of fully home, mark through the hole of the set screw, and drill a dimple 1/8 in deep where the 3/8 in screw of joint 1 seats, 1/2 in from the tip.',
    },
    {
      kind: 'notch',
      part: 'Shaft 1, the end at the box, in joint 2',
      // The bolt's near side is 0.4475 - 0.1875 = 0.260 in from the axis: 0.115 in into the round, filed 0.010 deeper.
      // A round of 0.1975 in, 0.125 in deep, is 2 √(0.1975² - 0.0725²) = 0.367 in wide.
      sentence:
        'Shaft 1, the end at the box, in joint 2: push it fully home, 1 1/4 in into joint 2, mark through the bolt’s hole, and notch the round 1/8 in deep and 0.367 in wide, its middle 5/8 in from the tip, until the 3/8 in bolt slides through freely: it has to cross the notch.',
    },
    {
      kind: 'notch',
      part: 'Box input, in joint 2',
      sentence:
        'Box input, in joint 2: push it fully home, 1 1/8 in into joint 2, mark through the bolt’s hole, and notch the round 0.133 in deep and 0.373 in wide, its middle 5/8 in from the tip, until the 3/8 in bolt slides through freely: it has to cross the notch.',
    },
    {
      kind: 'support',
      part: 'Shaft 1',
      sentence:
        'Fix the support bearing on shaft 1, 5 in from the centre of joint 1, bored 0.757 in so that the shaft slides in it, round and double-D alike. It must let the shaft tilt and slide.',
    },
    {
      kind: 'clock',
      part: 'Shaft 1',
      sentence:
        'Shaft 1: set the ears of its two yokes, in joint 1 and in joint 2, in one plane, and mark it before it is fixed.',
    },
    {
      kind: 'weld',
      part: 'Joint 1, the end at the box',
      sentence: `Joint 1, the end at the box: ${WELDING}`,
    },
    {
      kind: 'set-screw',
      part: 'Joint 1, the end at the column',
      sentence:
        'Joint 1, the end at the column: thread lock on the set screw, seat it in its dimple to 290 lb·in (a usual seating torque; the maker’s figure rules), then its lock nut.',
    },
    ...(['column', 'box'] as const).map((end) => ({
      kind: 'pinch-bolt',
      part: `Joint 2, the end at the ${end}`,
      sentence: `Joint 2, the end at the ${end}: tighten the pinch bolt; 45 lb·ft is common for such a joint, the maker’s figure rules. A new locking nut each time.`,
    })),
    {
      kind: 'check',
      part: '',
      sentence:
        'Turn from lock to lock with the wheels off the ground, at full bump and full droop: no bind, no touching, nothing slips at a mark. Check every bolt, nut and screw again after the first miles.',
    },
  ]);
});

test('in millimetres and newton metres', () => {
  // What has to be known stands before the steps.
  const all = stepsOf(example(), MM);
  const told = all
    .toSorted((a, b) => Number(a.kind === 'warning') - Number(b.kind === 'warning'))
    .map(({ sentence }) => sentence);
  expect(told[0]).toBe(
    'Cut Shaft 1 from round 19.05 mm with double-D 19.05 mm, 14.2 mm across the flats, 50.8 mm long at the box end, plain steel, 482.6 mm long. Deburr both ends.',
  );
  expect(told.find((one) => one.includes('dimple 3'))).toContain(
    'dimple 3.17 mm deep where the 9.52 mm screw',
  );
  expect(told.find((one) => one.startsWith('Nothing'))).toContain('12.7 mm to 25.4 mm of slip');
  expect(told.filter((one) => one.includes('61 N·m is common'))).toHaveLength(2);
  expect(told.find((one) => one.includes('thread lock'))).toContain('to 33 N·m (');
});

test('a torque is told in pound-feet from 30 up, in pound-inches below', () => {
  const poundFoot = 1.3558179483314;
  expect(torqueWords(30.001 * poundFoot, INCHES)).toBe('30 lb·ft');
  expect(torqueWords(29.99 * poundFoot, INCHES)).toBe('360 lb·in');
  expect(torqueWords(2 * poundFoot, INCHES)).toBe('24 lb·in');
  expect(torqueWords(100 * poundFoot, MM)).toBe('136 N·m');
});

test('a seat is told as fully home within a tenth of a millimetre', () => {
  const work = (engaged: number | undefined, bore: number | undefined) =>
    seatWords(
      {
        place: { part: 'box', joint: 2, side: 'boxSide' },
        engaged,
        bore,
        tipToCentre: 0,
        notch: undefined,
        dimple: undefined,
        weld: false,
      },
      MM,
    );
  expect(work(30, 30.09)).toBe('push it fully home, 30 mm into joint 3');
  expect(work(30, undefined)).toBe('push it fully home, 30 mm into joint 3');
  expect(work(30, 30.11)).toBe('push it 30 mm into joint 3, as drawn, which is 0.11 mm short of fully home');
  expect(work(undefined, 30)).toBe('');
});

describe('the clock', () => {
  const clocked = (clock: number, box: object, column: object) =>
    sentences(
      example({ joints: [{ boxSide: box }, { columnSide: column }], shafts: [{ clock }] }),
      'clock',
    )[0];
  const turned =
    'Shaft 1: looking from the column to the box, turn its yoke in joint 2 by 12.5° clockwise from its yoke in joint 1';
  test('a welded end is set freely; which way is told', () => {
    expect(clocked(12.5, WELDED, PINCHED)).toBe(`${turned}, and mark it before it is fixed.`);
    expect(clocked(12.5, PINCHED, WELDED)).toBe(`${turned}, and mark it before it is fixed.`);
    expect(clocked(-12.5, WELDED, PINCHED)).toBe(
      `${turned.replace('clockwise', 'counter-clockwise')}, and mark it before it is fixed.`,
    );
  });
  test('flats at both ends leave no choice', () => {
    const flat = example({
      joints: [{ boxSide: SCREWED }, { columnSide: PINCHED }],
      shafts: [{ clock: 12.5 }],
    });
    expect(sentences(flat, 'clock')).toEqual([]);
    expect(sentences(flat, 'warning')).toContain(
      `${turned}: flats at both ends leave no choice. Order the joints with their ears so, or take a welded or splined end.`,
    );
  });
  // 360° over 36 teeth is 10°; 36 and 30 teeth together move by 360° over 180, their least common multiple.
  test.each([
    [36, undefined, '10.0°', '5.0°'],
    [36, 30, '2.0°', '1.0°'],
    // An odd count: after half a turn the ears are alike and the teeth stand between.
    [15, undefined, '12.0°', '6.0°'],
  ])('splines of %s and %s teeth move it in steps of %s', (teeth, other, step, half) => {
    const at = (count: number | undefined) => (count ? { ...SPLINED, teeth: count } : PINCHED);
    for (const told of [clocked(12.5, at(teeth), at(other)), clocked(12.5, at(other), at(teeth))])
      expect(told).toBe(
        `${turned}. Its splines move it in steps of ${step}: take the nearest, at most ${half} off.`,
      );
  });
});

describe('what is missing or does not go', () => {
  test('figures to be measured are named, all of them', () => {
    const bare = { kind: 'weld', bore: 19.1 };
    expect(sentences(example({ joints: [{ boxSide: bare }, { columnSide: undefined }] }), 'measure')).toEqual(
      [
        "Measure before cutting Shaft 1: joint 1, box side: depth of the bore; joint 1, box side: from its face to the joint's centre; joint 2, column side: what it takes.",
      ],
    );
  });
  test('joints too near leave no room, by so much', () => {
    // Reaches of 12 in each side of a run of 20 in: they meet 4 in early, and each end sits as deep as before.
    const far = (side: object) => ({ ...side, reach: 12 * IN });
    const shaft = example({ joints: [{ boxSide: far(WELDED) }, { columnSide: far(PINCHED) }] });
    // 12 - 1 and 12 - 1 1/4 from the centres to the tips.
    expect(sentences(shaft, 'warning')).toContainEqual(
      'Shaft 1: move its joints 1 3/4 in and more apart: their ends meet before a shaft fits between.',
    );
    expect(sentences(shaft, 'cut')).toEqual([]);
  });
  test('a mismatch stands first, with the first of its remedies', () => {
    const first = stepsOf(example({ shafts: [{ clock: 0, stock: { kind: 'round', diameter: 19.05 } }] }))[0];
    expect(first).toEqual({
      kind: 'warning',
      part: 'Shaft 1 and joint 2',
      sentence:
        'Shaft 1 and joint 2 do not go together: a round end has no flats and does not go into a double-D bore. Take joint 2 with a round bore 3/4 in to weld, toward the column.',
    });
  });
  test('a shaft without stock is cut all the same; the support’s bore waits', () => {
    const shaft = example({ shafts: [{ clock: 0 }] });
    expect(sentences(shaft, 'cut')).toEqual(['Cut Shaft 1, 19 in long. Deburr both ends.']);
    expect(sentences(shaft, 'support')).toEqual([
      'Fix the support bearing on shaft 1, 5 in from the centre of joint 1. It must let the shaft tilt and slide.',
    ]);
  });
  test('a set screw not described has no torque, and one that the table lacks neither', () => {
    const told = (screw: object | undefined) =>
      sentences(example({ joints: [{ columnSide: { ...SCREWED, screw } }, {}] }), 'set-screw');
    const plain = [
      'Joint 1, the end at the column: thread lock on the set screw, seat it in its dimple, then its lock nut.',
    ];
    expect(told(undefined)).toEqual(plain);
    expect(told({ diameter: 20, fromFace: 12 })).toEqual(plain);
    // 1/2 in: 620 lb·in of the table is 51.7 lb·ft.
    expect(told({ diameter: 0.5 * IN, fromFace: 12 })[0]).toContain('in its dimple to 52 lb·ft (a usual');
  });
  test('a spline has a set screw only where one is described', () => {
    const told = (screw: object | undefined) => {
      const { bolt: _, ...rest } = SPLINED;
      return sentences(
        example({ joints: [{ columnSide: PINCHED }, { boxSide: { ...rest, kind: 'spline', screw } }] }),
        'set-screw',
      );
    };
    expect(told(undefined)).toEqual([]);
    expect(told(SCREW)).toHaveLength(1);
  });
  test('two welded ends are one step', () => {
    const step = stepsOf(example({ joints: [{}, { columnSide: WELDED }] })).find(
      ({ kind }) => kind === 'weld',
    );
    const part = 'Joint 1, the end at the box; Joint 2, the end at the column';
    expect(step).toEqual({ kind: 'weld', part, sentence: `${part}: ${WELDING}` });
    expect(sentences(example({ joints: [{ boxSide: PINCHED }, {}] }), 'weld')).toEqual([]);
  });
});

describe('a shaft that slides', () => {
  const slides = (travel: number, overlap: number) =>
    example({
      joints: [{ boxSide: PINCHED }, {}],
      shafts: [{ clock: 0, stock: { ...DOUBLE_D, slip: { travel, overlap } } }],
    });
  test('its overlap and its travel are told, and its two pieces', () => {
    const shaft = slides(IN, 2 * IN);
    expect(sentences(shaft, 'slip')).toEqual([
      'Shaft 1: put its two pieces together with 2 in of overlap, free to slide 1 in; mark it, so that it can be checked on the car.',
    ]);
    // 20 in less 1/2 in at each end, and 2 in in one another: two pieces of 10 1/2 in.
    // The layout holds the form that they slide on, neither the outer tube's outside nor its wall.
    const form = 'double-D 3/4 in, 0.559 in across the flats';
    expect(sentences(shaft, 'cut')).toEqual([
      `Cut Shaft 1, outer piece from a tube whose bore slides on the inner piece’s ${form} (its outside and wall are the maker’s, not given in this layout), 10 1/2 in long. Deburr both ends.`,
      `Cut Shaft 1, inner piece from ${form}, full length (it slides in the outer piece), 10 1/2 in long. Deburr both ends.`,
    ]);
  });
  test('an inch has to stay engaged when it is drawn out', () => {
    expect(sentences(slides(1.5 * IN, 2 * IN), 'slip')).toEqual([
      'Shaft 1: let the two pieces overlap 1/2 in more, so that an inch stays engaged when it is drawn out by its slip of 1 1/2 in.',
    ]);
  });
});

test('a double joint alone wants the column’s bearing', () => {
  const shaft = shaftOf({ joints: [{ kind: 'double', centre: [-1346.5, 332.5, 735.5] }], shafts: [] });
  expect(stepsOf(shaft).find(({ part }) => part === 'Column')).toEqual({
    kind: 'warning',
    part: 'Column',
    sentence:
      'The double joint stands alone between column and box: the column’s own lower bearing has to be close to it.',
  });
  expect(sentences(example({ supports: [] }), 'support')).toEqual([]);
});

describe('the parts list', () => {
  const words = (shaft: ReturnType<typeof example>, style: typeof INCHES | typeof MM = INCHES) =>
    partsList(shaft, routeOf(shaft), style).map(({ count, words: each }) => `${count} x ${each}`);

  test('each part by its dimensions, like bolts together', () => {
    expect(words(example())).toEqual([
      '1 x Single joint: double-D 0.752 in, 0.563 in across the flats, with set screw; round bore 0.752 in to weld',
      '1 x Single joint: double-D 0.752 in, 0.563 in across the flats, with pinch bolt; spline of 36 teeth on 0.771 in, 48/96 pitch, involute 45°, with pinch bolt',
      '1 x Shaft 1: round 3/4 in with double-D 3/4 in, 0.559 in across the flats, 2 in long at the box end, plain steel, 19 in long',
      '1 x Support bearing, bored 0.757 in',
      '1 x Set screw 3/8 in with lock nut',
      '2 x Pinch bolt 3/8 in with locking nut',
    ]);
    expect(words(example(), MM).slice(3)).toEqual([
      '1 x Support bearing, bored 19.23 mm',
      '1 x Set screw 9.52 mm with lock nut',
      '2 x Pinch bolt 9.52 mm with locking nut',
    ]);
  });
  test('what is not chosen is said, not left out', () => {
    const bare = { columnSide: undefined, boxSide: undefined };
    expect(words(example({ joints: [bare, { ...bare, kind: 'double' }], shafts: [{ clock: 0 }] }))).toEqual([
      '1 x Single joint, ends not chosen yet',
      '1 x Double joint, ends not chosen yet',
      '1 x Support bearing, bore not known yet',
    ]);
    expect(words(example({ joints: [{ columnSide: undefined }, bare] })).slice(0, 3)).toEqual([
      '1 x Single joint: one end not chosen yet; round bore 0.752 in to weld',
      '1 x Single joint, ends not chosen yet',
      '1 x Shaft 1: round 3/4 in with double-D 3/4 in, 0.559 in across the flats, 2 in long at the box end, plain steel, length not known yet',
    ]);
    expect(words(example({ joints: [{ boxSide: undefined }, {}] }))[0]).toBe(
      '1 x Single joint: double-D 0.752 in, 0.563 in across the flats, with set screw; one end not chosen yet',
    );
  });
  test('a joint turned end for end is the same; both ends alike are told once', () => {
    expect(
      words(
        example({
          joints: [
            { columnSide: PINCHED, boxSide: WELDED },
            { columnSide: WELDED, boxSide: PINCHED },
          ],
        }),
      )[0],
    ).toBe(
      '2 x Single joint: double-D 0.752 in, 0.563 in across the flats, with pinch bolt; round bore 0.752 in to weld',
    );
    expect(words(example({ joints: [{ columnSide: WELDED }, {}] }))[0]).toBe(
      '1 x Single joint: both ends round bore 0.752 in to weld',
    );
  });
  test('as data: a shelf looks each up by its dimensions', () => {
    const shaft = example();
    expect(partsList(shaft, routeOf(shaft), INCHES).map(({ part }) => part)).toEqual([
      { kind: 'joint', joint: 'single', columnSide: SCREWED, boxSide: WELDED },
      { kind: 'joint', joint: 'single', columnSide: PINCHED, boxSide: SPLINED },
      { kind: 'stock', stock: shaft.shafts[0]?.stock, length: expect.closeTo(19 * IN, 6) },
      { kind: 'support', bore: expect.closeTo(0.757 * IN, 6) },
      { kind: 'set-screw', diameter: 0.375 * IN },
      { kind: 'pinch-bolt', diameter: 0.375 * IN },
    ]);
  });
});

describe('what an end needs to be measured', () => {
  const work = (side: object) => {
    const shaft = example({ joints: [{ boxSide: side }, {}] });
    return endWork(shaft, routeOf(shaft), { part: 0, joint: 0, side: 'boxSide' });
  };
  test('from tip to centre: what the joint reaches less what is in it; not known while either is not', () => {
    expectClose(work(WELDED).tipToCentre!, 0.5 * IN, 1e-12);
    expect(work({ kind: 'weld', bore: 19.1, depth: IN })).toMatchObject({
      engaged: IN,
      tipToCentre: undefined,
    });
    expect(work({ kind: 'weld', bore: 19.1, reach: IN })).toMatchObject({
      engaged: undefined,
      tipToCentre: undefined,
    });
    const bare = example({ joints: [{ boxSide: undefined }, {}] });
    expect(endWork(bare, routeOf(bare), { part: 0, joint: 0, side: 'boxSide' })).toMatchObject({
      engaged: undefined,
      bore: undefined,
      tipToCentre: undefined,
      notch: undefined,
      dimple: undefined,
      weld: false,
    });
  });
  test('no notch where the bolt passes clear, or just touches', () => {
    const end = { kind: 'round', diameter: 20 } as const;
    const bolt = { diameter: 10, fromFace: 12, offset: 15 };
    expect(notchFor(end, bolt, 25)).toBeUndefined();
    expect(notchFor(end, { ...bolt, offset: 16 }, 25)).toBeUndefined();
    // 6 deep and 0.254 of clearance, deeper than the bolt's radius: as wide as the bolt and its clearance.
    const notch = notchFor(end, { ...bolt, offset: 9 }, 25)!;
    expectClose(notch.depth, 6.254, 1e-9);
    expectClose(notch.width, 10.508, 1e-9);
    expectClose(notch.fromTip, 13, 1e-12);
  });
});

describe('what a route asks attention for', () => {
  const three = (over: object) =>
    shaftOf({
      column: { end: [-50, 0, 500], axis: [1, 0, 0] },
      box: { end: [2050, 0, 500], axis: [1, 0, 0] },
      joints: [0, 1000, 2000].map((x) => ({ kind: 'single', centre: [x, 0, 500] })),
      shafts: [{ clock: 0 }, { clock: 0 }],
      ...over,
    });
  test('straight single joints, and no double one', () => {
    const shaft = three({
      joints: ['single', 'double', 'single'].map((kind, i) => ({ kind, centre: [1000 * i, 0, 500] })),
    });
    expect(checkRoute(shaft, routeOf(shaft)).straight).toEqual([0, 2]);
  });
  test('a span is parted by the supports of its own shaft alone, in whatever order they stand', () => {
    const spans = (supports: object[], longest?: number) => {
      const shaft = three({ supports });
      return checkRoute(shaft, routeOf(shaft), longest).longSpans;
    };
    // 30 in are 762 mm.
    expect(spans([])).toEqual([
      { shaft: 0, length: 1000 },
      { shaft: 1, length: 1000 },
    ]);
    expect(spans([{ shaft: 1, at: 0.5 }])).toEqual([{ shaft: 0, length: 1000 }]);
    const [own] = spans([
      { shaft: 0, at: 0.9 },
      { shaft: 0, at: 0.1 },
      { shaft: 1, at: 0.5 },
    ]);
    expect(own).toMatchObject({ shaft: 0 });
    expectClose(own!.length, 800, 1e-9);
    expect(spans([{ shaft: 1, at: 0.5 }], 1000)).toEqual([]);
  });
});

test('each bolt and screw that is tightened is listed with what is usual for it, once for each end', () => {
  const shaft = example();
  const listed = shaftTorques(shaft, INCHES);
  const fastened = stepsOf(shaft).filter(({ kind }) => kind === 'pinch-bolt' || kind === 'set-screw');
  expect(listed.map(({ part }) => part).sort()).toEqual(fastened.map(({ part }) => part).sort());
  for (const { part, usual } of listed)
    expect(fastened.find((step) => step.part === part)?.sentence).toContain(usual);
  const bare = example({ joints: [{ columnSide: { ...SCREWED, screw: undefined } }, {}] });
  expect(shaftTorques(bare, INCHES)[0]).toMatchObject({ fastener: 'set screw', usual: undefined });
});
