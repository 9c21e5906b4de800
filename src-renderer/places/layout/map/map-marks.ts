import { PLACE_OK } from '../../../../shared-math/aim/index.ts';
import type { MapHits } from './map-job.ts';

/** An upright rectangle on the board, px. */
export interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** A stretch of one row of a map's nodes that is hatched, as the rectangle it stands for; mm. */
export interface HatchRun {
  readonly from: readonly [across: number, up: number];
  readonly to: readonly [across: number, up: number];
}

/** The hatched nodes of a map as rectangles, each node half a cell about it, within the window. */
export function hatchRuns({ window, columns, rows, reason }: MapHits): HatchRun[] {
  const { from, to } = window;
  const [width, height] = [(to[0] - from[0]) / (columns - 1), (to[1] - from[1]) / (rows - 1)];
  const across = (at: number) => Math.min(to[0], Math.max(from[0], from[0] + at * width));
  const up = (at: number) => Math.min(to[1], Math.max(from[1], from[1] + at * height));
  const runs: HatchRun[] = [];
  for (let row = 0; row < rows; row += 1) {
    let begun = -1;
    for (let column = 0; column <= columns; column += 1) {
      const hatched = column < columns && reason[row * columns + column] !== PLACE_OK;
      if (hatched && begun < 0) begun = column;
      if (hatched || begun < 0) continue;
      runs.push({ from: [across(begun - 0.5), up(row - 0.5)], to: [across(column - 0.5), up(row + 0.5)] });
      begun = -1;
    }
  }
  return runs;
}

/** Where a figure stands on its line, and how far it is turned with it, rad. */
export interface LabelSpot {
  readonly text: string;
  readonly x: number;
  readonly y: number;
  readonly turn: number;
}

/** px of air around figures. */
const AIR = 5;
/** Heights of a figure kept clear about a mark. */
const KEPT_OFF = 6;
/** Shares of a line's length at which its figure may stand, in the order of liking. */
const SHARES = [0.5, 0.35, 0.65, 0.2, 0.8, 0.1, 0.9];

function lengthsOf(points: readonly number[]): number[] {
  const lengths = [0];
  for (let i = 2; i + 1 < points.length; i += 2)
    lengths.push(
      (lengths.at(-1) as number) +
        Math.hypot(
          (points[i] as number) - (points[i - 2] as number),
          (points[i + 1] as number) - (points[i - 1] as number),
        ),
    );
  return lengths;
}

/** The place on a line at a share of its length, and which way the line goes there, read from left to right. */
function spotAlong(points: readonly number[], lengths: readonly number[], share: number) {
  const wanted = share * (lengths.at(-1) as number);
  const at = Math.max(
    1,
    lengths.findIndex((length) => length >= wanted),
  );
  const [low, high] = [lengths[at - 1] as number, lengths[at] as number];
  const part = high > low ? (wanted - low) / (high - low) : 0;
  const [x1, y1, x2, y2] = points.slice(2 * at - 2, 2 * at + 2) as [number, number, number, number];
  let turn = Math.atan2(y2 - y1, x2 - x1);
  if (turn > Math.PI / 2) turn -= Math.PI;
  if (turn < -Math.PI / 2) turn += Math.PI;
  return { x: x1 + part * (x2 - x1), y: y1 + part * (y2 - y1), turn };
}

/**
 * Places for the figures of contour lines: one on each line that is long enough, clear of the others and of the edges of
 * the box, and of the marks. A line on which there is no such place has no figure; the scale beside the map tells its colour.
 */
export function labelSpots(
  lines: readonly { readonly text: string; readonly points: readonly number[] }[],
  widthOf: (text: string) => number,
  height: number,
  box: Box,
  keptOff: readonly (readonly [x: number, y: number])[] = [],
): LabelSpot[] {
  const spots: (LabelSpot & { readonly radius: number })[] = [];
  const byLength = lines
    .map((line) => ({ ...line, lengths: lengthsOf(line.points) }))
    .sort((a, b) => (b.lengths.at(-1) as number) - (a.lengths.at(-1) as number));
  for (const { text, points, lengths } of byLength) {
    const width = widthOf(text);
    if ((lengths.at(-1) as number) < 3 * width) continue;
    const radius = width / 2 + AIR;
    for (const share of SHARES) {
      const spot = spotAlong(points, lengths, share);
      const inside =
        spot.x - radius > box.left &&
        spot.x + radius < box.right &&
        spot.y - height > box.top &&
        spot.y + height < box.bottom;
      const clear = spots.every(
        (other) =>
          Math.abs(other.x - spot.x) > radius + other.radius || Math.abs(other.y - spot.y) > height + AIR,
      );
      const off = keptOff.every(([x, y]) => Math.hypot(spot.x - x, spot.y - y) > KEPT_OFF * height);
      if (!inside || !clear || !off) continue;
      spots.push({ text, ...spot, radius });
      break;
    }
  }
  return spots.map(({ text, x, y, turn }) => ({ text, x, y, turn }));
}
