import { describe, expect, test } from 'vitest';
import type { Point } from '../../shared-math/geometry/points.ts';
import type { Carrier } from '../../shared-math/layout/index.ts';
import {
  arrangementOf,
  axleStandsAt,
  carryPoint,
  createState,
  groundOffsets,
  kingpinDirection,
  linkLengths,
  solveFrontEnd,
  steerRates,
} from '../../shared-math/linkage/index.ts';
import { DEGREE, expectClose } from '../support/close.ts';
import { CROSS_STEER, frontEndOf, layoutOf, PLAIN_HALF, SIDE_STEER, STEERED } from '../support/layouts.ts';

const minus = (a: Point, b: Point): Point => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
const times = (a: Point, b: Point): Point => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
/** Of a point from the line through two others: twice the triangle's area over its base. */
const fromLine = (point: Point, a: Point, b: Point) =>
  Math.hypot(...times(minus(point, a), minus(b, a))) / Math.hypot(...minus(b, a));

const UNLIKE_RIGHT = {
  kingpinTop: [-9, -628, 397],
  kingpinBottom: [5, -650, 264],
  wheelCentre: [2, -712, 331],
  camber: 0.5,
  toeIn: 0.2,
  tieRodBall: [-146, -603, 290],
};
const axle = { beam: 'i-beam', left: PLAIN_HALF, right: UNLIKE_RIGHT };

test.each([
  ['side steer', SIDE_STEER],
  ['cross steer', CROSS_STEER],
])('lengths of links and arms are those between the drawn points: %s', (_, steering) => {
  const frontEnd = frontEndOf({ axle, steering });
  const { axle: halves, steering: drawn } = frontEnd.layout;
  const { left, right } = halves;
  const side = halves[drawn.dragLinkTo];
  const { sectorCentre, sectorAxis, pitmanBall } = drawn.box;
  const along: Point = [
    sectorCentre[0] + sectorAxis[0],
    sectorCentre[1] + sectorAxis[1],
    sectorCentre[2] + sectorAxis[2],
  ];
  const lengths = linkLengths(frontEnd);
  const expected = {
    dragLink: Math.hypot(...minus(pitmanBall, drawn.dragLinkBall)),
    tieRod: Math.hypot(...minus(left.tieRodBall, right.tieRodBall)),
    pitmanArm: fromLine(pitmanBall, sectorCentre, along),
    steeringArm: fromLine(drawn.dragLinkBall, side.kingpinBottom, side.kingpinTop),
    leftTieRodArm: fromLine(left.tieRodBall, left.kingpinBottom, left.kingpinTop),
    rightTieRodArm: fromLine(right.tieRodBall, right.kingpinBottom, right.kingpinTop),
  };
  for (const [name, value] of Object.entries(expected))
    expectClose(lengths[name as keyof typeof lengths], value, 1e-9, name);
});

test.each([
  ['along the car, box behind', [0, 484, 395], [-800, 500, 350], 'side'],
  ['along the car, box ahead', [0, 484, 395], [800, 500, 350], 'side'],
  ['across, box on the left', [-148, -628, 352], [-150, 258, 362], 'cross'],
  ['across, box on the right', [-148, 628, 352], [-150, -258, 362], 'cross'],
  ['as far along as across', [0, 500, 395], [-300, 200, 350], 'side'],
  ['a little more across', [0, 500, 395], [-300, 199, 350], 'cross'],
  ['both well ahead of the axle', [300, 484, 395], [280, -300, 350], 'cross'],
  // Height does not count.
  ['steep', [0, 484, 395], [-200, 484, 900], 'side'],
] as const)('which way a drag link runs: %s', (_, ball, pitman, way) => {
  const steering = { ...SIDE_STEER, dragLinkBall: ball, box: { ...SIDE_STEER.box, pitmanBall: pitman } };
  expect(arrangementOf(layoutOf({ steering }))).toBe(way);
});

