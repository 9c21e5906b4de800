import type { PhotoSpot } from './photo-places.ts';

/**
 * What is unknown of a camera, in this order: the logarithm of its focal length in px, a turn (rotation vector, rad, after
 * `turn`), its place (three), and two radial terms of its lens.
 */
export const CAMERA_UNKNOWNS = 9;
/** A spot, and the derivatives of its right and of its down by the camera's unknowns and then by the point's place. */
export const SEEN_SIZE = 2 + 2 * (CAMERA_UNKNOWNS + 3);

/** What is known of a camera: where its turn starts from (by rows, world to camera: right, down, ahead) and its picture. */
export interface CameraFrame {
  readonly turn: Float64Array;
  readonly size: PhotoSpot;
}

const TURNED = new Float64Array(9);
const LEFT = new Float64Array(9);

/**
 * exp([w]×) and the matrix J for which exp([w + d]×) = exp([J d]×) exp([w]×) at first order. With θ = |w| and K = [w]×:
 * I + (sin θ / θ) K + ((1 - cos θ) / θ²) K², and I + ((1 - cos θ) / θ²) K + ((θ - sin θ) / θ³) K².
 */
function turnBy(wx: number, wy: number, wz: number): void {
  const square = wx * wx + wy * wy + wz * wz;
  const angle = Math.sqrt(square);
  const small = angle < 1e-4;
  const a = small ? 1 - square / 6 : Math.sin(angle) / angle;
  const b = small ? 0.5 - square / 24 : (1 - Math.cos(angle)) / square;
  const c = small ? 1 / 6 - square / 120 : (angle - Math.sin(angle)) / (square * angle);
  const w = [wx, wy, wz] as const;
  for (let i = 0; i < 3; i += 1)
    for (let j = 0; j < 3; j += 1) {
      const twice = (w[i] as number) * (w[j] as number) - (i === j ? square : 0);
      // [w]× is the row i, column j of -w_k for (i, j, k) in turn.
      const once = i === j ? 0 : (j - i + 3) % 3 === 1 ? -(w[3 - i - j] as number) : (w[3 - i - j] as number);
      const one = i === j ? 1 : 0;
      TURNED[3 * i + j] = one + a * once + b * twice;
      LEFT[3 * i + j] = one + b * once + c * twice;
    }
}

/**
 * exp([w]×) and what it changes by at first order, both by rows (see `turnBy`); good until it is called again.
 */
export function turning(wx: number, wy: number, wz: number): { turned: Float64Array; left: Float64Array } {
  turnBy(wx, wy, wz);
  return { turned: TURNED, left: LEFT };
}

/** The rotation, by rows, from the world to the camera. */
export function turnOf(unknowns: Float64Array, offset: number, { turn }: CameraFrame): Float64Array {
  turnBy(unknowns[offset + 1] as number, unknowns[offset + 2] as number, unknowns[offset + 3] as number);
  const out = new Float64Array(9);
  for (let i = 0; i < 3; i += 1)
    for (let j = 0; j < 3; j += 1)
      for (let k = 0; k < 3; k += 1)
        out[3 * i + j] =
          (out[3 * i + j] as number) + (TURNED[3 * i + k] as number) * (turn[3 * k + j] as number);
  return out;
}

/** Radius in the picture of one without a lens's bending: r (1 + k1 r² + k2 r⁴) = target, by Newton's steps; half diagonals. */
function bentRadius(target: number, k1: number, k2: number): number {
  let r = target / (1 + k1 * Math.min(target, 1) ** 2);
  for (let step = 0; step < 20; step += 1) {
    const square = r * r;
    const slope = 1 + square * (3 * k1 + 5 * k2 * square);
    if (!(slope > 0.05)) break;
    const change = (r * (1 + square * (k1 + k2 * square)) - target) / slope;
    r -= change;
    if (Math.abs(change) < 1e-14) break;
  }
  return r;
}

/**
 * Writes where a camera sees a point, and how that moves with the camera and the point.
 *
 * With R = exp([w]×) R₀ and q = R (X - C): the spot without the lens is m + f (q₀, q₁) / q₂; the lens moves (u, v), px from
 * the middle m, to where (u, v)(1 + k₁ r² + k₂ r⁴) is that, r in half diagonals. Turning adds -[q]× J dw to q, moving
 * the camera -R dC. The lens is given from bent to straight, so its derivatives are those of the inverse: D⁻¹ of the
 * straight spot's, and -D⁻¹ (u, v) r² or r⁴ by the terms.
 * Frame:    the world's and the camera's (right, down, ahead). Units: px, rad, those of the world.
 * Shapes:   `unknowns` CAMERA_UNKNOWNS from `offset`; `points` three from `point`; `seen` SEEN_SIZE.
 * Outcomes: false, and nothing written, for a point that is not before the camera.
 * Source:   the pinhole camera of R. Hartley and A. Zisserman, Multiple View Geometry in Computer Vision, 2nd ed. 2004,
 *           chapter 6, from memory; derivatives by hand.
 * Checked:  tests/unit/trace/camera-model.test.ts (an independent camera; differences).
 */
