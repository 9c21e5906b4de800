// Tracing: the numbers behind a photo. Lens, straightening, scale, level and place as one way from px to mm and back,
// where the camera stood, lines of sight that meet, and the picture seen straight on; the photos of a layout as planes of
// its views, and what the tape says of what was traced on them.
export { adjustedEye } from './adjusted-eye.ts';
export { type Advice, type AdviceTask, type Advised, adviceOn, typicalDoubt } from './advice.ts';
export type { Help } from './advice-helps.ts';
export { type DistanceQuestion, distanceQuestion } from './distance-question.ts';
export { type FileFocal, type FileNotes, focalByFile } from './file-focal.ts';
export {
  applied,
  composed,
  fitHomography,
  type Homography,
  inverted,
  type Pair,
} from './homography.ts';
export {
  type LeftOut,
  type Reached,
  USUAL_FOCAL,
  usualDistance,
  withLevelOff,
  withoutDistance,
  withPlaneOff,
} from './left-out.ts';
export { fitLens, type Lens } from './lens.ts';
export { type CheckedBy, checkLevel, type LevelCheck } from './level-check.ts';
export { movedByPhotos, photosFurther, placesByPhotos, withPlaces } from './photo-adjustment.ts';
export { type CameraStart, cameraStart } from './photo-camera.ts';
export { clickDoubt, distanceDoubt } from './photo-doubts.ts';
export {
  adjustedCameras,
  adjustedPhotos,
  isAnchor,
  isNamed,
  type Observed,
  type PhotoObservations,
  photoObservations,
  shownPoint,
} from './photo-observations.ts';
export type { FlatPlace, PhotoSpot, Planar, ShownSpot, UnbentSpot } from './photo-places.ts';
export {
  type LooseStart,
  type PhotoCalibration,
  type PhotoPlane,
  preparePhoto,
  type TraceFailure,
} from './photo-plane.ts';
export { beforeOf, cameraSide, depthOf, eyeOf, LOOSE, planeOf, spotOf } from './planes.ts';
export { meeting, type SightLine } from './sight-lines.ts';
export { contradiction, explainedGap, type SightGap, sightGaps, sightOf } from './sights.ts';
export { middleOfScale, type Stance, stanceOf } from './stance.ts';
export { type ClickedOn, checkTape, type TapeCheck } from './tape.ts';
export { type TapeRow, tapeRows, WORKED_SIDE } from './tape-rows.ts';
export { standsAsTraced } from './traced.ts';
export { type PhotoPart, type Picture, partShown, type WarpOrder, warpPicture } from './warp.ts';
