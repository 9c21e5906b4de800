// The layout document: what it holds, how it is read and refused, its hardpoints and how they move.

export { groundGaps, meanWheelHeight, withTyreRadius, withWheelCentreAt } from './axle-group.ts';
export {
  bodyAt,
  bodyName,
  bodyOfPart,
  bodyPoints,
  type CarBody,
  carBodies,
  holdOf,
  movePoint,
  partsOfBody,
} from './body-points.ts';
export {
  drawnInputAngle,
  ownInputAngle,
  USUAL_INPUT_ANGLE,
  withInputTrue,
} from './box-input.ts';
export type { BrakingDocument } from './braking-schema.ts';
export { documentText } from './document-text.ts';
export {
  driverSideOf,
  inTheMirror,
  steeringSide,
  withDriverSide,
  withSteeringMirrored,
} from './driver-side.ts';
export { geometryRefusal, steeringRefusal } from './geometry-checks.ts';
export type { CarriedPoints, Carrier, Hardpoint } from './hardpoint.ts';
export { hardpoints } from './hardpoints.ts';
export { layoutJsonSchema } from './json-schema.ts';
export {
  halvesOfSpring,
  LATERAL_FACTS,
  type LateralBar,
  lateralBars,
  lateralPoints,
} from './lateral-kinds.ts';
export type { LinkEndDocument, LinkMaterial, LinksDocument, ThreadedEnd } from './links-schema.ts';
export { hasRigidRods, LOCATION_FACTS, type LocationFacts, locationPointsOn } from './location-kinds.ts';
export { moveHardpoint } from './move-hardpoint.ts';
export { type NumberedPoint, numberedPoints, pointNumbers } from './numbered-points.ts';
export {
  isOtherOfPair,
  type OriginCounts,
  originCounts,
  originOf,
  withGuessesPlanned,
  withMovedPlanned,
  withOrigin,
  withOriginsKept,
} from './origins.ts';
export { PHOTO_SIDE_MAX, type Photo } from './photo-schema.ts';
export { placeHardpoint } from './place-hardpoint.ts';
export { PLAIN_LAYOUT } from './plain-layout.ts';
export { LAYOUT_TEXT_MAX, parseLayout, readEdited, readLayout } from './read.ts';
export { type Refusal, refusalLine, refusalOf } from './refusals.ts';
export { type Layout, resolveLayout } from './resolve.ts';
export type { RideDocument, SpringDocument } from './ride-schema.ts';
export {
  type AxleSide,
  type Lateral,
  type LateralKind,
  type LayoutDocument,
  type Location,
  type LocationKind,
  layoutSchema,
  type Obstacle,
  type Origin,
  type Rail,
} from './schema.ts';
export { flatProblems } from './shaft-checks.ts';
export { jointOfPoint, slidAlong, slideOf, withShaftAtBox } from './shaft-points.ts';
export type {
  JointKind,
  JointSide,
  ShaftDocument,
  ShaftEnd,
  ShaftJoint,
  ShaftStock,
  ShaftSupport,
  SplineForm,
} from './shaft-schema.ts';
export { jointSideSchema, shaftEndSchema, splineShape, stockSchema } from './shaft-schema.ts';
export { halfOf, SIDES, type Side } from './sides.ts';
export { UNDERLAYS_MAX, type Underlay } from './underlay-schema.ts';
export {
  OBSTACLE_ROLES,
  type ObstacleRole,
  usualObstacle,
  usualRail,
  withKind,
  withRailPoint,
} from './usual-bodies.ts';
export { withValue } from './values.ts';
export { LAYOUT_VERSION } from './version.ts';
