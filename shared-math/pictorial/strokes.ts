/** What a stroke is, for the pen that draws it. */
export type StrokeKind =
  /** A face to be filled, so that it covers what was drawn before it. */
  | 'face'
  /** The edge of a solid against what lies behind it. */
  | 'outline'
  /** A line within an outline: an edge between two faces, a rim. */
  | 'edge'
  /** A broken line, of what is no part: the ground. */
  | 'broken'
  /** A piece of an outline that something nearer covers: drawn thinner, over that. */
  | 'behind'
  /** A curve in space that somebody laid into the picture. */
  | 'curve';

export const STROKE_KINDS: readonly StrokeKind[] = ['face', 'outline', 'edge', 'broken', 'behind', 'curve'];

const ROOM_STROKES = 512;
const ROOM_NUMBERS = 16384;

/** The strokes of one picture, in the order in which they are drawn. Reused from picture to picture: nothing is allocated but to grow. */
export class Strokes {
  /** How many there are. */
  count = 0;
  /** Place of each one's kind in `STROKE_KINDS`. */
  kinds = new Uint8Array(ROOM_STROKES);
  /** Place of its part in the drawing; of a curve its place among the curves. */
  parts = new Int32Array(ROOM_STROKES);
  closed = new Uint8Array(ROOM_STROKES);
  /** How much a face is turned from the light: 0 full on, 1 away from it. */
  shades = new Float32Array(ROOM_STROKES);
  /** Where its places begin and end in `places`. */
  from = new Int32Array(ROOM_STROKES);
  to = new Int32Array(ROOM_STROKES);
  /** Where the second ring of a face begins, which is left open; below 0 if there is none. */
  opening = new Int32Array(ROOM_STROKES);
  /** Right and down by turns, mm of paper from where the car's origin is seen. */
  places = new Float64Array(ROOM_NUMBERS);
  #end = 0;

  clear(): void {
    this.count = 0;
    this.#end = 0;
  }

  begin(kind: number, part: number, closed: boolean, shade = 0): void {
    if (this.count === this.kinds.length) this.#growStrokes();
    const at = this.count;
    this.kinds[at] = kind;
    this.parts[at] = part;
    this.closed[at] = closed ? 1 : 0;
    this.shades[at] = shade;
    this.from[at] = this.#end;
    this.to[at] = this.#end;
    this.opening[at] = -1;
    this.count += 1;
  }

  /** Begins a closed stroke along the same places as the one before it. */
  beginAlong(kind: number): void {
    const before = this.count - 1;
    this.begin(kind, this.parts[before] as number, true);
    this.from[this.count - 1] = this.from[before] as number;
    this.to[this.count - 1] = this.to[before] as number;
  }

  add(right: number, down: number): void {
    if (this.#end + 2 > this.places.length) this.#growPlaces(this.#end + 2);
    this.places[this.#end] = right;
    this.places[this.#end + 1] = down;
    this.#end += 2;
    this.to[this.count - 1] = this.#end;
  }

  /** Adds places of the same order, those from `from` up to `to` of `places`. */
  addAll(places: ArrayLike<number>, from: number, to: number): void {
    const end = this.#end + to - from;
    if (end > this.places.length) this.#growPlaces(end);
    const own = this.places;
    for (let i = from, at = this.#end; i < to; i += 1, at += 1) own[at] = places[i] as number;
    this.#end = end;
    this.to[this.count - 1] = end;
  }

  /** From here on the stroke begun last is the ring of its opening. */
  open(): void {
    this.opening[this.count - 1] = this.#end;
  }

  #growPlaces(least: number): void {
    const more = new Float64Array(Math.max(2 * this.places.length, least));
    more.set(this.places);
    this.places = more;
  }

  #growStrokes(): void {
    const size = 2 * this.kinds.length;
    const grown = <Numbers extends Uint8Array | Int32Array | Float32Array>(to: Numbers, from: Numbers) => {
      to.set(from);
      return to;
    };
    this.kinds = grown(new Uint8Array(size), this.kinds);
    this.parts = grown(new Int32Array(size), this.parts);
    this.closed = grown(new Uint8Array(size), this.closed);
    this.shades = grown(new Float32Array(size), this.shades);
    this.from = grown(new Int32Array(size), this.from);
    this.to = grown(new Int32Array(size), this.to);
    this.opening = grown(new Int32Array(size), this.opening);
  }
}
