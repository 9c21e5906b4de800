import { KILL_BUMP_STEER } from './kill-bump-steer.ts';
import { MEASURE } from './measure.ts';
import { PRINT_AND_BUILD } from './print-and-build.ts';
import { ROUTE_THE_SHAFT } from './route-the-shaft.ts';
import { SIDE_OR_CROSS } from './side-or-cross.ts';
import { TURN_AND_STOPS } from './turn-and-stops.ts';
import type { Walk } from './walk.ts';

export { labelsIn, WALK_WINDOW, type Walk, type WalkPicture, type WalkStep } from './walk.ts';

/** The short walks of the handbook, in the order of the job. A new one is its file, its acts beside the tests, and one line here. */
export const WALKS: readonly Walk[] = [
  MEASURE,
  SIDE_OR_CROSS,
  KILL_BUMP_STEER,
  TURN_AND_STOPS,
  ROUTE_THE_SHAFT,
  PRINT_AND_BUILD,
];
