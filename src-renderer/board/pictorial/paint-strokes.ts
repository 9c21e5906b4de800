import { type Drawing, type Part, pointsOf } from '../../../shared-math/drawing/index.ts';
import { STROKE_KINDS, type Strokes } from '../../../shared-math/pictorial/index.ts';
import type { LineInk } from '../overlay-painter.ts';
import { type GhostInk, type PictorialInks, toneOf } from './pictorial-inks.ts';

const FACE = STROKE_KINDS.indexOf('face');
const OUTLINE = STROKE_KINDS.indexOf('outline');
const CURVE = STROKE_KINDS.indexOf('curve');
function trace(context: CanvasRenderingContext2D, strokes: Strokes, from: number, to: number): void {
  const { places } = strokes;
  context.moveTo(places[from] as number, places[from + 1] as number);
  for (let at = from + 2; at < to; at += 2) context.lineTo(places[at] as number, places[at + 1] as number);
}

/** Traces the ring of a stroke, and that of its opening. */
function traceRings(context: CanvasRenderingContext2D, strokes: Strokes, stroke: number): void {
  const to = strokes.to[stroke] as number;
  const opening = strokes.opening[stroke] as number;
  trace(context, strokes, strokes.from[stroke] as number, opening >= 0 ? opening : to);
  if (strokes.closed[stroke]) context.closePath();
  if (opening < 0) return;
  trace(context, strokes, opening, to);
  context.closePath();
}

/** Draws what was traced in a line. */
function strokeLine(context: CanvasRenderingContext2D, { colour, width, dash }: LineInk, px: number): void {
  context.strokeStyle = colour;
  context.lineWidth = px * width;
  if (dash.length > 0) context.setLineDash(dash.map((length) => length * px));
  context.stroke();
  if (dash.length > 0) context.setLineDash([]);
}

/** How a curve in space is inked; px at weight 1. */
export interface CurveInk {
  readonly colour: string;
  readonly width: number;
  readonly dash: readonly number[];
  /** A rim of paper under it, so that it stands off the ink it crosses. */
  readonly halo: string;
}

/**
 * Paints the strokes of a picture in their order. The context maps mm of paper; `px` is how many of them a line of weight 1
 * is thick per px. `stressed` are the parts whose lines are drawn heavier; a role without an ink is not drawn, nor a kind of line without one.
 */
export function paintStrokes(
  context: CanvasRenderingContext2D,
  strokes: Strokes,
  drawing: Drawing,
  inks: Partial<PictorialInks>,
  px: number,
  stressed: ReadonlySet<string>,
  curves: readonly CurveInk[],
): void {
  context.lineJoin = 'round';
  context.lineCap = 'round';
  let tracedFrom = -1;
  /** Lines traced and not drawn yet: those of one ink that follow one another are drawn at once. */
  let waiting: LineInk | undefined;
  const drawWaiting = () => {
    if (waiting) strokeLine(context, waiting, px);
    waiting = undefined;
  };
  for (let i = 0; i < strokes.count; i += 1) {
    const from = strokes.from[i] as number;
    const to = strokes.to[i] as number;
    if (to - from < 4) continue;
    const kind = strokes.kinds[i] as number;
    if (kind === CURVE) {
      drawWaiting();
      context.beginPath();
      trace(context, strokes, from, to);
      paintCurve(context, curves[strokes.parts[i] as number], px);
      continue;
    }
    const part = drawing.parts[strokes.parts[i] as number];
    if (!part) continue;
    const ink = inks[part.role];
    if (!ink) continue;
    if (kind === FACE) {
      drawWaiting();
      context.beginPath();
      traceRings(context, strokes, i);
      context.fillStyle = toneOf(ink, strokes.shades[i] as number);
      context.fill('evenodd');
      tracedFrom = from;
      continue;
    }
    const line = ink.lines[2 * kind + (stressed.has(part.id) ? 1 : 0)];
    if (!line) continue;
    if (waiting !== line) drawWaiting();
    if (from !== tracedFrom) {
      if (!waiting) context.beginPath();
      traceRings(context, strokes, i);
    }
    waiting = line;
    tracedFrom = -1;
  }
  drawWaiting();
}

function paintCurve(context: CanvasRenderingContext2D, ink: CurveInk | undefined, px: number): void {
  if (!ink) return;
  context.strokeStyle = ink.halo;
  context.lineWidth = px * (ink.width + 2.4);
  context.stroke();
  strokeLine(context, ink, px);
}

/** Paints a closed line, x, y, x, y … in mm of paper, over what is there. */
export function paintOutline(
  context: CanvasRenderingContext2D,
  points: readonly number[],
  ink: LineInk,
  px: number,
): void {
  context.lineJoin = 'round';
  context.lineCap = 'butt';
  context.beginPath();
  for (let at = 0; at + 1 < points.length; at += 2)
    context.lineTo(points[at] as number, points[at + 1] as number);
  context.closePath();
  strokeLine(context, ink, px);
}

/** mm within which a part of another car stands where the open one's does. */
const SAME_PLACE = 0.5;

/** Whether a part of another car stands where the same part of the open one does, which is drawn there already. */
export function standsAlike(
  part: Part,
  placed: Float64Array,
  own: { readonly drawing: Drawing; readonly placed: Float64Array },
): boolean {
  const same = own.drawing.parts.find(({ id }) => id === part.id);
  const [points, others] = [pointsOf(part), same ? pointsOf(same) : []];
  return (
    points.length === others.length &&
    points.every((point, i) =>
      [0, 1, 2].every(
        (axis) =>
          Math.abs(
            (placed[3 * point + axis] as number) - (own.placed[3 * (others[i] as number) + axis] as number),
          ) < SAME_PLACE,
      ),
    )
  );
}

/**
 * Paints of a picture the outlines alone, in broken lines: another car, which covers nothing. What stands where the open one's
 * does (`own`) is left to that.
 */
export function paintGhost(
  context: CanvasRenderingContext2D,
  strokes: Strokes,
  { drawing, placed }: { readonly drawing: Drawing; readonly placed: Float64Array },
  own: { readonly drawing: Drawing; readonly placed: Float64Array },
  ink: GhostInk,
  px: number,
  dash: readonly number[],
): void {
  context.lineJoin = 'round';
  context.lineCap = 'butt';
  context.setLineDash(dash.map((length) => length * px));
  const alike = drawing.parts.map((part) => ink[part.role] && standsAlike(part, placed, own));
  for (let i = 0; i < strokes.count; i += 1) {
    const at = strokes.parts[i] as number;
    if (strokes.kinds[i] !== OUTLINE || alike[at]) continue;
    const role = drawing.parts[at]?.role;
    const line = role && ink[role];
    if (!line) continue;
    context.beginPath();
    trace(context, strokes, strokes.from[i] as number, strokes.to[i] as number);
    if (strokes.closed[i]) context.closePath();
    context.strokeStyle = line.line;
    context.lineWidth = px * line.width;
    context.stroke();
  }
  context.setLineDash([]);
}
