import { readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, test } from 'vitest';
import {
  analyse,
  type Finding,
  findings,
  LIMITS,
  RULES,
  type ShopLimits,
  withClearances,
} from '../../shared-math/findings/index.ts';
import { distance } from '../../shared-math/geometry/points.ts';
import {
  type LayoutDocument,
  moveHardpoint,
  parseLayout,
  readLayout,
  resolveLayout,
  withValue,
} from '../../shared-math/layout/index.ts';
import { expectClose } from '../support/close.ts';
import { CROSS_STEER, documentOf, LOCATIONS, PLAIN_HALF, rawLayout, SIDE_STEER } from '../support/layouts.ts';
import { DOUBLE_D_SIDE, rawShaft, SPLINE, SPLINE_SIDE } from '../support/shafts.ts';

const INCHES = { unit: 'in', fraction: 16 } as const;
const root = resolve(import.meta.dirname, '../..');

function demonstration(name: string): LayoutDocument {
  const outcome = parseLayout(readFileSync(join(root, 'projects', `${name}.json`), 'utf8'));
  if (!outcome.ok) throw new Error(outcome.failure.reason);
  return outcome.value;
}

const kept = new Map<string, readonly Finding[]>();

/** The findings of a layout, worked out once for all who ask: several look at the same layouts. */
function judged(document: LayoutDocument, shop: ShopLimits = {}): readonly Finding[] {
  const key = JSON.stringify([document, shop]);
  const list = kept.get(key) ?? findings(withClearances(analyse(resolveLayout(document))), INCHES, shop);
  kept.set(key, list);
  return list;
}
const raw = (over: Record<string, unknown> = {}) => documentOf(rawLayout(over));
const of = (list: readonly Finding[], rule: string) => list.filter((finding) => finding.rule === rule);
const worst = (document: LayoutDocument) => analyse(resolveLayout(document)).heaveSummary.worstBumpSteer;
const oneWheel = (document: LayoutDocument) => {
  const found = analyse(resolveLayout(document)).oneWheel;
  return found.status === 'ok' ? found.worst : Number.NaN;
};

/** Applies a finding's own remedy. */
function mended(document: LayoutDocument, { remedy }: Finding): LayoutDocument {
  if (!remedy) throw new Error('no remedy');
  const next =
    remedy.kind === 'move'
      ? moveHardpoint(document, remedy.id, remedy.to)
      : withValue(document, remedy.path, remedy.value);
  const outcome = readLayout(next);
  if (!outcome.ok) throw new Error(outcome.failure.reason);
  return outcome.value;
}

const box = (over: Record<string, unknown>) => ({ ...SIDE_STEER, box: { ...SIDE_STEER.box, ...over } });
const half = (over: Record<string, unknown>) => ({
  axle: { beam: 'i-beam', left: { ...PLAIN_HALF, ...over }, right: 'mirror' },
});

/** The photographed demonstration with its first photo's marks `off` px to the right and down. */
function mismarked(off: number): LayoutDocument {
  const car = demonstration('hairpins-box-too-low');
  const photos = car.photos.map((photo, i) => ({
    ...photo,
    marks: photo.marks.map((mark) =>
      i === 0 ? { ...mark, at: [mark.at[0] + off, mark.at[1] + off] as const } : mark,
    ),
  }));
  return { ...car, photos };
}

/** The photographed demonstration with its drag link by the tape, `off` mm from what it is; mm. */
function taped(off: number): LayoutDocument {
  const car = demonstration('hairpins-box-too-low');
  const { box, dragLinkBall } = car.steering;
  const tape = distance(box.pitmanBall, dragLinkBall) - off;
  const lengths = [{ from: 'steering.box.pitmanBall', to: 'steering.dragLinkBall', tape }];
  return { ...car, photos: car.photos.map((photo, i) => (i === 0 ? { ...photo, lengths } : photo)) };
}

