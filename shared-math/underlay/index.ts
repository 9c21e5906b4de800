// Drawings that lie under the views: DXF and SVG read as lines, laid where they belong, drawn to.

export {
  type DrawingSpot,
  type KnownSpot,
  placeByTwo,
  placeInView,
  spotInDrawing,
  type UnderlayPlace,
  underlayTransform,
} from './place.ts';
export { type DrawingKind, drawingKind, KIND_BYTES, readDrawing } from './read-any.ts';
export {
  DRAWING_TEXT_MAX,
  type DrawingOutcome,
  type DrawnLayer,
  type DrawnLine,
  type ReadDrawing,
} from './read-drawing.ts';
export { PIXEL } from './read-svg.ts';
export { nearestLine, SnapIndex, type SnapSpot } from './snap-spots.ts';
