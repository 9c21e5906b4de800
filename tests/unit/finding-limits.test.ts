import { describe, expect, test } from 'vitest';
import { findAim } from '../../shared-math/aim/index.ts';
import {
  analyse,
  findings,
  LIMIT_NAMES,
  type LimitName,
  OWN_LIMIT,
  type ShopLimits,
} from '../../shared-math/findings/index.ts';
import { distance, type Point } from '../../shared-math/geometry/points.ts';
import { type LayoutDocument, resolveLayout } from '../../shared-math/layout/index.ts';
import { DEGREE } from '../support/close.ts';
import { CROSS_STEER, documentOf, LOCATIONS, PLAIN_HALF, rawLayout, SIDE_STEER } from '../support/layouts.ts';
import {
  bind,
  brakeSteer,
  bumpSteer,
  casterChange,
  casterGone,
  frontEndOf,
  locks,
  locksApart,
  ratioAt,
  rimForce,
  rollOversteer,
  solved,
  tieRodMargin,
  tilt,
  transmission,
  turnOf,
  twist,
} from '../support/measures.ts';
import { rawShaft } from '../support/shafts.ts';

// A finding is past its limit exactly where the figure of the solved car is: each limit, set by the shop a little to
// either side of that figure.

const raw = (over: Record<string, unknown> = {}) => documentOf(rawLayout(over));
const box = (over: Record<string, unknown>) => ({ ...SIDE_STEER, box: { ...SIDE_STEER.box, ...over } });
const half = (over: Record<string, unknown>) => ({
  axle: { beam: 'i-beam', left: { ...PLAIN_HALF, ...over }, right: 'mirror' },
});

interface Held {
  readonly rule: string;
  /** Which of the rule's findings. */
  readonly about?: RegExp;
  readonly on: LayoutDocument;
  /** In the limit's unit. */
  readonly measured: (document: LayoutDocument) => number;
  /** How many times the limit (or its share, for a least) it takes to be a stop, if there is such a step. */
  readonly stopAt?: number;
  /** What lies past the limit is a stop at once. */
  readonly stops?: true;
}

const toe = ({ axle: { left }, car }: LayoutDocument) =>
  2 * 2 * car.tyreRadius * Math.sin(left.toeIn * DEGREE);
const lean = ([, y, z]: Point, [, v, w]: Point) => Math.atan((w - z) / (v - y));
const offLine = (document: LayoutDocument) => {
  const aim = findAim(frontEndOf(document));
  if (!aim.ok) throw new Error('no aim');
  const { ball, point } = aim.value;
  const [x, , z] = document.steering.box.pitmanBall;
  return Math.abs(z - ball[2] - ((x - ball[0]) * (point[2] - ball[2])) / (point[0] - ball[0]));
};
const LOW = raw({ steering: box({ pitmanBall: [-800, 500, 290], sectorCentre: [-800, 500, 430] }) });
const CROSS = raw({
  location: LOCATIONS['four-bar'],
  lateral: { kind: 'bar', axle: [-72, -400, 352], frame: [-72, 100, 372] },
  steering: CROSS_STEER,
});
const barOf = ({ lateral }: LayoutDocument) => {
  if (lateral.kind !== 'bar') throw new Error('a bar');
  return lateral;
};
const SHAFT = raw({ shaft: rawShaft({}) });
const shaftOf = ({ shaft }: LayoutDocument) => {
  if (!shaft) throw new Error('a shaft');
  return shaft;
};
const angleAt = (document: LayoutDocument) => {
  const { column, box: input, joints } = shaftOf(document);
  const chain = [
    column.axis,
    ...joints.slice(1).map(({ centre }, i) => {
      const from = joints[i]!.centre;
      return [centre[0] - from[0], centre[1] - from[1], centre[2] - from[2]] as const;
    }),
    input.axis,
  ];
  return joints.map((_, i) => {
    const [a, b] = [chain[i]!, chain[i + 1]!];
    const along = a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
    return Math.acos(Math.abs(along) / Math.hypot(...a) / Math.hypot(...b)) / DEGREE;
  });
};
const SPARED: Partial<Record<LimitName, string>> = {
  clearanceMoving: 'held by the clearances’ own tests',
  clearanceTyre: 'held by the clearances’ own tests',
  boxInput: 'held by its own test among the findings',
};

