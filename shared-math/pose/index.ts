// The axle's pose: what its links and springs ask of it at an imposed heave and roll.
export { cantileverCentre } from './cantilever.ts';
export { clampLine } from './lateral-kinds/fixed-spring.ts';
export { LATERAL_KINDS } from './lateral-kinds/index.ts';
export { LOCATION_KINDS } from './location-kinds/index.ts';
export { ANGLE_ARM, type AxleKind, type AxleRow, LEAF_PITCH_WEIGHT, SIDEWAYS_WEIGHT } from './rows.ts';
export {
  type AxleModel,
  POSE_AXLE_FREE,
  POSE_BIND,
  POSE_HEAVE,
  POSE_NO_CONVERGENCE,
  POSE_OK,
  POSE_PITCH_LEFT,
  POSE_PITCH_RIGHT,
  POSE_ROCKER,
  POSE_ROLL,
  POSE_SIZE,
  POSE_WRAP,
  POSE_X,
  POSE_Y,
  POSE_YAW,
  type PoseCode,
  prepareAxle,
  resetPose,
  solveAxle,
} from './solve-axle.ts';
export { NO_WIND_UP, type WindUp } from './wind-up.ts';
