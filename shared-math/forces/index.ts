// The forces in links, arms and joints when the car is parked, pushed against a kerb or braked.
export { type FigureKind, type ForceFigure, forceFigures } from './figures.ts';
export {
  type ArmAt,
  type ArmReach,
  DRIVER_PULL,
  type FigureReach,
  FORCES_LEFT_OUT,
  greatestOutput,
  type LinkForces,
  type LoadCase,
  type LoadCaseId,
  linkForces,
  type Peak,
  type Reach,
  USUAL_BOX_OUTPUT,
} from './load-cases.ts';
export { type LinkMargins, leastMargin, linkMargins, type Margin } from './margins.ts';
export { parkedDragLink } from './parked-drag-link.ts';
export { PARKING_GRIPS } from './scrub.ts';
export {
  type OutsideLoads,
  type RowForce,
  type SpringSeats,
  type Statics,
  type StaticsFailure,
  solveStatics,
  springSeats,
  type Wrench,
} from './statics.ts';
export {
  CASE_WORDS,
  FORCES_CAUTION,
  loadWords,
  marginWords,
  NO_FORCES,
  reachWords,
  timesWords,
  WAY_WORDS,
} from './words.ts';
