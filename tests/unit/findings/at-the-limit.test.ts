import { describe, expect, test } from 'vitest';
import { type Analysis, LIMITS, type LimitName } from '../../../shared-math/findings/index.ts';
import { drawnInputAngle } from '../../../shared-math/layout/index.ts';
import { createState, solveFrontEnd } from '../../../shared-math/linkage/index.ts';
import { routeOf } from '../../../shared-math/shaft/index.ts';
import { lockAngles, toeLength } from '../../../shared-math/sweep/index.ts';
import { toRadians } from '../../../shared-math/units/index.ts';
import {
  car,
  DEG,
  degreesOf,
  INCHES,
  judge,
  MM,
  straightCar,
  turned,
  withParts,
  withTurn,
} from '../../support/judged-car.ts';
import { CROSS_STEER, LOCATIONS } from '../../support/layouts.ts';
import { tieRodMargin } from '../../support/measures.ts';
import { rawShaft } from '../../support/shafts.ts';

// What stands at its limit to the last bit is within it; a hair further, and it is not.

const HAIR = 1e-9;

interface Edge {
  readonly limit: LimitName;
  readonly rule: string;
  readonly on: Analysis;
  /** The figure that is measured, in the limit's unit, to the last bit. */
  readonly figure: number;
}

const twistOf = ({ frontEnd, layout }: Analysis): number => {
  const state = createState();
  expect(solveFrontEnd(frontEnd, 0, toRadians(layout.travel.roll), 0, state)).toBe('ok');
  return Math.abs(state.axle.twist);
};
const locksOf = ({ layout, turn }: Analysis) =>
  [turn.left, turn.right].map((side) => lockAngles(layout, side).inner);
const LOCKS = turned(straightCar(), { left: [34, 29], right: [30, 27] });
const CASTER = Math.atan2(14, 130);
const heaveOf = (...casters: readonly number[]) => ({
  heave: {
    along: 'heave',
    count: casters.length,
    at: casters.map((_, i) => 10 * i),
    status: casters.map(() => 0),
    leftCaster: casters,
  },
});
const RISEN = CASTER + 0.05;
const SHAFT = car({ shaft: rawShaft({}) });
const shaft = SHAFT.layout.shaft!;
const BAR = car({
  location: LOCATIONS['four-bar'],
  lateral: { kind: 'bar', axle: [-72, -500, 352], frame: [-72, 300, 412] },
  steering: {
    ...CROSS_STEER,
    dragLinkBall: [-148, -628, 352],
    box: { ...CROSS_STEER.box, pitmanBall: [-148, 272, 352] },
  },
});
const ENDS = {
  tilts: [{ joint: { id: 'steering.box.pitmanBall', name: 'Pitman ball' }, tilt: toRadians(17), at: {} }],
  pitmanTransmission: { angle: toRadians(34), at: { handwheel: 0 } },
  steeringArmTransmission: { angle: toRadians(40), at: { handwheel: 0 } },
};

const GAP = (limit: 'moving' | 'tyre') =>
  withParts(car(), {
    clearances: {
      pairs: [
        {
          a: 'x',
          b: 'y',
          nameOfA: 'drag link',
          nameOfB: 'tie rod',
          limit,
          distance: 15,
          at: { heave: 0, roll: 0, handwheel: 0 },
        },
      ],
      poses: 9,
    },
  });

const THIN_ROD = car({
  diameters: { tieRod: 25 },
  links: { tieRod: { section: 'tube', wall: 3, material: 'drawn-steel', offset: 0 } },
});
const marginOfTieRod = tieRodMargin(THIN_ROD.layout);

