/** What of a straight line is beyond ±half along one axis, with its side's sign; 0 between. */
function beyond(at: number, half: number): number {
  return at > half ? at - half : at < -half ? at + half : 0;
}

/** mm. */
const HAIR = 1e-9;

/** A stretch of line in a block's own axes: where it begins, from the block's middle, and from there to its end. Written into. */
export interface StretchInBlock {
  /** Half sizes of the block along its axes, mm. */
  readonly half: [number, number, number];
  readonly from: [number, number, number];
  readonly by: [number, number, number];
}

/** A stretch to be written into: a hot loop keeps one. */
export function createStretch(): StretchInBlock {
  return { half: [0, 0, 0], from: [0, 0, 0], by: [0, 0, 0] };
}

/** Slope of half the squared distance outside the block, by the share of the stretch. */
function slopeAt({ half, from, by }: StretchInBlock, t: number): number {
  return (
    by[0] * beyond(from[0] + t * by[0], half[0]) +
    by[1] * beyond(from[1] + t * by[1], half[1]) +
    by[2] * beyond(from[2] + t * by[2], half[2])
  );
}

function outsideAt({ half, from, by }: StretchInBlock, t: number): number {
  const x = beyond(from[0] + t * by[0], half[0]);
  const y = beyond(from[1] + t * by[1], half[1]);
  const z = beyond(from[2] + t * by[2], half[2]);
  return x * x + y * y + z * z;
}

/** Share of the stretch at which it is least far outside. */
function nearestShare(stretch: StretchInBlock): number {
  let low = 0;
  let high = 1;
  let atLow = slopeAt(stretch, 0);
  if (atLow >= 0) return 0;
  let atHigh = slopeAt(stretch, 1);
  if (atHigh <= 0) return 1;
  for (let axis = 0; axis < 3; axis += 1) {
    const u = stretch.by[axis] as number;
    if (u === 0) continue;
    for (let side = -1; side <= 1; side += 2) {
      const t = (side * (stretch.half[axis] as number) - (stretch.from[axis] as number)) / u;
      if (!(t > low && t < high)) continue;
      const slope = slopeAt(stretch, t);
      if (slope < 0) {
        low = t;
        atLow = slope;
      } else {
        high = t;
        atHigh = slope;
      }
    }
  }
  return low - (atLow * (high - low)) / (atHigh - atLow);
}

/** The largest of the six straight lines at a share of the stretch: its value at the beginning, its slope. */
const line = { start: 0, slope: 0 };
function largestAt({ half, from, by }: StretchInBlock, t: number): number {
  let most = Number.NEGATIVE_INFINITY;
  for (let axis = 0; axis < 3; axis += 1) {
    const [h, p, u] = [half[axis] as number, from[axis] as number, by[axis] as number];
    const at = p + t * u;
    const value = Math.abs(at) - h;
    if (value <= most) continue;
    most = value;
    const side = at < 0 ? -1 : 1;
    line.start = side * p - h;
    line.slope = side * u;
  }
  return most;
}

/** Least of the largest of the six lines over the stretch: how deep it goes, below 0. */
function deepest(stretch: StretchInBlock): number {
  const atStart = largestAt(stretch, 0);
  if (line.slope >= 0) return atStart;
  let { start: leftStart, slope: leftSlope } = line;
  const atEnd = largestAt(stretch, 1);
  if (line.slope <= 0) return atEnd;
  let { start: rightStart, slope: rightSlope } = line;
  for (let lines = 0; lines < 6; lines += 1) {
    const t = (rightStart - leftStart) / (leftSlope - rightSlope);
    const known = leftStart + t * leftSlope;
    const most = largestAt(stretch, t);
    if (most <= known + 1e-12 * Math.abs(known) || line.slope === 0) return most;
    if (line.slope < 0) {
      leftStart = line.start;
      leftSlope = line.slope;
    } else {
      rightStart = line.start;
      rightSlope = line.slope;
    }
  }
  return largestAt(stretch, (rightStart - leftStart) / (leftSlope - rightSlope));
}

/**
 * Least signed distance from a stretch of straight line to a block's surface, mm: below 0 where it goes inside, by how deep.
 * In closed form.
 *
 * A place on the stretch is p + t·u, 0 ≤ t ≤ 1, from the block's middle in its own axes. Outside, half the squared distance is
 * half the sum, over the axes, of the square of what is beyond the block's half size. Its slope by t, the sum of u times what
 * is beyond with its side's sign, never falls, and runs straight between the six places where the line meets the planes of
 * the faces. Each of those that lies within what is left of the stretch cuts it off on one side by the sign of the slope there;
 * at last the slope is one straight line, and its two values say where it is 0.
 *
 * Where nothing is left outside, the signed distance is the largest of the six straight lines ±(p + t·u) - h. The one that is
 * largest at either end is followed to where the two cross; a line that is larger there takes the place of the one on its own
 * side, until none is: each line comes once at the most.
 * Checked: tests/unit/route-pieces.test.ts (by hand, and beside a search along the stretch),
 *          tests/thorough/shaft-routes.test.ts (by samples).
 */
export function stretchToBlock(stretch: StretchInBlock): number {
  const outside = outsideAt(stretch, nearestShare(stretch));
  // On a face rounding may leave a hair outside of what goes in.
  return outside > HAIR * HAIR ? Math.sqrt(outside) : deepest(stretch);
}
