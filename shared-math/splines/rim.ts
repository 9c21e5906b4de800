import { solveSymmetric } from '../solve/small-symmetric.ts';

/** A circle marked on a picture, pixels from its top left corner, x right and y down. */
export interface MarkedCircle {
  readonly x: number;
  readonly y: number;
  readonly radius: number;
}

/**
 * The rim of an end as a picture shows it: a circle seen off square is an ellipse. The shaft's angle t, clockwise as seen,
 * is at (x + xx cos t + xy sin t, y + xy cos t + yy sin t): a circle stretched along two axes at right angles, never
 * turned. Pixels.
 */
export interface RimEllipse {
  readonly x: number;
  readonly y: number;
  readonly xx: number;
  readonly xy: number;
  readonly yy: number;
}

type Spot = readonly [x: number, y: number];

/** The rim of an end seen square on: a circle. Pixels. */
export function circularRim({ x, y, radius }: MarkedCircle): RimEllipse {
  return { x, y, xx: radius, xy: 0, yy: radius };
}

/** Half of the rim's mean width. Pixels. */
export function rimRadius({ xx, yy }: RimEllipse): number {
  return (xx + yy) / 2;
}

/** How far the rim's longer half axis is over its mean, as a share: 0 for a circle, (1 - cos t)/(1 + cos t) seen t off square. */
export function rimStretch(rim: RimEllipse): number {
  return Math.hypot((rim.xx - rim.yy) / 2, rim.xy) / rimRadius(rim);
}

/** Half axes of the rim, and where the longer one points, rad from +x toward +y. Pixels. */
export function rimAxes(rim: RimEllipse): {
  readonly longer: number;
  readonly shorter: number;
  readonly turn: number;
} {
  const stretch = rimStretch(rim) * rimRadius(rim);
  return {
    longer: rimRadius(rim) + stretch,
    shorter: rimRadius(rim) - stretch,
    turn: Math.atan2(rim.xy, (rim.xx - rim.yy) / 2) / 2,
  };
}

/** The rim at a stretch along x and one along the diagonal, shares of its mean half width. */
export function stretchedRim(
  x: number,
  y: number,
  radius: number,
  along: number,
  diagonal: number,
): RimEllipse {
  return { x, y, xx: radius * (1 + along), xy: radius * diagonal, yy: radius * (1 - along) };
}

/**
 * What a hand's click, a marked centre and a camera's hold are commonly off by, as shares of the radius: one standard
 * deviation each; the hold as the stretch of the rim's square, 0.035 seen 15° off. Own choice, no published source.
 */
const CLICK = 0.0125;
const CENTRE = 0.015;
const HOLD = 0.06;

/**
 * The ellipse of a rim through clicks on it, about a marked centre.
 *
 * With (u, v) a click less the marked centre, in mean radii, an ellipse near the unit circle holds
 * s (u² + v²) + a (u² - v²) + 2 b u v - 2 (g u + h v) = 1, which is linear in its five unknowns: least squares, each
 * equation off by twice the click, with a, b drawn weakly to 0 as a camera is held nearly square, and the centre (g, h)
 * to its mark. So one click gives a circle, and three near one another no wild ellipse. The rim is the inverse root of the form's
 * matrix.
 * Units:    pixels.
 * Outcomes: nothing without a click, or where one stands near the centre.
 * Source:   own derivation.
 * Checked:  tests/unit/spline-rim.test.ts.
 */
export function rimThrough(centre: Spot, clicks: readonly Spot[]): RimEllipse | undefined {
  const away = clicks.map(([x, y]) => [x - centre[0], y - centre[1]] as const);
  const mean = away.reduce((sum, [x, y]) => sum + Math.hypot(x, y), 0) / away.length;
  if (!(mean > 0) || away.some(([x, y]) => Math.hypot(x, y) < 0.2 * mean)) return undefined;
  const rows = away.map(([x, y]) => {
    const [u, v] = [x / mean, y / mean];
    return [u * u + v * v, u * u - v * v, 2 * u * v, -2 * u, -2 * v];
  });
  const pulls = [0, (2 * CLICK) / HOLD, (2 * CLICK) / HOLD, (2 * CLICK) / CENTRE, (2 * CLICK) / CENTRE];
  const normal = new Float64Array(15);
  const gradient = new Float64Array(5);
  for (let i = 0, at = 0; i < 5; i += 1) {
    for (let j = 0; j <= i; j += 1, at += 1)
      normal[at] = rows.reduce((sum, row) => sum + (row[i] as number) * (row[j] as number), 0);
    normal[at - 1] = (normal[at - 1] as number) + (pulls[i] as number) ** 2;
    gradient[i] = -rows.reduce((sum, row) => sum + (row[i] as number), 0);
  }
  const found = new Float64Array(5);
  if (!(solveSymmetric(5, normal, gradient, 0, new Float64Array(15), found) > 0)) return undefined;
  const [size, along, across, g, h] = found as unknown as [number, number, number, number, number];
  const off = Math.hypot(along, across);
  if (!(size - off > 0.3 * size)) return undefined;
  // Completed square: about the centre c = M⁻¹ (g, h) the form is 1 + (g, h)·c.
  const whole = size * size - off * off;
  const dx = ((size - along) * g - across * h) / whole;
  const dy = ((size + along) * h - across * g) / whole;
  const level = 1 + g * dx + h * dy;
  const short = mean * Math.sqrt(level / (size + off));
  const long = mean * Math.sqrt(level / (size - off));
  const turn = Math.atan2(across, along);
  const half = (short - long) / 2;
  return {
    x: centre[0] + mean * dx,
    y: centre[1] + mean * dy,
    xx: (short + long) / 2 + half * Math.cos(turn),
    xy: half * Math.sin(turn),
    yy: (short + long) / 2 - half * Math.cos(turn),
  };
}
