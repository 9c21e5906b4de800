import type { ViewPoint } from '../drawing/index.ts';
import type { DrawnLayer, DrawnLine } from './read-drawing.ts';

export type SnapKind = 'end' | 'centre' | 'crossing';

/** A spot of a drawing that draws a dragged point to itself; right and down in the view's own plane, mm. */
export interface SnapSpot {
  readonly kind: SnapKind;
  readonly place: ViewPoint;
}

/** Segments near the place whose crossings are looked for: more than that are a picture, not lines to build from. */
const CROSSING_MOST = 40;

const CELL = 50;

/**
 * The spots of a drawing's layers that a point may be drawn to, found by cells of 50 mm so that a step of a drag asks few:
 * ends, centres, and where straight lines near the place cross.
 */
export class SnapIndex {
  readonly #spots = new Map<string, SnapSpot[]>();
  readonly #segments = new Map<string, number[]>();

  constructor(layers: readonly DrawnLayer[], toView: (x: number, y: number) => ViewPoint) {
    for (const { lines, ends, centres } of layers) {
      for (const [list, kind] of [
        [ends, 'end'],
        [centres, 'centre'],
      ] as const)
        for (let i = 0; i + 1 < list.length; i += 2) {
          const place = toView(list[i] as number, list[i + 1] as number);
          this.#put(this.#spots, this.#cell(place), { kind, place });
        }
      for (const line of lines) this.#addSegments(line, toView);
    }
  }

  #cell([x, y]: ViewPoint): string {
    return `${Math.floor(x / CELL)} ${Math.floor(y / CELL)}`;
  }

  #put<Value>(map: Map<string, Value[]>, key: string, ...values: Value[]): void {
    const list = map.get(key);
    if (list) list.push(...values);
    else map.set(key, values);
  }

  #addSegments({ points, closed }: DrawnLine, toView: (x: number, y: number) => ViewPoint): void {
    const count = points.length / 2;
    // Chords of curves cross nothing that anybody meant.
    if (count > 12) return;
    for (let i = 0; i < (closed ? count : count - 1); i += 1) {
      const j = (i + 1) % count;
      const a = toView(points[2 * i] as number, points[2 * i + 1] as number);
      const b = toView(points[2 * j] as number, points[2 * j + 1] as number);
      const steps = Math.min(400, Math.ceil((2 * Math.hypot(b[0] - a[0], b[1] - a[1])) / CELL) + 1);
      let last = '';
      for (let step = 0; step <= steps; step += 1) {
        const share = step / steps;
        const cell = this.#cell([a[0] + share * (b[0] - a[0]), a[1] + share * (b[1] - a[1])]);
        if (cell !== last) this.#put(this.#segments, cell, a[0], a[1], b[0], b[1]);
        last = cell;
      }
    }
  }

  /** The nearest spot within a reach, mm; an end or a centre goes before a crossing. Undefined if there is none. */
  nearest(place: ViewPoint, reach: number): SnapSpot | undefined {
    let best: SnapSpot | undefined;
    let least = Math.min(reach, CELL);
    const take = (spot: SnapSpot) => {
      const away = Math.hypot(spot.place[0] - place[0], spot.place[1] - place[1]);
      if (away < least) [best, least] = [spot, away];
    };
    for (const key of this.#around(place)) for (const spot of this.#spots.get(key) ?? []) take(spot);
    if (best) return best;
    for (const spot of this.#crossings(place)) take(spot);
    return best;
  }

  *#around([x, y]: ViewPoint): Generator<string> {
    for (const right of [-CELL, 0, CELL])
      for (const down of [-CELL, 0, CELL]) yield this.#cell([x + right, y + down]);
  }

  *#crossings(place: ViewPoint): Generator<SnapSpot> {
    const near = this.#segments.get(this.#cell(place)) ?? [];
    const count = Math.min(near.length / 4, CROSSING_MOST);
    for (let i = 0; i < count; i += 1)
      for (let j = i + 1; j < count; j += 1) {
        const [ax, ay, bx, by] = near.slice(4 * i, 4 * i + 4) as [number, number, number, number];
        const [cx, cy, dx, dy] = near.slice(4 * j, 4 * j + 4) as [number, number, number, number];
        const det = (bx - ax) * (dy - cy) - (by - ay) * (dx - cx);
        if (Math.abs(det) < 1e-9) continue;
        const s = ((cx - ax) * (dy - cy) - (cy - ay) * (dx - cx)) / det;
        const t = ((cx - ax) * (by - ay) - (cy - ay) * (bx - ax)) / det;
        if (s >= 0 && s <= 1 && t >= 0 && t <= 1)
          yield { kind: 'crossing', place: [ax + s * (bx - ax), ay + s * (by - ay)] };
      }
  }
}

/** The line of a drawing nearest to a place within a reach, mm in the view's own plane; undefined if there is none. */
export function nearestLine(
  layers: readonly DrawnLayer[],
  toView: (x: number, y: number) => ViewPoint,
  [x, y]: ViewPoint,
  reach: number,
): DrawnLine | undefined {
  let best: DrawnLine | undefined;
  let least = reach;
  for (const { lines } of layers)
    for (const line of lines) {
      const count = line.points.length / 2;
      let before: ViewPoint | undefined;
      for (let i = 0; i <= (line.closed ? count : count - 1); i += 1) {
        const at = i % count;
        const place = toView(line.points[2 * at] as number, line.points[2 * at + 1] as number);
        if (before) {
          const [ex, ey] = [place[0] - before[0], place[1] - before[1]];
          const share = Math.max(
            0,
            Math.min(1, ((x - before[0]) * ex + (y - before[1]) * ey) / (ex * ex + ey * ey || 1)),
          );
          const away = Math.hypot(x - before[0] - share * ex, y - before[1] - share * ey);
          if (away < least) [best, least] = [line, away];
        }
        before = place;
      }
    }
  return best;
}
