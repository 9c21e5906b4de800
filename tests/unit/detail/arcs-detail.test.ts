import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { holdTravel } from '../../../shared-math/aim/index.ts';
import {
  arcsDetail,
  clippedToCircle,
  type DetailCircle,
  detailScaleWords,
  ENLARGEMENTS,
  enlargementFor,
  isWithin,
  judgedView,
  paperScaleFor,
  tickHeaves,
} from '../../../shared-math/detail/index.ts';
import { project, type ViewPoint } from '../../../shared-math/drawing/index.ts';
import type { Point } from '../../../shared-math/geometry/points.ts';
import { expectClose } from '../../support/close.ts';
import {
  COMBINATIONS,
  CROSS_STEER,
  frontEndOf,
  LATERALS,
  LOCATIONS,
  layoutOf,
} from '../../support/layouts.ts';
import { rawPlace, solveByRegistry } from '../../support/raw-equations.ts';

const apart = (a: Point, b: Point) => Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);

describe('the gap at the ticks', () => {
  // Outside check: the axle posed by ml-levenberg-marquardt on the links' equations written anew (raw-equations.ts), the
  // ball carried by full rotation matrices, and the link's length by the plain distance.
  test.each(COMBINATIONS.filter((_, i) => i % 3 === 0))(
    '$label: as the raw link equations have it',
    ({ over }) => {
      const frontEnd = frontEndOf(over);
      const layout = layoutOf(over);
      const { dragLinkBall, dragLinkTo, box } = layout.steering;
      const length = apart(dragLinkBall, box.pitmanBall);
      const detail = arcsDetail(holdTravel(frontEnd), 'mm');
      expect(detail.ticks.length).toBeGreaterThan(4);
      for (const { heave, gap, asked, allowed } of detail.ticks) {
        const pose = solveByRegistry(layout, heave, 0);
        const ball = rawPlace(layout, heave, 0, pose, dragLinkTo, dragLinkBall);
        expectClose(gap, apart(ball, box.pitmanBall) - length, 5e-4, `gap at ${heave}`);
        const [right, down] = project(detail.view, ball);
        expectClose(asked[0], right, 5e-4, `asked at ${heave}`);
        expectClose(asked[1], down, 5e-4, `asked at ${heave}`);
        // What the link allows lies at its length from the pitman ball, as far from the ball as the gap is long.
        const seen = Math.hypot(asked[0] - allowed[0], asked[1] - allowed[1]);
        expect(seen).toBeLessThanOrEqual(Math.abs(gap) + 1e-9);
      }
    },
  );

  test('is positive where the link is too short to keep the wheels straight', () => {
    // A pitman ball far below the axle's own arc: in bump the ball goes away from it.
    const steering = {
      dragLinkTo: 'left',
      dragLinkBall: [0, 484, 395],
      box: {
        sectorCentre: [-800, 500, 250],
        sectorAxis: [0, -1, 0],
        pitmanBall: [-800, 500, 110],
        ratio: 16,
        sectorTravel: 35,
        assist: 'manual',
      },
    };
    const { ticks } = arcsDetail(holdTravel(frontEndOf({ steering })), 'mm');
    expect(ticks.at(-1)?.gap).toBeGreaterThan(5);
    expect(ticks.at(0)?.gap).toBeLessThan(-5);
    expect(ticks.find(({ heave }) => heave === 0)?.gap).toBeCloseTo(0, 9);
  });

  test('is looked at where it is judged, round the ball as drawn', () => {
    const cross = { location: LOCATIONS['four-bar'], lateral: LATERALS.bar, steering: CROSS_STEER };
    for (const [over, view] of [
      [{}, 'side'],
      [cross, 'front'],
    ] as const) {
      const frontEnd = frontEndOf(over);
      const detail = arcsDetail(holdTravel(frontEnd), 'in');
      expect(judgedView(frontEnd)).toBe(view);
      expect(detail.view).toBe(view);
      expect(detail.circle.centre).toEqual(project(view, frontEnd.layout.steering.dragLinkBall));
      expect(detail.ticks.every(({ within }) => within)).toBe(true);
      for (const place of detail.asked) expect(isWithin(detail.circle, place)).toBe(true);
    }
  });
});

