// The drawing: a layout as parts to scale, placed in a pose and outlined in the three views of one sheet.
export { drawLayout } from './draw-layout.ts';
export {
  type Drawing,
  type Inking,
  type Part,
  type Role,
  type Shape,
  structureOf,
} from './drawing.ts';
export { type Eye, type Eyes, seenFrom, seenOutline, stretchAt } from './eye.ts';
export { boxOf, convexHull, isClosed, isShown, type Outline, outline } from './outline.ts';
export { paintOrder, placeAtRide, placeInPose, pointsOf, roomFor, viewBoxes } from './placing.ts';
export {
  arrangeSheet,
  type Box,
  fromSheet,
  joined,
  moved,
  onSheet,
  project,
  type Sheet,
  unproject,
  VIEW_AXES,
  VIEWS,
  type View,
  type ViewPoint,
} from './views.ts';
