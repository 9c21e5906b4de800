import type { Point } from '../geometry/points.ts';
import { add, scaled } from '../geometry/vectors.ts';
import type { Carrier } from '../layout/index.ts';
import type { ShaftLine } from '../shaft/index.ts';
import type { Disc, Drawing, DrawnBlock, DrawnHull, DrawnPoint, Part, Section } from './drawing.ts';

/** How closed shapes are drawn if nothing else is said: an outline that covers what lies behind it. */
const COVERING = { ink: 'outline', fill: 'paper' } as const;

/** What carries a point: a part of the car, or the member of the steering shaft of that number. */
export type Bearer = Carrier | number;

/** Collects the points and parts of one drawing. Points are spoken of by the number that this hands out. */
export class Pen {
  readonly #points: DrawnPoint[] = [];
  readonly #parts: Part[] = [];
  /** What the points of members turn with. */
  shaft: ShaftLine | undefined;

  point(carrier: Bearer, at: Point): number {
    return this.#points.push(typeof carrier === 'number' ? { member: carrier, at } : { carrier, at }) - 1;
  }

  /** A point at these shares of others, then shifted by mm of the frame's axes. The shares sum to 1. */
  blend(of: readonly (readonly [point: number, weight: number])[], shift: Point = [0, 0, 0]): number {
    return this.#points.push({ of, shift }) - 1;
  }

  /** A disc about `axis` (any length), square to it, with its rim rounded by `round` beyond the radius. */
  disc(carrier: Bearer, at: Point, axis: Point, radius: number, round = 0): Disc {
    return { at: this.point(carrier, at), tip: this.point(carrier, add(at, axis)), radius, round };
  }

  ball(carrier: Bearer, at: Point, radius: number): Disc {
    const point = this.point(carrier, at);
    return { at: point, tip: point, radius: 0, round: radius };
  }

  /** A round bar about `axis` (length 1) from `from` mm to `to` mm along it, seen from `at`. */
  cylinder(carrier: Bearer, at: Point, axis: Point, from: number, to: number, radius: number): DrawnHull {
    return this.hull(
      this.disc(carrier, add(at, scaled(axis, from)), axis, radius),
      this.disc(carrier, add(at, scaled(axis, to)), axis, radius),
    );
  }

  hull(...discs: readonly Disc[]): DrawnHull {
    return { kind: 'body', discs, ...COVERING };
  }

  block(carrier: Carrier, corners: readonly Point[]): DrawnBlock {
    return { kind: 'block', points: corners.map((corner) => this.point(carrier, corner)), ...COVERING };
  }

  section(carrier: Carrier, at: Point, up: Point, out: Point): Section {
    return {
      centre: this.point(carrier, at),
      up: this.point(carrier, add(at, up)),
      out: this.point(carrier, add(at, out)),
    };
  }

  add(part: Part): void {
    this.#parts.push(part);
  }

  drawing(): Drawing {
    return { points: this.#points, parts: this.#parts, shaft: this.shaft };
  }
}
