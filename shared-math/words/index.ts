// Words that the screen and the printed sheet share: cautions, the verdict, the turn, the kinds of a car.
export {
  ASSIST_WORDS,
  BEAM_WORDS,
  CAUTION,
  DRIVER_WORDS,
  EYES_WORDS,
  LATERAL_WORDS,
  LOCATION_WORDS,
  ROCKER_WORDS,
  SIDE_WORDS,
  type Words,
  wordsOf,
} from './car-words.ts';
export {
  ARMS,
  ASSISTANCE,
  CAUTIONS,
  type Caution,
  type CautionNote,
  cautionsAt,
  cautionsOf,
  LINK_ENDS,
  ROAD_RUN,
  RODS,
  STOPS,
} from './cautions.ts';
export { FAILURE_WORDS } from './failure-words.ts';
export { gapWords, pairWords } from './gap-words.ts';
export { linkWords } from './link-words.ts';
export { pictureWords, turnWordsOf } from './picture-words.ts';
export { handwheelWords, lockWords, placeInTurn, ratioWords, turnsWords } from './turn-words.ts';
export {
  groundsOf,
  poseWords,
  type SaidPose,
  SEVERITY_WORDS,
  type Stretch,
  tallyWords,
} from './verdict-words.ts';
