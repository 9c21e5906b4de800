import { describe, expect, test } from 'vitest';
import type { Side } from '../../shared-math/layout/index.ts';
import {
  carryPoint,
  createState,
  type FrontEnd,
  type FrontEndState,
  groundOffsets,
  prepareFrontEnd,
  solveFrontEnd,
} from '../../shared-math/linkage/index.ts';
import { returnEnds, returnToStraight, SIDE_FORCE_SHARE, sweepTurn } from '../../shared-math/sweep/index.ts';
import { DEGREE, expectClose } from '../support/close.ts';
import { CROSS_STEER, frontEndOf, layoutOf, PLAIN_HALF, SIDE_STEER, STEERED } from '../support/layouts.ts';

// The moment that brings the wheels back, against virtual work: what forces at the tyres do as the solved linkage is turned a
// little further, by differences of points carried and of how far the tyres stand below the axle. No moment about an axis,
// no rate of a link, no contact of the program's is used.

type Vector = readonly [number, number, number];
const SIDES: readonly Side[] = ['left', 'right'];

function solved(frontEnd: FrontEnd, handwheel: number): FrontEndState {
  const state = createState();
  expect(solveFrontEnd(frontEnd, 0, 0, handwheel, state)).toBe('ok');
  return state;
}

function carried(frontEnd: FrontEnd, state: FrontEndState, side: Side, at: Vector): Vector {
  const out = new Float64Array(3);
  carryPoint(frontEnd, state, `spindle-${side}`, at, out);
  return [out[0] as number, out[1] as number, out[2] as number];
}

/** Points of the tyre's middle circle as drawn, all about the spin axis that toe and camber draw. */
function circle(frontEnd: FrontEnd, side: Side, count: number): Vector[] {
  const { wheelCentre: w, camber, toeIn } = frontEnd.layout.axle[side];
  const inward = side === 'left' ? 1 : -1;
  const [toe, tilt] = [toeIn * DEGREE, camber * DEGREE];
  // The axle's line from its definition: level part turned in by toe, tipped down outward by camber.
  const s: Vector = [
    inward * Math.sin(toe) * Math.cos(tilt),
    Math.cos(toe) * Math.cos(tilt),
    -inward * Math.sin(tilt),
  ];
  const f0: Vector = [s[1], -s[0], 0];
  const size = Math.hypot(...f0);
  const f: Vector = [f0[0] / size, f0[1] / size, 0];
  const d: Vector = [s[1] * f[2] - s[2] * f[1], s[2] * f[0] - s[0] * f[2], s[0] * f[1] - s[1] * f[0]];
  const radius = w[2] / Math.abs(d[2]);
  // Fine about the lowest point.
  return Array.from({ length: count }, (_, i) => {
    const t = ((i / (count - 1)) * 2 - 1) * 0.6;
    const way = d[2] < 0 ? 1 : -1;
    const at = (axis: 0 | 1 | 2) => w[axis] + radius * (Math.sin(t) * f[axis] + way * Math.cos(t) * d[axis]);
    return [at(0), at(1), at(2)];
  });
}

/** The lowest of those points in a pose: its number, and how low it is by the parabola through its neighbours. */
function lowest(frontEnd: FrontEnd, state: FrontEndState, side: Side, points: readonly Vector[]) {
  const z = points.map((point) => carried(frontEnd, state, side, point)[2]);
  let i = 1;
  for (let k = 1; k < z.length - 1; k += 1) if ((z[k] as number) < (z[i] as number)) i = k;
  const [a, b, c] = [z[i - 1], z[i], z[i + 1]] as [number, number, number];
  const share = (a - c) / (2 * (a - 2 * b + c));
  return { index: i + share, low: b - (share * (a - c)) / 4 };
}

/** A point between two numbered points of the circle. */
const between = (points: readonly Vector[], index: number): Vector => {
  const i = Math.min(Math.max(Math.floor(index), 0), points.length - 2);
  const share = index - i;
  const [p, q] = [points[i], points[i + 1]] as [Vector, Vector];
  return [p[0] + share * (q[0] - p[0]), p[1] + share * (q[1] - p[1]), p[2] + share * (q[2] - p[2])];
};

const STEP = 1e-4;