const EDGES: readonly Edge[] = [
  { limit: 'clearanceMoving', rule: 'clearance', on: GAP('moving'), figure: 15 },
  { limit: 'clearanceTyre', rule: 'clearance', on: GAP('tyre'), figure: 15 },
  {
    limit: 'bumpSteerWorst',
    rule: 'bump-steer-worst',
    on: withParts(car(), { heaveSummary: { ...car().heaveSummary, worstBumpSteer: toRadians(1.25) } }),
    figure: 1.25,
  },
  {
    limit: 'bumpSteerWorst',
    rule: 'one-wheel',
    on: withParts(car(), {
      oneWheel: { status: 'ok', worst: toRadians(1.25), steer: toRadians(1.25), heave: 9, roll: 0 },
    }),
    figure: 1.25,
  },
  {
    limit: 'rollOversteer',
    rule: 'roll-steer',
    on: withParts(car(), { rollSummary: { ...car().rollSummary, slopeAtRide: -0.25 } }),
    figure: 0.25,
  },
  { limit: 'beamTwist', rule: 'beam-twist', on: car(), figure: degreesOf(twistOf(car())) },
  { limit: 'ballTilt', rule: 'ball-tilt', on: withParts(car(), { extremes: ENDS }), figure: 17 },
  {
    limit: 'lockApart',
    rule: 'turns-unequal',
    on: LOCKS,
    figure: degreesOf(Math.abs(locksOf(LOCKS)[0]! - locksOf(LOCKS)[1]!)),
  },
  { limit: 'lockMost', rule: 'lock', on: LOCKS, figure: degreesOf(Math.max(...locksOf(LOCKS))) },
  { limit: 'lockLeast', rule: 'lock', on: LOCKS, figure: degreesOf(Math.min(...locksOf(LOCKS)), -1) },
  {
    limit: 'transmissionLeast',
    rule: 'dead-centre',
    on: withParts(car(), { extremes: ENDS }),
    figure: 34,
  },
  { limit: 'ratioLeast', rule: 'ratio', on: withTurn(turned(car(), {}), { straightRatio: 15 }), figure: 15 },
  { limit: 'ratioMost', rule: 'ratio', on: withTurn(turned(car(), {}), { straightRatio: 15 }), figure: 15 },
  { limit: 'casterLeast', rule: 'caster-static', on: car(), figure: degreesOf(CASTER, -1) },
  { limit: 'casterMost', rule: 'caster-static', on: car(), figure: degreesOf(CASTER) },
  {
    limit: 'casterChange',
    rule: 'caster-change',
    on: withParts(car(), heaveOf(CASTER, RISEN)),
    figure: degreesOf(RISEN - CASTER),
  },
  { limit: 'toeLeast', rule: 'toe-static', on: car(), figure: 2 * toeLength((0.1 * Math.PI) / 180, 330) },
  { limit: 'toeMost', rule: 'toe-static', on: car(), figure: 2 * toeLength((0.1 * Math.PI) / 180, 330) },
  { limit: 'barLinkLength', rule: 'bar-and-link', on: BAR, figure: (900 - Math.hypot(800, 60)) / 900 },
  { limit: 'barLinkAngle', rule: 'bar-and-link', on: BAR, figure: degreesOf(Math.atan(60 / 800)) },
  { limit: 'linkMarginLeast', rule: 'link-strength', on: THIN_ROD, figure: marginOfTieRod },
  {
    limit: 'rimForce',
    rule: 'effort',
    on: withParts(car(), { effort: { centre: { rimForce: 90 }, worst: { rimForce: 120, handwheel: 2 } } }),
    figure: 120,
  },
  {
    limit: 'boxInput',
    rule: 'shaft-box-input',
    on: car({ shaft: rawShaft({ box: { end: [-960, 452, 486], axis: [1, 0.1, 0] } }) }),
    figure: Math.abs(
      drawnInputAngle(
        car({ shaft: rawShaft({ box: { end: [-960, 452, 486], axis: [1, 0.1, 0] } }) }).layout,
      )! - 90,
    ),
  },
  {
    limit: 'jointSingle',
    rule: 'shaft-joint-angle',
    on: SHAFT,
    figure: degreesOf(Math.max(...routeOf(shaft, { single: 1, double: 1 }).joints.map(({ angle }) => angle))),
  },
  {
    limit: 'shaftSpan',
    rule: 'shaft-span',
    on: SHAFT,
    figure: routeOf(shaft, { single: 1, double: 1 }).lengths[0]!,
  },
];

