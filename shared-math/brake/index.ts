// Braking: what it asks of the front axle, how far its springs let it wind up, and what that does to caster and steer.

export { type BrakeLoads, brakeLoads, type LoadedCar } from './brake-loads.ts';
export { type BrakedAxle, brakedAxle, GRIP_RANGE, JUDGED_GRIP, prepareBraked } from './braked.ts';
export { type BrakingCar, brakingCar, USUAL_BRAKING, type WindUpBy, windUpCentre } from './braking-car.ts';
export { type BrakingChange, brakingChanges } from './braking-changes.ts';
export { BRAKING_LEFT_OUT } from './braking-words.ts';
export {
  BRAKING_ROWS,
  type BrakingAt,
  type BrakingRow,
  type JudgedBraking,
  judgeBraking,
  leastCaster,
  sweepBraking,
  usualGrips,
} from './sweep-braking.ts';
export { windUpStiffness } from './wind-up-stiffness.ts';
