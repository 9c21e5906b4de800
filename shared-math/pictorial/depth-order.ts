import { findParting, parting, roomAlong, TOUCHING } from './parted.ts';
import type { Solid } from './solids.ts';

const UNKNOWN = 0;
const PARTED = 1;
const JOINED = 2;

/** mm by which two joined solids may go further into one another, or less far, before their direction is looked for anew. */
const ANEW = 1.5;

/** What a line of sight must have of the parting direction for it to matter which solid is nearer. */
const SQUARE_ON = 1e-9;

/**
 * Which of two solids is to be drawn first. For each pair that overlap on paper a plane that parts them is looked for once
 * and kept: it does not depend on from where one looks, only on which side of it that is, so turning the car costs no
 * search. Solids that are joined (a ball in its arm) are drawn by the direction in which they are least into one another;
 * shapes of one part that are joined, in the part's own order, as in the other views.
 */
export class DepthOrder {
  readonly #solids: readonly Solid[];
  readonly #elements: Float64Array;
  readonly #known: Uint8Array;
  /** 3 numbers for each pair. */
  readonly #directions: Float32Array;
  /** The room found along it, mm. */
  readonly #rooms: Float32Array;
  /** The order last found, from which the next begins: solids that nothing orders keep their places. */
  readonly order: Int32Array;
  readonly #next: Int32Array;
  /** How much of what lies behind each solid is not drawn yet; below 0 for what is drawn. */
  readonly #behind: Int32Array;
  /** For each solid those that it may cover, as flags. */
  readonly #covers: Uint8Array;

  constructor(solids: readonly Solid[], elements: Float64Array) {
    const count = solids.length;
    this.#solids = solids;
    this.#elements = elements;
    this.#known = new Uint8Array(count * count);
    this.#directions = new Float32Array(3 * count * count);
    this.#rooms = new Float32Array(count * count);
    this.order = Int32Array.from({ length: count }, (_, i) => i);
    this.#next = new Int32Array(count);
    this.#behind = new Int32Array(count);
    this.#covers = new Uint8Array(count * count);
  }

  /** Whether, as last ordered, the first solid lies before the second on paper. */
  covers(near: number, far: number): boolean {
    return this.#covers[near * this.#solids.length + far] === 1;
  }

  /** Forgets what was found for the pairs of solids that have moved, so far as it does not hold any more. */
  moved(moved: Uint8Array): void {
    const count = this.#solids.length;
    for (let a = 0; a < count; a += 1)
      for (let b = a + 1; b < count; b += 1) {
        if (!moved[a] && !moved[b]) continue;
        const pair = a * count + b;
        // One that parted them will most likely do so again, and is asked when it matters.
        if (this.#known[pair] !== UNKNOWN) this.#known[pair] = (this.#known[pair] as number) | STALE;
      }
  }

  /** Which of a pair, a < b, is the nearer one: 1 the first, -1 the second. */
  #nearer(a: number, b: number, tx: number, ty: number, tz: number): number {
    const count = this.#solids.length;
    const pair = a * count + b;
    const first = this.#solids[a] as Solid;
    const second = this.#solids[b] as Solid;
    let known = this.#known[pair] as number;
    const at = 3 * pair;
    if (known & STALE) {
      const room = roomAlong(
        first,
        second,
        this.#elements,
        this.#directions[at] as number,
        this.#directions[at + 1] as number,
        this.#directions[at + 2] as number,
      );
      if (room > -TOUCHING) known = PARTED;
      else if (known === (JOINED | STALE) && Math.abs(room - (this.#rooms[pair] as number)) < ANEW)
        known = JOINED;
      else known = UNKNOWN;
    }
    if (known === UNKNOWN) {
      const room = findParting(first, second, this.#elements);
      known = room > -TOUCHING ? PARTED : JOINED;
      this.#directions.set(parting, at);
      this.#rooms[pair] = room;
    }
    this.#known[pair] = known;
    if (known === JOINED && first.part === second.part) return -1;
    const along =
      tx * (this.#directions[at] as number) +
      ty * (this.#directions[at + 1] as number) +
      tz * (this.#directions[at + 2] as number);
    return along > SQUARE_ON ? 1 : -1;
  }

  /**
   * Orders all solids, the farthest first, as seen along `toward` (length 1, the car's axes). `boxes` has 4 numbers for each:
   * left, top, right and bottom of what it covers on paper; `meet` tells whether two whose boxes do cover common paper.
   */
  sort(
    boxes: Float64Array,
    toward: readonly [number, number, number],
    meet: (a: number, b: number) => boolean,
  ): Int32Array {
    const count = this.#solids.length;
    this.#covers.fill(0);
    for (let a = 0; a < count; a += 1) {
      const left = boxes[4 * a] as number;
      const top = boxes[4 * a + 1] as number;
      const right = boxes[4 * a + 2] as number;
      const bottom = boxes[4 * a + 3] as number;
      for (let b = a + 1; b < count; b += 1) {
        if (
          (boxes[4 * b] as number) > right ||
          (boxes[4 * b + 2] as number) < left ||
          (boxes[4 * b + 1] as number) > bottom ||
          (boxes[4 * b + 3] as number) < top
        )
          continue;
        if (!meet(a, b)) continue;
        if (this.#nearer(a, b, toward[0], toward[1], toward[2]) > 0) this.#covers[a * count + b] = 1;
        else this.#covers[b * count + a] = 1;
      }
    }
    return this.#drawnInOrder();
  }

  /**
   * Takes what nothing undrawn lies behind, again and again, in the order drawn before. If only rings are left, one is opened
   * where it holds by joined solids alone, which of them is the nearer being a matter of taste; else at the least place.
   */
  #drawnInOrder(): Int32Array {
    const count = this.#solids.length;
    this.#behindCounts();
    for (let written = 0; written < count; written += 1) {
      let best = -1;
      let least = Number.POSITIVE_INFINITY;
      for (let i = 0; i < count; i += 1) {
        const solid = this.order[i] as number;
        const behind = this.#behind[solid] as number;
        if (behind < 0 || behind >= least) continue;
        best = solid;
        least = behind;
        if (behind === 0) break;
      }
      this.#behind[best] = -1;
      this.#next[written] = best;
      for (let near = 0; near < count; near += 1) {
        if ((this.#behind[near] as number) < 0) continue;
        this.#behind[near] = (this.#behind[near] as number) - this.#weightOf(near, best);
      }
    }
    this.order.set(this.#next);
    return this.order;
  }

  /** How much speaks against drawing `near` before `far`. */
  #weightOf(near: number, far: number): number {
    const count = this.#solids.length;
    if (this.#covers[near * count + far] === 0) return 0;
    return this.#known[near < far ? near * count + far : far * count + near] === PARTED ? count : 1;
  }

  #behindCounts(): void {
    const count = this.#solids.length;
    for (let near = 0; near < count; near += 1) {
      let sum = 0;
      for (let far = 0; far < count; far += 1) sum += this.#weightOf(near, far);
      this.#behind[near] = sum;
    }
  }
}

/** Flag of a pair whose solids have moved since it was looked at. */
const STALE = 4;