describe('at a limit', () => {
  test.each(EDGES.map((edge) => ({ ...edge, label: `${edge.rule}, ${edge.limit}` })))(
    '$label',
    ({ limit, rule, on, figure }) => {
      const past = limit.endsWith('Least') || rule === 'clearance' ? 1 : -1;
      // The other end of a range out of the way; the other limits of the rule as wide as they go.
      const wide = {
        lockLeast: 5,
        lockMost: 70,
        barLinkAngle: 45,
        barLinkLength: 1,
        casterLeast: -10,
        casterMost: 20,
        toeLeast: -25,
        toeMost: 25,
      };
      const said = (value: number) =>
        judge(rule, on, MM, { ...wide, [limit]: value }).filter(({ severity }) => severity !== 'info').length;
      expect(said(figure), 'at').toBe(0);
      expect(said(figure * (1 + past * HAIR)), 'a hair past').toBeGreaterThan(0);
    },
  );

  // Rounded as usual the two would be one; a builder who reads them then has to see on which side he is.
  test.each(EDGES.map((edge) => ({ ...edge, label: `${edge.rule}, ${edge.limit}` })))(
    '$label: a figure beside it does not read as it',
    ({ limit, rule, on, figure }) => {
      const range = LIMITS[limit].range;
      const far = limit.endsWith('Least') ? range[0] : range[1];
      for (const style of [INCHES, MM]) {
        const words = (value: number) =>
          judge(rule, on, style, { lockLeast: 5, lockMost: 70, [limit]: value }).map(
            ({ sentence }) => sentence,
          );
        if (rule === 'toe-static' || words(far).length === 0) continue;
        expect(words(figure * 1.0003), style.unit).not.toEqual(words(far));
      }
    },
  );

  test('twice a limit of bump steer is no stop yet, nor three times one of its slope, nor half of a least angle', () => {
    const severity = (rule: string, parts: object, limit: LimitName, value: number) =>
      judge(rule, withParts(car(), parts), MM, { [limit]: value }).map((finding) => finding.severity);
    const worst = { heaveSummary: { ...car().heaveSummary, worstBumpSteer: toRadians(1.25) } };
    const wheel = {
      oneWheel: { status: 'ok', worst: toRadians(1.25), steer: toRadians(1.25), heave: 9, roll: 0 },
    };
    const half = 0.625;
    expect(severity('bump-steer-worst', worst, 'bumpSteerWorst', half)).toEqual(['attention']);
    expect(severity('bump-steer-worst', worst, 'bumpSteerWorst', half * (1 - HAIR))).toEqual(['stop']);
    expect(severity('one-wheel', wheel, 'bumpSteerWorst', half)).toEqual(['attention']);
    expect(severity('one-wheel', wheel, 'bumpSteerWorst', half * (1 - HAIR))).toEqual(['stop']);
    const limit = toRadians(0.25) / 25.4;
    const slope = (times: number) => ({
      heaveSummary: { ...car().heaveSummary, slopeAtRide: times * limit },
    });
    expect(severity('bump-steer-slope', slope(1), 'bumpSteerSlope', 0.25)).toEqual(['info']);
    expect(severity('bump-steer-slope', slope(3), 'bumpSteerSlope', 0.25)).toEqual(['attention']);
    expect(severity('bump-steer-slope', slope(3 * (1 + HAIR)), 'bumpSteerSlope', 0.25)).toEqual(['stop']);
    expect(severity('dead-centre', { extremes: ENDS }, 'transmissionLeast', 68)).toEqual(['attention']);
    expect(severity('dead-centre', { extremes: ENDS }, 'transmissionLeast', 68 * (1 + HAIR))).toEqual([
      'stop',
    ]);
  });

  test('each end of a shop’s range is told with its figure', () => {
    expect(
      judge('lock', LOCKS, MM, { lockLeast: 30.25, lockMost: 33.75 }).map(({ limit, sentence }) => [
        limit,
        sentence,
      ]),
    ).toEqual([['usual 30.25° to 33.75°', 'Inner wheel turns 34.0° to the left, 30.0° to the right']]);
    expect(DEG).toBe(Math.PI / 180);
  });
});
