// The road run and the hand on the axle: masses, springs, dampers and tyres in the engine, and the steering that follows.
export { type RideFigures, rideFigures, type TwoMasses, twoMasses } from './figures.ts';
export { NO_HANDWHEEL, straightHandwheel } from './kick.ts';
export {
  GRAVITY,
  type RideOrigin,
  type RideParameterName,
  type RideParameters,
  type RideSetUp,
  rideParameters,
  USUAL_RIDE,
} from './parameters.ts';
export { RIDE_RANGES, type RideRange } from './ranges.ts';
export { placeRide, prepareRide, type RidePlace, restRide, SUB_STEP, stepRide } from './ride.ts';
export {
  BAND,
  FLAT_ROAD,
  likeness,
  type MeasuredRoad,
  parseRoadTable,
  prepareRoad,
  ROAD_CLASSES,
  ROAD_KINDS,
  ROAD_TEXT_MAX,
  type Road,
  type RoadClass,
  type RoadField,
  type RoadKind,
  type RoadProfile,
  roadKind,
  roadProblem,
  roughness,
  spectralDensity,
} from './roads/index.ts';
export {
  FLAG_BUMP_STOP,
  FLAG_DROOP_STOP,
  FLAG_LEFT_OFF_GROUND,
  FLAG_NO_KICK,
  FLAG_RIGHT_OFF_GROUND,
  type RideRun,
  RUN_DIVERGED,
  RUN_EVERY,
  RUN_NO_POSE,
  RUN_OK,
  RUN_OUT_OF_REACH,
  RUN_SECONDS_MAX,
  RUN_SPEED_MAX,
  type RunOptions,
  rideSteps,
  runRide,
} from './run.ts';
export { leafHalves, leafRate, springRateOf } from './spring-rate.ts';
export type { Hand, Ride, RideState, RideStatus } from './state.ts';
