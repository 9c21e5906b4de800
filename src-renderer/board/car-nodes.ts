import type { Group } from 'konva/lib/Group.js';
import { Shape as Node } from 'konva/lib/Shape.js';
import {
  type Box,
  boxOf,
  type Drawing,
  type Eyes,
  isClosed,
  isShown,
  joined,
  type Outline,
  outline,
  type Part,
  paintOrder,
  pointsOf,
  type Role,
  seenOutline,
  VIEWS,
  type View,
} from '../../shared-math/drawing/index.ts';
import type { RoleInk, RoleInks } from './inks.ts';

/** Screen px of a broken line: a long dash and a dot, as for axes; the ground has dashes only. */
const AXIS_DASH = [13, 4, 3, 4];
const GROUND_DASH = [9, 6];
/** Screen px between the lines of a hatch, along the view. */
const HATCH_STEP = 11;
/**
 * mm that a point may be off where it was drawn and still be there: far more than the last digits that differ when the same
 * pose is solved again, far less than shows at any zoom. Otherwise every part of the axle would be drawn in every step.
 */
const SAME_PLACE = 1e-6;
/** How pale the car's far side is in the side view, where it lies behind the near one. */
const FAR_SIDE = 0.3;

/** What all nodes of a car draw with; changed in place, so that nodes need not be informed. */
export interface DrawnWith {
  inks: RoleInks;
  /** px per mm. */
  scale: number;
  /** px of a line of weight 1. */
  weight: number;
  /** Parts whose lines are drawn heavier. */
  stressed: ReadonlySet<string>;
  /** px of line and gap of all outlines, at weight 1; full lines where not given. */
  readonly dash?: readonly number[];
}

interface PartNode {
  readonly node: Node;
  readonly view: View;
  /** Place of the part in the drawing; the same in all drawings of one structure. */
  readonly index: number;
  readonly outlines: Outline[];
  /** The outlines as the canvas takes them. */
  readonly paths: (Path2D | undefined)[];
  /** What each outline covers, and all of them together, mm of the view's plane; undefined if there is none. */
  readonly boxes: (Box | undefined)[];
  box: Box | undefined;
}

/** What has changed since it was drawn, by view; mm of the view's plane, without the width of the lines. */
export type ChangedBoxes = Partial<Record<View, Box>>;

const boxesMeet = (a: Box, b: Box, apart: number): boolean =>
  a.left - apart <= b.right &&
  b.left - apart <= a.right &&
  a.top - apart <= b.bottom &&
  b.top - apart <= a.bottom;

/** Where something is painted alone, and how far a line may reach beyond its outline; mm of the view's plane. */
interface Within {
  readonly box: Box;
  readonly apart: number;
}

function boxAround(boxes: readonly (Box | undefined)[]): Box | undefined {
  return boxes.reduce((all, box) => (all && box ? joined(all, box) : (all ?? box)), undefined);
}

/** Adds a box to what has changed in a view. */
export function addChanged(changed: ChangedBoxes, view: View, box: Box): void {
  const before = changed[view];
  changed[view] = before ? joined(before, box) : box;
}

function pathOf(points: Outline, closed: boolean): Path2D | undefined {
  if (points.length < 4) return undefined;
  const path = new Path2D();
  path.moveTo(points[0] as number, points[1] as number);
  for (let at = 2; at < points.length; at += 2) path.lineTo(points[at] as number, points[at + 1] as number);
  if (closed) path.closePath();
  return path;
}

/** The numbers of a part that are not in its points: the same in both means the same outlines for the same places. */
function sameSizes(a: Part, b: Part): boolean {
  if (a === b) return true;
  return a.shapes.every((shape, i) => {
    const other = b.shapes[i];
    if (shape.kind !== 'body' || other?.kind !== 'body') return true;
    return shape.discs.every(
      (disc, at) => disc.radius === other.discs[at]?.radius && disc.round === other.discs[at]?.round,
    );
  });
}

/**
 * The car on the canvas: one node for a part in a view, made once for a structure. An edit or a new pose only writes
 * new outlines into the nodes there are.
 */
