import { levenbergMarquardt } from 'ml-levenberg-marquardt';
import { describe, expect, test } from 'vitest';
import type { Point } from '../../shared-math/geometry/points.ts';
import {
  ballCircle,
  closeLink,
  createState,
  prepareFrontEnd,
  solveFrontEnd,
} from '../../shared-math/linkage/index.ts';
import { DEGREE, expectClose } from '../support/close.ts';
import { layoutOf } from '../support/layouts.ts';
import { rockerTurns } from './scripts/spatial-link.ts';

interface Arms {
  readonly p1: Point;
  readonly u1: Point;
  readonly a0: Point;
  readonly p2: Point;
  readonly u2: Point;
  readonly b0: Point;
  readonly length: number;
}

function ballAt(through: Point, axis: Point, drawn: Point, turn: number): Point {
  const size = Math.hypot(...axis);
  const circle = ballCircle(through, [axis[0] / size, axis[1] / size, axis[2] / size], drawn);
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  return [0, 1, 2].map(
    (i) => (circle.base[i] as number) + (circle.across[i] as number) * c + (circle.onward[i] as number) * s,
  ) as unknown as Point;
}

/** Both roots in degrees, or undefined if it cannot be assembled. */
function follow(arms: Arms, turn: number): number[] | undefined {
  const size = Math.hypot(...arms.u2);
  const circle = ballCircle(arms.p2, [arms.u2[0] / size, arms.u2[1] / size, arms.u2[2] / size], arms.b0);
  const ball = ballAt(arms.p1, arms.u1, arms.a0, turn);
  const out = new Float64Array(3);
  const roots: number[] = [];
  for (const branch of [1, -1] as const) {
    const v = [0, 1, 2].map((i) => (ball[i] as number) - (circle.base[i] as number)) as [
      number,
      number,
      number,
    ];
    if (!closeLink(circle, v[0], v[1], v[2], arms.length, branch, out, 0)) return undefined;
    roots.push(Math.atan2(out[1] as number, out[0] as number) / DEGREE);
  }
  return roots;
}

const SKEW: Arms = {
  p1: [0, 0, 0],
  u1: [0, 0, 1],
  a0: [50, 0, 0],
  p2: [150, 40, 20],
  u2: [1, 0, 0],
  b0: [150, 40, 120],
  length: 160,
};

describe('the spatial link: two arms on skew axes joined by a rod with balls', () => {
  // By scripts/spatial-link.ts, a bracketed search for the roots; no published numeric example was found.
  test.each([
    [0, 2.831, -129.7009],
    [-30, 18.8285, -164.623],
    [-15, 10.242, -148.851],
    [15, -1.326, -105.736],
    [30, 7.2342, -80.974],
    [45, 47.2185, -73.3669],
    [60, 105.5453, -86.7994],
  ])('skew axes, input at %d°', (turn, one, other) => {
    const roots = follow(SKEW, turn * DEGREE) as number[];
    const scripted = rockerTurns({ ...SKEW, turn: turn * DEGREE });
    expect(scripted).toHaveLength(2);
    for (const root of scripted)
      expectClose(Math.min(...roots.map((mine) => Math.abs(mine - root / DEGREE))), 0, 1e-7, 'script');
    for (const expected of [one, other])
      expectClose(Math.min(...roots.map((root) => Math.abs(root - expected))), 0, 1e-3, `root ${expected}`);
  });

  test('a rod too long cannot be assembled, and that is the answer', () => {
    expect(follow({ ...SKEW, length: 200 }, 0)).toBeUndefined();
  });

  test('a registry optimiser on the bare distance finds the same turns', () => {
    // Outside check: ml-levenberg-marquardt on | |A - B(t)| - L | alone.
    for (const turn of [-30, 0, 30, 60]) {
      const ball = ballAt(SKEW.p1, SKEW.u1, SKEW.a0, turn * DEGREE);
      for (const root of follow(SKEW, turn * DEGREE) as number[]) {
        const result = levenbergMarquardt(
          { x: [0, 1], y: [0, 0] },
          (p: number[]) => () => {
            const b = ballAt(SKEW.p2, SKEW.u2, SKEW.b0, p[0] as number);
            return Math.hypot(ball[0] - b[0], ball[1] - b[1], ball[2] - b[2]) - SKEW.length;
          },
          {
            initialValues: [root * DEGREE + 0.03],
            damping: 1e-8,
            gradientDifference: 1e-7,
            centralDifference: true,
            maxIterations: 40,
            errorTolerance: 0,
            improvementThreshold: 0,
          },
        );
        expectClose(result.parameterValues[0] as number, root * DEGREE, 1e-7, `input ${turn}`);
      }
    }
  });

  test('a side-steer front end at ride height, in inches as first computed', () => {
    // Sector axis y through (-30, 19, 20), arm 6 in down; left kingpin through (0, 25, 12), caster 6, inclination 8
    // degrees; arm ball (0, 19.5, 14). Turned through the whole front end, beside scripts/spatial-link.ts.
    const inch = ([x, y, z]: Point): Point => [x * 25.4, y * 25.4, z * 25.4];
    const [tan6, tan8] = [Math.tan(6 * DEGREE), Math.tan(8 * DEGREE)];
    const half = {
      kingpinTop: inch([-2 * tan6, 25 - 2 * tan8, 14]),
      kingpinBottom: inch([2 * tan6, 25 + 2 * tan8, 10]),
      wheelCentre: inch([0, 27, 12]),
      camber: 0,
      toeIn: 0,
      tieRodBall: inch([-6, 24, 11]),
    };
    const frontEnd = prepareFrontEnd(
      layoutOf({
        axle: { beam: 'i-beam', left: half, right: 'mirror' },
        steering: {
          dragLinkTo: 'left',
          dragLinkBall: inch([0, 19.5, 14]),
          box: {
            sectorCentre: inch([-30, 19, 20]),
            sectorAxis: [0, 1, 0],
            pitmanBall: inch([-30, 19, 14]),
            ratio: 16,
            sectorTravel: 35,
            assist: 'manual',
          },
        },
      }),
    );
    expectClose(frontEnd.dragLinkLength / 25.4, 30.004166, 1e-6, 'drag link');
    const expected = [35.8918, 23.6595, 11.7286, 0, -11.6478, -23.3959, -35.5641];
    const state = createState();
    for (let i = 0; i < 7; i += 1) {
      const sector = (i - 3) * 10 * DEGREE;
      expect(solveFrontEnd(frontEnd, 0, 0, sector * 16, state)).toBe('ok');
      const turn = Math.atan2(state.work.turns[1] as number, state.work.turns[0] as number);
      expectClose(turn / DEGREE, expected[i] as number, 1e-3, `sector ${(i - 3) * 10}°`);
      const scripted = rockerTurns({
        p1: [-30, 19, 20],
        u1: [0, 1, 0],
        a0: [-30, 19, 14],
        p2: [0, 25, 12],
        u2: [-tan6, -tan8, 1],
        b0: [0, 19.5, 14],
        length: Math.hypot(30, 0.5),
        turn: sector,
      });
      expectClose(Math.min(...scripted.map((root) => Math.abs(root - turn))), 0, 1e-9, 'script');
    }
  });
});
