import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { ShaftDocument } from '../../shared-math/layout/index.ts';
import {
  checkMeetings,
  checkRoute,
  clockFreedom,
  cutList,
  endWork,
  type Meeting,
  makingSteps,
  meetingPlaces,
  partsList,
  routeOf,
  slideOnAxis,
  stockSection,
  supportList,
} from '../../shared-math/shaft/index.ts';
import { DEGREE, expectClose } from '../support/close.ts';
import {
  DOUBLE_D_SIDE,
  rawShaft,
  SCREW_SIDE,
  SPLINE,
  SPLINE_SIDE,
  shaftOf,
  shaftRefusal,
  WELD_SIDE,
} from '../support/shafts.ts';

const INCHES = { unit: 'in', fraction: 16 } as const;
const MM = { unit: 'mm', fraction: 0 } as const;
const DOUBLE_D_STOCK = { kind: 'double-d', diameter: 19.05, acrossFlats: 14.2, material: 'steel' } as const;

// biome-ignore lint/suspicious/noExplicitAny: documents are spoiled here on purpose
type Spoiled = any;

describe('a bad shaft is refused with its place and reason', () => {
  const three = [-1200, 380, 600];
  test.each<[string, (s: Spoiled) => void, string]>([
    ['unknown key', (s) => (s.colour = 1), 'shaft: unknown key "colour"'],
    ['unknown key in a joint', (s) => (s.joints[0].clock = 1), 'shaft.joints[0]: unknown key "clock"'],
    ['no joints', (s) => (s.joints = []), 'shaft.joints: expected 1 entries, found a list of 0'],
    [
      'an unknown joint',
      (s) => (s.joints[0].kind = 'triple'),
      'shaft.joints[0].kind: expected "single" or "double", found the text "triple"',
    ],
    [
      'axis of no length',
      (s) => (s.column.axis = [0, 0, 0]),
      'shaft.column.axis: has no length, so it points nowhere',
    ],
    [
      'box axis of no length',
      (s) => (s.box.axis = [0, 0, 0]),
      'shaft.box.axis: has no length, so it points nowhere',
    ],
    [
      'two joints on one spot',
      (s) => (s.joints[1].centre = [...s.joints[0].centre]),
      'shaft.joints[1].centre: on the same spot as joints[0]: the shaft between them has no length',
    ],
    [
      'first and last joint on one spot',
      (s) => {
        s.joints = [s.joints[0], { kind: 'single', centre: three }, { ...s.joints[0] }];
        s.shafts = [{ clock: 0 }, { clock: 0 }];
      },
      'shaft.joints[2].centre: on the same spot as joints[0]: two joints cannot share it',
    ],
    [
      'a shaft too many',
      (s) => s.shafts.push({ clock: 0 }),
      'shaft.shafts: expected 1 for 2 joints (one between each joint and the next), found 2',
    ],
    [
      'a shaft too few',
      (s) => (s.shafts = []),
      'shaft.shafts: expected 1 for 2 joints (one between each joint and the next), found 0',
    ],
    [
      'a support on no shaft',
      (s) => (s.supports = [{ shaft: 1, at: 0.5 }]),
      'shaft.supports[0].shaft: there is no shaft 1; they are counted from 0 to 0',
    ],
    [
      'a support where there is no shaft at all',
      (s) => {
        s.joints = [s.joints[0]];
        s.shafts = [];
        s.supports = [{ shaft: 0, at: 0.5 }];
      },
      'shaft.supports[0].shaft: there is no intermediate shaft to support',
    ],
    [
      'a support off its shaft',
      (s) => (s.supports = [{ shaft: 0, at: 1.2 }]),
      'shaft.supports[0].at: must be at most 1, found 1.2',
    ],
    [
      'clock at the far end',
      (s) => (s.shafts[0].clock = -90),
      'shaft.shafts[0].clock: must be more than -90, found -90',
    ],
    [
      'clock beyond a right angle',
      (s) => (s.shafts[0].clock = 91),
      'shaft.shafts[0].clock: must be at most 90, found 91',
    ],
    [
      'limit of nothing',
      (s) => (s.joints[0].limit = 0),
      'shaft.joints[0].limit: must be more than 0, found 0',
    ],
    [
      'flats that cut nothing',
      (s) => (s.box.fit = { kind: 'double-d', diameter: 19, acrossFlats: 19 }),
      'shaft.box.fit.acrossFlats: must be less than the diameter, 19; found 19',
    ],
    [
      'flats wider than the bore',
      (s) => (s.joints[1].boxSide = { ...DOUBLE_D_SIDE, acrossFlats: 20 }),
      'shaft.joints[1].boxSide.acrossFlats: must be less than the bore, 19.1; found 20',
    ],
    [
      'flats wider than the stock',
      (s) => (s.shafts[0].stock = { ...DOUBLE_D_STOCK, acrossFlats: 25 }),
      'shaft.shafts[0].stock.acrossFlats: must be less than the diameter, 19.05; found 25',
    ],
    [
      'an unknown end',
      (s) => (s.column.fit = { kind: 'square', diameter: 19 }),
      'shaft.column.fit.kind: expected "round" or "double-d" or "spline"',
    ],
    [
      'a spline without its count',
      (s) => (s.column.fit = { kind: 'spline', form: 'serrated', diameter: 19 }),
      'shaft.column.fit.teeth: missing; expected a number',
    ],
    [
      'half a tooth',
      (s) => (s.column.fit = { kind: 'spline', form: 'serrated', diameter: 19, teeth: 36.5 }),
      'shaft.column.fit.teeth: expected a whole number, found 36.5',
    ],
  ])('%s', (_, spoil, line) => {
    const raw = structuredClone(rawShaft()) as Spoiled;
    spoil(raw);
    expect(shaftRefusal(raw)).toBe(line);
  });

  test('no shaft, a shaft with everything told, and one with the least told are taken', () => {
    expect(shaftRefusal(null)).toBe('accepted');
    expect(shaftRefusal('straight')).toBe('shaft: expected an object { }, found the text "straight"');
    const { supports: _, ...least } = rawShaft({ shafts: [{}] });
    expect(shaftRefusal(least)).toBe('accepted');
    const shaft = shaftOf({ shafts: [{}] });
    expect(shaft.shafts).toEqual([{ clock: 0 }]);
    expect(shaft.supports).toEqual([]);
    const [first, second] = rawShaft()['joints'] as object[];
    const full = rawShaft({
      column: { ...(rawShaft()['column'] as object), fit: { kind: 'spline', ...SPLINE, length: 30 } },
      box: { ...(rawShaft()['box'] as object), fit: { kind: 'round', diameter: 19.05 } },
      joints: [
        { ...first, limit: 25, columnSide: SPLINE_SIDE, boxSide: DOUBLE_D_SIDE },
        { ...second, columnSide: SCREW_SIDE, boxSide: WELD_SIDE },
      ],
      shafts: [{ clock: 90, stock: { ...DOUBLE_D_STOCK, slip: { travel: 20, overlap: 60 } } }],
      supports: [{ shaft: 0, at: 0 }],
    });
    expect(shaftRefusal(full)).toBe('accepted');
  });
});

