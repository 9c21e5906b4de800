// The arrangement helper: side and cross steer, manual and assisted, laid on one car and measured alike.
export {
  type Arrangement,
  type ArrangementFigures,
  type ArrangementName,
  type CarFacts,
  proposeArrangements,
} from './propose.ts';
