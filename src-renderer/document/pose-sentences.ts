import type { FrontEndState } from '../../shared-math/linkage/index.ts';

/** The part that does not reach, as the beginning of a sentence. */
const PART: Record<FrontEndState['failure'], string> = {
  '': 'The linkage does not reach',
  'drag-link': 'The drag link does not reach',
  'tie-rod': 'The tie rod does not reach',
  'axle-free': 'The links leave the axle free to move',
  'no-convergence': 'The links cannot hold the axle',
};

export interface StoppedAt {
  readonly along: 'heave' | 'roll' | 'handwheel' | 'braking';
  /** Already with its unit and without a sign: "2 1/4 in", "1.5°", "0.45 g". */
  readonly figure: string;
  readonly positive: boolean;
}

const DIRECTION = {
  heave: ['of droop', 'of bump'],
  roll: ['of roll, right side up', 'of roll, left side up'],
  handwheel: ['of handwheel to the right', 'of handwheel to the left'],
  braking: ['of braking', 'of braking'],
} as const;

/** Why a pose control stopped, and where. */
export function stopSentence(failure: FrontEndState['failure'], at: StoppedAt): string {
  return `${PART[failure]} beyond ${at.figure} ${DIRECTION[at.along][at.positive ? 1 : 0]}.`;
}

/** What is wrong where even the car as drawn does not solve. */
export function unsolvedSentence(failure: FrontEndState['failure']): string {
  if (failure === 'axle-free')
    return 'As drawn, the links leave the axle free to move: it needs a bar or pivot somewhere else.';
  return `${PART[failure]} in the car as drawn.`;
}

export const RETURNED_TO_RIDE = 'Back at ride height: the layout is drawn there.';
