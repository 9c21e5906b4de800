// The forces in links, arms and joints when the car is parked, pushed against a kerb or braked.
export {
  carriedTo,
  contactOf,
  type OutsideLoads,
  type RowForce,
  type SpringSeats,
  type Statics,
  type StaticsFailure,
  solveStatics,
  springSeats,
  type Wrench,
} from './statics.ts';