describe('the heaves of the ticks', () => {
  test('are the ends of the travel, ride height, and whole inches or 25 mm between them', () => {
    expect(tickHeaves(76.2, 76.2, 'in').map((mm) => Math.round((1e9 * mm) / 25.4) / 1e9)).toEqual([
      -3, -2, -1, 0, 1, 2, 3,
    ]);
    expect(tickHeaves(75, 75, 'mm')).toEqual([-75, -50, -25, 0, 25, 50, 75]);
    // A round one beside an end gives way to it, ride height never does.
    expect(tickHeaves(78, 60, 'mm')).toEqual([-78, -50, -25, 0, 25, 60]);
    expect(tickHeaves(4, 60, 'mm')).toEqual([-4, 0, 25, 60]);
    expect(tickHeaves(0, 30, 'mm')).toEqual([0, 30]);
    expect(tickHeaves(150, 150, 'mm')).toEqual([-150, -100, -50, 0, 50, 100, 150]);
  });
});

describe('the scale of a detail', () => {
  test('is an enlarging scale of ISO 5455', () => {
    // ISO 5455:1979, clause 4, from memory: 2:1, 5:1, 10:1, 20:1, 50:1.
    const standard = [2, 5, 10, 20, 50];
    for (const times of ENLARGEMENTS) expect(standard).toContain(times);
    expect([10, 5, 2].map(detailScaleWords)).toEqual(['10 : 1', '5 : 1', '2 : 1']);
    expect([1, 0.5, 0.2, 0.05].map(detailScaleWords)).toEqual(['1 : 1', '1 : 2', '1 : 5', '1 : 20']);
  });

  test('is the largest whose circle has room', () => {
    expect(enlargementFor(10, 200)).toBe(10);
    expect(enlargementFor(10, 199)).toBe(5);
    expect(enlargementFor(10, 99)).toBe(2);
    expect(enlargementFor(10, 5)).toBe(2);
    expect(paperScaleFor(20, 180, { width: 90, height: 185 })).toBe(1);
    expect(paperScaleFor(20, 180, { width: 90, height: 179 })).toBe(0.5);
    expect(paperScaleFor(100, 180, { width: 90, height: 185 })).toBe(0.5);
  });
});

describe('what a circle shows of a line', () => {
  const circle: DetailCircle = { centre: [3, -2], radius: 5 };
  const place = fc.tuple(
    fc.double({ min: -12, max: 12, noNaN: true }),
    fc.double({ min: -12, max: 12, noNaN: true }),
  );

  test('is all of it that lies within, and nothing else', () => {
    fc.assert(
      fc.property(fc.array(place, { minLength: 2, maxLength: 6 }), (line) => {
        const runs = clippedToCircle(circle, line as ViewPoint[]);
        for (const run of runs)
          for (const [x, y] of run) expect(Math.hypot(x - 3, y + 2)).toBeLessThanOrEqual(5 + 1e-6);
        const length = (places: readonly ViewPoint[]) =>
          places
            .slice(1)
            .reduce((sum, [x, y], i) => sum + Math.hypot(x - places[i]![0], y - places[i]![1]), 0);
        // Outside check: the length within by stepping along the line.
        let within = 0;
        for (let i = 1; i < line.length; i += 1) {
          const [a, b] = [line[i - 1]!, line[i]!];
          const count = 2000;
          for (let k = 0; k < count; k += 1) {
            const t = (k + 0.5) / count;
            const inside = Math.hypot(a[0] + t * (b[0] - a[0]) - 3, a[1] + t * (b[1] - a[1]) + 2) < 5;
            if (inside) within += Math.hypot(b[0] - a[0], b[1] - a[1]) / count;
          }
        }
        expect(Math.abs(runs.reduce((sum, run) => sum + length(run), 0) - within)).toBeLessThan(0.1);
      }),
      { numRuns: 60 },
    );
  });
});
