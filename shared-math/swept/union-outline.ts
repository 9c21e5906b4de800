import type { Outline } from '../drawing/index.ts';

/** Adds a span to sorted spans that do not touch: start, end, start, end …; those that it touches become one with it. */
export function addSpan(spans: number[], from: number, to: number): void {
  let first = 0;
  while (first < spans.length && (spans[first + 1] as number) < from) first += 2;
  if (first < spans.length && (spans[first] as number) <= from && (spans[first + 1] as number) >= to) return;
  let start = from;
  let end = to;
  let after = first;
  while (after < spans.length && (spans[after] as number) <= to) {
    start = Math.min(start, spans[after] as number);
    end = Math.max(end, spans[after + 1] as number);
    after += 2;
  }
  if (after === first + 2) {
    spans[first] = start;
    spans[first + 1] = end;
  } else spans.splice(first, after - first, start, end);
}

/** The spans of parallel lines `step` apart, the first at `origin`, which shapes cover. */
class CoveredLines {
  readonly spans: number[][];
  private readonly origin: number;
  private readonly step: number;
  private readonly low: Float64Array;
  private readonly high: Float64Array;

  constructor(origin: number, step: number, count: number) {
    this.origin = origin;
    this.step = step;
    this.spans = Array.from({ length: count }, () => []);
    this.low = new Float64Array(count);
    this.high = new Float64Array(count);
  }

  /** Covers what a convex outline covers; `along` is the offset of the coordinate along the lines, the other says which line. */
  cover(line: Outline, along: 0 | 1): void {
    const { origin, step, low, high, spans } = this;
    let least = Number.POSITIVE_INFINITY;
    let most = Number.NEGATIVE_INFINITY;
    for (let at = 1 - along; at < line.length; at += 2) {
      least = Math.min(least, line[at] as number);
      most = Math.max(most, line[at] as number);
    }
    const first = Math.max(0, Math.ceil((least - origin) / step));
    const last = Math.min(spans.length - 1, Math.floor((most - origin) / step));
    for (let i = first; i <= last; i += 1) {
      low[i] = Number.POSITIVE_INFINITY;
      high[i] = Number.NEGATIVE_INFINITY;
    }
    const count = line.length;
    let u1 = line[count - 2 + along] as number;
    let v1 = line[count - 1 - along] as number;
    for (let at = 0; at < count; at += 2) {
      const u2 = line[at + along] as number;
      const v2 = line[at + 1 - along] as number;
      const from = Math.max(first, Math.ceil((Math.min(v1, v2) - origin) / step));
      const to = Math.min(last, Math.floor((Math.max(v1, v2) - origin) / step));
      for (let i = from; i <= to; i += 1) {
        // Rounding can put a line past an edge's end, where an edge nearly along the line would lead far away.
        const share = v1 === v2 ? 0 : Math.min(1, Math.max(0, (origin + i * step - v1) / (v2 - v1)));
        const u = u1 + share * (u2 - u1);
        low[i] = Math.min(low[i] as number, u);
        high[i] = Math.max(high[i] as number, u);
        // An edge along the line covers it from end to end.
        if (v1 === v2) {
          low[i] = Math.min(low[i] as number, u2);
          high[i] = Math.max(high[i] as number, u2);
        }
      }
      u1 = u2;
      v1 = v2;
    }
    for (let i = first; i <= last; i += 1)
      if ((low[i] as number) <= (high[i] as number))
        addSpan(spans[i] as number[], low[i] as number, high[i] as number);
  }
}

/** Where the span that covers a place of a line ends, in the given way; the place itself if none covers it. */
function endOfSpan(spans: readonly number[], at: number, way: 1 | -1): number {
  for (let i = 0; i < spans.length; i += 2)
    if ((spans[i] as number) <= at && (spans[i + 1] as number) >= at)
      return spans[way === 1 ? i + 1 : i] as number;
  return at;
}

/**
 * The union of convex shapes that all lie in one box, as the outlines around it: shapes are added one by one, then the
 * outlines are taken once. What each line of a square grid shares with the union is a set of spans, exactly; an outline crosses the
 * lines at their ends, and goes straight from one crossing to the next. So every crossing lies on a shape's own edge, and between
 * two of them, less than a step apart, a corner is cut. Two parts of the union that touch within a cell are joined; what is
 * smaller than a cell, a gap or a hole, may be passed over.
 * Frame: a plane, right and down. Units: mm. Shapes: outlines as `Outline`; holes come as outlines of their own.
 * Source: own derivation; the march around cells as in W. Lorensen and H. Cline, Marching cubes, 1987, in two dimensions, from
 * memory.
 * Checked: tests/unit/swept/union-outline.test.ts (areas beside counted points and plane geometry, rings).
 */
export class UnionOutline {
  private readonly left: number;
  private readonly top: number;
  private readonly step: number;
  private readonly columns: number;
  private readonly rows: number;
  private readonly across: CoveredLines;
  private readonly down: CoveredLines;

  constructor(box: { left: number; top: number; right: number; bottom: number }, step: number) {
    // A node outside at every edge, so that every outline closes.
    this.left = box.left - step;
    this.top = box.top - step;
    this.step = step;
    this.columns = Math.ceil((box.right - box.left) / step) + 3;
    this.rows = Math.ceil((box.bottom - box.top) / step) + 3;
    this.across = new CoveredLines(this.top, step, this.rows);
    this.down = new CoveredLines(this.left, step, this.columns);
  }

  add(convex: Outline): void {
    if (convex.length < 6) return;
    this.across.cover(convex, 0);
    this.down.cover(convex, 1);
  }

