import { coreMiddle, type ShapeKind, support } from './shapes.ts';

/** Steps. Boxes and segments take three to eight, cylinders up to thirty; more is rounding going round in circles. */
const STEPS_MAX = 100;
/** mm. The distance reported is no further than this above the true one. */
export const DISTANCE_END = 1e-7;
/** mm. Cores nearer than this touch. */
const TOUCHING = 1e-9;

/** The simplex: up to four points of the difference of the two bodies, with the points of each that they come from. */
const difference = new Float64Array(12);
const onA = new Float64Array(12);
const onB = new Float64Array(12);
let size = 0;

/** The part of a simplex that is nearest to the origin: which corners, their weights, the point itself. */
class Nearest {
  readonly corners = new Int32Array(3);
  readonly weights = new Float64Array(4);
  count = 0;
  x = 0.5;
  y = 0.5;
  z = 0.5;
  squared = 0.5;

  take(other: Nearest): void {
    for (let i = 0; i < other.count; i += 1) {
      this.corners[i] = other.corners[i] as number;
      this.weights[i] = other.weights[i] as number;
    }
    this.count = other.count;
    this.x = other.x;
    this.y = other.y;
    this.z = other.z;
    this.squared = other.squared;
  }
}

const nearest = new Nearest();
const candidate = new Nearest();

function toVertex(i: number, into: Nearest): void {
  into.corners[0] = i;
  into.weights[0] = 1;
  into.count = 1;
  into.x = difference[3 * i] as number;
  into.y = difference[3 * i + 1] as number;
  into.z = difference[3 * i + 2] as number;
  into.squared = into.x * into.x + into.y * into.y + into.z * into.z;
}

/** The point of the edge from corner i to j that is nearest to the origin. */
function toEdge(i: number, j: number, into: Nearest): void {
  const ax = difference[3 * i] as number;
  const ay = difference[3 * i + 1] as number;
  const az = difference[3 * i + 2] as number;
  const dx = (difference[3 * j] as number) - ax;
  const dy = (difference[3 * j + 1] as number) - ay;
  const dz = (difference[3 * j + 2] as number) - az;
  const along = -(ax * dx + ay * dy + az * dz);
  const length = dx * dx + dy * dy + dz * dz;
  if (!(along > 0)) {
    toVertex(i, into);
    return;
  }
  if (along >= length) {
    toVertex(j, into);
    return;
  }
  const t = along / length;
  into.corners[0] = i;
  into.corners[1] = j;
  into.weights[0] = 1 - t;
  into.weights[1] = t;
  into.count = 2;
  into.x = ax + t * dx;
  into.y = ay + t * dy;
  into.z = az + t * dz;
  into.squared = into.x * into.x + into.y * into.y + into.z * into.z;
}

const edge = new Nearest();

/**
 * The point of a triangle that is nearest to the origin. With n = (b - a) × (c - a), the origin's foot on the plane has
 * the weights ((b × c)·n, (c × a)·n, (a × b)·n)/n²; where one is negative, the point lies on the edge across from it.
 */
function toTriangle(i: number, j: number, k: number, into: Nearest): void {
  const ax = difference[3 * i] as number;
  const ay = difference[3 * i + 1] as number;
  const az = difference[3 * i + 2] as number;
  const bx = difference[3 * j] as number;
  const by = difference[3 * j + 1] as number;
  const bz = difference[3 * j + 2] as number;
  const cx = difference[3 * k] as number;
  const cy = difference[3 * k + 1] as number;
  const cz = difference[3 * k + 2] as number;
  const ux = bx - ax;
  const uy = by - ay;
  const uz = bz - az;
  const vx = cx - ax;
  const vy = cy - ay;
  const vz = cz - az;
  const nx = uy * vz - uz * vy;
  const ny = uz * vx - ux * vz;
  const nz = ux * vy - uy * vx;
  const nn = nx * nx + ny * ny + nz * nz;
  const flat = nn <= FLAT * (ux * ux + uy * uy + uz * uz) * (vx * vx + vy * vy + vz * vz);
  const wa = (by * cz - bz * cy) * nx + (bz * cx - bx * cz) * ny + (bx * cy - by * cx) * nz;
  const wb = (cy * az - cz * ay) * nx + (cz * ax - cx * az) * ny + (cx * ay - cy * ax) * nz;
  const wc = nn - wa - wb;
  into.squared = Number.POSITIVE_INFINITY;
  if (wa >= 0 && wb >= 0 && wc >= 0 && nn > 0) {
    const a = wa / nn;
    const b = wb / nn;
    const c = wc / nn;
    into.corners[0] = i;
    into.corners[1] = j;
    into.corners[2] = k;
    into.weights[0] = a;
    into.weights[1] = b;
    into.weights[2] = c;
    into.count = 3;
    // Of the corners, not of the plane: so that it is a point of the bodies however thin the triangle is.
    into.x = a * ax + b * bx + c * cx;
    into.y = a * ay + b * by + c * cy;
    into.z = a * az + b * bz + c * cz;
    into.squared = into.x * into.x + into.y * into.y + into.z * into.z;
    if (!flat) return;
  }
  if (flat || wa < 0) {
    toEdge(j, k, edge);
    if (edge.squared < into.squared) into.take(edge);
  }
  if (flat || wb < 0) {
    toEdge(i, k, edge);
    if (edge.squared < into.squared) into.take(edge);
  }
  if (flat || wc < 0) {
    toEdge(i, j, edge);
    if (edge.squared < into.squared) into.take(edge);
  }
}

