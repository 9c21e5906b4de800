// The steering shaft: its route, how it turns, how it could run, how its ends fit, and how it is made.
export { type Chain, type Locked, placeYokes, prepareChain, turnsOf } from './chain.ts';
export { bestClocks } from './clocking.ts';
export {
  type ClockFreedom,
  type CutPiece,
  clockFreedom,
  cutList,
  type Dimple,
  type EndWork,
  endWork,
  type Notch,
  notchFor,
  type ShaftCut,
  type SupportWork,
  supportList,
} from './cuts.ts';
export {
  checkMeetings,
  type EndsVerdict,
  endsAt,
  engagement,
  type FitRemedy,
  type FitStatus,
  jointEndName,
  judgeEnds,
  type Meeting,
  type MeetingPlace,
  meetingName,
  meetingPlaces,
  shaftEndName,
  stockEnd,
  type Toward,
} from './ends.ts';
export {
  BOLT_GRADES,
  boltTension,
  NEWTON_METRES_PER_POUND_FOOT,
  NEWTON_METRES_PER_POUND_INCH,
  NUT_FACTOR,
  pinchFriction,
  preloadTension,
  SET_SCREWS,
  type SetScrew,
  setScrewOf,
  setScrewTorque,
  threadStressArea,
  tighteningTorque,
} from './fasteners.ts';
export { bestClocked, firstShaft, INPUT } from './first-shaft.ts';
export { routeObstacles } from './layout-obstacles.ts';
export { type ShaftLine, type ShaftMember, type ShaftPin, shaftLine, TO_SPIDER } from './line.ts';
export {
  boxHandwheel,
  evenColumnYoke,
  halfTurn,
  motionOf,
  outputOf,
  ratioOf,
  type ShaftMotion,
} from './motion.ts';
export {
  type ClearanceOf,
  clearanceOf,
  type Nearest,
  type RouteObstacle,
  segmentToObstacle,
} from './obstacles.ts';
export { type PartLine, partsList, type ShaftPart } from './parts.ts';
export {
  type ApparentAngles,
  angleBetween,
  apparentAngles,
  type Route,
  type RouteEnd,
  type RouteJoint,
  routeOf,
  slideOnAxis,
} from './route.ts';
export {
  checkRoute,
  type LongSpan,
  type RouteCheck,
  type SupportCheck,
  type SupportReason,
  supportCheck,
} from './route-check.ts';
export { noRouteSentence, partsWords, STATUS_WORDS, supportSentence } from './route-words.ts';
export {
  clockSteps,
  makingSteps,
  type ShaftTorque,
  type Step,
  type StepKind,
  shaftTorques,
  torqueWords,
} from './steps.ts';
export { type Stub, stubSentence, stubsOf } from './stubs.ts';
export {
  type NoRoute,
  ROUTE_JOINTS,
  type RouteJoints,
  type RouteProposal,
  type RouteTask,
  type RouteWishes,
  rankedRoutes,
  SHORT_SLIDES,
  type Suggestion,
  suggestRoute,
  suggestRoutes,
  supportsFor,
  WIDE_SLIDES,
} from './suggest.ts';
export {
  doubleDSection,
  flatWidth,
  roundSection,
  STEEL_SHEAR_MODULUS,
  shearStress,
  stockSection,
  type TorsionSection,
  twistOf,
} from './torsion.ts';
export { type Turning, turningOf } from './turning.ts';
export {
  CLOCK_NOTICED,
  type JointLimits,
  LONGEST_SPAN,
  USUAL_JOINT_DEGREES,
  USUAL_JOINT_LIMITS,
} from './usual.ts';
export {
  BORE_OVER,
  ON_ITS_END,
  sideTaking,
  stockFor,
  USUAL_BOLT,
  USUAL_DOUBLE_D,
  USUAL_SCREW,
  USUAL_SEAT,
  USUAL_TEETH,
} from './usual-ends.ts';
export {
  endForSide,
  endWords,
  pieceWords,
  sideForEnd,
  sideWords,
  sizeWords,
  splineWords,
  stockWords,
} from './words.ts';
