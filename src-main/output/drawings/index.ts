// Drawings: a layout's views and curves as files that other programs take, drawn by the sheet's own strokes.
import { VIEWS, type View } from '../../../shared-math/drawing/index.ts';
import { type Lettering, SvgPen } from '../pens/svg-pen.ts';
import { spaceDxf } from './dxf/space.ts';
import { templatesDxf } from './dxf/templates.ts';
import { viewDxf } from './dxf/view.ts';
import {
  DRAWN_WORDS,
  type DrawingJob,
  DrawingRefused,
  type DrawnView,
  formatTrouble,
  poseTrouble,
  roomsTrouble,
} from './job.ts';
import { pngOf } from './png.ts';
import { curvesPlate } from './svg/curves-plate.ts';
import { pictorialPlate } from './svg/pictorial-plate.ts';
import { viewPlate, viewsPlate } from './svg/view-plate.ts';

export { SvgPen } from '../pens/svg-pen.ts';
export {
  AT_RIDE,
  DRAWING_FORMATS,
  DRAWN_VIEWS,
  DRAWN_WORDS,
  type DrawingFormat,
  type DrawingJob,
  DrawingRefused,
  type DrawnPose,
  type DrawnView,
  formatTrouble,
  USUAL_TURN,
} from './job.ts';
export { rasterOf } from './png.ts';

const isView = (view: DrawnView): view is View => (VIEWS as readonly string[]).includes(view);

/** A plate as one SVG document, and how wide it is in mm; its view is none in space. */
export function drawSvg(job: DrawingJob, lettering: Lettering): { svg: string; width: number } {
  const pen = new SvgPen(lettering);
  const { view } = job;
  if (view === 'views') viewsPlate(pen, job);
  else if (view === 'pictorial') pictorialPlate(pen, job);
  else if (isView(view)) viewPlate(pen, job, view);
  else curvesPlate(pen, job);
  const about = [job.customer, job.car, job.document.name].filter(Boolean).join(', ');
  return { svg: pen.document(0, DRAWN_WORDS[view], about), width: pen.sizeOf(0).width };
}

function dxfOf(job: DrawingJob): string {
  const { view } = job;
  if (view === 'views') return viewDxf(job, VIEWS);
  if (view === 'templates') return templatesDxf(job);
  return isView(view) ? viewDxf(job, [view]) : spaceDxf(job);
}

/**
 * Draws a layout into a file's bytes. Lengths in the job's unit.
 * Outcomes: the whole file; rejects with a DrawingRefused of one plain sentence where view, format or pose cannot be,
 * and with the signal's reason when called off.
 */
export async function drawFile(job: DrawingJob): Promise<Uint8Array> {
  const { view, format, pose, rooms } = job;
  const trouble = formatTrouble(view, format) ?? poseTrouble(view, pose) ?? roomsTrouble(view, rooms);
  if (trouble) throw new DrawingRefused(trouble);
  job.signal?.throwIfAborted();
  if (job.format === 'dxf') return Buffer.from(dxfOf(job), 'utf8');
  const { svg, width } = drawSvg(job, job.format === 'svg' ? 'text' : 'outlines');
  if (job.format === 'svg') return Buffer.from(svg, 'utf8');
  return pngOf(svg, width, job.signal);
}