/** Ratio of squares. In triangles thinner than this, sine of an angle squared, rounding may have moved the foot. */
const FLAT = 1e-8;
/** The same for how far a simplex's fourth corner stands off the plane of the others. */
const THIN = 1e-12;

/** mm. A simplex said to hold the origin misses it by less. */
const MISS = 1e-6;

/** Weights of a simplex's four corners for the origin inside it. */
const share = new Float64Array(4);

/**
 * Whether the origin lies across the face i, j, k from the corner `top`; where the four lie in a plane, it does. Where
 * it does not, its height over the face as a share of the corner's is the corner's weight, should it lie inside.
 */
function isBeyond(i: number, j: number, k: number, top: number): boolean {
  const ax = difference[3 * i] as number;
  const ay = difference[3 * i + 1] as number;
  const az = difference[3 * i + 2] as number;
  const ux = (difference[3 * j] as number) - ax;
  const uy = (difference[3 * j + 1] as number) - ay;
  const uz = (difference[3 * j + 2] as number) - az;
  const vx = (difference[3 * k] as number) - ax;
  const vy = (difference[3 * k + 1] as number) - ay;
  const vz = (difference[3 * k + 2] as number) - az;
  const nx = uy * vz - uz * vy;
  const ny = uz * vx - ux * vz;
  const nz = ux * vy - uy * vx;
  const tx = (difference[3 * top] as number) - ax;
  const ty = (difference[3 * top + 1] as number) - ay;
  const tz = (difference[3 * top + 2] as number) - az;
  const toTop = tx * nx + ty * ny + tz * nz;
  const toOrigin = -(ax * nx + ay * ny + az * nz);
  const thin = toTop * toTop <= THIN * (nx * nx + ny * ny + nz * nz) * (tx * tx + ty * ty + tz * tz);
  if (thin || toTop * toOrigin < 0) return true;
  share[top] = toOrigin / toTop;
  return false;
}

function toFace(top: number): void {
  toTriangle(top === 0 ? 1 : 0, top <= 1 ? 2 : 1, top === 3 ? 2 : 3, candidate);
  if (candidate.squared < nearest.squared) nearest.take(candidate);
}

/** How far the weighted corners miss the origin, mm squared: a simplex that holds it misses by rounding alone. */
function missSquared(): number {
  let miss = 0;
  for (let axis = 0; axis < 3; axis += 1) {
    let sum = 0;
    for (let i = 0; i < 4; i += 1) sum += (share[i] as number) * (difference[3 * i + axis] as number);
    miss += sum * sum;
  }
  return miss;
}

/** Writes the part of the simplex nearest to the origin; false where the origin lies inside it. */
function nearestPart(): boolean {
  if (size === 1) toVertex(0, nearest);
  else if (size === 2) toEdge(0, 1, nearest);
  else if (size === 3) toTriangle(0, 1, 2, nearest);
  else {
    nearest.squared = Number.POSITIVE_INFINITY;
    for (let top = 0; top < 4; top += 1)
      if (isBeyond(top === 0 ? 1 : 0, top <= 1 ? 2 : 1, top === 3 ? 2 : 3, top)) toFace(top);
    if (nearest.squared < Number.POSITIVE_INFINITY) return true;
    if (missSquared() <= MISS * MISS) return false;
    for (let top = 0; top < 4; top += 1) toFace(top);
  }
  return true;
}

/** Moves a corner of the simplex, with the points that it comes from, to another's place. */
function moveCorner(from: number, to: number): void {
  for (let axis = 0; axis < 3; axis += 1) {
    difference[3 * to + axis] = difference[3 * from + axis] as number;
    onA[3 * to + axis] = onA[3 * from + axis] as number;
    onB[3 * to + axis] = onB[3 * from + axis] as number;
  }
}