describe('where tyre and kingpin meet the ground', () => {
  test.each([
    [0, 0],
    [2, 0],
    [-1.5, 0],
    [1, 4],
    [0, -6],
  ])('camber %d°, toe-in %d°: in the wheel’s plane, square below its axle', (camber, toeIn) => {
    const layout = layoutOf({
      axle: { beam: 'i-beam', left: { ...PLAIN_HALF, camber, toeIn }, right: 'mirror' },
    });
    // By hand: the tyre's middle line leans out at the top by camber, so at the ground it is in by z tan(camber); toe
    // turns that step, in for the front. The kingpin's line: 14 forward and 18 out for 130 down.
    const inward = 330 * Math.tan(camber * DEGREE);
    const contact = [-inward * Math.sin(toeIn * DEGREE), 710 - inward * Math.cos(toeIn * DEGREE)];
    const ground = [7 + (14 * 265) / 130, 649 + (18 * 265) / 130];
    for (const side of ['left', 'right'] as const) {
      const found = groundOffsets(layout, side);
      expectClose(found.scrubRadius, contact[1]! - ground[1]!, 1e-9, `${side} scrub radius`);
      expectClose(found.mechanicalTrail, ground[0]! - contact[0]!, 1e-9, `${side} trail`);
    }
  });
});

