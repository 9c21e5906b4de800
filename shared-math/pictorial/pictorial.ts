import type { Disc, Drawing, DrawnHull, Line, Role, Shape } from '../drawing/drawing.ts';
import { placeAtRide, roomFor } from '../drawing/index.ts';
import { compass, silhouette } from '../drawing/outline.ts';
import { drawBar, shadeOf, writeCorners } from './bars.ts';
import { drawBox } from './boxes.ts';
import { alone, type Cap, capsOf } from './caps.ts';
import { common, span, within, wrap } from './clip.ts';
import { DepthOrder } from './depth-order.ts';
import { Overlaps } from './overlap.ts';
import { elementsFor, inPictorial, type Solid, solidsOf, takeShapes, writeElements } from './solids.ts';
import { STROKE_KINDS, Strokes } from './strokes.ts';
import { axesOf, type Turn, type TurnAxes, turnPoints } from './turn.ts';

const KIND = {
  face: STROKE_KINDS.indexOf('face'),
  outline: STROKE_KINDS.indexOf('outline'),
  edge: STROKE_KINDS.indexOf('edge'),
  broken: STROKE_KINDS.indexOf('broken'),
  behind: STROKE_KINDS.indexOf('behind'),
  curve: STROKE_KINDS.indexOf('curve'),
} as const;

/** Roles whose hidden pieces are drawn, thinner: what the reader follows from the handwheel to the wheels. */
const FOLLOWED: ReadonlySet<Role> = new Set(['steering']);

/** mm: a point that has moved by less stays, and with it what is known of its neighbours. */
const STILL = 1e-4;
/** mm of paper at full size that an outline may be off a true round one where nothing else is asked. */
const FINE = 0.4;
/**
 * Directions of the compass that silhouettes are asked in: by steps, so that few tables are kept. None is level or upright on
 * paper: along an upright edge, as kingpins and boxes have, either end would do, and rounding choose.
 */
const COMPASSES = [10, 14, 20, 28, 40, 56, 80].map((count) => compass(count, 0.3));
/** mm: the arrow at the front end of the ground's middle line, half as wide; and how much of that line is drawn. */
export const ARROW = { long: 110, half: 36 } as const;
const GROUND_LONG = 760;

/** A curve in space that is laid into the picture: 3 numbers for each of its points, mm, the car's axes. */
export interface SpaceCurve {
  readonly id: string;
  readonly points: Float64Array;
}

/**
 * The pictorial: a drawing in space as the lines of one axonometric picture. Made once for a drawing's structure and used
 * for every pose and turn; allocates only to grow.
 *
 * The car is looked at from far off (ISO 5456-3), so lengths on paper are lengths of the car along the paper: a drawing
 * scale multiplies all places. What is solid is drawn face by face from the farthest to the nearest, so that a pen which
 * fills shows what is hidden as hidden; of what the handwheel moves the hidden pieces follow, to be drawn thinner over it.
 */
export class Pictorial {
  #drawing: Drawing;
  readonly #solids: Solid[];
  readonly #elements: Float64Array;
  readonly #depth: DepthOrder;
  readonly #overlaps: Overlaps;
  readonly #meet = (a: number, b: number) => this.#overlaps.meet(a, b, this.#rings, this.#places);
  #caps: Cap[][] = [];
  #openings: ([DrawnHull, DrawnHull] | undefined)[] = [];
  readonly #turned: Float64Array;
  readonly #moved: Uint8Array;
  readonly #boxes: Float64Array;
  /** Where the ring of each solid, and that of its opening, begins and ends in `#places`. */
  #rings: Int32Array;
  #places = new Float64Array(8192);
  #end = 0;
  /** The same of the picture before, from which the outlines of what stays are taken over. */
  #ringsBefore: Int32Array;
  #placesBefore = new Float64Array(8192);
  /** Radius and rounding of each disc. */
  readonly #sizes: number[] = [];
  /** Whether there is a picture before, and how it was looked at. */
  #outlined = false;
  #azimuth = 0;
  #elevation = 0;
  #off = 0;
  readonly #strokes = new Strokes();
  readonly #corners = new Float64Array(512);
  readonly #wrapped = new Float64Array(512);
  readonly #spare = new Float64Array(1024);
  readonly #line: number[] = [];
  readonly #far: number[] = [];
  /** The tip of the arrow to the front, and which way it points, right and down; mm of paper. Its word goes beyond it. */
  readonly front = { right: 0, down: 0, wayRight: -1, wayDown: 0 };

