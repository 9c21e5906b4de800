import type { Point } from '../geometry/points.ts';
import { dot } from '../geometry/vectors.ts';
import type { BallCircle, FrontEnd } from '../linkage/index.ts';
import { REACH_SLACK } from '../tolerances.ts';
import type { HeldTravel } from './held-travel.ts';

/** Why a place of the map has no figure, or stands under a hatch. From HIT_FROM on, HIT_FROM + n is the n-th hit. */
export const PLACE_OK = 0;
export const PLACE_DRAG_LINK = 1;
export const PLACE_TIE_ROD = 2;
export const PLACE_HIT_FROM = 8;

/** Numbers for each pose; where each group of them begins. */
const STRIDE = 33;
const DRAG_A = 0;
const DRAG_B = 4;
const DRAG_C = 8;
const TIE_A = 12;
const TIE_B = 15;
const TIE_C = 18;
const DRIVEN_X = 21;
const DRIVEN_Y = 24;
const FOLLOWER_X = 27;
const FOLLOWER_Y = 30;

/** cos² may pass R² by as much as |C|/R may pass 1 in `closeLink`. */
const SLACK = (1 + REACH_SLACK) * (1 + REACH_SLACK);

/**
 * The held travel made ready for any number of frame ends: STRIDE numbers for each pose, in which everything that a
 * closure needs is affine, as `fillRow` derives.
 */
export interface MapKernel {
  readonly poses: number;
  readonly table: Float64Array;
  /** The branch of the drag link: that of the sign of these, (x, y, z, 1) · branch. */
  readonly branch: Float64Array;
  /** +1 or -1: the branch of the tie rod. */
  readonly tieRodBranch: number;
}

/** Where each half's turned axes begin in a pose's frame. */
const LEFT_AXES = 3;
const RIGHT_AXES = 12;

/** Row `row` of R times p, for a half's turned axes. */
function toCar(frame: Float64Array, axes: number, row: number, p: Point): number {
  const i = axes + 3 * row;
  return (frame[i] as number) * p[0] + (frame[i + 1] as number) * p[1] + (frame[i + 2] as number) * p[2];
}

/** Writes what the drag link's closure needs of the steering-arm ball's circle and of where the ball is drawn. */
function writeDragRows(
  table: Float64Array,
  at: number,
  frame: Float64Array,
  near: number,
  circle: BallCircle,
  ball: Point,
): void {
  let [acrossBase, onwardBase, squares] = [0, 0, circle.radiusSquared - dot(ball, ball)];
  for (let row = 0; row < 3; row += 1) {
    const base = (frame[row] as number) + toCar(frame, near, row, circle.base);
    const across = toCar(frame, near, row, circle.across);
    const onward = toCar(frame, near, row, circle.onward);
    acrossBase += across * base;
    onwardBase += onward * base;
    squares += base * base;
    table[at + DRAG_A + row] = across;
    table[at + DRAG_B + row] = onward;
    table[at + DRAG_C + row] = (ball[row as 0 | 1 | 2] as number) - base;
  }
  table[at + DRAG_A + 3] = -acrossBase;
  table[at + DRAG_B + 3] = -onwardBase;
  table[at + DRAG_C + 3] = squares / 2;
}

const turned = new Float64Array(9);
/** From the follower's base to the driven ball's, and the driven ball's two ways, in the follower's axes. */
const seenFrom = new Float64Array(9);

function dotAt(at: number, p: Point): number {
  return (
    (seenFrom[at] as number) * p[0] +
    (seenFrom[at + 1] as number) * p[1] +
    (seenFrom[at + 2] as number) * p[2]
  );
}

function dotWithin(at: number, to: number): number {
  return (
    (seenFrom[at] as number) * (seenFrom[to] as number) +
    (seenFrom[at + 1] as number) * (seenFrom[to + 1] as number) +
    (seenFrom[at + 2] as number) * (seenFrom[to + 2] as number)
  );
}