export function see(
  unknowns: Float64Array,
  offset: number,
  { turn, size }: CameraFrame,
  points: Float64Array,
  point: number,
  seen: Float64Array,
): boolean {
  turnBy(unknowns[offset + 1] as number, unknowns[offset + 2] as number, unknowns[offset + 3] as number);
  const focal = Math.exp(unknowns[offset] as number);
  const k1 = unknowns[offset + 7] as number;
  const k2 = unknowns[offset + 8] as number;
  const px = (points[point] as number) - (unknowns[offset + 4] as number);
  const py = (points[point + 1] as number) - (unknowns[offset + 5] as number);
  const pz = (points[point + 2] as number) - (unknowns[offset + 6] as number);
  const a0 = (turn[0] as number) * px + (turn[1] as number) * py + (turn[2] as number) * pz;
  const a1 = (turn[3] as number) * px + (turn[4] as number) * py + (turn[5] as number) * pz;
  const a2 = (turn[6] as number) * px + (turn[7] as number) * py + (turn[8] as number) * pz;
  const q0 = (TURNED[0] as number) * a0 + (TURNED[1] as number) * a1 + (TURNED[2] as number) * a2;
  const q1 = (TURNED[3] as number) * a0 + (TURNED[4] as number) * a1 + (TURNED[5] as number) * a2;
  const q2 = (TURNED[6] as number) * a0 + (TURNED[7] as number) * a1 + (TURNED[8] as number) * a2;
  if (!(q2 > 1e-6 * Math.sqrt(q0 * q0 + q1 * q1 + q2 * q2)) || !Number.isFinite(focal)) return false;
  const x = q0 / q2;
  const y = q1 / q2;
  const half = Math.hypot(size[0], size[1]) / 2;
  const straight = (focal * Math.hypot(x, y)) / half;
  const r = straight > 0 ? bentRadius(straight, k1, k2) : 0;
  const share = straight > 0 ? r / straight : 1;
  const u = focal * x * share;
  const v = focal * y * share;
  const square = r * r;
  const s = 1 + square * (k1 + k2 * square);
  const m = (2 * (k1 + 2 * k2 * square)) / half ** 2;
  const d00 = s + m * u * u;
  const d01 = m * u * v;
  const d11 = s + m * v * v;
  const det = d00 * d11 - d01 * d01;
  if (!(det > 1e-3)) return false;
  seen[0] = size[0] / 2 + u;
  seen[1] = size[1] / 2 + v;
  const across = 2;
  const down = 2 + CAMERA_UNKNOWNS + 3;
  const write = (column: number, du: number, dv: number) => {
    seen[across + column] = (d11 * du - d01 * dv) / det;
    seen[down + column] = (d00 * dv - d01 * du) / det;
  };
  const f = focal / q2;
  write(0, focal * x, focal * y);
  for (let j = 0; j < 3; j += 1) {
    const t0 = LEFT[j] as number;
    const t1 = LEFT[3 + j] as number;
    const t2 = LEFT[6 + j] as number;
    // Column j of J, crossed with q.
    const e0 = t1 * q2 - t2 * q1;
    const e1 = t2 * q0 - t0 * q2;
    const e2 = t0 * q1 - t1 * q0;
    write(1 + j, f * (e0 - x * e2), f * (e1 - y * e2));
    let g0 = 0;
    let g1 = 0;
    let g2 = 0;
    for (let k = 0; k < 3; k += 1) {
      const before = turn[3 * k + j] as number;
      g0 += (TURNED[k] as number) * before;
      g1 += (TURNED[3 + k] as number) * before;
      g2 += (TURNED[6 + k] as number) * before;
    }
    const du = f * (g0 - x * g2);
    const dv = f * (g1 - y * g2);
    write(4 + j, -du, -dv);
    write(CAMERA_UNKNOWNS + j, du, dv);
  }
  write(7, -u * square, -v * square);
  write(8, -u * square * square, -v * square * square);
  return true;
}