  outlines(): Outline[] {
    const { columns, rows } = this;
    const inside = this.nodesInside();
    // Edges along rows come first, then those down columns. From where an outline leaves a cell's inside to where it is next.
    const next = new Int32Array(2 * columns * rows).fill(-1);
    const edges = [0, 0, 0, 0];
    const corners = [0, 0, 0, 0];
    for (let row = 0; row + 1 < rows; row += 1)
      for (let column = 0; column + 1 < columns; column += 1) {
        const node = row * columns + column;
        corners[0] = inside[node] as number;
        corners[1] = inside[node + 1] as number;
        corners[2] = inside[node + columns + 1] as number;
        corners[3] = inside[node + columns] as number;
        const sum = corners[0] + corners[1] + corners[2] + corners[3];
        if (sum === 0 || sum === 4) continue;
        edges[0] = node;
        edges[1] = columns * rows + node + 1;
        edges[2] = node + columns;
        edges[3] = columns * rows + node;
        for (let i = 0; i < 4; i += 1) {
          // Walking around the cell: where the inside is left, the outline goes to where it is entered again.
          if (corners[i] !== 1 || corners[(i + 1) % 4] !== 0) continue;
          let enters = (i + 1) % 4;
          while (corners[(enters + 1) % 4] === 0) enters = (enters + 1) % 4;
          next[edges[i] as number] = edges[enters] as number;
        }
      }
    const found: Outline[] = [];
    for (let edge = 0; edge < next.length; edge += 1) {
      if (next[edge] === -1) continue;
      const line: Outline = [];
      let at = edge;
      while (next[at] !== -1) {
        this.pushCrossing(at, inside, line);
        const to = next[at] as number;
        next[at] = -1;
        at = to;
      }
      found.push(line);
    }
    return found;
  }

  private nodesInside(): Uint8Array {
    const { columns, rows, left, step } = this;
    const inside = new Uint8Array(columns * rows);
    for (let row = 0; row < rows; row += 1) {
      const spans = this.across.spans[row] as number[];
      for (let i = 0; i < spans.length; i += 2) {
        const from = Math.max(0, Math.ceil(((spans[i] as number) - left) / step));
        const to = Math.min(columns - 1, Math.floor(((spans[i + 1] as number) - left) / step));
        if (from <= to) inside.fill(1, row * columns + from, row * columns + to + 1);
      }
    }
    return inside;
  }

  private pushCrossing(edge: number, inside: Uint8Array, out: Outline): void {
    const { columns, rows, left, top, step } = this;
    const isAcross = edge < columns * rows;
    const node = isAcross ? edge : edge - columns * rows;
    const column = node % columns;
    const row = Math.floor(node / columns);
    const [x, y] = [left + column * step, top + row * step];
    const way = inside[node] === 1 ? 1 : -1;
    if (isAcross) {
      const end = endOfSpan(this.across.spans[row] as number[], way === 1 ? x : x + step, way);
      out.push(Math.min(x + step, Math.max(x, end)), y);
    } else {
      const end = endOfSpan(this.down.spans[column] as number[], way === 1 ? y : y + step, way);
      out.push(x, Math.min(y + step, Math.max(y, end)));
    }
  }
}

/** Twice the area that a closed outline encloses, with a sign by the way it runs around. */
function doubleArea(line: Outline): number {
  let sum = 0;
  for (let i = 0; i < line.length; i += 2) {
    const j = (i + 2) % line.length;
    sum += (line[i] as number) * (line[j + 1] as number) - (line[j] as number) * (line[i + 1] as number);
  }
  return sum;
}

/** Whether an outline is no more than a trace of the grid: smaller than a few cells. */
export function isSpeck(line: Outline, step: number): boolean {
  return Math.abs(doubleArea(line)) < 4 * step * step;
}

/**
 * A closed outline with fewer places, none of those left out farther than `off` from it: by halves at the farthest place.
 * Source: D. Douglas and T. Peucker, Algorithms for the reduction of the number of points, 1973, from memory.
 */
export function thinned(line: Outline, off: number): Outline {
  const count = line.length / 2;
  if (count < 4) return line;
  const kept = new Uint8Array(count);
  // A closed line is halved first at the place farthest from its beginning.
  let far = 0;
  let most = -1;
  for (let i = 1; i < count; i += 1) {
    const apart = Math.hypot(
      (line[2 * i] as number) - (line[0] as number),
      (line[2 * i + 1] as number) - (line[1] as number),
    );
    if (apart > most) [most, far] = [apart, i];
  }
  kept[0] = 1;
  kept[far] = 1;
  const toDo: [number, number][] = [
    [0, far],
    [far, count],
  ];
  for (let span = toDo.pop(); span; span = toDo.pop()) {
    const [from, to] = span;
    const [x1, y1] = [line[2 * from] as number, line[2 * from + 1] as number];
    const end = to % count;
    const [dx, dy] = [(line[2 * end] as number) - x1, (line[2 * end + 1] as number) - y1];
    const length = Math.hypot(dx, dy) || 1;
    let farthest = -1;
    let away = off;
    for (let i = from + 1; i < to; i += 1) {
      const [px, py] = [(line[2 * i] as number) - x1, (line[2 * i + 1] as number) - y1];
      const along = Math.min(length, Math.max(0, (px * dx + py * dy) / length));
      const apart = Math.hypot(px - (along * dx) / length, py - (along * dy) / length);
      if (apart > away) [away, farthest] = [apart, i];
    }
    if (farthest < 0) continue;
    kept[farthest] = 1;
    toDo.push([from, farthest], [farthest, to]);
  }
  return line.filter((_, i) => kept[i >> 1] === 1);
}
