import { failed, type Outcome, succeeded } from '../../shared-math/outcome.ts';
import {
  DRAWING_TEXT_MAX,
  type DrawingKind,
  drawingKind,
  KIND_BYTES,
} from '../../shared-math/underlay/index.ts';
import { type CheckedPhoto, checkPhoto } from './photo-check.ts';

export interface CheckedDrawing {
  readonly type: 'image/vnd.dxf' | 'image/svg+xml';
  /** A drawing has no px of its own. */
  readonly width: undefined;
  readonly height: undefined;
}

const TYPES: Readonly<Record<DrawingKind, CheckedDrawing['type']>> = {
  dxf: 'image/vnd.dxf',
  svg: 'image/svg+xml',
};

/**
 * Looks at the file of a drawing that is to lie under a view: what it is by how it begins, and that it is text. The page
 * reads it; the store keeps it as it came. The failure is the end of a sentence that begins with the file's name.
 */
export function checkDrawing(content: Uint8Array): Outcome<CheckedDrawing, string> {
  const bytes = Buffer.from(content.buffer, content.byteOffset, content.byteLength);
  if (bytes.length > DRAWING_TEXT_MAX)
    return failed(`it is larger than ${DRAWING_TEXT_MAX / 1e6} million bytes`);
  const kind = drawingKind(bytes.toString('latin1', 0, KIND_BYTES).replace(/^\xEF\xBB\xBF/, ''));
  if (!kind.ok) return kind;
  if (bytes.includes(0)) return failed('it is no text');
  return succeeded({ type: TYPES[kind.value], width: undefined, height: undefined });
}

/** Looks at a file that is kept by its hash: a photo, or a drawing. */
export function checkKept(content: Uint8Array): Outcome<CheckedPhoto | CheckedDrawing, string> {
  const begins = Buffer.from(content.buffer, content.byteOffset, Math.min(content.byteLength, KIND_BYTES));
  return drawingKind(begins.toString('latin1').replace(/^\xEF\xBB\xBF/, '')).ok
    ? checkDrawing(content)
    : checkPhoto(content);
}
