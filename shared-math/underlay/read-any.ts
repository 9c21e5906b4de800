import { failed, succeeded } from '../outcome.ts';
import { DRAWING_TEXT_MAX, type DrawingOutcome, DrawingRefusal } from './read-drawing.ts';
import { dxfDrawing } from './read-dxf.ts';
import { svgDrawing } from './read-svg.ts';

/** What a drawing's file is, by how it begins. */
export type DrawingKind = 'dxf' | 'svg';

/** What stands at the beginning of a DXF that is not in text, after its maker's name. */
const BINARY = ' Binary DXF\r\n';

/** Bytes at the beginning of a file in which it shows what it is. */
export const KIND_BYTES = 4096;

/** What a file that begins so is; the failure ends a sentence that begins with its name. */
export function drawingKind(begins: string) {
  if (begins.slice(0, 40).includes(BINARY))
    return failed('it is a binary DXF; save it as a DXF in text (ASCII), R12 or later');
  if (/^\uFEFF?\s*(999\r?\n[^\n]*\n\s*)*0\s*\r?\n\s*SECTION/.test(begins))
    return succeeded<DrawingKind>('dxf');
  if (/<(\w+:)?svg[\s>/]/.test(begins)) return succeeded<DrawingKind>('svg');
  return failed('it is neither a DXF nor an SVG; bring one of these');
}

/**
 * Takes the text of a DXF (R12 or later) or of an SVG as lines by layer. Nothing in it is run or fetched.
 * Frame: the drawing's own, right and up. Units: the drawing's own; `unit` says how many mm one is, where it says so.
 */
export function readDrawing(text: string): DrawingOutcome {
  if (text.length > DRAWING_TEXT_MAX)
    return failed(`it is longer than ${DRAWING_TEXT_MAX / 1e6} million characters`);
  const kind = drawingKind(text.slice(0, KIND_BYTES));
  if (!kind.ok) return kind;
  try {
    return succeeded(kind.value === 'dxf' ? dxfDrawing(text) : svgDrawing(text));
  } catch (error) {
    if (error instanceof DrawingRefusal) return failed(error.message);
    throw error;
  }
}
