import { formatDecimal, formatDegrees, formatLength, toDegrees } from '../../../shared-math/units/index.ts';
import type { DrawingJob } from './job.ts';

/** A pose in words: "at ride height, wheels straight ahead"; "2 in of bump, roll 1.5°, handwheel 90.0° left". */
export function poseWords({
  pose: { heave, roll, handwheel, braking = 0 },
  unit,
  fraction,
}: DrawingJob): string {
  const parts = [
    heave === 0
      ? ''
      : `${formatLength(Math.abs(heave), { unit, fraction })} of ${heave > 0 ? 'bump' : 'droop'}`,
    roll === 0 ? '' : `roll ${formatDegrees(toDegrees(roll), 1)}`,
    handwheel === 0
      ? ''
      : `handwheel ${formatDegrees(Math.abs(toDegrees(handwheel)), 0)} ${handwheel > 0 ? 'left' : 'right'}`,
    braking === 0 ? '' : `braking at ${formatDecimal(braking, 2)} g`,
  ].filter(Boolean);
  if (parts.length === 0) return 'at ride height, wheels straight ahead';
  return parts.join(', ');
}
