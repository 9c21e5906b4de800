// Splines: what standard a measured end belongs to, its dimensions, and its count from a photo.

export type { SplineGap } from './blanks.ts';
export {
  type CountFailure,
  countTeeth,
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
export { type StandardForm, type StandardSpline, standardSplines } from './forms.ts';
export {
  CALIPER_UNCERTAINTY,
  identifySpline,
  type SplineCandidate,
  type SplineFit,
  type SplineIdentity,
  type SplineMeasure,
  type SplineNeighbours,
  type SplineVerdict,
} from './identify.ts';
export {
  circularRim,
  type MarkedCircle,
  type RimEllipse,
  rimAxes,
  rimRadius,
  rimStretch,
  rimThrough,
} from './rim.ts';
export {
  INVOLUTE_RANGES,
  INVOLUTE_STANDARD,
  METRIC_STANDARD,
  type PressureAngle,
  REFERENCE_STANDARD,
  SERRATED_SIZES,
  SERRATED_STANDARD,
  type SerratedSize,
  STANDARD_PITCHES,
} from './standards.ts';
export { type GreyImage, unwrapBand } from './unwrap.ts';
