// Sweeps: the grid of poses; the travel in heave or roll; the whole turn of the handwheel and what it comes to.
export { idealInner, idealOuter } from './ackermann.ts';
export {
  ASSISTED_TORQUE,
  assistedRimForce,
  BOX_EFFICIENCY,
  PARKING_FRICTION,
  type ParkingEffort,
  parkingEffort,
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
export { type ShaftTurn, turnThroughShaft } from './shaft-turn.ts';
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
  type Ackermann,
  ackermannOf,
  kingpinTrack,
  type Lock,
  type LockCause,
  lockAngles,
  sweepTurn,
  type TurningCircle,
  type TurnSweep,
  turningCircle,
  turnsLockToLock,
} from './turn.ts';
