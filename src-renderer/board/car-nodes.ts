import type { Group } from 'konva/lib/Group.js';
import { Shape as Node } from 'konva/lib/Shape.js';
import {
  type Drawing,
  isClosed,
  isShown,
  type Outline,
  outline,
  type Part,
  paintOrder,
  type Role,
  VIEWS,
  type View,
} from '../../shared-math/drawing/index.ts';
import type { RoleInk, RoleInks } from './inks.ts';

/** Screen px of a broken line: a long dash and a dot, as for axes; the ground has dashes only. */
const AXIS_DASH = [13, 4, 3, 4];
const GROUND_DASH = [9, 6];
/** How pale the car's far side is in the side view, where it lies behind the near one. */
const FAR_SIDE = 0.3;

/** What all nodes of a car draw with; changed in place, so that nodes need not be told. */
export interface DrawnWith {
  inks: RoleInks;
  /** px per mm. */
  scale: number;
  /** px of a line of weight 1. */
  weight: number;
  /** Parts whose lines are drawn heavier. */
  stressed: ReadonlySet<string>;
}

interface PartNode {
  readonly node: Node;
  readonly view: View;
  /** Place of the part in the drawing; the same in all drawings of one structure. */
  readonly index: number;
  readonly outlines: Outline[];
}

/**
 * The car on the canvas: one node for a part in a view, made once for a structure. An edit or a new pose only writes
 * new outlines into the nodes there are.
 */
export class CarNodes {
  readonly #groups: Record<View, Group>;
  readonly #with: DrawnWith;
  readonly #roles: ReadonlySet<Role>;
  #nodes: PartNode[] = [];
  #parts: readonly Part[] = [];

  constructor(groups: Record<View, Group>, drawnWith: DrawnWith, roles: readonly Role[]) {
    this.#groups = groups;
    this.#with = drawnWith;
    this.#roles = new Set(roles);
  }

  /** Makes the nodes of a structure, in the order in which each view paints its parts as placed. */
  build(drawing: Drawing, placed: Float64Array): void {
    this.#nodes = [];
    this.#parts = drawing.parts;
    for (const view of VIEWS) {
      this.#groups[view].destroyChildren();
      for (const part of paintOrder(drawing, placed, view)) {
        if (!this.#roles.has(part.role)) continue;
        if (!part.shapes.some((shape) => isShown(shape, view))) continue;
        const entry: PartNode = {
          view,
          index: drawing.parts.indexOf(part),
          outlines: part.shapes.map(() => []),
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
  }

  /** Writes where a drawing of the same structure now stands. Drawn with the next frame. */
  update(drawing: Drawing, placed: Float64Array): void {
    this.#parts = drawing.parts;
    for (const { view, index, outlines } of this.#nodes) {
      const { shapes } = this.#parts[index] as Part;
      for (let i = 0; i < shapes.length; i += 1) {
        const shape = shapes[i] as Part['shapes'][number];
        if (isShown(shape, view)) outline(shape, placed, view, outlines[i] as Outline);
      }
    }
    for (const view of VIEWS) this.#groups[view].getLayer()?.batchDraw();
  }

  /** The lines of a view that labels should keep off: all but rails, tyres and ground. View's own plane, mm. */
  linesOf(view: View): Outline[] {
    const kept: Outline[] = [];
    for (const entry of this.#nodes) {
      const part = this.#parts[entry.index] as Part;
      if (entry.view !== view || part.role === 'frame' || part.role === 'tyre' || part.role === 'ground')
        continue;
      part.shapes.forEach((shape, i) => {
        if (isShown(shape, view) && shape.ink === 'outline') kept.push(entry.outlines[i] as Outline);
      });
    }
    return kept;
  }

  #paint(context: CanvasRenderingContext2D, { view, index, outlines }: PartNode): void {
    const part = this.#parts[index] as Part;
    const { inks, scale, weight, stressed } = this.#with;
    const ink = inks[part.role];
    const px = weight / scale;
    context.lineJoin = 'round';
    context.lineCap = 'round';
    for (let i = 0; i < outlines.length; i += 1) {
      const shape = part.shapes[i] as Part['shapes'][number];
      const points = outlines[i] as Outline;
      if (!isShown(shape, view) || points.length < 4) continue;
      context.beginPath();
      context.moveTo(points[0] as number, points[1] as number);
      for (let at = 2; at < points.length; at += 2)
        context.lineTo(points[at] as number, points[at + 1] as number);
      if (isClosed(shape)) context.closePath();
      if (shape.fill !== 'none') {
        context.fillStyle = shape.fill === 'tint' ? ink.tint : ink.cover;
        context.fill();
      }
      this.#stroke(context, ink, shape.ink, part.role, px * (stressed.has(part.id) ? 1.5 : 1));
    }
  }

  #stroke(
    context: CanvasRenderingContext2D,
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
      context.stroke();
      context.setLineDash([]);
    } else context.stroke();
  }
}