  constructor(drawing: Drawing) {
    const placed = roomFor(drawing);
    placeAtRide(drawing, placed);
    this.#drawing = drawing;
    this.#solids = solidsOf(drawing, placed);
    this.#elements = elementsFor(this.#solids);
    for (const solid of this.#solids) writeElements(solid, placed, this.#elements, 0);
    this.#sizesChanged();
    this.#takeRims();
    this.#depth = new DepthOrder(this.#solids, this.#elements);
    this.#overlaps = new Overlaps(this.#solids);
    this.#turned = new Float64Array(placed.length);
    this.#moved = new Uint8Array(this.#solids.length);
    this.#boxes = new Float64Array(4 * this.#solids.length);
    this.#rings = new Int32Array(4 * this.#solids.length);
    this.#ringsBefore = new Int32Array(4 * this.#solids.length);
  }

  #takeRims(): void {
    this.#caps = this.#solids.map((solid) => capsOf(solid, this.#elements));
    this.#openings = this.#solids.map(({ drawn }) =>
      drawn.kind === 'body' && drawn.opening ? [alone(drawn.opening[0]), alone(drawn.opening[1])] : undefined,
    );
  }

  /**
   * Draws another drawing of the same structure from now on, as an edit makes it; tells whether it could, else one is to be
   * made anew. What is known of the order of solids is kept.
   */
  take(drawing: Drawing): boolean {
    if (drawing === this.#drawing) return true;
    if (!takeShapes(this.#solids, this.#drawing, drawing)) return false;
    this.#drawing = drawing;
    if (this.#sizesChanged()) {
      this.#takeRims();
      this.#outlined = false;
    }
    return true;
  }

  /** Whether a disc is of another size than when rims were taken; notes those that there are. */
  #sizesChanged(): boolean {
    let changed = false;
    let at = 0;
    for (let i = 0; i < this.#solids.length; i += 1) {
      const { drawn } = this.#solids[i] as Solid;
      if (drawn.kind !== 'body') continue;
      for (let disc = 0; disc < drawn.discs.length; disc += 1) {
        const { radius, round } = drawn.discs[disc] as Disc;
        if (this.#sizes[at] !== radius || this.#sizes[at + 1] !== round) changed = true;
        this.#sizes[at] = radius;
        this.#sizes[at + 1] = round;
        at += 2;
      }
    }
    return changed;
  }

  /** How many solids are ordered. */
  get size(): number {
    return this.#solids.length;
  }

  /**
   * The strokes of the picture, in drawing order; the same object each time. `placed` as `placeInPose` writes it for the
   * drawing this was made for; `off` is how many mm of paper, at full size, a round outline may be off.
   */
  draw(placed: Float64Array, turn: Turn, curves: readonly SpaceCurve[] = [], off = FINE): Strokes {
    const axes = axesOf(turn);
    let any = false;
    for (let i = 0; i < this.#solids.length; i += 1) {
      const moved = writeElements(this.#solids[i] as Solid, placed, this.#elements, STILL);
      this.#moved[i] = moved ? 1 : 0;
      any ||= moved;
    }
    if (any) this.#depth.moved(this.#moved);
    turnPoints(axes, placed, this.#turned);
    const same =
      this.#outlined &&
      turn.azimuth === this.#azimuth &&
      turn.elevation === this.#elevation &&
      off === this.#off;
    this.#azimuth = turn.azimuth;
    this.#elevation = turn.elevation;
    this.#off = off;
    this.#outline(off, same);
    this.#outlined = true;
    this.#overlaps.update(this.#turned, this.#rings, this.#places);
    const order = this.#depth.sort(this.#boxes, axes.toward as readonly [number, number, number], this.#meet);
    const strokes = this.#strokes;
    strokes.clear();
    this.#drawGround(axes, placed);
    for (let i = 0; i < order.length; i += 1) this.#drawSolid(order[i] as number, off);
    for (let i = 0; i < order.length; i += 1) this.#drawBehind(order[i] as number);
    for (let i = 0; i < curves.length; i += 1) this.#drawCurve(i, curves[i] as SpaceCurve, axes);
    return strokes;
  }

  /** The places of the compass that a silhouette of this radius, mm, is asked in. A chord of n is off by r (1 - cos(π/n)). */
  #directions(radius: number, off: number): Float64Array {
    const count = radius > off ? Math.PI / Math.sqrt((2 * off) / radius) : 0;
    for (const table of COMPASSES) if (table.length >= 2 * count) return table;
    return COMPASSES[COMPASSES.length - 1] as Float64Array;
  }

  #silhouette(body: DrawnHull, off: number, out: number[]): void {
    let largest = 0;
    for (const { radius, round } of body.discs) largest = Math.max(largest, radius + round);
    silhouette(body, this.#turned, 'front', out, this.#directions(largest, off));
  }

  #keep(numbers: ArrayLike<number>, count: number): void {
    if (this.#end + count > this.#places.length) {
      const more = new Float64Array(2 * this.#places.length + count);
      more.set(this.#places);
      this.#places = more;
    }
    for (let i = 0; i < count; i += 1) this.#places[this.#end + i] = numbers[i] as number;
    this.#end += count;
  }

  /** Writes the convex outline of each solid, its opening's, and what it covers; what has not moved is taken over if `same`. */
  #outline(off: number, same: boolean): void {
    [this.#rings, this.#ringsBefore] = [this.#ringsBefore, this.#rings];
    [this.#places, this.#placesBefore] = [this.#placesBefore, this.#places];
    this.#end = 0;
    const places = this.#corners;
    for (let i = 0; i < this.#solids.length; i += 1) {
      if (same && !this.#moved[i]) {
        this.#takeOver(i);
        continue;
      }
      const { drawn, first, last } = this.#solids[i] as Solid;
      this.#rings[4 * i] = this.#end;
      if (drawn.kind === 'body') {
        this.#silhouette(drawn, off, this.#line);
        this.#keep(this.#line, this.#line.length);
      } else {
        let count = 0;
        if (drawn.kind === 'band') count = writeCorners(drawn, first, last, this.#turned, places);
        else
          for (const point of drawn.points) {
            places[2 * count] = this.#turned[3 * point + 1] as number;
            places[2 * count + 1] = -(this.#turned[3 * point + 2] as number);
            count += 1;
          }
        this.#keep(this.#wrapped, wrap(places, count, this.#wrapped));
      }
      this.#rings[4 * i + 1] = this.#end;
      this.#rings[4 * i + 2] = this.#end;
      const opening = this.#openings[i];
      if (opening) {
        this.#silhouette(opening[0], off, this.#line);
        this.#silhouette(opening[1], off, this.#far);
        this.#keep(this.#wrapped, common(this.#line, this.#far, this.#spare, this.#wrapped));
      }
      this.#rings[4 * i + 3] = this.#end;
      this.#writeBox(i);
    }
  }

  /** Takes the outline of a solid over from the picture before. */
  #takeOver(solid: number): void {
    const from = this.#ringsBefore[4 * solid] as number;
    const to = this.#ringsBefore[4 * solid + 3] as number;
    const at = this.#end - from;
    this.#keep(this.#placesBefore.subarray(from, to), to - from);
    for (let i = 4 * solid; i < 4 * solid + 4; i += 1) this.#rings[i] = (this.#ringsBefore[i] as number) + at;
  }

  #writeBox(solid: number): void {
    let left = Number.POSITIVE_INFINITY;
    let top = Number.POSITIVE_INFINITY;
    let right = Number.NEGATIVE_INFINITY;
    let bottom = Number.NEGATIVE_INFINITY;
    for (let at = this.#rings[4 * solid] as number; at < (this.#rings[4 * solid + 1] as number); at += 2) {
      const x = this.#places[at] as number;
      const y = this.#places[at + 1] as number;
      if (x < left) left = x;
      if (x > right) right = x;
      if (y < top) top = y;
      if (y > bottom) bottom = y;
    }
    this.#boxes[4 * solid] = left;
    this.#boxes[4 * solid + 1] = top;
    this.#boxes[4 * solid + 2] = right;
    this.#boxes[4 * solid + 3] = bottom;
  }

  /** The ground: a line under the tyres, one along the middle of the car from a little behind them, and its arrow to the front. */
  #drawGround(axes: TurnAxes, placed: Float64Array): void {
    const { parts } = this.#drawing;
    for (let index = 0; index < parts.length; index += 1) {
      const { shapes, role } = parts[index] as Drawing['parts'][number];
      for (let i = 0; i < shapes.length; i += 1) {
        const shape = shapes[i] as Shape;
        if (shape.kind !== 'line' || !inPictorial(shape)) continue;
        if (role === 'ground' && shape.views?.includes('side')) this.#drawMiddle(axes, placed, index, shape);
        else {
          this.#strokes.begin(KIND.broken, index, false);
          for (let at = 0; at < shape.points.length; at += 1) {
            const point = shape.points[at] as number;
            this.#strokes.add(
              this.#turned[3 * point + 1] as number,
              -(this.#turned[3 * point + 2] as number),
            );
          }
        }
      }
    }
  }

  /** The ground's line along the middle of the car. */
  #drawMiddle({ right, down }: TurnAxes, placed: Float64Array, part: number, { points }: Line): void {
    const tip = 3 * (points[0] as number);
    const x = placed[tip] as number;
    const y = placed[tip + 1] as number;
    const z = placed[tip + 2] as number;
    const add = (ahead: number, across: number) =>
      this.#strokes.add(
        right[0] * (x + ahead) + right[1] * (y + across) + right[2] * z,
        down[0] * (x + ahead) + down[1] * (y + across) + down[2] * z,
      );
    this.#strokes.begin(KIND.broken, part, false);
    add(0, 0);
    add(-GROUND_LONG, 0);
    this.#strokes.begin(KIND.outline, part, true);
    add(0, ARROW.half);
    add(ARROW.long, 0);
    add(0, -ARROW.half);
    const word = x + ARROW.long;
    this.front.right = right[0] * word + right[1] * y + right[2] * z;
    this.front.down = down[0] * word + down[1] * y + down[2] * z;
    this.front.wayRight = right[0];
    this.front.wayDown = down[0];
  }

  #addRing(from: number, to: number): void {
    this.#strokes.addAll(this.#places, from, to);
  }

  #addLine(kind: number, part: number, line: readonly number[]): void {
    this.#strokes.begin(kind, part, true);
    this.#strokes.addAll(line, 0, line.length);
  }

  #drawSolid(index: number, off: number): void {
    const { drawn, part, first, last } = this.#solids[index] as Solid;
    const strokes = this.#strokes;
    if (drawn.kind === 'band') {
      drawBar(strokes, part, drawn, first, last, this.#turned, KIND);
      return;
    }
    if (drawn.kind === 'block' && drawn.points.length === 8) {
      drawBox(strokes, part, drawn, this.#turned, KIND);
      return;
    }
    const from = this.#rings[4 * index] as number;
    const to = this.#rings[4 * index + 1] as number;
    const open = this.#rings[4 * index + 2] as number;
    const end = this.#rings[4 * index + 3] as number;
    const opening = this.#openings[index];
    if (drawn.fill !== 'none' || opening) {
      strokes.begin(KIND.face, part, true, ROUND_SHADE);
      this.#addRing(from, to);
      if (end > open) {
        strokes.open();
        this.#addRing(open, end);
      }
    }
    const line = drawn.ink === 'outline' ? KIND.outline : KIND.edge;
    if (drawn.fill !== 'none' && end === open) strokes.beginAlong(line);
    else {
      strokes.begin(line, part, true);
      this.#addRing(from, to);
    }
    if (end > open) {
      strokes.begin(KIND.outline, part, true);
      this.#addRing(open, end);
    }
    const caps = this.#caps[index] as Cap[];
    for (let i = 0; i < caps.length; i += 1) {
      const { disc, way } = caps[i] as Cap;
      const { at, tip } = disc.discs[0] as Disc;
      if (!(way * ((this.#turned[3 * tip] as number) - (this.#turned[3 * at] as number)) > 0)) continue;
      this.#silhouette(disc, off, this.#line);
      this.#addLine(KIND.edge, part, this.#line);
    }
    if (opening && drawn.kind === 'body') this.#drawRims(part, opening, drawn.discs, off);
  }

  /** Of a tyre: the rim on the near side, and where its wall begins there. */
  #drawRims(part: number, rims: readonly [DrawnHull, DrawnHull], walls: readonly Disc[], off: number): void {
    const { at, tip } = rims[0].discs[0] as Disc;
    // The second stands further along the axis than the first.
    const near = (this.#turned[3 * tip] as number) > (this.#turned[3 * at] as number) ? 1 : 0;
    this.#silhouette(rims[near] as DrawnHull, off, this.#line);
    this.#addLine(KIND.edge, part, this.#line);
    const wall = walls[near];
    if (!wall) return;
    this.#wall.discs[0] = wall;
    this.#silhouette(this.#wall, off, this.#line);
    this.#addLine(KIND.edge, part, this.#line);
  }
  readonly #wall: DrawnHull & { discs: Disc[] } = { kind: 'body', discs: [], ink: 'fine', fill: 'none' };

  /** What of the outline of a followed solid lies behind nearer solids of other roles. */
  #drawBehind(index: number): void {
    const { part, drawn } = this.#solids[index] as Solid;
    const { role } = this.#drawing.parts[part] as Drawing['parts'][number];
    if (!FOLLOWED.has(role) || drawn.ink !== 'outline') return;
    const [from, to] = [this.#rings[4 * index] as number, this.#rings[4 * index + 1] as number];
    for (let near = 0; near < this.#solids.length; near += 1) {
      if (!this.#depth.covers(near, index)) continue;
      const other = this.#solids[near] as Solid;
      if (FOLLOWED.has((this.#drawing.parts[other.part] as Drawing['parts'][number]).role)) continue;
      this.#drawCovered(part, from, to, near);
    }
  }

  /** Of the closed ring in `#places`, what lies within the outline of solid `near` and not within its opening. */
  #drawCovered(part: number, from: number, to: number, near: number): void {
    const a = this.#rings[4 * near] as number;
    const b = this.#rings[4 * near + 1] as number;
    const c = this.#rings[4 * near + 2] as number;
    const d = this.#rings[4 * near + 3] as number;
    const left = this.#boxes[4 * near] as number;
    const top = this.#boxes[4 * near + 1] as number;
    const right = this.#boxes[4 * near + 2] as number;
    const bottom = this.#boxes[4 * near + 3] as number;
    let goesOn = false;
    let x = this.#places[to - 2] as number;
    let y = this.#places[to - 1] as number;
    for (let at = from; at < to; at += 2) {
      const px = x;
      const py = y;
      x = this.#places[at] as number;
      y = this.#places[at + 1] as number;
      if (
        (x < left && px < left) ||
        (x > right && px > right) ||
        (y < top && py < top) ||
        (y > bottom && py > bottom)
      ) {
        goesOn = false;
        continue;
      }
      if (!within(this.#places, a, b, px, py, x - px, y - py)) {
        goesOn = false;
        continue;
      }
      const { enters, leaves } = span;
      if (d > c && within(this.#places, c, d, px, py, x - px, y - py)) {
        const seenFrom = Math.max(enters, span.enters);
        const seenTo = Math.min(leaves, span.leaves);
        if (seenFrom > enters) goesOn = this.#addPiece(part, px, py, x, y, enters, seenFrom, goesOn);
        else goesOn = false;
        if (leaves > seenTo) goesOn = this.#addPiece(part, px, py, x, y, seenTo, leaves, false);
        else goesOn = false;
      } else goesOn = this.#addPiece(part, px, py, x, y, enters, leaves, goesOn);
    }
  }

  /** Adds a piece of the stretch from p to q; tells whether the next stretch goes on from its end. */
  #addPiece(
    part: number,
    px: number,
    py: number,
    qx: number,
    qy: number,
    from: number,
    to: number,
    goesOn: boolean,
  ): boolean {
    if (!goesOn || from > 0) {
      this.#strokes.begin(KIND.behind, part, false);
      this.#strokes.add(px + from * (qx - px), py + from * (qy - py));
    }
    this.#strokes.add(px + to * (qx - px), py + to * (qy - py));
    return to >= 1;
  }

  #drawCurve(index: number, { points }: SpaceCurve, { right, down }: TurnAxes): void {
    this.#strokes.begin(KIND.curve, index, false);
    for (let at = 0; at + 2 < points.length; at += 3) {
      const x = points[at] as number;
      const y = points[at + 1] as number;
      const z = points[at + 2] as number;
      this.#strokes.add(right[0] * x + right[1] * y + right[2] * z, down[0] * x + down[1] * y + down[2] * z);
    }
  }
}

/** How a round body is lit as a whole: as the mean of what is seen of it. */
const ROUND_SHADE = shadeOf(1, 0, 0);