const HELD: Partial<Record<LimitName, Held>> = {
  bumpSteerWorst: {
    rule: 'bump-steer-worst',
    on: LOW,
    measured: (document) => bumpSteer(document) / DEGREE,
    stopAt: 2,
  },
  bumpSteerSlope: {
    rule: 'bump-steer-slope',
    on: LOW,
    measured: (document) =>
      (Math.abs(solved(document, 0.1, 0).meanSteer - solved(document, -0.1, 0).meanSteer) / 0.2 / DEGREE) *
      25.4,
    stopAt: 3,
  },
  rollOversteer: {
    rule: 'roll-steer',
    on: LOW,
    measured: (document) =>
      (rollOversteer(document) - (solved(document, 0, DEGREE).meanSteer - solved(document, 0, 0).meanSteer)) /
      2 /
      DEGREE,
  },
  toeLeast: { rule: 'toe-static', on: raw(half({ toeIn: 0.1 })), measured: toe },
  toeMost: { rule: 'toe-static', on: raw(half({ toeIn: 0.1 })), measured: toe },
  casterBrakedLeast: {
    rule: 'caster-braked',
    on: raw({ location: LOCATIONS['parallel-leaf'], braking: { windUpStiffness: 400 } }),
    // `casterGone` counts from 1°.
    measured: (document) => 1 - casterGone(document) / DEGREE,
  },
  brakeSteer: {
    rule: 'brake-steer',
    on: raw({ location: LOCATIONS['parallel-leaf'] }),
    measured: (document) => brakeSteer(document) / DEGREE,
  },
  casterLeast: {
    rule: 'caster-static',
    on: raw(),
    measured: (document) => solved(document, 0, 0).left.caster / DEGREE,
  },
  casterMost: {
    rule: 'caster-static',
    on: raw(),
    measured: (document) => solved(document, 0, 0).left.caster / DEGREE,
  },
  casterChange: {
    rule: 'caster-change',
    on: raw(),
    measured: (document) => casterChange(document) / DEGREE,
  },
  bind: {
    rule: 'bind-in-roll',
    on: raw({ axle: { beam: 'tube', left: PLAIN_HALF, right: 'mirror' } }),
    measured: bind,
    stopAt: 5,
  },
  beamTwist: { rule: 'beam-twist', on: raw(), measured: (document) => twist(document) / DEGREE },
  barLinkAngle: {
    rule: 'bar-and-link',
    about: /parallel/,
    on: CROSS,
    measured: (document) => {
      const { axle, frame } = barOf(document);
      const { dragLinkBall, box: at } = document.steering;
      return Math.abs(lean(axle, frame) - lean(dragLinkBall, at.pitmanBall)) / DEGREE;
    },
  },
  barLinkLength: {
    rule: 'bar-and-link',
    about: /^Lateral bar .*, drag link/,
    on: CROSS,
    measured: (document) => {
      const { axle, frame } = barOf(document);
      const { dragLinkBall, box: at } = document.steering;
      const [a, b] = [distance(axle, frame), distance(dragLinkBall, at.pitmanBall)];
      return Math.abs(a - b) / Math.max(a, b);
    },
  },
  aimHeight: { rule: 'aim-height', on: LOW, measured: offLine },
  transmissionLeast: {
    rule: 'dead-centre',
    on: raw(),
    measured: (document) => -transmission(document, 31, 41) / DEGREE,
    stopAt: 1 / 2,
  },
  ballTilt: {
    rule: 'ball-tilt',
    on: raw({ studs: { 'steering.dragLinkBall': [1, 0, 1] }, steering: { ...SIDE_STEER, stopAngle: 3 } }),
    measured: (document) => {
      const { left, right } = turnOf(document);
      return tilt(document, right.handwheel, left.handwheel, 31, 41) / DEGREE;
    },
    stops: true,
  },
  ratioLeast: { rule: 'ratio', about: /^Overall/, on: raw(), measured: (document) => ratioAt(document) },
  ratioMost: { rule: 'ratio', about: /^Overall/, on: raw(), measured: (document) => ratioAt(document) },
  turnsLeast: { rule: 'ratio', about: /turns/, on: raw(), measured: () => (2 * 35 * 16) / 360 },
  turnsMost: { rule: 'ratio', about: /turns/, on: raw(), measured: () => (2 * 35 * 16) / 360 },
  lockLeast: {
    rule: 'lock',
    about: /^Inner/,
    on: raw(),
    measured: (document) => Math.min(...locks(document).map(({ inner }) => inner)) / DEGREE,
  },
  lockMost: {
    rule: 'lock',
    about: /^Inner/,
    on: raw(),
    measured: (document) => Math.max(...locks(document).map(({ inner }) => inner)) / DEGREE,
  },
  lockApart: { rule: 'turns-unequal', on: LOW, measured: (document) => locksApart(document) / DEGREE },
  linkMarginLeast: {
    rule: 'link-strength',
    on: raw({
      diameters: { tieRod: 25 },
      links: { tieRod: { section: 'tube', wall: 3, material: 'drawn-steel', offset: 0 } },
    }),
    measured: (document) => tieRodMargin(resolveLayout(document)),
  },
  rimForce: { rule: 'effort', on: raw(), measured: rimForce },
  jointSingle: {
    rule: 'shaft-joint-angle',
    on: SHAFT,
    measured: (document) => Math.max(...angleAt(document)),
    stops: true,
  },
  jointDouble: {
    rule: 'shaft-joint-angle',
    on: {
      ...SHAFT,
      shaft: {
        ...shaftOf(SHAFT),
        joints: shaftOf(SHAFT).joints.map((joint) => ({ ...joint, kind: 'double' as const })),
      },
    },
    measured: (document) => Math.max(...angleAt(document)),
    stops: true,
  },
  shaftSpan: {
    rule: 'shaft-span',
    on: SHAFT,
    measured: (document) => {
      const { joints } = shaftOf(document);
      return Math.max(...joints.slice(1).map(({ centre }, i) => distance(joints[i]!.centre, centre)));
    },
  },
};

