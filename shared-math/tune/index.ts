// Tuning: what may move is moved to the least bump steer while what must hold holds; and what small errors do.
export { type ClearanceNeeds, type Figures, figuresOf } from './figures.ts';
export { FREEDOMS, type Freedom, type FreedomName, freedomNamed, USUAL_WITHIN } from './freedoms.ts';
export { holdsOf, usualHolds } from './hold-context.ts';
export type { HoldName, HoldState, Holds, Range } from './holds.ts';
export {
  armEffect,
  dragLinkEffect,
  fourBarEffect,
  type LengthEffect,
  lateralBarEffect,
  oneSideEffect,
  tieRodArmEffect,
  tieRodEffect,
} from './length-effects.ts';
export { type PlaceEffect, placeEffects } from './place-effects.ts';
export { type Found, type Problem, type SearchProgress, searchLeast } from './search.ts';
export {
  type Sensitivity,
  type StepEffect,
  type StepFigures,
  sensitivityOf,
  USUAL_STEP,
} from './sensitivity.ts';
export { type ToleranceBand, type ToleranceOptions, toleranceBand } from './tolerance.ts';
export { type FreeMove, type TuneOptions, type TuneRefusal, type TuneResult, tune } from './tune.ts';
export { tuneRefusalWords } from './words.ts';