describe('in a solved pose', () => {
  test.each(STEERED.filter((_, i) => i % 3 === 1))(
    'rates of steer are the differences of the solved angles: $label',
    ({ over }) => {
      const frontEnd = frontEndOf({ ...over, axle: { ...axle, beam: (over['axle'] as typeof axle).beam } });
      const state = createState();
      const at = (handwheel: number) => {
        expect(solveFrontEnd(frontEnd, 30, -0.02, handwheel, state)).toBe('ok');
        return { left: state.left.steer, right: state.right.steer, mean: state.meanSteer };
      };
      for (const handwheel of [0, 2.5, -3]) {
        const [more, less] = [at(handwheel + 1e-4), at(handwheel - 1e-4)];
        at(handwheel);
        const rates = steerRates(frontEnd, state);
        for (const name of ['left', 'right', 'mean'] as const)
          expectClose(rates[name], (more[name] - less[name]) / 2e-4, 1e-7, name);
      }
    },
  );

  test('the kingpin’s direction is that of its carried ends, whatever the steering', () => {
    const frontEnd = frontEndOf({ axle });
    const state = createState();
    expect(solveFrontEnd(frontEnd, 0, 0, 3, state)).toBe('ok');
    const up = kingpinDirection(frontEnd, state, 'right');
    const length = Math.hypot(14, 22, 133);
    [-14, 22, 133].forEach((part, i) => {
      expectClose(up[i]!, part / length, 1e-12);
    });
    expect(solveFrontEnd(frontEnd, 25, 0.02, 3, state)).toBe('ok');
    expect(axleStandsAt(state)).toEqual({ heave: 25, roll: 0.02 });
    expect(state).toMatchObject({ status: 'ok', failure: '', heave: 25, roll: 0.02, handwheel: 3 });
  });

  test('a carrier carries its own points: frame still, axle without steer, arm by the sector, spindle with both', () => {
    const frontEnd = frontEndOf({ axle });
    const state = createState();
    const out = new Float64Array(5);
    const carried = (carrier: Carrier, at: Point): Point => {
      out.fill(9);
      carryPoint(frontEnd, state, carrier, at, out, 1);
      expect([out[0], out[4]]).toEqual([9, 9]);
      return [out[1]!, out[2]!, out[3]!];
    };
    expect(solveFrontEnd(frontEnd, 0, 0, 16 * 0.3, state)).toBe('ok');
    expect(carried('frame', [1, 2, 3])).toEqual([1, 2, 3]);
    for (const side of ['left', 'right'] as const)
      [100, 200, 300].forEach((value, i) => {
        expectClose(carried(`axle-${side}`, [100, 200, 300])[i]!, value, 1e-9, side);
      });
    // The sector axis points to the right, through (-800, ., 490): 0.3 rad carries the arm from straight down ahead or
    // back; right-hand about -y, down (-z) goes to +x.
    const pitman = carried('pitman', [-800, 450, 350]);
    [-800 + 140 * Math.sin(0.3), 450, 490 - 140 * Math.cos(0.3)].forEach((value, i) => {
      expectClose(pitman[i]!, value, 1e-9, `pitman ${i}`);
    });
    // A point on a kingpin's line stays; one beside it turns about it by the spindle's angle.
    for (const side of ['left', 'right'] as const) {
      const { kingpinTop, kingpinBottom, wheelCentre } = frontEnd.layout.axle[side];
      carried(`spindle-${side}`, kingpinTop).forEach((value, i) => {
        expectClose(value, kingpinTop[i]!, 1e-9);
      });
      const moved = carried(`spindle-${side}`, wheelCentre);
      const [before, after] = [minus(wheelCentre, kingpinBottom), minus(moved, kingpinBottom)];
      const u = minus(kingpinTop, kingpinBottom);
      const size = Math.hypot(...u);
      const [cross, across] = [times(u, before), times(u, after)];
      const sine = times(cross, across).reduce((sum, value, i) => sum + (value * u[i]!) / size, 0);
      const cosine = cross.reduce((sum, value, i) => sum + value * across[i]!, 0);
      const at = side === 'left' ? 0 : 3;
      const turn = Math.atan2(state.work.turns[at + 1]!, state.work.turns[at]!);
      expectClose(Math.atan2(sine, cosine), turn, 1e-9, `${side} spindle`);
      expect(turn).toBeGreaterThan(0.1);
    }
  });

  test('in bump and roll the frame stays, the kingpin goes along, and a swept arm keeps the link’s length', () => {
    const box = { ...SIDE_STEER.box, pitmanBall: [-750, 470, 362] };
    const frontEnd = frontEndOf({ axle, steering: { ...SIDE_STEER, box } });
    const state = createState();
    const out = new Float64Array(3);
    const carried = (carrier: Carrier, at: Point): Point => {
      carryPoint(frontEnd, state, carrier, at, out);
      return [out[0]!, out[1]!, out[2]!];
    };
    const { dragLinkBall, box: drawn } = frontEnd.layout.steering;
    for (const [heave, roll, handwheel] of [
      [50, 0.05, 2],
      [-60, -0.05, -3],
      [0, 0, 5],
    ] as const) {
      expect(solveFrontEnd(frontEnd, heave, roll, handwheel, state)).toBe('ok');
      expect(carried('frame', [1, 2, 3])).toEqual([1, 2, 3]);
      const link = minus(carried('pitman', drawn.pitmanBall), carried('spindle-left', dragLinkBall));
      expectClose(Math.hypot(...link), Math.hypot(...minus(drawn.pitmanBall, dragLinkBall)), 1e-9, 'link');
      for (const [side, inward] of [
        ['left', -1],
        ['right', 1],
      ] as const) {
        const { kingpinTop, kingpinBottom } = frontEnd.layout.axle[side];
        const u = minus(carried(`axle-${side}`, kingpinTop), carried(`axle-${side}`, kingpinBottom));
        expectClose(state[side].caster, Math.atan2(-u[0], u[2]), 1e-12, `${side} caster`);
        expectClose(state[side].kingpinInclination, Math.atan2(inward * u[1], u[2]), 1e-12, side);
      }
    }
    const free = frontEndOf({
      location: { kind: 'hairpins', left: { framePivot: [0, 415, 330] }, right: 'mirror' },
    });
    expect(solveFrontEnd(free, 10, 0.01, 4, state)).toBe('no-pose');
    expect(state).toMatchObject({ failure: 'axle-free', heave: 10, roll: 0.01, handwheel: 4 });
  });

  test('a drag link that reaches no more says by how much; the wheels then keep no figures to be taken', () => {
    const box = { ...SIDE_STEER.box, sectorCentre: [-800, 500, 600] };
    const frontEnd = frontEndOf({ steering: { ...SIDE_STEER, box } });
    const state = createState();
    let last = 0;
    for (let degrees = 0; degrees <= 80; degrees += 4) {
      const status = solveFrontEnd(frontEnd, 0, 0, degrees * 16 * DEGREE, state);
      expect(status).toBe(state.dragLinkReach <= 1 ? 'ok' : 'out-of-reach');
      if (degrees > 30) expect(state.dragLinkReach).toBeGreaterThan(last);
      last = state.dragLinkReach;
      expect(state.failure).toBe(status === 'ok' ? '' : 'drag-link');
    }
    expect(last).toBeGreaterThan(1);
  });
});