describe('past a limit is past the figure of the solved car', () => {
  test('every limit is held', () => {
    expect(LIMIT_NAMES.filter((name) => !HELD[name] && !SPARED[name])).toEqual([]);
  });

  test.each(Object.entries(HELD))('%s', (name, held) => {
    const { rule, about, on, measured, stopAt, stops } = held as Held;
    const figure = measured(on);
    expect(figure).toBeGreaterThan(0);
    const least = /Least$/.test(name);
    const analysis = analyse(resolveLayout(on));
    const said = (limit: number) => {
      const shop: ShopLimits = { [name]: limit };
      const list = findings(analysis, { unit: 'in', fraction: 16 }, shop).filter(
        (finding) => finding.rule === rule && (about?.test(finding.sentence) ?? true),
      );
      for (const { source } of list) if (list.length === 1) expect(source).toContain(OWN_LIMIT);
      return list.map(({ severity }) => severity);
    };
    const bad = (list: readonly string[]) => list.filter((severity) => severity !== 'info');
    // A part in a thousand or so, for what is found on a grid.
    const [under, over] = least ? [1.003, 0.997] : [0.997, 1.003];
    expect(bad(said(figure * over)), 'within').toEqual([]);
    const past = bad(said(figure * under));
    expect(past.length, 'past').toBeGreaterThan(0);
    if (stops) expect(past).toContain('stop');
    else if (!stopAt) expect(past).not.toContain('stop');
    else {
      expect(past).not.toContain('stop');
      expect(bad(said((figure / stopAt) * over)), 'well past').not.toContain('stop');
      expect(bad(said((figure / stopAt) * under)), 'far past').toContain('stop');
    }
  });
});
