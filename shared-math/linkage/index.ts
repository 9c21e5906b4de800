// The steering linkage: a layout made ready, solved in any pose, and its points carried there.
export { arrangementOf } from './arrangement.ts';
export { type BallCircle, ballCircle, closeLink, drawnBranch } from './ball-circle.ts';
export {
  drawnSpinAxis,
  type FrontEnd,
  groundOffsets,
  type LinkLengths,
  linkLengths,
  prepareFrontEnd,
  prepareMoved,
  prepareWoundUp,
  sectorCircle,
} from './front-end.ts';
export { HeldPoses } from './held-poses.ts';
export { MOTION_SIZE, writeMotion } from './motion-of.ts';
export {
  carriedTo,
  kingpinDirection,
  meanSteerRate,
  type SteerRates,
  spindleRates,
  steerRates,
} from './rates.ts';
export {
  type AxleState,
  axleStandsAt,
  carryPoint,
  createState,
  type FrontEndState,
  type PoseFailure,
  type PoseStatus,
  poseAxle,
  solveFrontEnd,
  steerAxle,
  steerByBall,
  type WheelState,
} from './solve-front-end.ts';
