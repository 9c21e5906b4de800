import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  aimAtPlane,
  ballPath,
  findAim,
  findBestSpot,
  holdTravel,
  linkArc,
  pathGap,
  worstBumpSteerAt,
} from '../../shared-math/aim/index.ts';
import { fitCircle } from '../../shared-math/geometry/circle-fit.ts';
import type { Point } from '../../shared-math/geometry/points.ts';
import { createState, solveFrontEnd } from '../../shared-math/linkage/index.ts';
import { summariseTravel, sweepTravel } from '../../shared-math/sweep/index.ts';
import { DEGREE, expectClose } from '../support/close.ts';
import { CROSS_STEER, frontEndOf, LOCATIONS, SIDE_STEER, STEERED } from '../support/layouts.ts';

describe('the circle fit in curvature form', () => {
  test('finds exact arcs in any plane, ahead or behind, short or long', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 150, max: 5000, noNaN: true }),
        fc.double({ min: 0.02, max: 0.4, noNaN: true }),
        fc.tuple(...Array.from({ length: 3 }, () => fc.double({ min: -1, max: 1, noNaN: true }))),
        fc.tuple(...Array.from({ length: 3 }, () => fc.double({ min: -900, max: 900, noNaN: true }))),
        (radius, half, axis, centre) => {
          const size = Math.hypot(...axis);
          fc.pre(size > 0.1);
          const n = axis.map((value) => value / size) as [number, number, number];
          const other = Math.abs(n[0]) < 0.8 ? [1, 0, 0] : [0, 1, 0];
          const raw = [
            n[1] * other[2]! - n[2] * other[1]!,
            n[2] * other[0]! - n[0] * other[2]!,
            n[0] * other[1]! - n[1] * other[0]!,
          ];
          const long = Math.hypot(...raw);
          const e = raw.map((value) => value / long) as [number, number, number];
          const f = [n[1] * e[2] - n[2] * e[1], n[2] * e[0] - n[0] * e[2], n[0] * e[1] - n[1] * e[0]];
          const points = new Float64Array(93);
          for (let i = 0; i < 31; i += 1) {
            const t = ((i - 15) / 15) * half;
            for (let k = 0; k < 3; k += 1)
              points[3 * i + k] = centre[k]! + radius * (Math.cos(t) * e[k]! + Math.sin(t) * f[k]!);
          }
          const fit = fitCircle(points);
          expect(fit.kind).toBe('circle');
          if (fit.kind !== 'circle') return;
          // A short arc of a large circle tells its centre only as well as its sagitta stands out from rounding.
          const sagitta = radius * (1 - Math.cos(half));
          const tolerance = 1e-9 * radius * (radius / sagitta);
          expectClose(fit.radius, radius, tolerance, 'radius');
          for (let k = 0; k < 3; k += 1) expectClose(fit.centre[k]!, centre[k]!, tolerance, 'centre');
        },
      ),
      { seed: 20264, numRuns: 60 },
    );
  });

  test('a straight path and a single spot have no centre', () => {
    const line = Float64Array.from({ length: 33 }, (_, i) => (i % 3 === 2 ? Math.floor(i / 3) * 5 : 7));
    expect(fitCircle(line).kind).toBe('straight');
    expect(fitCircle(new Float64Array(33).fill(4)).kind).toBe('straight');
  });
});