/** A good layout: pitman ball on the hairpin pivot, square arms, stops at the axle. */
const GOOD = {
  steering: { ...box({ pitmanBall: [-880, 484, 336], sectorCentre: [-880, 484, 476] }), stopAngle: 31 },
};
const GOOD_CROSS = {
  location: LOCATIONS['four-bar'],
  lateral: { kind: 'bar', axle: [-72, -570, 352], frame: [-72, 316, 362] },
  steering: { ...CROSS_STEER, stopAngle: 30 },
};

/** Nothing near anything: the drag link well inside the tyre, the bars inside it and above the tie rod, little lock. */
const ROOMY = {
  ...half({ tieRodBall: [-125, 590, 205] }),
  location: {
    kind: 'four-bar',
    left: {
      upper: { axle: [-45, 370, 395], frame: [-645, 370, 405] },
      lower: { axle: [-45, 370, 262], frame: [-645, 370, 272] },
    },
    right: 'mirror',
  },
  steering: {
    ...box({ pitmanBall: [-880, 440, 336], sectorCentre: [-880, 440, 476] }),
    dragLinkBall: [0, 440, 395],
    stopAngle: 20,
  },
};

/** A shaft whose ends are described and fit, invented; joints on their axes, angles 21 and 19 degrees, in phase enough. */
const [FIRST, LAST] = [
  { kind: 'single', centre: [-1280, 340, 735] },
  { kind: 'single', centre: [-1002, 410, 561] },
];
const shaft = (over: Record<string, unknown> = {}) =>
  raw({
    ...GOOD,
    shaft: rawShaft({
      column: { end: [-1296, 340, 743], axis: [2, 0, -1] },
      box: { end: [-986, 410, 557], axis: [4, 0, -1] },
      joints: [FIRST, LAST],
      shafts: [{ clock: -32.6 }],
      ...over,
    }),
  });
const PIECES = [{ clock: -56.2 }, { clock: -66.9 }];
const MIDDLE = { kind: 'single', centre: [-1140, 370, 660] };
const ENDS = { columnSide: DOUBLE_D_SIDE, boxSide: SPLINE_SIDE };

/** For each rule: a layout that trips it, and one that does not. */
const CASES: Record<
  string,
  { trips: LayoutDocument; passes: LayoutDocument; severity: 'attention' | 'stop' }