describe('the route', () => {
  test('lengths, distances along the axes and off them', () => {
    const shaft = shaftOf({
      column: { end: [0, 0, 0], axis: [2, 0, 0] },
      box: { end: [500, 40, 0], axis: [3, 0, 0] },
      joints: [
        { kind: 'single', centre: [50, 3, 4] },
        { kind: 'single', centre: [450, 40, 0], limit: 12 },
      ],
    });
    const route = routeOf(shaft);
    expect(route.column).toEqual({ along: 50, off: 5 });
    expect(route.box).toEqual({ along: 50, off: 0 });
    expectClose(route.lengths[0]!, Math.hypot(400, 37, 4), 1e-9);
    expectClose(route.joints[0]!.angle, Math.acos(400 / Math.hypot(400, 37, 4)), 1e-12);
    expectClose(route.joints[1]!.limit, 12 * DEGREE, 1e-12);
    // The shop's own limits stand where the joint has none of its own.
    const own = routeOf(shaft, { single: 0.4, double: 1 });
    expect(own.joints.map(({ limit }) => limit)).toEqual([0.4, route.joints[1]!.limit]);
  });

  test('one joint stands between the column and the box, with nothing between', () => {
    const shaft = shaftOf({ joints: [{ kind: 'double', centre: [-1300, 330, 700] }], shafts: [] });
    const { joints, lengths, directions } = routeOf(shaft);
    expect(lengths).toEqual([]);
    expect(directions).toHaveLength(2);
    expectClose(joints[0]!.angle, Math.acos(0.87 / Math.hypot(0.87, 0.05, 0.49)), 1e-12);
    expectClose(joints[0]!.limit, 70 * DEGREE, 1e-12);
  });

  test('a joint dragged anywhere slides on its axis, to the nearest place', () => {
    const [end, axis, to] = [
      [1, 2, 3],
      [2, -1, 0.5],
      [40, 10, -20],
    ] as const;
    const at = slideOnAxis(end, axis, to);
    const off = [0, 1, 2].map((i) => to[i]! - at[i]!);
    expectClose(
      off.reduce((sum, v, i) => sum + v * axis[i]!, 0),
      0,
      1e-9,
      'square to the axis',
    );
    const moved = at.map((v, i) => (v - end[i]!) / axis[i]!);
    expectClose(moved[0]!, moved[1]!, 1e-12);
    expectClose(moved[0]!, moved[2]!, 1e-12);
  });
});

