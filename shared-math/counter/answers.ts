import type { ShopLimits } from '../findings/index.ts';
import type { LengthStyle } from '../units/index.ts';
import type { Answer } from './answer.ts';
import { arrangementAnswer } from './arrangement-answer.ts';
import { fitAnswer } from './fit-answer.ts';
import type { QuestionKind } from './question-words.ts';
import type { Question, QuestionOf } from './questions.ts';
import { shaftAnswer } from './shaft-answer.ts';
import { splineAnswer } from './spline-answer.ts';

const ANSWERS: {
  readonly [Kind in QuestionKind]: (
    question: QuestionOf<Kind>,
    style: LengthStyle,
    limits: ShopLimits,
  ) => Answer;
} = { shaft: shaftAnswer, spline: splineAnswer, fit: fitAnswer, arrangement: arrangementAnswer };

/** What a question comes to, in the reader's unit and by the shop's own limits. */
export function answerOf(question: Question, style: LengthStyle, limits: ShopLimits): Answer {
  const answer = ANSWERS[question.kind] as (...of: Parameters<typeof answerOf>) => Answer;
  return answer(question, style, limits);
}
