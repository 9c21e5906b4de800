// What a person measures on a car, in the order of the tape, and what has been taken of it.
export {
  type CarSurvey,
  carSurveySchema,
  EMPTY_CAR_SURVEY,
  EMPTY_SURVEY,
  rowsFor,
  type Taken,
  typedDoubt,
  typedFigures,
  wayOf,
  withFurther,
  withTaken,
} from './car-survey.ts';
export { longestView } from './dimensions.ts';
export {
  type Dimension,
  type EntryWay,
  INSTRUMENT_WORDS,
  INSTRUMENTS,
  type Instrument,
  type InstrumentDoubts,
  type ListRow,
  type ListView,
  type Observation,
  type TypedFigures,
  USUAL_INSTRUMENTS,
} from './list-row.ts';
export {
  type FreeCoordinate,
  freeCoordinates,
  freeWords,
  pointWords,
  rowsAsDrawn,
  unknownWithout,
} from './open-rows.ts';
export { type SideDifference, sideDifferences } from './sides-alike.ts';
export { type SlipQuestion, slipQuestions } from './slip-questions.ts';
export { type ListOptions, surveyList } from './survey-list.ts';
export { type FarQuestion, farQuestions, type UsualRange } from './usual-places.ts';