> = {
  'out-of-reach': {
    trips: raw({ location: { kind: 'hairpins', left: { framePivot: [0, 415, 330] }, right: 'mirror' } }),
    passes: raw(GOOD),
    severity: 'stop',
  },
  'box-direction': {
    trips: raw({ steering: box({ sectorAxis: [0, 1, 0] }) }),
    passes: raw(GOOD),
    severity: 'stop',
  },
  'bump-steer-worst': { trips: demonstration('hairpins-box-too-low'), passes: raw(GOOD), severity: 'stop' },
  'one-wheel': { trips: demonstration('hairpins-box-too-low'), passes: raw(GOOD), severity: 'stop' },
  'bump-steer-slope': { trips: demonstration('hairpins-box-too-low'), passes: raw(GOOD), severity: 'stop' },
  'aim-height': { trips: demonstration('hairpins-box-too-low'), passes: raw(GOOD), severity: 'attention' },
  'leaf-fixed-in-front': {
    trips: raw({ location: LOCATIONS['parallel-leaf'] }),
    passes: raw({
      location: {
        kind: 'parallel-leaf',
        left: { fixedEye: [-580, 400, 365], seat: [0, 400, 320], shackleEye: [510, 400, 372] },
        right: 'mirror',
      },
    }),
    severity: 'attention',
  },
  'bar-and-link': {
    trips: raw({ ...GOOD_CROSS, lateral: { kind: 'bar', axle: [-72, -400, 352], frame: [-72, 100, 420] } }),
    passes: raw(GOOD_CROSS),
    severity: 'attention',
  },
  'cross-steer-without-bar': {
    trips: raw({ steering: CROSS_STEER }),
    passes: raw({ steering: CROSS_STEER, location: LOCATIONS['parallel-leaf'] }),
    severity: 'attention',
  },
  'roll-steer': { trips: demonstration('hairpins-box-too-low'), passes: raw(GOOD), severity: 'attention' },
  'bind-in-roll': {
    trips: raw({ axle: { beam: 'tube', left: PLAIN_HALF, right: 'mirror' } }),
    passes: raw(GOOD),
    severity: 'stop',
  },
  'beam-twist': {
    trips: raw({ location: { kind: 'hairpins', left: { framePivot: [-450, 520, 335] }, right: 'mirror' } }),
    passes: raw(GOOD),
    severity: 'attention',
  },
  'dead-centre': {
    trips: raw({ steering: box({ sectorTravel: 70 }) }),
    passes: raw(GOOD),
    severity: 'stop',
  },
  'ball-tilt': {
    trips: raw({ studs: { 'steering.dragLinkBall': [1, 0, 1] } }),
    passes: raw(GOOD),
    severity: 'stop',
  },
  clearance: {
    trips: raw({
      ...ROOMY,
      obstacles: [
        {
          name: 'Header tube',
          role: 'header',
          kind: 'capsule',
          from: [-300, 440, 380],
          to: [-320, 300, 300],
          radius: 25,
          mirrored: false,
        },
      ],
    }),
    passes: raw(ROOMY),
    severity: 'stop',
  },
  lock: { trips: raw(), passes: raw(GOOD), severity: 'attention' },
  'turns-unequal': {
    trips: raw({ steering: { ...SIDE_STEER, box: { ...SIDE_STEER.box, pitmanBall: [-860, 500, 370] } } }),
    passes: raw(GOOD),
    severity: 'attention',
  },
  ackermann: { trips: raw(half({ tieRodBall: [-150, 690, 292] })), passes: raw(GOOD), severity: 'attention' },
  'tie-rod-ahead': { trips: raw(half({ tieRodBall: [150, 676, 292] })), passes: raw(GOOD), severity: 'stop' },
  ratio: { trips: raw({ steering: box({ ratio: 32 }) }), passes: raw(GOOD), severity: 'attention' },
  effort: {
    trips: raw({
      car: { wheelbase: 2640, frontAxleLoad: 12_000, tyreRadius: 330, tyreWidth: 220, handwheelRadius: 170 },
    }),
    passes: raw(GOOD),
    severity: 'attention',
  },
  'link-strength': {
    trips: raw({
      diameters: { tieRod: 16 },
      links: { tieRod: { section: 'tube', wall: 2, material: 'mild-steel', offset: 0 } },
    }),
    passes: raw({
      diameters: { tieRod: 32 },
      links: { tieRod: { section: 'tube', wall: 5, material: 'drawn-steel', offset: 0 } },
    }),
    severity: 'attention',
  },
  'link-thread': {
    trips: raw({
      links: {
        tieRod: {
          ends: { left: { kind: 'threaded', takeOff: 55, thread: { diameter: 15.875, pitch: 25.4 / 18 } } },
        },
      },
    }),
    passes: raw({
      links: {
        tieRod: {
          ends: { left: { kind: 'threaded', takeOff: 38, thread: { diameter: 15.875, pitch: 25.4 / 18 } } },
        },
      },
    }),
    severity: 'attention',
  },
  'caster-static': {
    trips: raw(half({ kingpinTop: [4, 631, 395] })),
    passes: raw(GOOD),
    severity: 'attention',
  },
  'caster-change': {
    trips: raw({ location: { kind: 'hairpins', left: { framePivot: [-600, 415, 335] }, right: 'mirror' } }),
    passes: raw(GOOD),
    severity: 'attention',
  },
  'caster-braked': {
    trips: demonstration('parallel-leaf-cross-steer'),
    passes: { ...demonstration('parallel-leaf-cross-steer'), braking: { windUpStiffness: 900 } },
    severity: 'attention',
  },
  'brake-steer': {
    trips: raw({ location: LOCATIONS['parallel-leaf'] }),
    passes: demonstration('parallel-leaf-cross-steer'),
    severity: 'attention',
  },
  'toe-static': {
    trips: raw(half({ toeIn: -0.1 })),
    passes: raw(half({ toeIn: 0.1 })),
    severity: 'attention',
  },
  sights: { trips: mismarked(60), passes: mismarked(0), severity: 'attention' },
  tape: { trips: taped(15), passes: taped(0.5), severity: 'attention' },
};