/** Work for each rad of handwheel, above 0 where the forces bring the wheels back, N·mm. */
function byVirtualWork(frontEnd: FrontEnd, handwheel: number) {
  const load = frontEnd.layout.car.frontAxleLoad / 2;
  const here = solved(frontEnd, handwheel);
  const [less, more] = [solved(frontEnd, handwheel - STEP), solved(frontEnd, handwheel + STEP)];
  const straight = solved(frontEnd, 0);
  const inside = Math.sign(here.meanSteer - straight.meanSteer);
  let sideWork = 0;
  let lift = 0;
  for (const side of SIDES) {
    const points = circle(frontEnd, side, 241);
    const point = between(points, lowest(frontEnd, here, side, points).index);
    const [from, to] = [less, more].map((state) => carried(frontEnd, state, side, point)) as [Vector, Vector];
    const { steer } = here[side];
    const across = -Math.sin(steer) * (to[0] - from[0]) + Math.cos(steer) * (to[1] - from[1]);
    sideWork += (SIDE_FORCE_SHARE * load * inside * across) / (2 * STEP);
    lift +=
      (lowest(frontEnd, more, side, points).low - lowest(frontEnd, less, side, points).low) / (2 * STEP);
  }
  const way = Math.sign(handwheel);
  return { bySideForce: -way * sideWork, byWeight: -way * load * lift };
}

describe('what brings the wheels back to straight', () => {
  const cars = [
    ...STEERED.filter((_, i) => i % 5 === 0),
    {
      label: 'box mounted the wrong way round',
      over: { steering: { ...SIDE_STEER, box: { ...SIDE_STEER.box, sectorAxis: [0, 1, 0] } } },
    },
  ];
  test.each(cars)('$label: is the virtual work of side force and weight', ({ over }) => {
    const frontEnd = frontEndOf(over);
    const turn = sweepTurn(frontEnd, 0, 0, 9);
    const found = returnToStraight(frontEnd, turn, 0, 0);
    if (!found) throw new Error('no turn');
    for (const row of [1, 2, 3, 5, 6, 7]) {
      const work = byVirtualWork(frontEnd, found.handwheel[row] as number);
      expectClose(
        found.bySideForce[row] as number,
        work.bySideForce,
        1e-4 * Math.abs(work.bySideForce) + 0.05,
        'side force',
      );
      expectClose(
        found.byWeight[row] as number,
        work.byWeight,
        1e-3 * Math.abs(work.byWeight) + 0.5,
        'weight',
      );
      expectClose(
        found.both[row] as number,
        (found.bySideForce[row] as number) + (found.byWeight[row] as number),
        1e-9,
        'both',
      );
    }
  });

  test('straight ahead the levers are trail and scrub at the ground, square to the kingpin', () => {
    const layout = layoutOf({
      axle: { beam: 'i-beam', left: { ...PLAIN_HALF, camber: 0, toeIn: 0 }, right: 'mirror' },
    });
    const frontEnd = prepareFrontEnd(layout);
    const turn = sweepTurn(frontEnd, 0, 0, 21);
    const found = returnToStraight(frontEnd, turn, 0, 0);
    if (!found) throw new Error('no turn');
    const at = Array.from(found.handwheel).reduce(
      (best, value, i) => (Math.abs(value) < Math.abs(found.handwheel[best] as number) ? i : best),
      0,
    );
    const { scrubRadius, mechanicalTrail } = groundOffsets(layout, 'left');
    const { kingpinTop: t, kingpinBottom: b } = layout.axle.left;
    const upright = (t[2] - b[2]) / Math.hypot(t[0] - b[0], t[1] - b[1], t[2] - b[2]);
    // Force at the ground times its distance there from the axis, times the cosine of the axis to the upright.
    const turned = Math.abs(found.handwheel[at] as number);
    expectClose(found.leftTrail[at] as number, mechanicalTrail * upright, 0.2 + 60 * turned, 'trail');
    expectClose(found.leftScrub[at] as number, scrubRadius * upright, 0.2 + 60 * turned, 'scrub');
  });

  test('on the way to lock the weight takes up what lifting the car by a disc’s closed form needs', () => {
    // Kingpins inclined by λ, no caster, a wheel without camber or toe whose centre stands e from the kingpin's line. Turned
    // by θ about it the centre sinks by e sin λ (1 - cos θ) and the disc leans by φ, sin φ = sin λ cos λ (1 - cos θ), which
    // takes R (1 - cos φ) off that: Rodrigues' formula by hand. The offset at the wheel's centre counts, not that at the ground,
    // as the tyre does not stand on one and the same spot of its tread (so Reimpell and Stoll, The Automotive Chassis, from
    // memory; formulas with the offset at the ground hold that spot fixed).
    const half = {
      ...PLAIN_HALF,
      kingpinTop: [0, 631, 395],
      kingpinBottom: [0, 649, 265],
      camber: 0,
      toeIn: 0,
    };
    const frontEnd = frontEndOf({ axle: { beam: 'i-beam', left: half, right: 'mirror' } });
    const lambda = Math.atan2(18, 130);
    const e = (710 - (649 - (18 / 130) * 65)) * Math.cos(lambda);
    const turned = (steer: number) => {
      let [low, high] = [0, 1.2];
      for (let i = 0; i < 60; i += 1) {
        const t = (low + high) / 2;
        const at = Math.atan2(
          Math.cos(lambda) * Math.sin(t),
          Math.cos(t) + Math.sin(lambda) ** 2 * (1 - Math.cos(t)),
        );
        if (at < Math.abs(steer)) low = t;
        else high = t;
      }
      return (low + high) / 2;
    };
    const lift = (steer: number) => {
      const gone = 1 - Math.cos(turned(steer));
      const phi = Math.asin(Math.sin(lambda) * Math.cos(lambda) * gone);
      return e * Math.sin(lambda) * gone - 330 * (1 - Math.cos(phi));
    };
    const whole = sweepTurn(frontEnd, 0, 0, 801);
    const found = returnToStraight(frontEnd, whole, 0, 0);
    if (!found) throw new Error('no turn');
    const last = whole.count - 1;
    let work = 0;
    for (let i = 1; i <= last; i += 1) {
      const [from, to] = [found.handwheel[i - 1] as number, found.handwheel[i] as number];
      if (from >= 0)
        work += ((to - from) * ((found.byWeight[i - 1] as number) + (found.byWeight[i] as number))) / 2;
      else if (to > 0) work += (to * (found.byWeight[i] as number)) / 2;
    }
    const lifted = lift(whole.leftSteer[last] as number) + lift(whole.rightSteer[last] as number);
    const needed = (frontEnd.layout.car.frontAxleLoad / 2) * lifted;
    expectClose(work, needed, 0.002 * needed, 'work');
    expect(lifted / 2).toBeGreaterThan(0.5);
  });
});

