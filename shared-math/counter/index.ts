// The counter: four questions that are answered without a car on the board, what was said and assumed with each answer.
export type { Answer, AnswerLine, AnswerPart, Assumed, Sketch, SketchPoint, Tone } from './answer.ts';
export { answerOf } from './answers.ts';
export { carOf } from './becomes-car.ts';
export { QUESTION_KINDS, QUESTION_WORDS, type QuestionKind } from './question-words.ts';
export {
  type EndPhoto,
  newQuestion,
  type Question,
  type QuestionOf,
  questionSchema,
  saysAnything,
} from './questions.ts';
export { pointing, shaftRun, USUAL_COLUMN_FALL } from './shaft-run.ts';
export { caliperWords, identityOf } from './spline-answer.ts';
