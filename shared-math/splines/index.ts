// Splines: what standard a measured end belongs to, its dimensions, and its count from a photo.

export {
  type CountFailure,
  countTeeth,
  type SplineGap,
  type ToothCount,
  TRUSTED_FROM,
} from './count-teeth.ts';
export {
  type InvoluteDimensions,
  involuteDimensions,
  type SplineRoot,
  serrationAngle,
  sharpPoints,
} from './dimensions.ts';
export {
  CALIPER_UNCERTAINTY,
  identifySpline,
  type SplineCandidate,
  type SplineIdentity,
  type SplineMeasure,
  type SplineNeighbours,
  type SplineVerdict,
} from './identify.ts';
export {
  INVOLUTE_RANGES,
  INVOLUTE_STANDARD,
  type PressureAngle,
  SERRATED_SIZES,
  SERRATED_STANDARD,
  type SerratedSize,
  STANDARD_PITCHES,
} from './standards.ts';
export { type GreyImage, type MarkedCircle, unwrapBand } from './unwrap.ts';