const SHAFT_CASES: typeof CASES = {
  plausible: {
    // 610 typed for mm and taken in inches.
    trips: raw({ lateral: { kind: 'bar', axle: [-72, -520, 352], frame: [-72, 610 * 25.4, 370] } }),
    passes: raw(GOOD),
    severity: 'attention',
  },
  'tyre-and-ground': {
    trips: raw({ car: { ...(rawLayout()['car'] as object), tyreRadius: 406.4 } }),
    passes: raw(),
    severity: 'stop',
  },
  'driver-side': {
    trips: raw({ car: { ...(rawLayout()['car'] as object), driverSide: 'right' } }),
    passes: raw({ car: { ...(rawLayout()['car'] as object), driverSide: 'left' } }),
    severity: 'attention',
  },
  'shaft-box-input': {
    // 14 degrees off square: the sector shaft of this car lies across it.
    trips: shaft({ box: { end: [-986, 410, 557], axis: [4, 1, -1] } }),
    passes: shaft(),
    severity: 'attention',
  },
  'shaft-joint-angle': {
    trips: shaft({
      joints: [FIRST, { kind: 'single', centre: [-1282.5, 340, 631.125] }],
      shafts: [{ clock: 0 }],
    }),
    passes: shaft(),
    severity: 'stop',
  },
  'shaft-ends': {
    trips: shaft({
      joints: [FIRST, { ...LAST, ...ENDS }],
      shafts: [{ clock: 0, stock: { kind: 'round', diameter: 19.05 } }],
    }),
    passes: shaft({
      joints: [FIRST, { ...LAST, ...ENDS }],
      shafts: [{ clock: -32.6, stock: { kind: 'double-d', diameter: 19.05, acrossFlats: 14.2 } }],
      box: { end: [-986, 410, 557], axis: [4, 0, -1], fit: { kind: 'spline', ...SPLINE } },
    }),
    severity: 'stop',
  },
  'shaft-clearance': {
    trips: {
      ...shaft(),
      obstacles: [
        {
          name: 'Header tube',
          role: 'header',
          kind: 'capsule',
          from: [-1140, 330, 600],
          to: [-1140, 460, 640],
          radius: 22,
          mirrored: false,
        },
      ],
    },
    passes: shaft(),
    severity: 'stop',
  },
  'shaft-support': {
    trips: shaft({ joints: [FIRST, MIDDLE, LAST], shafts: PIECES }),
    passes: shaft({ joints: [FIRST, MIDDLE, LAST], shafts: PIECES, supports: [{ shaft: 0, at: 0.8 }] }),
    severity: 'attention',
  },
  'shaft-span': {
    trips: shaft({
      column: { end: [-1896, 340, 943], axis: [2, 0, -1] },
      joints: [{ kind: 'single', centre: [-1880, 340, 935] }, LAST],
    }),
    passes: shaft({
      column: { end: [-1896, 340, 943], axis: [2, 0, -1] },
      joints: [{ kind: 'single', centre: [-1880, 340, 935] }, LAST],
      supports: [{ shaft: 0, at: 0.5 }],
    }),
    severity: 'attention',
  },
  'shaft-clocking': {
    trips: shaft({ shafts: [{ clock: 57 }] }),
    passes: shaft(),
    severity: 'attention',
  },
  'shaft-axis': {
    trips: shaft({ joints: [{ kind: 'single', centre: [-1280, 352, 735] }, LAST] }),
    passes: shaft(),
    severity: 'attention',
  },
};
Object.assign(CASES, SHAFT_CASES);

