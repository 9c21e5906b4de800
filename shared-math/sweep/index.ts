// Sweeps: the grid of poses; the travel in heave or roll; the whole turn of the handwheel and what it comes to.
export {
  type Ackermann,
  type AckermannCar,
  ackermannCar,
  ackermannOf,
  idealInner,
  idealOuter,
  kingpinTrack,
} from './ackermann.ts';
export { type TurningCircle, turningCircle } from './circle.ts';
export {
  ASSISTED_TORQUE,
  assistedRimForce,
  BOX_EFFICIENCY,
  effortOfTurn,
  groundEccentricity,
  PARKING_FRICTION,
  type ParkingEffort,
  parkingEffort,
  type TurnEffort,
} from './effort.ts';
export { evenly, type RideSteer, rideSteer, type VisitPose, visitGrid } from './grid.ts';
export {
  heaveEnds,
  type OneWheel,
  type WheelTravel,
  wheelPlaces,
  wheelPoses,
  wheelTravel,
  worstOneWheel,
} from './one-wheel.ts';
export {
  contactOf,
  type KingpinLevers,
  kingpinLevers,
  type ReturnEnds,
  type ReturnInPose,
  type ReturnToStraight,
  returnEnds,
  returnInPose,
  returnToStraight,
  SIDE_FORCE_SHARE,
} from './return-to-straight.ts';
export { type ShaftTurn, turnThroughShaft, worstOffEven } from './shaft-turn.ts';
export {
  ROW_NO_POSE,
  ROW_OK,
  ROW_OUT_OF_REACH,
  summariseTravel,
  sweepTravel,
  type TravelSummary,
  type TravelSweep,
  toeLength,
} from './travel.ts';
export {
  type Lock,
  type LockCause,
  lockAngles,
  locksFrom,
  sweepTurn,
  type TurnSweep,
  turnsLockToLock,
} from './turn.ts';