/** Writes the driven spindle's ball seen from the follower's circle, each as (constant, times cos, times sin). */
function writeTieRows(
  table: Float64Array,
  at: number,
  frame: Float64Array,
  near: number,
  far: number,
  ball: BallCircle,
  other: BallCircle,
  length: number,
): void {
  // Rᵀ of the follower's half times R of the driven one's.
  for (let row = 0; row < 3; row += 1)
    for (let column = 0; column < 3; column += 1)
      turned[3 * row + column] =
        (frame[far + row] as number) * (frame[near + column] as number) +
        (frame[far + 3 + row] as number) * (frame[near + 3 + column] as number) +
        (frame[far + 6 + row] as number) * (frame[near + 6 + column] as number);
  for (let row = 0; row < 3; row += 1) {
    seenFrom[row] = toCar(turned, 0, row, ball.base) - other.base[row as 0 | 1 | 2];
    seenFrom[3 + row] = toCar(turned, 0, row, ball.across);
    seenFrom[6 + row] = toCar(turned, 0, row, ball.onward);
  }
  for (let k = 0; k < 3; k += 1) {
    table[at + TIE_A + k] = dotAt(3 * k, other.across);
    table[at + TIE_B + k] = dotAt(3 * k, other.onward);
  }
  table[at + TIE_C] = (dotWithin(0, 0) + ball.radiusSquared + other.radiusSquared - length * length) / 2;
  table[at + TIE_C + 1] = dotWithin(0, 3);
  table[at + TIE_C + 2] = dotWithin(0, 6);
}

/** Writes all rows but those of the drag link, which alone ask for the steering-arm ball. */
function writeAxleRows(
  table: Float64Array,
  at: number,
  frame: Float64Array,
  frontEnd: FrontEnd,
  drawnSteer: number,
): void {
  const drivesLeft = frontEnd.driven === 'left';
  const driven = drivesLeft ? frontEnd.left : frontEnd.right;
  const follower = drivesLeft ? frontEnd.right : frontEnd.left;
  const near = drivesLeft ? LEFT_AXES : RIGHT_AXES;
  const far = drivesLeft ? RIGHT_AXES : LEFT_AXES;
  writeTieRows(table, at, frame, near, far, driven.tieRodBall, follower.tieRodBall, frontEnd.tieRodLength);
  // The mean steer as drawn is taken off by turning the follower's spin axis back by twice that angle.
  const c = Math.cos(2 * drawnSteer);
  const s = Math.sin(2 * drawnSteer);
  // x and y of a wheel's spin axis in the car, each as (constant, times cos, times sin) of its spindle's turn.
  for (let k = 0; k < 3; k += 1) {
    const own = SPIN_PARTS[k] as SpinPart;
    table[at + DRIVEN_X + k] = toCar(frame, near, 0, driven.spinAxis[own]);
    table[at + DRIVEN_Y + k] = toCar(frame, near, 1, driven.spinAxis[own]);
    const x = toCar(frame, far, 0, follower.spinAxis[own]);
    const y = toCar(frame, far, 1, follower.spinAxis[own]);
    table[at + FOLLOWER_X + k] = x * c + y * s;
    table[at + FOLLOWER_Y + k] = y * c - x * s;
  }
}

type SpinPart = 'base' | 'across' | 'onward';
const SPIN_PARTS: readonly SpinPart[] = ['base', 'across', 'onward'];

/** The branch of the drag link as it is drawn: positive on one side of a plane through the ball's circle. */
function branchOf({ axle, dragLinkBall: { base, onward } }: FrontEnd): Float64Array {
  const { centre } = axle;
  const drawnBase: Point = [centre[0] + base[0], centre[1] + base[1], centre[2] + base[2]];
  return Float64Array.of(...onward, -dot(onward, drawnBase));
}

/** Makes a held travel ready for maps. The travel must be `ok`. A table of the right size is written over and kept. */
export function prepareMapKernel(travel: HeldTravel, room?: Float64Array): MapKernel {
  const { frontEnd, frames, drawnSteer } = travel;
  const table = room?.length === STRIDE * frames.length ? room : new Float64Array(STRIDE * frames.length);
  for (let pose = 0; pose < frames.length; pose += 1)
    writeAxleRows(table, STRIDE * pose, frames[pose] as Float64Array, frontEnd, drawnSteer);
  const { tieRodBranch } = frontEnd;
  return withBallOf({ poses: frames.length, table, branch: new Float64Array(4), tieRodBranch }, travel);
}

/**
 * The kernel of the same poses with the steering-arm ball of another held travel: only the drag link's rows are written
 * anew, into the same table.
 */
export function withBallOf(kernel: MapKernel, { frontEnd, frames, ball }: HeldTravel): MapKernel {
  const near = frontEnd.driven === 'left' ? LEFT_AXES : RIGHT_AXES;
  for (let pose = 0; pose < frames.length; pose += 1)
    writeDragRows(
      kernel.table,
      STRIDE * pose,
      frames[pose] as Float64Array,
      near,
      frontEnd.dragLinkBall,
      ball,
    );
  return { ...kernel, branch: branchOf(frontEnd) };
}

