import { INK } from './colours.ts';
import type { Points, PrintPen, StrokeStyle } from './print-pen.ts';

// Where a part goes on beyond the frame of its view, the frame's edge is a break: a thin straight line with zigzags
// (ISO 128-2, line 01.1.19; from memory), so that nobody takes the cut for the part's end.

const BREAK: StrokeStyle = { width: 0.18, colour: INK, cap: 'butt' };
/** mm that a break line stands out beyond the part, and that a part must go on beyond the frame to be broken. */
const BEYOND = 1.4;
const LEAST = 0.3;
/** mm from one zigzag to the next, and half the width and the height of one. */
const BETWEEN = 32;
const ZIGZAG = { half: 1.1, reach: 1.5 } as const;

/** A stretch of an edge, mm along it. */
type Stretch = readonly [from: number, to: number];

/** A view's frame on the page: left, top, right, bottom, mm. */
type Frame = readonly [left: number, top: number, right: number, bottom: number];

/**
 * The stretches of a straight line across the page that lie inside an outline. `axis` 0 for a line that stands at x = `at`,
 * 1 for one that lies at y = `at`. Sorted, from even-odd crossings. mm.
 */
export function stretchesInside(points: Points, axis: 0 | 1, at: number): Stretch[] {
  const along = axis === 0 ? 1 : 0;
  const crossings: number[] = [];
  const count = points.length / 2;
  for (let i = 0; i < count; i += 1) {
    const j = (i + 1) % count;
    const [a, b] = [points[2 * i + axis] as number, points[2 * j + axis] as number];
    if (a <= at === b <= at) continue;
    const [p, q] = [points[2 * i + along] as number, points[2 * j + along] as number];
    crossings.push(p + ((at - a) / (b - a)) * (q - p));
  }
  crossings.sort((a, b) => a - b);
  const found: Stretch[] = [];
  for (let i = 0; i + 1 < crossings.length; i += 2)
    found.push([crossings[i] as number, crossings[i + 1] as number]);
  return found;
}

/** Stretches that overlap or touch, as one. */
function merged(stretches: readonly Stretch[]): Stretch[] {
  const found: [number, number][] = [];
  for (const [from, to] of stretches.toSorted((a, b) => a[0] - b[0])) {
    const last = found.at(-1);
    if (last && from <= last[1] + 2 * BEYOND) last[1] = Math.max(last[1], to);
    else found.push([from, to]);
  }
  return found;
}

/** Places along and across a break line: straight, with a zigzag in the middle, or with several on a long one. */
function zigzag([from, to]: Stretch): [along: number, across: number][] {
  const count = Math.max(1, Math.round((to - from) / BETWEEN));
  const line: [number, number][] = [[from - BEYOND, 0]];
  for (let i = 0; i < count; i += 1) {
    const at = from + ((i + 0.5) / count) * (to - from);
    const { half, reach } = ZIGZAG;
    line.push([at - half, 0], [at - half / 3, -reach], [at + half / 3, reach], [at + half, 0]);
  }
  line.push([to + BEYOND, 0]);
  return line;
}

/** Gathers what a frame cuts off, part by part, and draws the break lines. */
export class Breaks {
  readonly #frame: Frame;
  readonly #cut: readonly [Stretch[], Stretch[], Stretch[], Stretch[]] = [[], [], [], []];

  constructor(frame: Frame) {
    this.#frame = frame;
  }

  /** Notes where a closed outline goes on beyond the frame. */
  note(points: Points): void {
    this.#frame.forEach((edge, i) => {
      const axis = i % 2 === 0 ? 0 : 1;
      const outward = i < 2 ? -1 : 1;
      const [low, high] = axis === 0 ? [this.#frame[1], this.#frame[3]] : [this.#frame[0], this.#frame[2]];
      for (const [from, to] of stretchesInside(points, axis, edge + outward * LEAST))
        if (to > low && from < high) this.#cut[i]?.push([Math.max(from, low), Math.min(to, high)]);
    });
  }

  /** Whether anything was cut off. */
  get any(): boolean {
    return this.#cut.some((stretches) => stretches.length > 0);
  }

  draw(pen: PrintPen): void {
    this.#cut.forEach((stretches, i) => {
      const edge = this.#frame[i] as number;
      for (const stretch of merged(stretches)) {
        const line = zigzag(stretch).flatMap(([along, across]) =>
          i % 2 === 0 ? [edge + across, along] : [along, edge + across],
        );
        pen.stroke(line, BREAK);
      }
    });
  }
}
