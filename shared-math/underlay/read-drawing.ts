import type { Outcome } from '../outcome.ts';

// A drawing that was made elsewhere, taken as geometry alone: lines by layer, in the drawing's own unit, right and up.

/** A line through places: x, y, x, y …; of a closed one the first place is not repeated. */
export interface DrawnLine {
  readonly points: readonly number[];
  readonly closed: boolean;
}

export interface DrawnLayer {
  readonly name: string;
  /** Whether the drawing itself shows it. */
  readonly shown: boolean;
  readonly lines: readonly DrawnLine[];
  /** Where straight lines and arcs end, and where circles and arcs have their centres: x, y, x, y … */
  readonly ends: readonly number[];
  readonly centres: readonly number[];
}

export interface ReadDrawing {
  /** mm of one of its units; undefined if it does not say. */
  readonly unit: number | undefined;
  readonly layers: readonly DrawnLayer[];
  /** What it holds besides, by what it is: texts, hatches, what is turned in space; how many of each. */
  readonly left: readonly (readonly [what: string, count: number])[];
}

/** The failure ends a sentence that begins with the file's name. */
export type DrawingOutcome = Outcome<ReadDrawing, string>;

/** Characters of a drawing's file, places of its lines, layers, and how deeply parts of it may stand within one another. */
export const DRAWING_TEXT_MAX = 16_000_000;
export const PLACES_MAX = 200_000;
const LAYERS_MAX = 200;
export const DEPTH_MAX = 12;

/** Why a drawing was not taken, thrown from deep within and caught at the door. */
export class DrawingRefusal extends Error {}

/** rad between two places on an arc: a circle is drawn by 72. */
const ARC_STEP = Math.PI / 36;

/** Straight on or mirrored, turned, larger or smaller, moved: x' = a x + c y + e, y' = b x + d y + f. */
export type Transform = readonly [a: number, b: number, c: number, d: number, e: number, f: number];

export const UNMOVED: Transform = [1, 0, 0, 1, 0, 0];

/** First the second, then the first. */
export function after(outer: Transform, inner: Transform): Transform {
  const [a, b, c, d, e, f] = outer;
  const [p, q, r, s, t, u] = inner;
  return [a * p + c * q, b * p + d * q, a * r + c * s, b * r + d * s, a * t + c * u + e, b * t + d * u + f];
}

interface OpenLayer {
  shown: boolean;
  readonly lines: DrawnLine[];
  readonly ends: number[];
  readonly centres: number[];
}

/** Collects the lines of a drawing, each moved to where it belongs, and holds it to its bounds. */
export class DrawingCollector {
  readonly #layers = new Map<string, OpenLayer>();
  readonly #left = new Map<string, number>();
  #places = 0;

  layer(name: string, shown?: boolean): OpenLayer {
    let layer = this.#layers.get(name);
    if (!layer) {
      if (this.#layers.size >= LAYERS_MAX) throw new DrawingRefusal(`it has more than ${LAYERS_MAX} layers`);
      layer = { shown: shown ?? true, lines: [], ends: [], centres: [] };
      this.#layers.set(name, layer);
    } else if (shown !== undefined) layer.shown = shown;
    return layer;
  }

  leave(what: string): void {
    this.#left.set(what, (this.#left.get(what) ?? 0) + 1);
  }

  #count(places: number): void {
    this.#places += places;
    if (this.#places > PLACES_MAX)
      throw new DrawingRefusal(`it holds more than ${PLACES_MAX} places; save only the frame's lines`);
  }

  /** A line through places of the drawing; its corners are ends unless it is a curve drawn by chords. */
  line(name: string, to: Transform, points: readonly number[], closed: boolean, curved = false): void {
    if (points.length < 4) return;
    this.#count(points.length / 2);
    const layer = this.layer(name);
    const moved: number[] = [];
    for (let i = 0; i + 1 < points.length; i += 2) {
      const [x, y] = [points[i] as number, points[i + 1] as number];
      const at = [to[0] * x + to[2] * y + to[4], to[1] * x + to[3] * y + to[5]];
      if (!at.every((value) => Number.isFinite(value) && Math.abs(value) < 1e9)) {
        this.leave('places beyond all measure');
        return;
      }
      moved.push(...at);
    }
    // A line of no length is none.
    if (moved.every((value, i) => value === moved[i % 2])) return;
    layer.lines.push({ points: moved, closed });
    if (!curved) for (const value of moved) layer.ends.push(value);
    else if (!closed) layer.ends.push(...moved.slice(0, 2), ...moved.slice(-2));
  }

  end(name: string, to: Transform, x: number, y: number): void {
    this.#count(1);
    this.layer(name).ends.push(to[0] * x + to[2] * y + to[4], to[1] * x + to[3] * y + to[5]);
  }

  /** centre + u cos t + v sin t, from t on by `sweep`. */
  arc(
    name: string,
    to: Transform,
    [cx, cy, ux, uy, vx, vy]: readonly [number, number, number, number, number, number],
    from: number,
    sweep: number,
  ): void {
    const whole = Math.abs(sweep) > 2 * Math.PI - 1e-9;
    const count = Math.max(1, Math.ceil(Math.abs(sweep) / ARC_STEP));
    const points: number[] = [];
    for (let i = 0; i <= (whole ? count - 1 : count); i += 1) {
      const t = from + (sweep * i) / count;
      points.push(cx + ux * Math.cos(t) + vx * Math.sin(t), cy + uy * Math.cos(t) + vy * Math.sin(t));
    }
    this.line(name, to, points, whole, true);
    this.layer(name).centres.push(to[0] * cx + to[2] * cy + to[4], to[1] * cx + to[3] * cy + to[5]);
  }

  drawing(unit: number | undefined): ReadDrawing {
    const layers = [...this.#layers]
      .map(([name, layer]): DrawnLayer => ({ name, ...layer }))
      .filter(({ lines, ends }) => lines.length > 0 || ends.length > 0);
    if (layers.length === 0) throw new DrawingRefusal('it holds no lines that can be laid under a view');
    return { unit, layers, left: [...this.#left] };
  }
}