/** Room that `fillRow` works in, for rows of up to `columns` places. */
export interface RowScratch {
  readonly imaginary: Float64Array;
  readonly real: Float64Array;
  readonly beyond: Float64Array;
  readonly branch: Float64Array;
}

/** Room for rows of up to `columns` places. */
export function rowScratch(columns: number): RowScratch {
  return {
    imaginary: new Float64Array(columns),
    real: new Float64Array(columns),
    beyond: new Float64Array(columns),
    branch: new Float64Array(columns),
  };
}

/**
 * Worst |bump steer| over the travel for a row of frame ends: p = origin + t · step for each t of `places`.
 *
 * The drag link's closure (as `closeLink` has it) asks for A = v·across, B = v·onward and C = (|v|² + ρ² - L²)/2 with
 * v = p - b from the turned circle's base b to the frame end, ρ the circle's radius and L = |q - p| the length with the
 * steering-arm ball at q as drawn. In the car's axes |v|² = |p|² - 2 p·b + |b|² and L² = |p|² - 2 p·q + |q|²: the
 * squares of p cancel, C = p·(q - b) + (|b|² + ρ² - |q|²)/2, and all three are affine in p, so in t. With
 * R² = A² + B² and S = √(R² - C²) the turn has cos = (A C ∓ B S)/R², sin = (B C ± A S)/R².
 * The tie rod's ball is affine in that cos and sin, and |across cos + onward sin| is its radius at any turn: so A, B and
 * C of the tie rod are affine in them too. The spin axes are affine in their own spindle's cos and sin. With
 * w = y - i x of each, steer is arg w and the sum of both steers is the argument of the product: one arctangent for
 * each place. Over the poses the largest |im|/re is kept by cross-multiplying, and 2 × bump steer is its arctangent.
 * Frame:    vehicle. Units: mm; `worst` in rad.
 * Shapes:   writes `worst[at + i]` and `reason[at + i]` for each of `count` places; allocates nothing.
 * Outcomes: PLACE_OK; PLACE_DRAG_LINK or PLACE_TIE_ROD with infinity for a worst: out of reach in some pose. Never NaN.
 * Source:   own derivation, as above.
 * Checked:  tests/unit/map.test.ts (against the ordinary sweep of the moved layout).
 */