describe('what a route asks attention for', () => {
  const kinds = (list: ('single' | 'double')[], supports: object[] = []) =>
    shaftOf({
      joints: list.map((kind, i) => ({ kind, centre: [-1300 + 200 * i, 330 + 30 * (i % 2), 700] })),
      shafts: list.slice(1).map(() => ({ clock: 0 })),
      supports,
    });

  test.each<[('single' | 'double')[], number, string | undefined, boolean]>([
    [['single'], 0, undefined, false],
    [['single', 'single'], 0, undefined, false],
    [['single', 'single', 'single'], 1, 'three-joints', false],
    [['single', 'single', 'single', 'single'], 2, 'three-joints', false],
    [['double'], 0, 'double-joint', true],
    [['single', 'double'], 1, 'double-joint', false],
    [['double', 'single', 'single'], 2, 'double-joint', false],
  ])('%j: %d supports (common practice)', (list, needed, because, byColumnBearing) => {
    const shaft = kinds(list);
    expect(checkRoute(shaft, routeOf(shaft)).support).toEqual({
      because,
      needed,
      placed: 0,
      byColumnBearing,
    });
  });

  test('joints beyond their limit, straight ones, and long spans', () => {
    const shaft = shaftOf({
      column: { end: [0, 0, 0], axis: [1, 0, 0] },
      box: { end: [1300, 0, 0], axis: [1, 0, 1] },
      joints: [
        { kind: 'single', centre: [50, 0, 0] },
        { kind: 'single', centre: [1000, 0, 0] },
      ],
      supports: [],
    });
    const check = checkRoute(shaft, routeOf(shaft));
    expect(check.straight).toEqual([0]);
    expect(check.overLimit).toHaveLength(1);
    expect(check.overLimit[0]!.joint).toBe(1);
    expectClose(check.overLimit[0]!.angle, 45 * DEGREE, 1e-12);
    expect(check.worst.joint).toBe(1);
    expectClose(check.worst.share, 1.5, 1e-12);
    expect(check.longSpans).toEqual([{ shaft: 0, length: 950 }]);
    const held = { ...shaft, supports: [{ shaft: 0, at: 0.5 }] };
    expect(checkRoute(held, routeOf(held)).longSpans).toEqual([]);
    const shopOwn = checkRoute(held, routeOf(held), 400);
    expect(shopOwn.longSpans).toEqual([{ shaft: 0, length: 475 }]);
  });
});