describe('every rule has a layout that trips it and one that does not', () => {
  test('none is left out', () => {
    expect(Object.keys(CASES).sort()).toEqual(RULES.map((rule) => rule.name).sort());
  });

  test.each(Object.entries(CASES))('%s', (rule, { trips, passes, severity }) => {
    const tripped = of(judged(trips), rule);
    expect(tripped.map((finding) => finding.severity)).toContain(severity);
    for (const finding of of(judged(passes), rule)) expect(finding.severity, finding.sentence).toBe('info');
  });
});

test('the tape speaks of the car on the photo: a ball that was moved since is a plan, and not judged', () => {
  const car = taped(15);
  const [said] = of(judged(car), 'tape');
  expect(said?.sentence).toMatch(
    /^Pitman ball to steering arm ball is .* in by the tape and .* in on from the side/,
  );
  const [x, y, z] = car.steering.box.pitmanBall;
  expect(of(judged(moveHardpoint(car, 'steering.box.pitmanBall', [x, y, z + 60])), 'tape')).toEqual([]);
  // Dimensions that lie on the photo are the photo's own, whatever is moved: the batten of 1400 mm, off by 10.
  const [a, b] = car.photos[0]?.straighten?.points ?? [];
  if (!a || !b) throw new Error('the photo has its corners');
  const notes = [{ from: a.at, to: b.at, text: 'Batten', tape: 1390 }];
  const noted = {
    ...car,
    photos: car.photos.map((photo, i) => (i === 0 ? { ...photo, lengths: [], notes } : photo)),
  };
  expect(of(judged(noted), 'tape').map(({ severity }) => severity)).toEqual(['attention']);
});

describe('a figure in the other unit', () => {
  const told = (document: LayoutDocument, style: typeof INCHES | { unit: 'mm'; fraction: 16 } = INCHES) =>
    of(findings(analyse(resolveLayout(document)), style), 'plausible')[0]!;

  test('is doubted by the name of the point, with what may have been meant, and the remedy sets that', () => {
    const slip = CASES['plausible']!.trips;
    const found = told(slip);
    expect(found.part).toBe('lateral.frame');
    expect(found.sentence).toBe('Lateral bar, frame end stands 610 in left: no part of a front end is there');
    expect(found.advice).toBe('Was 24 in or 610 mm meant? Set it to that.');
    expect(told(slip, { unit: 'mm', fraction: 16 }).advice).toBe(
      'Was 610 mm or 24.02 in meant? Set it to that.',
    );
    expect((mended(slip, found).lateral as unknown as { frame: number[] }).frame[1]).toBeCloseTo(610, 9);
  });

  test('a wheelbase of 104 that was taken as mm is asked back as inches', () => {
    const found = told(withValue(raw(GOOD), 'car.wheelbase', 104), { unit: 'mm', fraction: 16 });
    expect(found.advice).toBe('Was 2641.6 mm or 104 in meant? Set it to that.');
    expect(mended(withValue(raw(GOOD), 'car.wheelbase', 104), found).car.wheelbase).toBeCloseTo(2641.6, 9);
  });

  test('a load of 1100 that was taken as newtons is asked back as pounds', () => {
    const light = withValue(raw(GOOD), 'car.frontAxleLoad', 1100);
    const found = told(light);
    expect(found.sentence).toBe('Load on the front axle 247 lb: too little for any such car');
    expect(found.advice).toBe('Was 1100 lb meant? Set it to that.');
    expect(of(judged(mended(light, found)), 'plausible')).toEqual([]);
  });

  test('is not seen in any demonstration', () => {
    for (const name of [
      'hairpins-side-steer',
      'hairpins-box-too-low',
      'wishbone-side-steer',
      'four-bar-cross-steer',
      'parallel-leaf-cross-steer',
    ])
      expect(of(judged(demonstration(name)), 'plausible')).toEqual([]);
  });
});

