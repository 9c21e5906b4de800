// The photos of a layout as planes of its views, and what the tape says of what was traced on them.
export { depthOf, LOOSE, planeOf, spotOf } from './planes.ts';
export { type TapeRow, tapeRows, WORKED_SIDE } from './tape-rows.ts';
export { standsAsTraced } from './traced.ts';
