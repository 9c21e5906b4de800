import type { Lock, LockCause } from '../sweep/index.ts';
import { formatDegrees, toDegrees } from '../units/index.ts';

const CAUSES: Record<Exclude<LockCause, 'stop'>, string> = {
  'sector-travel': 'the box’s own end',
  'drag-link': 'the drag link’s reach',
  'tie-rod': 'the tie rod’s reach',
  'dead-centre': 'an arm’s dead centre',
  'no-pose': 'no pose',
};

/** What sets a lock, in plain words: "the stop at 33°". `stopAngle` in degrees, as the layout has it. */
export function lockWords(cause: LockCause, stopAngle: number | undefined): string {
  if (cause !== 'stop') return CAUSES[cause];
  if (stopAngle === undefined) return 'the stop';
  return `the stop at ${formatDegrees(stopAngle, Number.isInteger(stopAngle) ? 0 : 1)}`;
}

/** An angle of the handwheel (degrees) in turns of it: "1.56 turns". */
export function turnsWords(degrees: number): string {
  return `${(Math.abs(degrees) / 360).toFixed(2)} turns`;
}

/** Where the handwheel stands, for a sentence: "straight ahead", "at 270° of handwheel to the left". Degrees. */
export function handwheelWords(degrees: number): string {
  if (Math.abs(degrees) < 0.5) return 'straight ahead';
  return `at ${formatDegrees(Math.abs(degrees), 0)} of handwheel to the ${degrees > 0 ? 'left' : 'right'}`;
}

/** The same, short, and by its name at a lock: "left lock", "270° left". rad, as the sweep has it. */
export function placeInTurn(handwheel: number, locks: { readonly left: Lock; readonly right: Lock }): string {
  if (handwheel === locks.left.handwheel) return 'left lock';
  if (handwheel === locks.right.handwheel) return 'right lock';
  const degrees = toDegrees(handwheel);
  if (Math.abs(degrees) < 0.5) return 'straight ahead';
  return `${formatDegrees(Math.abs(degrees), 0)} ${degrees > 0 ? 'left' : 'right'}`;
}

/** "15.8 to 1". */
export function ratioWords(ratio: number): string {
  return `${ratio.toFixed(1)} to 1`;
}