/** Keeps only the corners of the nearest part. */
function reduceSimplex(): void {
  const { count, corners, weights } = nearest;
  // In ascending order no corner is overwritten before it is read.
  for (let i = 1; i < count; i += 1)
    for (let j = i; j > 0 && (corners[j] as number) < (corners[j - 1] as number); j -= 1) {
      const corner = corners[j] as number;
      corners[j] = corners[j - 1] as number;
      corners[j - 1] = corner;
      const weight = weights[j] as number;
      weights[j] = weights[j - 1] as number;
      weights[j - 1] = weight;
    }
  for (let i = 0; i < count; i += 1) {
    const from = corners[i] as number;
    if (from !== i) moveCorner(from, i);
    corners[i] = i;
  }
  size = count;
}

function writePoints(out: Float64Array): void {
  for (let axis = 0; axis < 3; axis += 1) {
    let a = 0;
    let b = 0;
    for (let i = 0; i < size; i += 1) {
      a += (nearest.weights[i] as number) * (onA[3 * i + axis] as number);
      b += (nearest.weights[i] as number) * (onB[3 * i + axis] as number);
    }
    out[axis] = a;
    out[3 + axis] = b;
  }
}

/**
 * Distance of two convex cores and their nearest points, by the method of Gilbert, Johnson and Keerthi (IEEE Journal of
 * Robotics and Automation 4, 1988): walk through simplices of the two bodies' difference toward the origin. The step
 * from point v ends where no point of the difference lies nearer along v than v itself: with w the furthest one, the
 * true distance is at least v·w/|v|, so |v| - v·w/|v| bounds the error. The nearest part of a simplex is found face by
 * face from signed areas and volumes, flat ones by their edges.
 * Frame:    any. Units: mm. Shapes: cores as in `shapes.ts`, a ring counting as solid; writes two points to `out`;
 *           allocates nothing.
 * Outcomes: the distance, within DISTANCE_END; 0 where the cores meet (then the two points are one of both).
 * Source:   the paper, from memory; own writing.
 * Checked:  tests/unit/clearance.test.ts (closed forms of boxes, balls, capsules, cylinders; dense sampling).
 */
export function gjkDistance(
  kindA: ShapeKind,
  a: Float64Array,
  atA: number,
  kindB: ShapeKind,
  b: Float64Array,
  atB: number,
  out: Float64Array,
): number {
  let vx = coreMiddle(kindA, a, atA, 0) - coreMiddle(kindB, b, atB, 0);
  let vy = coreMiddle(kindA, a, atA, 1) - coreMiddle(kindB, b, atB, 1);
  let vz = coreMiddle(kindA, a, atA, 2) - coreMiddle(kindB, b, atB, 2);
  if (vx === 0 && vy === 0 && vz === 0) vx = 1;
  size = 0;
  let squared = Number.POSITIVE_INFINITY;
  for (let step = 0; step < STEPS_MAX; step += 1) {
    const to = 3 * size;
    support(kindA, a, atA, -vx, -vy, -vz, onA, to);
    support(kindB, b, atB, vx, vy, vz, onB, to);
    const wx = (onA[to] as number) - (onB[to] as number);
    const wy = (onA[to + 1] as number) - (onB[to + 1] as number);
    const wz = (onA[to + 2] as number) - (onB[to + 2] as number);
    if (size > 0) {
      const ahead = squared - (vx * wx + vy * wy + vz * wz);
      if (ahead <= DISTANCE_END * Math.sqrt(squared) || isCorner(wx, wy, wz)) break;
    }
    difference[to] = wx;
    difference[to + 1] = wy;
    difference[to + 2] = wz;
    size += 1;
    if (!nearestPart()) {
      nearest.weights.set(share);
      writePoints(out);
      return 0;
    }
    reduceSimplex();
    // No nearer than before: what is left is rounding.
    if (!(nearest.squared < squared)) break;
    squared = nearest.squared;
    if (squared <= TOUCHING * TOUCHING) break;
    vx = nearest.x;
    vy = nearest.y;
    vz = nearest.z;
  }
  writePoints(out);
  return squared <= TOUCHING * TOUCHING ? 0 : Math.sqrt(squared);
}

/** Whether a point is already a corner of the simplex: then the walk has nowhere to go. */
function isCorner(x: number, y: number, z: number): boolean {
  for (let i = 0; i < 3 * size; i += 3)
    if (difference[i] === x && difference[i + 1] === y && difference[i + 2] === z) return true;
  return false;
}