describe('ends that meet', () => {
  /** Shaft 1 and joint 2, with the stock and the joint's column side given. */
  function meeting(stock: object | undefined, side: object | undefined): Meeting {
    const [first, second] = rawShaft()['joints'] as object[];
    const shaft = shaftOf({
      joints: [first, { ...second, ...(side ? { columnSide: side } : {}) }],
      shafts: [{ clock: 0, ...(stock ? { stock } : {}) }],
    });
    const found = checkMeetings(shaft, routeOf(shaft), INCHES);
    expect(found.map(({ name }) => name)).toEqual([
      'Column and joint 1',
      'Shaft 1 and joint 1',
      'Shaft 1 and joint 2',
      'Box and joint 2',
    ]);
    return found[2]!;
  }
  const round = { kind: 'round', diameter: 19.05 };
  const halfFlat = { kind: 'double-d-end', diameter: 19.05, acrossFlats: 14.2, formed: 60, ends: 'box' };
  const splined = { kind: 'splined', ...SPLINE, formed: 50, ends: 'both' };

  test.each<[string, object, object]>([
    ['round stock in a round bore to weld', round, WELD_SIDE],
    ['double-D in double-D with a set screw', DOUBLE_D_STOCK, SCREW_SIDE],
    ['the double-D end of round stock, turned toward the box', halfFlat, DOUBLE_D_SIDE],
    ['the round end of such stock, turned toward the box', { ...halfFlat, ends: 'column' }, WELD_SIDE],
    ['splines of one count, pitch and form', splined, SPLINE_SIDE],
  ])('%s fits', (_, stock, side) => {
    expect(meeting(stock, side)).toMatchObject({ status: 'fits', reason: '', remedies: [] });
  });

  test.each<[string, object, object, RegExp, string[]]>([
    [
      'round in double-D',
      round,
      DOUBLE_D_SIDE,
      /a round end has no flats and does not go into a double-D bore/,
      ['joint-end', 'stock'],
    ],
    [
      'double-D in a bore to weld',
      DOUBLE_D_STOCK,
      WELD_SIDE,
      /flats leave two gaps in a round bore/,
      ['joint-end', 'stock'],
    ],
    [
      'spline in double-D',
      splined,
      SCREW_SIDE,
      /a splined end does not go into a double-D bore/,
      ['joint-end', 'stock', 'adapter'],
    ],
    [
      'spline in a bore to weld',
      splined,
      WELD_SIDE,
      /does not belong in a round bore/,
      ['joint-end', 'stock'],
    ],
    [
      'double-D in a spline',
      DOUBLE_D_STOCK,
      SPLINE_SIDE,
      /double-D 3\/4 in, 0\.559 in across the flats does not go into a spline of 36 teeth/,
      ['joint-end', 'stock', 'adapter'],
    ],
    [
      'another count',
      { ...splined, teeth: 30 },
      SPLINE_SIDE,
      /30 teeth do not go into a spline of 36/,
      ['joint-end', 'stock', 'adapter'],
    ],
    [
      'another form at the same count',
      { ...splined, form: 'involute-30' },
      SPLINE_SIDE,
      /different forms/,
      ['joint-end', 'stock', 'adapter'],
    ],
    [
      'another pitch',
      { ...splined, pitch: 40 },
      SPLINE_SIDE,
      /pitch 40\/80 does not go into 48\/96/,
      ['joint-end', 'stock', 'adapter'],
    ],
    [
      'too thick',
      { ...round, diameter: 19.3 },
      WELD_SIDE,
      /round 0\.760 in does not go into 0\.752 in/,
      ['joint-end', 'stock'],
    ],
    [
      'too thin',
      { ...round, diameter: 15.875 },
      WELD_SIDE,
      /round 5\/8 in is 0\.127 in loose in 0\.752 in/,
      ['joint-end', 'stock'],
    ],
    [
      'flats too thick',
      { ...DOUBLE_D_STOCK, acrossFlats: 15.2 },
      DOUBLE_D_SIDE,
      /across the flats, 0\.598 in does not go into 0\.563 in/,
      ['joint-end', 'stock', 'adapter'],
    ],
  ])('%s is a mismatch, with its reason and remedies', (_, stock, side, reason, kinds) => {
    const found = meeting(stock, side);
    expect(found.status).toBe('mismatch');
    expect(found.reason).toMatch(reason);
    expect(found.remedies.map(({ kind }) => kind)).toEqual(kinds);
    for (const { sentence } of found.remedies) expect(sentence).toMatch(/^[A-Z].*\.$/);
  });

  test('a remedy taken mends it: the joint end and the stock that are named fit', () => {
    const found = meeting(round, DOUBLE_D_SIDE);
    expect(found.remedies[0]!.sentence).toBe(
      'Take joint 2 with a round bore 3/4 in to weld, toward the column.',
    );
    expect(meeting(round, { ...WELD_SIDE, bore: 19.05 }).status).toBe('fits');
    expect(found.remedies[1]!.sentence).toBe(
      'Take stock for shaft 1 with a double-D 0.752 in, 0.563 in across the flats end, toward the box.',
    );
    expect(meeting(DOUBLE_D_STOCK, DOUBLE_D_SIDE).status).toBe('fits');
  });

  test('an unknown form of one count asks for a trial fit; so does an unknown pitch', () => {
    expect(meeting({ ...splined, form: 'unidentified' }, SPLINE_SIDE)).toMatchObject({ status: 'trial-fit' });
    const { pitch: _, ...unpitched } = SPLINE_SIDE;
    expect(meeting(splined, unpitched).reason).toMatch(/the pitch is not known on both: trial-fit/);
  });

  test('what is not described is untold, never a fit', () => {
    expect(meeting(undefined, undefined).status).toBe('untold');
    expect(meeting(round, undefined).reason).toBe('the joint’s end is not described yet');
    expect(meeting(undefined, WELD_SIDE).reason).toBe('the shaft’s end is not described yet');
  });

  test('a formed end too short for the bore is told by how much', () => {
    const short = meeting({ ...halfFlat, formed: 12 }, DOUBLE_D_SIDE);
    expect(short).toMatchObject({ status: 'mismatch', engaged: 12 });
    expect(short.reason).toMatch(
      /sits only 0\.472 in deep; at least .* is wanted, or its fixing does not cross it/,
    );
    // Deep enough for one diameter and the bolt: no mismatch, though the bore is deeper.
    expect(meeting({ ...halfFlat, formed: 24 }, DOUBLE_D_SIDE).status).toBe('fits');
  });

  describe('at the column, where the joint slides', () => {
    /** Column end at the origin, joint 1 so far along: its bore is 28 deep and reaches 42 from its centre. */
    const at = (along: number, side: object = SPLINE_SIDE) => {
      const [, second] = rawShaft()['joints'] as object[];
      const shaft = shaftOf({
        column: { end: [-1390, 330, 760], axis: [1, 0, 0], fit: { kind: 'spline', ...SPLINE, length: 40 } },
        joints: [{ kind: 'single', centre: [-1390 + along, 330, 760], columnSide: side }, second],
      });
      return checkMeetings(shaft, routeOf(shaft), MM)[0]!;
    };

    test('home, it fits and tells how deep', () => {
      expect(at(14)).toMatchObject({ status: 'fits', engaged: 28 });
      expect(at(18)).toMatchObject({ status: 'fits', engaged: 24 });
    });

    test('too far out it is told how far to slide, and that far mends it', () => {
      const far = at(30);
      expect(far).toMatchObject({ status: 'mismatch', engaged: 12 });
      expect(far.reason).toMatch(/the column sits only 12 mm deep; at least 19\.58 mm is wanted/);
      expect(far.remedies[0]!.sentence).toMatch(/Slide joint 1 7\.58 mm toward the column/);
      expect(at(30 - 7.58).status).toBe('fits');
      expect(at(60).reason).toMatch(/the column does not reach into the joint/);
    });

    test('too far on it would reach the spider', () => {
      const deep = at(9);
      expect(deep.reason).toBe('the column goes 5 mm deeper than the bore: it would reach the spider');
      expect(deep.remedies[0]).toMatchObject({ kind: 'slide' });
      expect(at(14).status).toBe('fits');
    });
  });
});

