// The detail of the arcs: path and arc of the steering-arm ball drawn large, with the gap between them over the travel.
export {
  type ArcsDetail,
  arcPlaces,
  arcsDetail,
  detailRadius,
  type GapTick,
  gapTick,
  judgedView,
  tickHeaves,
} from './arcs-detail.ts';
export { clippedToCircle, type DetailCircle, isWithin, reachBetween } from './circle-clip.ts';
export { detailScaleWords, ENLARGEMENTS, enlargementFor, paperScaleFor } from './scales.ts';
