import { describe, expect, test } from 'vitest';
import { ballCircle, closeLink, drawnBranch } from '../../shared-math/linkage/index.ts';
import { DEGREE, expectClose } from '../support/close.ts';
import { planarRocker } from '../support/planar-constraints.ts';
import { fourBar } from './scripts/four-bar.ts';

/** A planar four-bar: crank a at the origin, coupler b, rocker c on a pivot at (d, 0). Degrees. */
function rocker(a: number, b: number, c: number, d: number, crank: number, branch: 1 | -1) {
  const circle = ballCircle([d, 0, 0], [0, 0, 1], [d + c, 0, 0]);
  const x = a * Math.cos(crank * DEGREE);
  const y = a * Math.sin(crank * DEGREE);
  const out = new Float64Array(3);
  const reached = closeLink(circle, x - circle.base[0], y, 0, b, branch, out, 0);
  const angle = Math.atan2(out[1] as number, out[0] as number);
  const coupler = Math.atan2(c * Math.sin(angle) - y, d + c * Math.cos(angle) - x);
  return { reached, rocker: angle / DEGREE, coupler: coupler / DEGREE, reach: out[2] as number };
}

// Norton, Design of Machinery, Example 4-1 (printed 20.298, 57.33, -60.98, -98.01) and Table P4-1 rows a, c, e; the
// 30 degree case is a public exercise file of Example 4.1; the 1-2-3-4 m case a Freudenstein exercise. Values from
// memory of the book, recomputed by scripts/four-bar.ts.
const CASES = [
  {
    a: 40,
    b: 120,
    c: 80,
    d: 100,
    at: 40,
    open: [20.2979, 57.3249],
    crossed: [-60.978, -98.005],
    tolerance: 1e-3,
  },
  {
    a: 40,
    b: 120,
    c: 80,
    d: 100,
    at: 30,
    open: [22.409, 55.2678],
    crossed: [-56.4375, -89.2962],
    tolerance: 1e-3,
  },
  { a: 2, b: 7, c: 9, d: 6, at: 30, open: [88.837, 117.286], crossed: [-115.211, -143.66], tolerance: 1e-2 },
  { a: 10, b: 6, c: 8, d: 3, at: 45, open: [-53.132, 16.491], crossed: [173.271, 103.648], tolerance: 1e-2 },
  { a: 5, b: 8, c: 6, d: 8, at: 75, open: [7.497, 78.212], crossed: [-79.021, -149.736], tolerance: 1e-2 },
  { a: 1, b: 2, c: 3, d: 4, at: 40, open: [52.322, 132.106], crossed: [-74.806, -154.59], tolerance: 1e-2 },
] as const;

describe('the link closure on the textbook four-bar', () => {
  test.each(CASES)('links $a, $b, $c, $d at $at°', ({ a, b, c, d, at, open, crossed, tolerance }) => {
    const found = ([1, -1] as const).map((branch) => rocker(a, b, c, d, at, branch));
    const scripted = fourBar(a, b, c, d, at * DEGREE);
    for (const { rocker: mine, coupler } of found) {
      const same = scripted.find(([angle]) => Math.abs(angle / DEGREE - mine) < 1e-3);
      expectClose(mine, (same?.[0] ?? Number.NaN) / DEGREE, 1e-9, 'script, rocker');
      expectClose(coupler, (same?.[1] ?? Number.NaN) / DEGREE, 1e-9, 'script, coupler');
    }
    for (const [coupler, angle] of [open, crossed]) {
      const match = found.find((entry) => Math.abs(entry.rocker - angle) < 1);
      expect(match, `a branch near ${angle}`).toBeDefined();
      expectClose(match?.rocker ?? Number.NaN, angle, tolerance, 'rocker');
      expectClose(match?.coupler ?? Number.NaN, coupler, tolerance, 'coupler');
    }
  });

  test('a geometric constraint solver from the registry finds the same rocker', async () => {
    // Outside check: @salusoft89/planegcs (a planar constraint solver) on lengths alone, started near the open branch.
    for (const at of [20, 40, 75, 110]) {
      const mine = rocker(40, 120, 80, 100, at, 1);
      const other = await planarRocker(40, 120, 80, 100, at * DEGREE, mine.rocker * DEGREE + 0.1);
      expectClose(mine.rocker * DEGREE, other, 1e-9, `crank ${at}`);
    }
  });

  test('transmission angle of Example 4-1 (Norton, ch. 2 to 4; from memory, recomputed)', () => {
    const { rocker: four, coupler } = rocker(40, 120, 80, 100, 40, 1);
    expectClose(Math.abs(four - coupler), 37.027, 1e-3);
  });

  test('just within reach closes, just beyond is told, and at the very end nothing is lost', () => {
    // Crank and coupler stretched out reach the rocker's circle only so far: links 40, 120, rocker 30, ground 100.
    const end = 130;
    const circle = ballCircle([0, 0, 0], [0, 0, 1], [30, 0, 0]);
    const out = new Float64Array(3);
    expect(closeLink(circle, end, 0, 0, 100, 1, out, 0)).toBe(true);
    expectClose(out[0] as number, 1, 1e-12);
    expect(closeLink(circle, end + 1e-6, 0, 0, 100, 1, out, 0)).toBe(false);
    expect(out[2]).toBeGreaterThan(1);
    expect(closeLink(circle, end - 1e-6, 0, 0, 100, 1, out, 0)).toBe(true);
    // A point on the axis itself can be reached by no turn but the right length, and then by any.
    expect(closeLink(circle, 0, 0, 0, 50, 1, out, 0)).toBe(false);
    expect(out[2]).toBe(Number.POSITIVE_INFINITY);
    expect(Number.isNaN(out[2])).toBe(false);
  });

  test('the drawn branch is the one that contains no turn', () => {
    for (const [x, y] of [
      [100, 60],
      [100, -60],
      [-40, 70],
      [-20, -90],
    ] as const) {
      const circle = ballCircle([0, 0, 0], [0, 0, 1], [30, 0, 0]);
      const out = new Float64Array(3);
      const length = Math.hypot(x - 30, y);
      closeLink(circle, x, y, 0, length, drawnBranch(circle, [x, y, 0]), out, 0);
      expectClose(out[0] as number, 1, 1e-12);
      expectClose(out[1] as number, 0, 1e-12);
    }
  });
});