describe('making it', () => {
  const [first, second] = rawShaft()['joints'] as Spoiled[];
  const made = (over: Spoiled = {}) =>
    shaftOf({
      joints: [
        { ...first, columnSide: WELD_SIDE, boxSide: DOUBLE_D_SIDE, ...over.first },
        { ...second, columnSide: SCREW_SIDE, boxSide: SPLINE_SIDE, ...over.second },
      ],
      shafts: [{ clock: over.clock ?? 0, stock: over.stock ?? DOUBLE_D_STOCK }],
      supports: over.supports ?? [{ shaft: 0, at: 0.25 }],
    });

  test('cut length: centre to centre less what each joint takes from its centre to the tip', () => {
    const shaft = made();
    const route = routeOf(shaft);
    const [cut] = cutList(shaft, route);
    // Reach 45 and depth 32 at both ends: the tip stands 13 from each centre.
    expectClose(cut!.length!, route.lengths[0]! - 26, 1e-9);
    expect(cut!.pieces).toEqual([{ name: 'Shaft 1', length: cut!.length }]);
    expect(cut!.missing).toEqual([]);
    // Laid in place, its tips are as deep in the bores as is reported.
    for (const end of [cut!.columnEnd, cut!.boxEnd]) expectClose(45 - end.tipToCentre!, end.engaged!, 1e-12);
  });

  test('a formed end shorter than the bore makes the shaft shorter by as much', () => {
    const stock = { kind: 'double-d-end', diameter: 19.05, acrossFlats: 14.2, formed: 26, ends: 'both' };
    const shaft = made({ stock });
    const [cut] = cutList(shaft, routeOf(shaft));
    expectClose(cut!.length!, routeOf(shaft).lengths[0]! - 2 * (45 - 26), 1e-9);
  });

  test('missing figures are asked for by name, and no length is told', () => {
    const { depth: _, ...undeep } = SCREW_SIDE;
    const shaft = made({ first: { boxSide: undefined }, second: { columnSide: undeep } });
    const [cut] = cutList(shaft, routeOf(shaft));
    expect(cut).toMatchObject({
      length: undefined,
      pieces: [],
      missing: ['joint 1, box side: what it takes', 'joint 2, column side: depth of the bore'],
    });
    expect(makingSteps(shaft, routeOf(shaft), MM).find(({ kind }) => kind === 'measure')!.sentence).toBe(
      'Measure before cutting Shaft 1: joint 1, box side: what it takes; joint 2, column side: depth of the bore.',
    );
  });

  test('joints too near leave no room, and that is told', () => {
    const shaft = made({ second: { centre: [first.centre[0] + 20, first.centre[1], first.centre[2]] } });
    const [cut] = cutList(shaft, routeOf(shaft));
    expectClose(cut!.noRoom, 6, 1e-9);
    expect(cut!.length).toBeUndefined();
    expect(
      makingSteps(shaft, routeOf(shaft), MM)
        .map(({ sentence }) => sentence)
        .join(' '),
    ).toMatch(/Shaft 1: move its joints 6 mm and more apart/);
  });

  test('a notch takes what the bolt needs: filed so, no part of the bolt meets the shaft, and no less would do', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 6, max: 13, noNaN: true }),
        fc.double({ min: 8, max: 18, noNaN: true }),
        (bolt, offset) => {
          const side = { ...DOUBLE_D_SIDE, bolt: { diameter: bolt, fromFace: 16, offset } };
          const shaft = made({ first: { boxSide: side } });
          const work = endWork(shaft, routeOf(shaft), meetingPlaces(shaft)[1]!);
          const crosses = offset - bolt / 2 < 19.05 / 2;
          expect(work.notch !== undefined).toBe(crosses);
          if (!work.notch) return;
          // From the axis, what is left of the round under the notch stands clear of the bolt by the clearance.
          const left = 19.05 / 2 - work.notch.depth;
          expectClose(offset - bolt / 2 - left, 0.254, 1e-9, 'clear under the bolt');
          // Its middle is under the bolt: the tip is 32 into a bore whose bolt is 16 from the face.
          expectClose(work.notch.fromTip, 16, 1e-12);
          // At the surface it is as wide as the bolt's circle, clearance included, is there.
          const radius = bolt / 2 + 0.254;
          const above = 19.05 / 2 - offset;
          const wide = above >= 0 ? 2 * radius : 2 * Math.sqrt(Math.max(radius ** 2 - above ** 2, 0));
          expectClose(work.notch.width, wide, 1e-6, 'width');
        },
      ),
      { seed: 640, numRuns: 100 },
    );
  });

  test('a dimple lies under its set screw, an eighth of an inch deep', () => {
    const shaft = made();
    const work = endWork(shaft, routeOf(shaft), meetingPlaces(shaft)[2]!);
    expect(work.dimple).toEqual({ fromTip: 32 - 14, depth: 3.175, screwDiameter: 9.525 });
    expect(work.notch).toBeUndefined();
  });

  test('a support is bored 0.007 in over the shaft, where it stands', () => {
    const shaft = made();
    const [support] = supportList(shaft, routeOf(shaft));
    const length = routeOf(shaft).lengths[0]!;
    expectClose(support!.bore!, 19.05 + 0.1778, 1e-9);
    expectClose(support!.fromColumnJoint, length / 4, 1e-9);
    expectClose(support!.fromBoxJoint, (3 * length) / 4, 1e-9);
  });

  test('a sliding shaft is two pieces that overlap as told, and too little overlap is told', () => {
    const slip = { travel: 20, overlap: 60 };
    const shaft = made({ stock: { ...DOUBLE_D_STOCK, slip } });
    const [cut] = cutList(shaft, routeOf(shaft));
    const total = cut!.pieces.reduce((sum, piece) => sum + piece.length, 0);
    expectClose(total - 60, cut!.length!, 1e-9);
    expect(cut!.overlapShort).toBe(0);
    const scant = made({ stock: { ...DOUBLE_D_STOCK, slip: { travel: 30, overlap: 40 } } });
    expectClose(cutList(scant, routeOf(scant))[0]!.overlapShort, 15.4, 1e-9);
    expect(
      makingSteps(scant, routeOf(scant), MM)
        .map(({ sentence }) => sentence)
        .join(' '),
    ).toMatch(/overlap 15\.4 mm more/);
  });

  test.each<[string, Spoiled, object]>([
    ['a welded end is free', { first: { boxSide: WELD_SIDE } }, { kind: 'free' }],
    ['flats at both ends decide', {}, { kind: 'flats' }],
    ['a spline moves by its tooth', { second: { columnSide: SPLINE_SIDE } }, { kind: 'steps', step: 10 }],
    [
      'an odd spline by half of it',
      { second: { columnSide: { ...SPLINE_SIDE, teeth: 45 } } },
      { kind: 'steps', step: 4 },
    ],
    [
      'two splines by what they differ',
      { first: { boxSide: { ...SPLINE_SIDE, teeth: 30 } }, second: { columnSide: SPLINE_SIDE } },
      { kind: 'steps', step: 2 },
    ],
    ['an end that is not told leaves it open', { second: { columnSide: undefined } }, { kind: 'untold' }],
  ])('the clock: %s', (_, over, freedom) => {
    expect(clockFreedom(made(over), 0)).toEqual(freedom);
  });

  test('the steps: in the order of the work, every one a sentence, figures with their unit', () => {
    const shaft = made({ clock: -20 });
    const steps = makingSteps(shaft, routeOf(shaft), INCHES);
    const kinds = steps.map(({ kind }) => kind);
    // What has to be known stands first: nothing slides, flats at both ends, welding, a second screw.
    expect(kinds).toEqual([
      ...Array(4).fill('warning'),
      'cut',
      'notch',
      'dimple',
      'support',
      'weld',
      'pinch-bolt',
      'set-screw',
      'pinch-bolt',
      'check',
    ]);
    for (const { sentence } of steps) {
      expect(sentence).toMatch(/^[A-Z].*\.$/s);
      expect(sentence).not.toMatch(/NaN|undefined|Infinity/);
    }
    const text = (kind: string) => steps.find((step) => step.kind === kind)!.sentence;
    expect(text('cut')).toMatch(/double-D 3\/4 in, 0\.559 in across the flats, full length, plain steel/);
    expect(text('support')).toMatch(/bored 0\.757 in/);
    const warnings = steps.filter(({ kind }) => kind === 'warning').map(({ sentence }) => sentence);
    expect(warnings.join(' ')).toMatch(/20\.0° counter-clockwise.*flats at both ends leave no choice/);
    expect(warnings.join(' ')).toMatch(/Welding is for a qualified welder/);
    expect(text('weld')).toMatch(/^Joint 1, the end at the column: tack, check the clock/);
    expect(text('pinch-bolt')).toMatch(/45 lb·ft is common for such a joint, the maker’s figure rules/);
    expect(text('set-screw')).toMatch(/290 lb·in/);
    // Each step names its part and its end.
    for (const step of steps.filter(({ kind }) => kind === 'notch' || kind === 'dimple'))
      expect(step.sentence).toMatch(
        /^(Column shaft|Box input|Shaft \d, the end at the (column|box)), in joint \d: push it /,
      );
    for (const step of steps.filter(({ kind }) => /pinch-bolt|set-screw/.test(kind)))
      expect(step.sentence).toMatch(/^Joint \d, the end at the (column|box): /);
    expect(warnings.join(' ')).toMatch(/Shaft 1: .* in joint 2 by 20\.0° .* in joint 1/);
    const metric = makingSteps(shaft, routeOf(shaft), MM);
    expect(metric.find(({ kind }) => kind === 'pinch-bolt')!.sentence).toMatch(/61 N·m is common/);
    expect(metric.map(({ sentence }) => sentence).join(' ')).not.toMatch(/\d in\b|lb/);
  });

  test('a notch’s figure is for the place that its step says: short of fully home where it is drawn so', () => {
    const notches = (shaft: ShaftDocument) =>
      makingSteps(shaft, routeOf(shaft), MM)
        .filter(({ kind }) => kind === 'notch')
        .map(({ sentence }) => sentence);
    const drawn = made();
    const work = meetingPlaces(drawn)
      .map((place) => endWork(drawn, routeOf(drawn), place))
      .find(({ notch }) => notch)!;
    const bore = work.bore!;
    // What the tip stands from the bolt is what is engaged less what the bolt stands from the joint's face.
    const into = drawn.joints[work.place.joint]![work.place.side]!;
    const fromFace = 'bolt' in into && into.bolt ? into.bolt.fromFace : Number.NaN;
    const figures = /push it (?:fully home, )?([\d.]+) mm into .*its middle ([\d.]+) mm from the tip/;
    const check = (sentence: string) => {
      const [, engaged, fromTip] = figures.exec(sentence)!;
      expectClose(Number(engaged) - fromFace, Number(fromTip), 0.011);
      return Number(engaged);
    };
    const told = check(notches(drawn)[0]!);
    const short = bore - told;
    expect(/as drawn, which is ([\d.]+) mm short of fully home/.exec(notches(drawn)[0]!)?.[1] ?? '0').toBe(
      short > 0.1 ? String(Number(short.toFixed(2))) : '0',
    );
    // The same bore made just as deep as the shaft is in it: then it is home.
    const home = structuredClone(drawn) as ShaftDocument;
    Object.assign(home.joints[work.place.joint]![work.place.side]!, { depth: work.engaged });
    expect(notches(home)[0]).toMatch(/push it fully home/);
    check(notches(home)[0]!);
    const deeper = structuredClone(drawn) as ShaftDocument;
    Object.assign(deeper.joints[work.place.joint]![work.place.side]!, { depth: work.engaged! + 4 });
    if (typeof work.place.part === 'string') {
      expect(notches(deeper)[0]).toMatch(/as drawn, which is 4 mm short of fully home/);
      check(notches(deeper)[0]!);
    }
  });

  test('a mismatch stands first, with what would mend it', () => {
    const shaft = made({ stock: { kind: 'round', diameter: 19.05 } });
    const [step] = makingSteps(shaft, routeOf(shaft), INCHES);
    expect(step!.sentence).toMatch(
      /^Shaft 1 and joint 1 do not go together: a round end has no flats.*Take joint 1 with a round bore/,
    );
  });

  test('a double joint alone wants the column’s own bearing close', () => {
    const shaft = shaftOf({
      joints: [{ kind: 'double', centre: first.centre, columnSide: SPLINE_SIDE, boxSide: SPLINE_SIDE }],
      shafts: [],
    });
    expect(makingSteps(shaft, routeOf(shaft), MM).find(({ part }) => part === 'Column')!.sentence).toMatch(
      /the column’s own lower bearing has to be close to it/,
    );
  });

  test('the parts list: like parts together, a joint turned end for end is the same joint', () => {
    const turnedOver = { columnSide: SPLINE_SIDE, boxSide: DOUBLE_D_SIDE };
    const shaft = made({
      first: { columnSide: DOUBLE_D_SIDE, boxSide: SPLINE_SIDE },
      second: turnedOver,
      stock: { kind: 'splined', ...SPLINE, formed: 50, ends: 'both' },
    });
    const parts = partsList(shaft, routeOf(shaft), INCHES);
    expect(parts.map(({ count, part }) => [part.kind, count])).toEqual([
      ['joint', 2],
      ['stock', 1],
      ['support', 1],
      ['pinch-bolt', 4],
    ]);
    expect(parts[0]!.words).toMatch(/^Single joint: double-D 0\.752 in.*; spline of 36 teeth/);
    expect(parts[3]!.words).toBe('Pinch bolt 3/8 in with locking nut');
    const untold = partsList(shaftOf(), routeOf(shaftOf()), INCHES);
    expect(untold.map(({ count, words }) => [count, words])).toEqual([
      [2, 'Single joint, ends not chosen yet'],
    ]);
  });

  test('strength is told of the weakest section; of splined stock none is', () => {
    const flats = stockSection(made().shafts[0]!.stock!);
    const round = stockSection({ kind: 'round', diameter: 19.05 });
    expect(flats.ok && round.ok && flats.value.modulus < round.value.modulus).toBe(true);
    expect(stockSection({ kind: 'splined', ...SPLINE, formed: 50, ends: 'both' })).toEqual({
      ok: false,
      failure: 'spline',
    });
  });
});
