// The pictorial: a drawing in space as the strokes of one axonometric picture, for whatever pen.
export { type PictureRoom, roomOfPicture } from './fit.ts';
export { Pictorial, type SpaceCurve } from './pictorial.ts';
export { STROKE_KINDS, type StrokeKind, Strokes } from './strokes.ts';
export {
  axesOf,
  DIMETRIC,
  fromOtherSide,
  ISOMETRIC,
  keptTurn,
  nearnessOf,
  onPaper,
  STEEPEST,
  type Turn,
  type TurnAxes,
  turnPoints,
} from './turn.ts';