describe('where they stop coming back', () => {
  test('all the way on a usual car', () => {
    const frontEnd = frontEndOf({ steering: CROSS_STEER });
    const ends = returnEnds(frontEnd, sweepTurn(frontEnd, 0, 0), 0, 0);
    expect(ends?.left).toEqual({ bySideForce: null, byWeight: null, both: null });
    expect(ends?.right).toEqual({ bySideForce: null, byWeight: null, both: null });
  });

  test('with caster that leans forward a side force never brings them back', () => {
    const frontEnd = frontEndOf({
      axle: { beam: 'i-beam', left: { ...PLAIN_HALF, kingpinTop: [12, 631, 395] }, right: 'mirror' },
    });
    const ends = returnEnds(frontEnd, sweepTurn(frontEnd, 0, 0), 0, 0);
    expect(ends?.left.bySideForce).toBe(0);
    expect(ends?.right.bySideForce).toBe(0);
  });

  test('over centre near lock, at the place where the virtual work changes its sign', () => {
    // Little caster, kingpins that lean out, and arms that bring the inner wheel near its dead centre.
    const half = {
      ...PLAIN_HALF,
      kingpinTop: [-1, 649, 395],
      kingpinBottom: [1, 640, 265],
      tieRodBall: [-150, 560, 292],
    };
    const frontEnd = frontEndOf({
      axle: { beam: 'i-beam', left: half, right: 'mirror' },
      steering: { ...SIDE_STEER, dragLinkBall: [0, 520, 395], box: { ...SIDE_STEER.box, sectorTravel: 45 } },
    });
    const ends = returnEnds(frontEnd, sweepTurn(frontEnd, 0, 0), 0, 0);
    const stops = [ends?.left.both, ends?.right.both].filter(
      (end) => typeof end === 'number' && end !== 0,
    ) as number[];
    expect(stops.length).toBeGreaterThan(0);
    for (const stop of stops) {
      const [before, after] = [0.98, 1.02].map((times) => {
        const { bySideForce, byWeight } = byVirtualWork(frontEnd, times * stop);
        return bySideForce + byWeight;
      }) as [number, number];
      expect(before).toBeGreaterThan(0);
      expect(after).toBeLessThan(0);
    }
  });
});
