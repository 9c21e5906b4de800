import { type Box, type Outline, VIEW_AXES, type View } from '../drawing/index.ts';
import type { Point } from '../geometry/points.ts';
import { DISC_SIZE, type SweptRoom } from './swept-room.ts';
import { isSpeck, thinned, UnionOutline } from './union-outline.ts';

/** A look at the car from far off: which way goes right and which down, of length 1 and square to one another. */
export interface Look {
  readonly right: Point;
  readonly down: Point;
}

/** The look of one of the sheet's views. */
export function lookOf(view: View): Look {
  const way = ({ axis, sign }: { axis: 0 | 1 | 2; sign: 1 | -1 }): Point => [
    axis === 0 ? sign : 0,
    axis === 1 ? sign : 0,
    axis === 2 ? sign : 0,
  ];
  const { right, down } = VIEW_AXES[view];
  return { right: way(right), down: way(down) };
}

/** How finely a room is outlined: lines of the grid over its longest way, mm between them at least, and places left out by mm. */
export interface OutlineFineness {
  readonly lines: number;
  readonly least: number;
  readonly off: number;
}
export const COARSE_OUTLINE: OutlineFineness = { lines: 160, least: 4, off: 0.6 };
export const FINE_OUTLINE: OutlineFineness = { lines: 360, least: 1.5, off: 0.15 };

/** Directions in which a silhouette is asked for its outermost place, for bodies of a radius (mm) above 60 and others. */
const MANY = 96;
const FEW = 32;
const SMALL = 60;

/** In each direction the farthest of every pose: how far, and at which place. */
interface Supports {
  readonly directions: number;
  /** For pose · directions + direction. */
  readonly reach: Float64Array;
  readonly places: Float64Array;
}

/** Scratch: of a disc in each pose its centre and its axis as the look sees them. */
const SEEN = 4;
let seen = new Float64Array(0);

/** Writes to the scratch how the look sees a disc of a pose's `stride` discs, in all poses. */
function seeDisc({ discs, poses }: SweptRoom, { right, down }: Look, disc: number, stride: number): void {
  if (seen.length < SEEN * poses) seen = new Float64Array(SEEN * poses);
  for (let pose = 0; pose < poses; pose += 1) {
    const at = (pose * stride + disc) * DISC_SIZE;
    for (let i = 0; i < 2; i += 1) {
      const [x, y, z] = [discs[at + 3 * i], discs[at + 3 * i + 1], discs[at + 3 * i + 2]] as [
        number,
        number,
        number,
      ];
      seen[SEEN * pose + 2 * i] = right[0] * x + right[1] * y + right[2] * z;
      seen[SEEN * pose + 2 * i + 1] = down[0] * x + down[1] * y + down[2] * z;
    }
  }
}

/**
 * The outermost places of a body in each pose, all around the look. In direction d of its plane a disc whose centre and axis are seen at
 * c and a, of radius r and rounding s, reaches farthest at c + r (d - (d·a) a) / √(1 - (d·a)²) + s d.
 */
function supportsOf(room: SweptRoom, look: Look, first: number, count: number, stride: number): Supports {
  const { discs, poses } = room;
  const size = (disc: number, at: 6 | 7) => discs[(first + disc) * DISC_SIZE + at] as number;
  let largest = 0;
  for (let i = 0; i < count; i += 1) largest = Math.max(largest, size(i, 6) + size(i, 7));
  const directions = largest > SMALL ? MANY : FEW;
  const reach = new Float64Array(poses * directions).fill(Number.NEGATIVE_INFINITY);
  const places = new Float64Array(2 * poses * directions);
  for (let i = 0; i < count; i += 1) {
    seeDisc(room, look, first + i, stride);
    const [radius, round] = [size(i, 6), size(i, 7)];
    for (let k = 0; k < directions; k += 1) {
      const angle = (2 * Math.PI * k) / directions;
      const [dr, dd] = [Math.cos(angle), Math.sin(angle)];
      for (let pose = 0; pose < poses; pose += 1) {
        const at = SEEN * pose;
        let x = (seen[at] as number) + round * dr;
        let y = (seen[at + 1] as number) + round * dd;
        if (radius > 0) {
          const ar = seen[at + 2] as number;
          const ad = seen[at + 3] as number;
          const along = dr * ar + dd * ad;
          const square = Math.sqrt(Math.max(0, 1 - along * along));
          // Seen along its axis a disc reaches nowhere farther than its centre.
          if (square > 1e-9) {
            x += (radius * (dr - along * ar)) / square;
            y += (radius * (dd - along * ad)) / square;
          }
        }
        const far = dr * x + dd * y;
        const to = pose * directions + k;
        if (far <= (reach[to] as number)) continue;
        reach[to] = far;
        places[2 * to] = x;
        places[2 * to + 1] = y;
      }
    }
  }
  return { directions, reach, places };
}

/** The silhouette of a hull of two poses: in each direction the farther place of the two. */
function hullOutline({ directions, reach, places }: Supports, from: number, to: number, out: Outline): void {
  out.length = 0;
  for (let k = 0; k < directions; k += 1) {
    const [a, b] = [from * directions + k, to * directions + k];
    const best = (reach[b] as number) > (reach[a] as number) ? b : a;
    const [x, y] = [places[2 * best] as number, places[2 * best + 1] as number];
    if (out.length >= 2 && out[out.length - 2] === x && out[out.length - 1] === y) continue;
    out.push(x, y);
  }
}

function boxAround(supports: readonly Supports[]): Box {
  let [left, top] = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY];
  let [right, bottom] = [Number.NEGATIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const { places } of supports)
    for (let i = 0; i < places.length; i += 2) {
      left = Math.min(left, places[i] as number);
      right = Math.max(right, places[i] as number);
      top = Math.min(top, places[i + 1] as number);
      bottom = Math.max(bottom, places[i + 1] as number);
    }
  return { left, top, right, bottom };
}

/**
 * The outlines around all places that a room covers as a look sees it: one around each of its parts, and around each hole.
 * Frame:    the look's plane, right and down, the car's origin at 0, 0. Units: mm. Shapes: closed outlines; none if the
 *           room has no hulls.
 * Every place of an outline lies within a step of the grid and the thinning of the room's true edge.
 * Checked:  tests/unit/swept/room-outlines.test.ts (every pose drawn by the drawing lies within; every place is touched).
 */
export function roomOutlines(
  room: SweptRoom,
  look: Look,
  fineness: OutlineFineness = FINE_OUTLINE,
): Outline[] {
  if (room.hulls.length === 0) return [];
  const stride = room.bodies.reduce((sum, count) => sum + count, 0);
  let first = 0;
  const supports = room.bodies.map((count) => {
    const found = supportsOf(room, look, first, count, stride);
    first += count;
    return found;
  });
  const box = boxAround(supports);
  const longest = Math.max(box.right - box.left, box.bottom - box.top);
  const step = Math.max(fineness.least, longest / fineness.lines);
  const union = new UnionOutline(box, step);
  const line: Outline = [];
  for (const each of supports)
    for (let i = 0; i < room.hulls.length; i += 2) {
      hullOutline(each, room.hulls[i] as number, room.hulls[i + 1] as number, line);
      union.add(line);
    }
  return union
    .outlines()
    .filter((outline) => !isSpeck(outline, step))
    .map((outline) => thinned(outline, fineness.off));
}
