import { type Answer, answerOf, type Question } from '../../../shared-math/counter/index.ts';
import type { ShopLimits } from '../../../shared-math/findings/index.ts';
import type { LengthStyle } from '../../../shared-math/units/index.ts';

/** A question, in whose unit it is answered, and by which limits. */
export interface Asked {
  readonly question: Question;
  readonly style: LengthStyle;
  readonly limits: ShopLimits;
}

/** What is answered, beside its question, so that an answer is never shown with another. */
export interface Answered {
  readonly asked: Asked;
  readonly answer: Answer;
}

/** Answers a question in one step. */
// biome-ignore lint/correctness/useYield: one step is all that it takes; a job is a generator.
export function* answerJob(asked: Asked): Generator<undefined, Answered> {
  return { asked, answer: answerOf(asked.question, asked.style, asked.limits) };
}
