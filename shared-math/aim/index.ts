// The aim point: the best place for the frame end of the drag link, and the arcs that show why.
export {
  type Aim,
  type AimFailure,
  type AimOutcome,
  aimAtPlane,
  type BestSpot,
  findAim,
  findBestSpot,
  judgedPlane,
} from './aim.ts';
export { type ArcsAt, arcsAt, ballPath, linkArc, pathGap, type TravelPath } from './arcs.ts';
export { type HeldTravel, holdTravel, holdWheels, worstBumpSteerAt } from './held-travel.ts';
export {
  type BumpSteerMap,
  createMap,
  fillMap,
  leastNode,
  MAP_NODES_MAX,
  mapOver,
  valleyRidge,
} from './map.ts';
export { type Contour, contourLines } from './map-contours.ts';
export {
  type MapKernel,
  PLACE_DRAG_LINK,
  PLACE_HIT_FROM,
  PLACE_OK,
  PLACE_TIE_ROD,
  prepareMapKernel,
  withBallOf,
  worstAt,
} from './map-kernel.ts';
export { type MapWindow, mapWindow, placeOf, usualWindow } from './map-window.ts';
export { type ZeroSlopeLine, zeroSlopeHeight, zeroSlopeLine } from './zero-slope.ts';