describe('what does not reach is named', () => {
  const reach = (document: LayoutDocument) =>
    of(findings(analyse(resolveLayout(document)), INCHES), 'out-of-reach')[0]!;

  test('a lateral bar with both ends on one side: its cause, not the pitman arm', () => {
    const short = raw({ lateral: { kind: 'bar', axle: [-72, -520, 352], frame: [-72, -460, 352] } });
    const found = reach(short);
    expect([found.severity, found.part]).toEqual(['stop', 'lateral.frame']);
    expect(found.sentence).toMatch(/^The lateral bar does not let the axle through its travel/);
    expect(found.advice).toMatch(/^Both its ends are on one side of the car/);
    // Done as it says, all is reached.
    expect(reach(moveHardpoint(short, 'lateral.frame', [-72, 420, 352])).severity).toBe('info');
  });

  test('the drag link, or the tie rod too, each with the poses in which it fails', () => {
    // A short drag link beside the wheel: its pitman arm leaves it behind.
    const close = raw({ steering: box({ sectorCentre: [-160, 500, 400], pitmanBall: [-60, 490, 395] }) });
    const alone = reach(close);
    expect([alone.severity, alone.part]).toEqual(['stop', 'steering.dragLinkBall']);
    expect(alone.sentence).toMatch(
      /^The drag link does not reach: \d+ of \d+ poses of travel and turn are out of reach$/,
    );
    // Drag link and steering arm as usual, turned so far that the tie rod comes to its end on one side.
    const both = reach(raw({ steering: box({ pitmanBall: [-800, 500, 190], sectorTravel: 80 }) }));
    expect(both.sentence).toMatch(/^The drag link does not reach: .*, \d+ of them by the tie rod$/);
    const rod = reach(raw({ steering: { ...SIDE_STEER, dragLinkBall: [0, 560, 395] } }));
    expect([rod.part, rod.sentence]).toEqual([
      'axle.left.tieRodBall',
      expect.stringMatching(/^The tie rod does not reach/),
    ]);
    expect(rod.advice).not.toMatch(/pitman/);
  });
});

describe('the steering shaft', () => {
  test('of every demonstration is in order, and without one nothing is said of it', () => {
    for (const name of [
      'hairpins-side-steer',
      'hairpins-box-too-low',
      'wishbone-side-steer',
      'four-bar-cross-steer',
      'parallel-leaf-cross-steer',
    ]) {
      const list = judged(demonstration(name)).filter(({ rule }) => rule.startsWith('shaft-'));
      expect(list.length, name).toBeGreaterThan(3);
      for (const { severity, sentence } of list) expect(severity, `${name}: ${sentence}`).toBe('info');
    }
    expect(judged(raw(GOOD)).some(({ rule }) => rule.startsWith('shaft-'))).toBe(false);
  });

  test('the input of every demonstration’s box is square to its sector shaft within a tenth of a degree', () => {
    for (const name of [
      'hairpins-side-steer',
      'hairpins-box-too-low',
      'wishbone-side-steer',
      'four-bar-cross-steer',
      'parallel-leaf-cross-steer',
    ]) {
      const { steering, shaft } = demonstration(name);
      const [a, b] = [steering.box.sectorAxis, shaft!.box.axis];
      const share = a.reduce((sum, value, i) => sum + value * (b[i] as number), 0);
      expectClose(share / (Math.hypot(...a) * Math.hypot(...b)), 0, 0.0017);
    }
  });

  test('a box with its own angle is held to that, and the input turned to it by the remedy', () => {
    const skew = CASES['shaft-box-input']!.trips;
    const found = of(judged(skew), 'shaft-box-input')[0]!;
    expect(found.sentence).toBe(
      'The box’s input is drawn at 76.4° to its sector shaft: a worm lies square to it',
    );
    expect(found.limit).toBe('90°, limit 2° off');
    expect(found.source).toMatch(/square is assumed/);
    // acos(1 / sqrt(18)): the angle that is drawn, given to the box as its own, is in order.
    const own = withValue(skew, 'steering.box.inputAngle', (Math.acos(1 / Math.sqrt(18)) * 180) / Math.PI);
    expect(of(judged(own), 'shaft-box-input')[0]!.severity).toBe('info');
    const other = withValue(skew, 'steering.box.inputAngle', 85);
    for (const [document, angle] of [
      [skew, 90],
      [other, 85],
    ] as const) {
      const after = mended(document, of(judged(document), 'shaft-box-input')[0]!);
      expect(of(judged(after), 'shaft-box-input')[0]!.severity).toBe('info');
      const { axis, end } = after.shaft!.box;
      expectClose((Math.acos(Math.abs(axis[1]) / Math.hypot(...axis)) * 180) / Math.PI, angle, 0.01);
      // The joint stays as far from the end as it was, on the turned axis.
      expect(of(judged(after), 'shaft-axis')).toEqual([]);
      const away = (of: LayoutDocument) => {
        const { box, joints } = of.shaft!;
        const by = joints.at(-1)!.centre.map((value, i) => value - (box.end[i] as number));
        return by.reduce(
          (sum, value, i) => sum + (value * (box.axis[i] as number)) / Math.hypot(...box.axis),
          0,
        );
      };
      expectClose(away(after), away(document), 0.01);
      expect(end).toEqual(document.shaft!.box.end);
    }
    expect(of(judged(skew, { boxInput: 15 }), 'shaft-box-input')[0]!.severity).toBe('info');
  });

  test('a limit of the shop and one of the joint itself are held to', () => {
    const angle = (document: LayoutDocument, shop: ShopLimits = {}) =>
      of(judged(document, shop), 'shaft-joint-angle')[0]!;
    expect(angle(shaft()).severity).toBe('info');
    const strict = angle(shaft(), { jointSingle: 20 });
    expect([strict.severity, strict.limit]).toEqual(['stop', 'limit 20°']);
    expect(strict.source).toMatch(/this shop/);
    const own = angle(shaft({ joints: [FIRST, { ...LAST, limit: 20 }] }));
    expect([own.severity, own.limit]).toEqual(['stop', 'limit 20°']);
    expect(own.source).toMatch(/this layout/);
  });

  test('a link that comes near the shaft as it moves is told by the clearances', () => {
    const near = shaft({
      column: { end: [-1296, 440, 343], axis: [1, 0, 0] },
      box: { end: [-300, 440, 343], axis: [1, 0, 0] },
      joints: [
        { kind: 'single', centre: [-1280, 440, 343] },
        { kind: 'single', centre: [-320, 440, 343] },
      ],
    });
    const told = of(judged(near), 'clearance').map(({ sentence }) => sentence);
    expect(told.some((sentence) => /steering shaft/.test(sentence))).toBe(true);
  });
});