describe('the aim point', () => {
  // Paths that are exact circles: rods swinging on their pivots, parallel bars, leaves; the spring keeps them in plane.
  const circular = {
    hairpins: { location: LOCATIONS.hairpins },
    wishbone: { location: LOCATIONS.wishbone },
    'equal parallel bars': {
      location: {
        kind: 'four-bar',
        left: {
          upper: { axle: [-45, 430, 395], frame: [-645, 430, 405] },
          lower: { axle: [-45, 430, 262], frame: [-645, 430, 272] },
        },
        right: 'mirror',
      },
    },
  };

  test.each(Object.entries(circular))(
    '%s: a frame end on the aim axis does not turn the wheels',
    (_, over) => {
      const aim = findAim(frontEndOf(over));
      expect(aim.ok).toBe(true);
      if (!aim.ok) return;
      expectClose(aim.value.flatness, 0, 1e-6, 'flatness');
      for (const y of [300, 480, 560]) {
        const at = aimAtPlane(aim.value, 1, y) as Point;
        const steering = {
          ...SIDE_STEER,
          box: { ...SIDE_STEER.box, pitmanBall: at, sectorCentre: [at[0], at[1], at[2] + 140] },
        };
        const frontEnd = frontEndOf({ ...over, steering });
        const state = createState();
        for (const heave of [-75, -30, 20, 75]) {
          expect(solveFrontEnd(frontEnd, heave, 0, 0, state)).toBe('ok');
          // How far the driven spindle has turned on the axle.
          const turn = Math.atan2(state.work.turns[1]!, state.work.turns[0]!) / DEGREE;
          expectClose(turn, 0, 1e-6, `heave ${heave}, y ${y}`);
        }
      }
    },
  );

  test('on hairpins it is the pivot in side view; on a leaf the 3/4 point', () => {
    const onHairpins = findAim(frontEndOf());
    expect(
      onHairpins.ok && Math.hypot(onHairpins.value.point[0] + 890, onHairpins.value.point[2] - 335),
    ).toBeLessThan(1e-6);
    const leaf = {
      kind: 'parallel-leaf',
      left: { fixedEye: [500, 400, 330], seat: [0, 400, 330], shackleEye: [-500, 400, 330] },
      right: 'mirror',
    };
    const onLeaf = findAim(frontEndOf({ location: leaf }));
    expect(onLeaf.ok).toBe(true);
    // The seat only translates, on an arc of 3/4 of the half-leaf: so does the ball, its centre 375 ahead of it.
    if (onLeaf.ok) expectClose(onLeaf.value.point[0] - SIDE_STEER.dragLinkBall[0]!, 375, 1e-6);
  });

  test('the zero-slope line: a frame end anywhere on it gives no slope at ride height', () => {
    for (const over of [...Object.values(circular), { location: LOCATIONS['parallel-leaf'] }]) {
      const aim = findAim(frontEndOf(over));
      if (!aim.ok) throw new Error('no aim');
      const { ball, point } = aim.value;
      for (const share of [0.4, 0.7, 1.5]) {
        const at = [0, 1, 2].map((i) => ball[i]! + share * (point[i]! - ball[i]!)) as unknown as Point;
        const box = { ...SIDE_STEER.box, pitmanBall: at, sectorCentre: [at[0], at[1], at[2] + 140] };
        const frontEnd = frontEndOf({ ...over, steering: { ...SIDE_STEER, box } });
        const state = createState();
        const steer = (heave: number) => {
          solveFrontEnd(frontEnd, heave, 0, 0, state);
          return state.meanSteer / DEGREE;
        };
        expectClose((steer(0.5) - steer(-0.5)) / 1, 0, 1e-4, `share ${share}, degrees per mm`);
      }
    }
  });

  test('the rule of thumb: degrees are about 57 · heave · height error / (path radius · arm length)', () => {
    const state = createState();
    for (const error of [-12, -5, 5, 12]) {
      const box = {
        ...SIDE_STEER.box,
        pitmanBall: [-890, 500, 335 + error],
        sectorCentre: [-890, 500, 475 + error],
      };
      const frontEnd = frontEndOf({ steering: { ...SIDE_STEER, box } });
      const arm = Math.sqrt(frontEnd.dragLinkBall.radiusSquared);
      for (const heave of [-40, 25, 40]) {
        solveFrontEnd(frontEnd, heave, 0, 0, state);
        const turn = Math.abs(Math.atan2(state.work.turns[1]!, state.work.turns[0]!)) / DEGREE;
        const rule = (57 * Math.abs(heave * error)) / (890 * arm);
        expectClose(turn, rule, 0.1 * rule, `error ${error}, heave ${heave}`);
      }
    }
  });

  test('a straight path is said, and so is an axle without a pose', () => {
    const free = frontEndOf({
      location: { kind: 'hairpins', left: { framePivot: [0, 415, 330] }, right: 'mirror' },
    });
    expect(findAim(free)).toEqual({ ok: false, failure: 'no-pose' });
  });

  test('parallel and equal lateral bar and drag link give nearly none', () => {
    const frontEnd = frontEndOf({
      location: LOCATIONS['four-bar'],
      lateral: { kind: 'bar', axle: [-72, -570, 352], frame: [-72, 316, 362] },
      steering: CROSS_STEER,
    });
    const { worstBumpSteer } = summariseTravel(sweepTravel(frontEnd, 'heave', -75, 75, 31, 0));
    expect(worstBumpSteer).toBeLessThan(0.1 * DEGREE);
  });
});

describe('the best spot', () => {
  test.each(STEERED.filter(({ label }) => label.includes('i-beam')))(
    'is no worse than the aim or the drawing: $label',
    ({ over }) => {
      const frontEnd = frontEndOf(over);
      const travel = holdTravel(frontEnd);
      const aim = findAim(frontEnd, travel);
      if (!aim.ok) throw new Error(aim.failure);
      const best = findBestSpot(frontEnd, aim.value, travel);
      expect(best).toBeDefined();
      if (!best) return;
      expect(best.worstBumpSteer).toBeLessThanOrEqual(
        worstBumpSteerAt(travel, frontEnd.layout.steering.box.pitmanBall) + 1e-12,
      );
      // The value given is that of the whole front end with its ball there, by the ordinary sweep.
      const { steering } = frontEnd.layout;
      const moved = frontEndOf({
        ...over,
        steering: { ...steering, box: { ...steering.box, pitmanBall: best.point } },
      });
      const { worstBumpSteer } = summariseTravel(sweepTravel(moved, 'heave', -75, 75, 31, 0));
      expectClose(worstBumpSteer, best.worstBumpSteer, 1e-9, 'worst');
    },
  );
});

describe('the arcs on the board', () => {
  test('gap is what the drag link lacks: none at ride height, the difference of the two paths elsewhere', () => {
    const frontEnd = frontEndOf();
    const asked = ballPath(frontEnd);
    const allowed = linkArc(frontEnd);
    for (let i = 0; i < asked.heave.length; i += 5) {
      const apart = Math.hypot(
        asked.points[3 * i]! - allowed.points[3 * i]!,
        asked.points[3 * i + 1]! - allowed.points[3 * i + 1]!,
        asked.points[3 * i + 2]! - allowed.points[3 * i + 2]!,
      );
      expectClose(
        Math.abs(pathGap(frontEnd, asked.heave[i]!) as number),
        apart,
        1e-7,
        `heave ${asked.heave[i]}`,
      );
    }
    expectClose(pathGap(frontEnd, 0) as number, 0, 1e-9);
    expect(pathGap(frontEnd, 75)).not.toBe(0);
  });
});
