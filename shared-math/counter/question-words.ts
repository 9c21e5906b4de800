/** The four questions that the counter answers. */
export type QuestionKind = 'shaft' | 'spline' | 'fit' | 'arrangement';

/** What each question is called, and the question itself, in the order in which they are offered. */
export const QUESTION_WORDS: Readonly<
  Record<QuestionKind, { readonly name: string; readonly asks: string }>
> = {
  shaft: { name: 'Shaft and joints', asks: 'Which shaft, joints and supports?' },
  spline: { name: 'Which spline', asks: 'Which spline is this?' },
  fit: { name: 'What fits what', asks: 'What fits what?' },
  arrangement: { name: 'Side or cross', asks: 'Side or cross steer, manual or assisted?' },
};

export const QUESTION_KINDS = Object.keys(QUESTION_WORDS) as readonly QuestionKind[];
