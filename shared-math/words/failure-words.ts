import type { FrontEndState } from '../linkage/index.ts';

/** Why a pose cannot be, as a clause: "the drag link does not reach this pose". */
export const FAILURE_WORDS: Readonly<Record<FrontEndState['failure'], string>> = {
  '': 'the linkage does not reach this pose',
  'drag-link': 'the drag link does not reach this pose',
  'tie-rod': 'the tie rod does not reach this pose',
  'axle-free': 'the links leave the axle free to move, so no pose is drawn',
  'no-convergence': 'the links cannot hold the axle in this pose',
};
