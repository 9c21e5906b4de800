import {
  type Box,
  boxOf,
  type Drawing,
  isClosed,
  isShown,
  type Outline,
  outline,
  type Part,
  paintOrder,
  project,
  type View,
  type ViewPoint,
} from '../../../shared-math/drawing/index.ts';
import type { Point } from '../../../shared-math/geometry/points.ts';
import { Breaks } from './breaks.ts';
import { ROLE_PENS, type RolePen, WHITE } from './colours.ts';
import { type PartLayer, partLayer } from './part-layers.ts';
import type { Points, PrintPen } from './print-pen.ts';

/** A view of the car on paper: what it shows and where. */
export interface CarView {
  readonly view: View;
  /** What is shown, in the view's own plane, mm of the car. */
  readonly shown: Box;
  /** Where the view's origin lies on the page, mm. */
  readonly x: number;
  readonly y: number;
  /** The car is divided by this. */
  readonly scale: number;
}

const AXIS_DASH = [3.2, 1, 0.7, 1];
const GROUND_DASH = [2.2, 1.4];
/** mm between the lines of a hatch. */
const HATCH_STEP = 2.2;
/** How pale the far side is in the side view. */
const FAR_SIDE = 0.3;

/** A view that lies in an area of the page, as large as its scale makes it, with what is shown in its middle. */
export function centredView(
  view: View,
  shown: Box,
  scale: number,
  area: { x: number; y: number; width: number; height: number },
): CarView {
  return {
    view,
    shown,
    scale,
    x: area.x + area.width / 2 - (shown.left + shown.right) / 2 / scale,
    y: area.y + area.height / 2 - (shown.top + shown.bottom) / 2 / scale,
  };
}

/** A place of the view's own plane on the page, mm. */
export function onPage({ x, y, scale }: CarView, [right, down]: ViewPoint): ViewPoint {
  return [x + right / scale, y + down / scale];
}

/** A point of the car on the page, mm. */
export function pointOnPage(view: CarView, point: Point): ViewPoint {
  return onPage(view, project(view.view, point));
}

/** What the view covers on the page, as a closed outline. */
export function frameOf(view: CarView): [number, number, number, number] {
  const [left, top] = onPage(view, [view.shown.left, view.shown.top]);
  const [right, bottom] = onPage(view, [view.shown.right, view.shown.bottom]);
  return [left, top, right, bottom];
}

function placedOnPage(view: CarView, line: Outline): number[] {
  const points: number[] = [];
  for (let i = 0; i < line.length; i += 2)
    points.push(view.x + (line[i] as number) / view.scale, view.y + (line[i + 1] as number) / view.scale);
  return points;
}

function hatch(pen: PrintPen, points: Points, ink: RolePen): void {
  const { left, top, right, bottom } = boxOf(points as number[]);
  const height = bottom - top;
  pen.within(points, 1, () => {
    for (let at = Math.floor((left + top) / HATCH_STEP) * HATCH_STEP; at < right + bottom; at += HATCH_STEP)
      pen.line(at - top, top, at - top - height, bottom, { width: ink.fineWidth, colour: ink.fineLine });
  });
}

function paintPart(pen: PrintPen, view: CarView, part: Part, placed: Float64Array, breaks: Breaks): void {
  const ink = ROLE_PENS[part.role];
  for (const shape of part.shapes) {
    if (!isShown(shape, view.view)) continue;
    const line: Outline = [];
    outline(shape, placed, view.view, line);
    const points = placedOnPage(view, line);
    if (points.length < 4) continue;
    if (isClosed(shape) && part.role !== 'ground') breaks.note(points);
    if (shape.fill !== 'none') pen.fill(points, shape.fill === 'paper' ? WHITE : ink.tint);
    if (shape.fill === 'hatch') hatch(pen, points, ink);
    const strong = shape.ink === 'outline' || part.role === 'ground';
    const dash = shape.ink === 'broken' ? (part.role === 'ground' ? GROUND_DASH : AXIS_DASH) : undefined;
    pen.stroke(
      points,
      {
        width: strong ? ink.width : ink.fineWidth,
        colour: strong ? ink.line : ink.fineLine,
        ...(dash ? { dash } : {}),
      },
      isClosed(shape),
    );
  }
}

/** Draws the car in a view, in the board's order and strokes; what goes on beyond the view's frame ends there in a break line. */
export function paintCar(pen: PrintPen, view: CarView, drawing: Drawing, placed: Float64Array): void {
  const frame = frameOf(view);
  const [left, top, right, bottom] = frame;
  const breaks = new Breaks(frame);
  pen.within([left, top, right, top, right, bottom, left, bottom], 1, () => {
    // Parts of one layer that are painted one after another are one group.
    const groups: { layer: PartLayer; parts: Part[] }[] = [];
    for (const part of paintOrder(drawing, placed, view.view)) {
      const layer = partLayer(part);
      const last = groups.at(-1);
      if (last?.layer === layer) last.parts.push(part);
      else groups.push({ layer, parts: [part] });
    }
    for (const { layer, parts } of groups)
      pen.named(`${view.view}-${layer}`, () => {
        for (const part of parts) {
          const far = view.view === 'side' && part.side === 'right' && part.role !== 'steering';
          if (far) pen.within(undefined, FAR_SIDE, () => paintPart(pen, view, part, placed, breaks));
          else paintPart(pen, view, part, placed, breaks);
        }
      });
  });
  breaks.draw(pen);
}
