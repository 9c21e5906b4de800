// Balls and rod ends: how far they tilt, and how well the drag link drives its arms, over travel and turn.
export { type BallJoint, ballJoints } from './ball-joints.ts';
export {
  type GridExtremes,
  type GridPose,
  gridExtremes,
  tiltOf,
  transmissionAngles,
  type WorstTilt,
  type WorstTransmission,
} from './travel-grid.ts';
export { type LeastTransmission, turnTransmission } from './turn-transmission.ts';
