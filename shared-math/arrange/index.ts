// The arrangement helper: side and cross steer, manual and assisted, laid on one car and measured alike.
export {
  type ArrangementRow,
  arrangementRows,
  assistedWords,
  DRIVEN_WORDS,
  ENGINE_WORDS,
  laidNotes,
  parkingWords,
  rollSteerWords,
  tooNearWords,
} from './arrangement-words.ts';
export { firstFacts, frameWidth, USUAL_FRAME_WIDTH } from './car-facts.ts';
export {
  type Arrangement,
  type ArrangementFigures,
  type ArrangementName,
  type CarFacts,
  proposeArrangements,
} from './propose.ts';
