// The survey of a car and its adjustment: what was measured, the points that fit it best, and how well they are known.
export {
  type AdjustedFurther,
  type AdjustedPoint,
  type AdjustedRow,
  type AdjustFailure,
  type Adjustment,
  type AdjustOptions,
  adjust,
  type BumpSteerDoubt,
  CHECKED_FROM,
  distancesFromDrawing,
  FITS_WITHIN,
  FREE_FROM,
  type SteerChange,
} from './adjust.ts';
export type { Further, FurtherOf, FurtherRow, FurtherUnknown } from './further.ts';
export { type FurtherMisfit, findMisfits, type Misfit, type Snooping } from './misfits.ts';
export { likelySlips, possibleSlips, type Slip, type SlipKind } from './slips.ts';
export {
  doubtOf,
  pointsNamed,
  readSurvey,
  type Survey,
  type SurveyKind,
  type SurveyRow,
  surveyedPoints,
  surveySchema,
  USUAL_DOUBT,
} from './survey.ts';
export {
  type AxisName,
  DRAWN_DOUBT,
  layoutAt,
  type PointPlace,
  type UnknownTable,
  unknownsOf,
} from './unknowns.ts';
