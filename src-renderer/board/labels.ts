import { toRadians } from '../../shared-math/units/index.ts';

/** An upright rectangle on the screen, px. */
export interface Rect {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** A text that wants a place near a spot. */
export interface LabelWish {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  /** px kept clear around the spot itself. */
  readonly clear: number;
  /** The direction in which it would rather stand, degrees clockwise from the right. */
  readonly toward: number;
}

export interface PlacedLabel extends Rect {
  /** Where its leader begins, at the edge of the cleared spot, and ends, at the text. */
  readonly leader: readonly [x1: number, y1: number, x2: number, y2: number];
}

/** What labels keep off. */
export interface Obstacles {
  readonly rects: readonly Rect[];
  /** What is written there already, or can be pressed: to lie over that is worse than over anything drawn. */
  readonly words: readonly Rect[];
  /** Line segments, four numbers each. */
  readonly segments: ArrayLike<number>;
  readonly bounds: Rect;
}

const DIRECTIONS = 12;
/** px between the cleared spot and the text, nearer ones first. */
const DISTANCES = [12, 30, 54, 84, 120];
/** px between a leader's end and the text beside it. */
const BESIDE_LEADER = 3;
/** What each kind of disturbance costs against the rest: being off the board outweighs any number of crossed lines. */
const COST = { outside: 1000, written: 400, covered: 60, crossing: 9, away: 0.2, turned: 0.05 };

/** Whether two rectangles have more than an edge in common. */
export function overlap(a: Rect, b: Rect): boolean {
  return a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height;
}

/** Whether a segment touches a rectangle: clipped against its four sides in turn. */
export function crosses(rect: Rect, x1: number, y1: number, x2: number, y2: number): boolean {
  // Nearly all of a drawing lies wholly to one side of a label.
  if (Math.max(x1, x2) < rect.x || Math.min(x1, x2) > rect.x + rect.width) return false;
  if (Math.max(y1, y2) < rect.y || Math.min(y1, y2) > rect.y + rect.height) return false;
  let from = 0;
  let to = 1;
  const [dx, dy] = [x2 - x1, y2 - y1];
  const sides = [
    [-dx, x1 - rect.x],
    [dx, rect.x + rect.width - x1],
    [-dy, y1 - rect.y],
    [dy, rect.y + rect.height - y1],
  ] as const;
  for (const [p, q] of sides) {
    if (p === 0) {
      if (q < 0) return false;
    } else if (p < 0) from = Math.max(from, q / p);
    else to = Math.min(to, q / p);
    if (from > to) return false;
  }
  return true;
}

function candidate(wish: LabelWish, direction: number, away: number): PlacedLabel {
  const cos = Math.cos(direction);
  const sin = Math.sin(direction);
  const from = wish.clear;
  const to = wish.clear + away;
  const x2 = wish.x + to * cos;
  const y2 = wish.y + to * sin;
  // The text hangs on the leader's end by the side that faces the spot.
  const x =
    Math.abs(cos) < 0.3
      ? x2 - wish.width / 2
      : cos > 0
        ? x2 + BESIDE_LEADER
        : x2 - wish.width - BESIDE_LEADER;
  const y = Math.abs(cos) < 0.3 ? (sin > 0 ? y2 : y2 - wish.height) : y2 - wish.height / 2;
  return {
    x,
    y,
    width: wish.width,
    height: wish.height,
    leader: [wish.x + from * cos, wish.y + from * sin, x2, y2],
  };
}

/** The segments that a label of this wish could touch wherever it stands: few of a drawing's. */
function segmentsNear({ x, y, width, height, clear }: LabelWish, segments: ArrayLike<number>): number[] {
  const reach = clear + (DISTANCES.at(-1) as number) + BESIDE_LEADER;
  const [across, down] = [reach + width, reach + height];
  const near: number[] = [];
  for (let i = 0; i + 3 < segments.length; i += 4) {
    const x1 = segments[i] as number;
    const y1 = segments[i + 1] as number;
    const x2 = segments[i + 2] as number;
    const y2 = segments[i + 3] as number;
    if ((x1 < x - across && x2 < x - across) || (x1 > x + across && x2 > x + across)) continue;
    if ((y1 < y - down && y2 < y - down) || (y1 > y + down && y2 > y + down)) continue;
    near.push(x1, y1, x2, y2);
  }
  return near;
}

/** What a place costs, from `begun` on; no more than that it is not below `least` is found out. */
function costOf(
  label: PlacedLabel,
  bounds: Rect,
  words: readonly Rect[],
  rects: readonly Rect[],
  segments: readonly number[],
  begun: number,
  least: number,
): number {
  let cost = begun;
  if (
    label.x < bounds.x ||
    label.y < bounds.y ||
    label.x + label.width > bounds.x + bounds.width ||
    label.y + label.height > bounds.y + bounds.height
  )
    cost += COST.outside;
  for (const rect of words) if (overlap(label, rect)) cost += COST.written;
  for (const rect of rects) if (overlap(label, rect)) cost += COST.covered;
  for (let i = 0; i + 3 < segments.length && cost < least; i += 4)
    if (
      crosses(
        label,
        segments[i] as number,
        segments[i + 1] as number,
        segments[i + 2] as number,
        segments[i + 3] as number,
      )
    )
      cost += COST.crossing;
  return cost;
}

/**
 * Places labels one after another, each where it covers least: off the board's edge never if it can be helped, then
 * off other words, then off handles, then off drawn lines, then near its spot and toward where it would rather stand.
 */
export function placeLabels(wishes: readonly LabelWish[], obstacles: Obstacles): PlacedLabel[] {
  const taken: Rect[] = [...obstacles.words];
  return wishes.map((wish) => {
    let best: PlacedLabel | undefined;
    let least = Number.POSITIVE_INFINITY;
    const near = segmentsNear(wish, obstacles.segments);
    for (const away of DISTANCES)
      for (let i = 0; i < DIRECTIONS; i += 1) {
        // Fanned out from the wished direction, to either side in turn.
        const turn = ((i % 2 === 0 ? 1 : -1) * Math.ceil(i / 2) * 360) / DIRECTIONS;
        const label = candidate(wish, toRadians(wish.toward + turn), away);
        const begun = COST.away * away + COST.turned * Math.abs(turn);
        const cost = costOf(label, obstacles.bounds, taken, obstacles.rects, near, begun, least);
        if (cost < least) {
          least = cost;
          best = label;
        }
      }
    const placed = best as PlacedLabel;
    taken.push(placed);
    return placed;
  });
}
