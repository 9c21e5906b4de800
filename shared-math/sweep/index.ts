// Sweeps: the grid of poses, and the travel in heave or roll as columns for curves.
export { idealInner, idealOuter } from './ackermann.ts';
export { evenly, type RideSteer, rideSteer, type VisitPose, visitGrid } from './grid.ts';
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