export class CarNodes {
  readonly #groups: Record<View, Group>;
  readonly #with: DrawnWith;
  readonly #roles: ReadonlySet<Role>;
  readonly #redraw: ((changed: ChangedBoxes) => void) | undefined;
  #nodes: PartNode[] = [];
  #parts: readonly Part[] = [];
  #hidden: ReadonlySet<string> = new Set();
  #eyes: Eyes = {};
  /** Where the points were when the outlines were written, each to `SAME_PLACE`. */
  #placed = new Float64Array(0);

  /** `redraw` draws what has changed; without it the whole layer is drawn anew. */
  constructor(
    groups: Record<View, Group>,
    drawnWith: DrawnWith,
    roles: readonly Role[],
    redraw?: (changed: ChangedBoxes) => void,
  ) {
    this.#groups = groups;
    this.#with = drawnWith;
    this.#roles = new Set(roles);
    this.#redraw = redraw;
  }

  /** From where each view is looked at; drawn so by the next `update` or `build`. */
  seeFrom(eyes: Eyes): void {
    if (this.#eyes === eyes) return;
    this.#eyes = eyes;
    this.#placed = new Float64Array(0);
  }

  /** Makes the nodes of a structure, in the order in which each view paints its parts as placed. */
  build(drawing: Drawing, placed: Float64Array): void {
    this.#nodes = [];
    this.#parts = drawing.parts;
    this.#placed = new Float64Array(0);
    for (const view of VIEWS) {
      this.#groups[view].destroyChildren();
      for (const part of paintOrder(drawing, placed, view)) {
        if (!this.#roles.has(part.role)) continue;
        if (!part.shapes.some((shape) => isShown(shape, view))) continue;
        const entry: PartNode = {
          view,
          index: drawing.parts.indexOf(part),
          outlines: part.shapes.map(() => []),
          paths: part.shapes.map(() => undefined),
          boxes: part.shapes.map(() => undefined),
          box: undefined,
          node: new Node({
            listening: false,
            perfectDrawEnabled: false,
            opacity: view === 'side' && part.side === 'right' && part.role !== 'steering' ? FAR_SIDE : 1,
            sceneFunc: (context) => this.#paint(context._context, entry),
          }),
        };
        this.#groups[view].add(entry.node);
        this.#nodes.push(entry);
      }
    }
    this.update(drawing, placed);
    this.#groups.side.getLayer()?.batchDraw();
  }

  /** Writes where a drawing of the same structure now stands; what stays where it was is left. Drawn next frame. */
  update(drawing: Drawing, placed: Float64Array): void {
    const before = this.#parts;
    const stays = drawing.parts.map(
      (part, i) =>
        this.#placed.length === placed.length &&
        sameSizes(part, before[i] as Part) &&
        pointsOf(part).every((point) => this.#isSame(placed, 3 * point)),
    );
    this.#parts = drawing.parts;
    this.#keep(placed);
    const changed: ChangedBoxes = {};
    for (const entry of this.#nodes) {
      if (stays[entry.index]) continue;
      const { view, outlines, paths, boxes } = entry;
      if (entry.box) addChanged(changed, view, entry.box);
      const { shapes } = this.#parts[entry.index] as Part;
      for (let i = 0; i < shapes.length; i += 1) {
        const shape = shapes[i] as Part['shapes'][number];
        if (!isShown(shape, view)) continue;
        const line = outlines[i] as Outline;
        const eye = this.#eyes[view];
        if (eye) seenOutline(shape, placed, view, eye, line);
        else outline(shape, placed, view, line);
        paths[i] = pathOf(line, isClosed(shape));
        boxes[i] = line.length >= 4 ? boxOf(line) : undefined;
      }
      entry.box = boxAround(boxes);
      if (entry.box) addChanged(changed, view, entry.box);
    }
    if (Object.keys(changed).length === 0) return;
    if (this.#redraw) this.#redraw(changed);
    else this.#groups.side.getLayer()?.batchDraw();
  }

  /**
   * Paints what reaches into a box of a view, in the order of painting. The context maps mm of the view's plane and is
   * clipped to the box; `apart` is how far a line of a part may reach beyond its outline, mm.
   */
  paintWithin(context: CanvasRenderingContext2D, view: View, box: Box, apart: number): void {
    for (const entry of this.#nodes) {
      if (entry.view !== view || !entry.box || !boxesMeet(entry.box, box, apart)) continue;
      context.globalAlpha = entry.node.opacity();
      this.#paint(context, entry, { box, apart });
    }
    context.globalAlpha = 1;
  }

  #isSame(placed: Float64Array, at: number): boolean {
    for (let i = at; i < at + 3; i += 1)
      if (!(Math.abs((placed[i] as number) - (this.#placed[i] as number)) <= SAME_PLACE)) return false;
    return true;
  }

  /** Where a point has hardly moved it stays as it was drawn, so that many such steps do not add up unseen. */
  #keep(placed: Float64Array): void {
    if (this.#placed.length !== placed.length) this.#placed = placed.slice();
    for (let at = 0; at < placed.length; at += 3)
      if (!this.#isSame(placed, at)) this.#placed.set(placed.subarray(at, at + 3), at);
  }

  /** Leaves out the parts of these ids. */
  hide(parts: ReadonlySet<string>): void {
    if (this.#hidden === parts) return;
    this.#hidden = parts;
    this.#groups.side.getLayer()?.batchDraw();
  }

  /** The outlines of a view, which labels should keep off; the view's own plane, mm. */
  linesOf(view: View): Outline[] {
    return this.#nodes
      .filter((entry) => entry.view === view && this.#parts[entry.index]?.role !== 'ground')
      .flatMap(({ index, outlines }) =>
        outlines.filter((_, i) => (this.#parts[index] as Part).shapes[i]?.ink === 'outline'),
      );
  }

  #paint(
    context: CanvasRenderingContext2D,
    { index, paths, outlines, boxes }: PartNode,
    within?: Within,
  ): void {
    const part = this.#parts[index] as Part;
    if (this.#hidden.has(part.id)) return;
    const { inks, scale, weight, stressed } = this.#with;
    const ink = inks[part.role];
    const px = weight / scale;
    context.lineJoin = 'round';
    context.lineCap = 'round';
    for (let i = 0; i < paths.length; i += 1) {
      const path = paths[i];
      const box = boxes[i];
      if (!path || !box) continue;
      if (within && !boxesMeet(box, within.box, within.apart)) continue;
      const shape = part.shapes[i] as Part['shapes'][number];
      if (shape.fill !== 'none') {
        context.fillStyle = shape.fill === 'paper' ? ink.cover : ink.tint;
        context.fill(path);
      }
      if (shape.fill === 'hatch') this.#hatch(context, path, outlines[i] as Outline, ink, px);
      this.#stroke(context, path, ink, shape.ink, part.role, px * (stressed.has(part.id) ? 1.5 : 1));
    }
  }

  /** Thin slanted lines over what an outline encloses; a hatch has the same step at every zoom. */
  #hatch(context: CanvasRenderingContext2D, path: Path2D, line: Outline, ink: RoleInk, px: number): void {
    const { left, top, right, bottom } = boxOf(line);
    const step = HATCH_STEP * px;
    const height = bottom - top;
    context.save();
    context.clip(path);
    context.strokeStyle = ink.fineLine;
    context.lineWidth = ink.fineWidth * px;
    context.beginPath();
    // Counted from the view's origin, so that the lines of neighbouring bodies run on.
    for (let at = Math.floor((left + top) / step) * step; at < right + bottom; at += step) {
      context.moveTo(at - top, top);
      context.lineTo(at - top - height, bottom);
    }
    context.stroke();
    context.restore();
  }

  #stroke(
    context: CanvasRenderingContext2D,
    path: Path2D,
    ink: RoleInk,
    kind: Part['shapes'][number]['ink'],
    role: Role,
    px: number,
  ): void {
    const strong = kind === 'outline' || role === 'ground';
    context.strokeStyle = strong ? ink.line : ink.fineLine;
    context.lineWidth = px * (strong ? ink.width : ink.fineWidth);
    if (kind === 'broken') {
      context.setLineDash((role === 'ground' ? GROUND_DASH : AXIS_DASH).map((length) => length * px));
      context.stroke(path);
      context.setLineDash([]);
    } else if (this.#with.dash) {
      context.setLineDash(this.#with.dash.map((length) => length * px));
      context.stroke(path);
      context.setLineDash([]);
    } else context.stroke(path);
  }
}
