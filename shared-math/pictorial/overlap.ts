import type { Disc, Section } from '../drawing/drawing.ts';
import type { Solid } from './solids.ts';

/** Directions on paper in which one solid's outline may end before another begins, at most so many for each. */
const WAYS = 3;
/** Numbers of one: right, down, least and most of the own outline along it. */
const NUMBERS = 4;

/**
 * Whether outlines on paper meet. Two convex outlines that do not are parted by a line along a side of one of them; looked
 * at are the sides that outlines have most of: those of a rod or bar, and the edges of a box. Two that are parted by none
 * of these are taken to meet.
 */
export class Overlaps {
  readonly #solids: readonly Solid[];
  readonly #counts: Uint8Array;
  readonly #ways: Float64Array;

  constructor(solids: readonly Solid[]) {
    this.#solids = solids;
    this.#counts = new Uint8Array(solids.length);
    this.#ways = new Float64Array(solids.length * WAYS * NUMBERS);
  }

  /** Takes the outlines as they now are: `rings` has four places for each solid, of its outline's begin and end in `places` first. */
  update(turned: Float64Array, rings: Int32Array, places: Float64Array): void {
    for (let i = 0; i < this.#solids.length; i += 1) {
      const { drawn, first, last } = this.#solids[i] as Solid;
      this.#counts[i] = 0;
      if (drawn.kind === 'body') {
        const discs = drawn.discs;
        this.#addWay(i, turned, (discs[0] as Disc).at, (discs[discs.length - 1] as Disc).at);
      } else if (drawn.kind === 'band') {
        const a = drawn.sections[first] as Section;
        this.#addWay(i, turned, a.centre, (drawn.sections[last] as Section).centre);
        this.#addWay(i, turned, a.centre, a.up);
        this.#addWay(i, turned, a.centre, a.out);
      } else if (drawn.points.length === 8)
        for (let bit = 0; bit < WAYS; bit += 1)
          this.#addWay(i, turned, drawn.points[0] as number, drawn.points[1 << bit] as number);
      for (let way = 0; way < (this.#counts[i] as number); way += 1) this.#measure(i, way, rings, places);
    }
  }

  /** Keeps what is square on paper to the way from one point to another. */
  #addWay(solid: number, turned: Float64Array, from: number, to: number): void {
    const right = (turned[3 * to + 1] as number) - (turned[3 * from + 1] as number);
    const down = (turned[3 * from + 2] as number) - (turned[3 * to + 2] as number);
    if (right * right + down * down < 1e-6) return;
    const at = (solid * WAYS + (this.#counts[solid] as number)) * NUMBERS;
    this.#ways[at] = -down;
    this.#ways[at + 1] = right;
    this.#counts[solid] = (this.#counts[solid] as number) + 1;
  }

  #measure(solid: number, way: number, rings: Int32Array, places: Float64Array): void {
    const at = (solid * WAYS + way) * NUMBERS;
    const right = this.#ways[at] as number;
    const down = this.#ways[at + 1] as number;
    let least = Number.POSITIVE_INFINITY;
    let most = Number.NEGATIVE_INFINITY;
    for (let i = rings[4 * solid] as number; i < (rings[4 * solid + 1] as number); i += 2) {
      const along = right * (places[i] as number) + down * (places[i + 1] as number);
      if (along < least) least = along;
      if (along > most) most = along;
    }
    this.#ways[at + 2] = least;
    this.#ways[at + 3] = most;
  }

  #isParted(by: number, other: number, rings: Int32Array, places: Float64Array): boolean {
    const from = rings[4 * other] as number;
    const to = rings[4 * other + 1] as number;
    for (let way = 0; way < (this.#counts[by] as number); way += 1) {
      const at = (by * WAYS + way) * NUMBERS;
      const right = this.#ways[at] as number;
      const down = this.#ways[at + 1] as number;
      const least = this.#ways[at + 2] as number;
      const most = this.#ways[at + 3] as number;
      // On which side the other's first place lies is where all of it must.
      const first = right * (places[from] as number) + down * (places[from + 1] as number);
      if (first >= least && first <= most) continue;
      const beyond = first > most;
      let i = from + 2;
      for (; i < to; i += 2) {
        const along = right * (places[i] as number) + down * (places[i + 1] as number);
        if (beyond ? along <= most : along >= least) break;
      }
      if (i >= to) return true;
    }
    return false;
  }

  /** Whether the outlines of two solids meet on paper. */
  meet(a: number, b: number, rings: Int32Array, places: Float64Array): boolean {
    return !this.#isParted(a, b, rings, places) && !this.#isParted(b, a, rings, places);
  }
}