describe('what a finding says', () => {
  const all = [
    ...Object.values(CASES).map(({ trips }) => trips),
    ...[
      'hairpins-side-steer',
      'wishbone-side-steer',
      'four-bar-cross-steer',
      'parallel-leaf-cross-steer',
    ].map(demonstration),
  ];
  test('a sentence, its source, a part that exists; and advice wherever it is not as it should be', () => {
    for (const document of all)
      for (const style of [INCHES, { unit: 'mm', fraction: 16 } as const])
        for (const finding of findings(analyse(resolveLayout(document)), style)) {
          expect(finding.sentence).toMatch(/^[A-Z].*[^.]$/);
          expect(finding.source).not.toBe('');
          expect(`${finding.sentence} ${finding.limit} ${finding.advice}`).not.toMatch(
            /NaN|undefined|Infinity|\[object/,
          );
          if (finding.severity !== 'info') expect(finding.advice).not.toBe('');
          const keys = finding.part.split('.');
          let value: unknown = resolveLayout(document);
          for (const key of keys) value = (value as Record<string, unknown>)[key];
          expect(Array.isArray(value), finding.part).toBe(true);
        }
  });

  test('stops come first', () => {
    const list = judged(demonstration('hairpins-box-too-low')).map((finding) => finding.severity);
    expect(list).toEqual(
      [...list].sort(
        (a, b) => ['stop', 'attention', 'info'].indexOf(a) - ['stop', 'attention', 'info'].indexOf(b),
      ),
    );
  });

  test('a shop’s own limit is held to, and said to be its own', () => {
    const document = raw(GOOD);
    const strict = of(judged(document, { bumpSteerWorst: 0.001 }), 'bump-steer-worst')[0]!;
    expect(strict.severity).toBe('stop');
    expect(strict.source).toMatch(/this shop/);
    expect(of(judged(document), 'bump-steer-worst')[0]!.source).toBe(LIMITS.bumpSteerWorst.source);
  });
});

describe('remedies', () => {
  test('the moves suggested for the bad demonstration bring its worst bump steer below a fifth', () => {
    let document = demonstration('hairpins-box-too-low');
    const before = worst(document);
    for (let i = 0; i < 6; i += 1) {
      const next = judged(document).find(
        (finding) => finding.severity !== 'info' && finding.remedy?.kind === 'move',
      );
      if (!next) break;
      document = mended(document, next);
    }
    expect(worst(document)).toBeLessThan(before / 5);
  });

  test('each one that is offered mends its own finding, or leaves it better', () => {
    let offered = 0;
    for (const { trips } of Object.values(CASES))
      for (const finding of judged(trips)) {
        if (!finding.remedy) continue;
        offered += 1;
        const after = of(judged(mended(trips, finding)), finding.rule);
        const bad = (list: readonly Finding[]) => list.filter(({ severity }) => severity !== 'info').length;
        if (finding.rule === 'bump-steer-worst')
          expect(worst(mended(trips, finding))).toBeLessThan(0.9 * worst(trips));
        else if (finding.rule === 'one-wheel')
          expect(oneWheel(mended(trips, finding))).toBeLessThan(0.9 * oneWheel(trips));
        else expect(bad(after), finding.sentence).toBeLessThan(bad(of(judged(trips), finding.rule)));
      }
    expect(offered).toBeGreaterThan(10);
  });

  test('bring the box along where its arm would come to a length that nobody makes, and the ball alone where not', () => {
    const arm = ({ steering }: LayoutDocument) =>
      distance(steering.box.sectorCentre, steering.box.pitmanBall);
    const low = demonstration('hairpins-box-too-low');
    const far = of(judged(low), 'bump-steer-worst')[0]!;
    expect(far.advice).toMatch(/^Raise the box with its arm /);
    expectClose(arm(mended(low, far)), arm(low), 1e-9);
    const near = raw({ steering: box({ pitmanBall: [-800, 500, 310], sectorCentre: [-800, 500, 480] }) });
    const little = of(judged(near), 'bump-steer-worst')[0]!;
    expect(little.advice).toMatch(/^Raise the pitman ball /);
    const after = mended(near, little);
    expect(after.steering.box.sectorCentre).toEqual(near.steering.box.sectorCentre);
    expect(arm(after)).toBeGreaterThanOrEqual(114.3);
  });

  test('one wheel over a bump is judged where both together are within the limit, and its move keeps its promise', () => {
    // The wishbone's own figures over heave alone are within half a degree; it is over it with one wheel up.
    const document = demonstration('wishbone-side-steer');
    const strict = { bumpSteerWorst: (((worst(document) + oneWheel(document)) / 2) * 180) / Math.PI };
    expect(oneWheel(document)).toBeGreaterThan(1.1 * worst(document));
    expect(of(judged(document, strict), 'bump-steer-worst')[0]!.severity).toBe('info');
    const finding = of(judged(document, strict), 'one-wheel')[0]!;
    expect(finding.severity).toBe('attention');
    expect(finding.at?.roll).not.toBe(0);
    expect(finding.sentence).toMatch(/ with the left wheel .* and the right /);
    const promised = Number(/: bump steer (\d+\.\d+)°$/.exec(finding.advice)?.[1]);
    expectClose((oneWheel(mended(document, finding)) * 180) / Math.PI, promised, 0.006);
  });

  test('the figure promised after a move is the figure after the move', () => {
    const document = demonstration('hairpins-box-too-low');
    const finding = of(judged(document), 'bump-steer-worst')[0]!;
    const promised = Number(/bump steer (\d+\.\d+)°$/.exec(finding.advice)?.[1]);
    expectClose((worst(mended(document, finding)) * 180) / Math.PI, promised, 0.006);
  });
});