export function fillRow(
  kernel: MapKernel,
  origin: Point,
  step: Point,
  places: Float64Array,
  count: number,
  worst: Float64Array,
  reason: Uint8Array,
  at: number,
  scratch: RowScratch,
): void {
  const { table, branch, tieRodBranch } = kernel;
  const { imaginary, real, beyond } = scratch;
  const branches = scratch.branch;
  const branchStep =
    (branch[0] as number) * step[0] + (branch[1] as number) * step[1] + (branch[2] as number) * step[2];
  const branchOrigin =
    (branch[0] as number) * origin[0] +
    (branch[1] as number) * origin[1] +
    (branch[2] as number) * origin[2] +
    (branch[3] as number);
  for (let i = 0; i < count; i += 1) {
    imaginary[i] = 0;
    real[i] = 1;
    beyond[i] = 0;
    branches[i] = branchOrigin + branchStep * (places[i] as number) > 0 ? -1 : 1;
    reason[at + i] = PLACE_OK;
  }

  for (let k = 0; k < table.length; k += STRIDE) {
    const ax = table[k + DRAG_A] as number;
    const ay = table[k + DRAG_A + 1] as number;
    const az = table[k + DRAG_A + 2] as number;
    const aStep = ax * step[0] + ay * step[1] + az * step[2];
    const aFirst = ax * origin[0] + ay * origin[1] + az * origin[2] + (table[k + DRAG_A + 3] as number);
    const bx = table[k + DRAG_B] as number;
    const by = table[k + DRAG_B + 1] as number;
    const bz = table[k + DRAG_B + 2] as number;
    const bStep = bx * step[0] + by * step[1] + bz * step[2];
    const bFirst = bx * origin[0] + by * origin[1] + bz * origin[2] + (table[k + DRAG_B + 3] as number);
    const cx = table[k + DRAG_C] as number;
    const cy = table[k + DRAG_C + 1] as number;
    const cz = table[k + DRAG_C + 2] as number;
    const cStep = cx * step[0] + cy * step[1] + cz * step[2];
    const cFirst = cx * origin[0] + cy * origin[1] + cz * origin[2] + (table[k + DRAG_C + 3] as number);
    const ta0 = table[k + TIE_A] as number;
    const ta1 = table[k + TIE_A + 1] as number;
    const ta2 = table[k + TIE_A + 2] as number;
    const tb0 = table[k + TIE_B] as number;
    const tb1 = table[k + TIE_B + 1] as number;
    const tb2 = table[k + TIE_B + 2] as number;
    const tc0 = table[k + TIE_C] as number;
    const tc1 = table[k + TIE_C + 1] as number;
    const tc2 = table[k + TIE_C + 2] as number;
    const dx0 = table[k + DRIVEN_X] as number;
    const dx1 = table[k + DRIVEN_X + 1] as number;
    const dx2 = table[k + DRIVEN_X + 2] as number;
    const dy0 = table[k + DRIVEN_Y] as number;
    const dy1 = table[k + DRIVEN_Y + 1] as number;
    const dy2 = table[k + DRIVEN_Y + 2] as number;
    const fx0 = table[k + FOLLOWER_X] as number;
    const fx1 = table[k + FOLLOWER_X + 1] as number;
    const fx2 = table[k + FOLLOWER_X + 2] as number;
    const fy0 = table[k + FOLLOWER_Y] as number;
    const fy1 = table[k + FOLLOWER_Y + 1] as number;
    const fy2 = table[k + FOLLOWER_Y + 2] as number;

    for (let i = 0; i < count; i += 1) {
      if (reason[at + i] !== PLACE_OK) continue;
      const t = places[i] as number;
      const a = aFirst + aStep * t;
      const b = bFirst + bStep * t;
      const c = cFirst + cStep * t;
      const rr = a * a + b * b;
      if (!(c * c <= rr * SLACK && rr > 0)) {
        reason[at + i] = PLACE_DRAG_LINK;
        continue;
      }
      const s = (branches[i] as number) * Math.sqrt(Math.max(rr - c * c, 0));
      const cos = (a * c - b * s) / rr;
      const sin = (b * c + a * s) / rr;

      const ta = ta0 + ta1 * cos + ta2 * sin;
      const tb = tb0 + tb1 * cos + tb2 * sin;
      const tc = tc0 + tc1 * cos + tc2 * sin;
      const tt = ta * ta + tb * tb;
      if (!(tc * tc <= tt * SLACK && tt > 0)) {
        reason[at + i] = PLACE_TIE_ROD;
        continue;
      }
      const ts = tieRodBranch * Math.sqrt(Math.max(tt - tc * tc, 0));
      const farCos = (ta * tc - tb * ts) / tt;
      const farSin = (tb * tc + ta * ts) / tt;

      const x = dx0 + dx1 * cos + dx2 * sin;
      const y = dy0 + dy1 * cos + dy2 * sin;
      const farX = fx0 + fx1 * farCos + fx2 * farSin;
      const farY = fy0 + fy1 * farCos + fy2 * farSin;
      const re = y * farY - x * farX;
      const im = Math.abs(x * farY + y * farX);
      // Half a right angle of bump steer and more is kept as an angle: there the quotient is no measure.
      if (re <= 0) beyond[i] = Math.max(beyond[i] as number, Math.atan2(im, re));
      else if (im * (real[i] as number) > (imaginary[i] as number) * re) {
        imaginary[i] = im;
        real[i] = re;
      }
    }
  }
  for (let i = 0; i < count; i += 1)
    worst[at + i] =
      reason[at + i] === PLACE_OK
        ? Math.max(beyond[i] as number, Math.atan2(imaginary[i] as number, real[i] as number)) / 2
        : Number.POSITIVE_INFINITY;
}

const NO_STEP: Point = [0, 0, 0];
const ONE_PLACE = new Float64Array(1);
const oneWorst = new Float64Array(1);
const oneReason = new Uint8Array(1);
const oneScratch = rowScratch(1);

/** Worst |bump steer| (rad) over the travel with the frame end at one point; infinity where it is out of reach. */
export function worstAt(kernel: MapKernel, point: Point): number {
  fillRow(kernel, point, NO_STEP, ONE_PLACE, 1, oneWorst, oneReason, 0, oneScratch);
  return oneWorst[0] as number;
}
