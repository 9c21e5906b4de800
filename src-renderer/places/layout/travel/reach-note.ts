import type { Along } from '../../../curves/curve-data.ts';
import { stopSentence } from '../../../document/pose-sentences.ts';
import { RIDE_HEIGHT, reachToward } from '../../../document/reach.ts';
import type { Workbench } from '../../../document/workbench.svelte.ts';

/** Why a curve has gaps, and from where on, one sentence for each end of the travel that is out of reach. */
export function reachNote(workbench: Workbench, along: Along): string {
  if (workbench.poseState.status !== 'ok') return '';
  const held = { ...RIDE_HEIGHT, handwheel: workbench.pose.handwheel };
  return workbench.poseLimits[along]
    .map((end) => {
      const { pose, stoppedBy } = reachToward(workbench.frontEnd, held, { ...held, [along]: end });
      if (stoppedBy === '') return '';
      const figure =
        along === 'heave' ? workbench.length(Math.abs(pose.heave)) : workbench.degrees(Math.abs(pose.roll));
      return stopSentence(stoppedBy, { along, figure, positive: end > 0 });
    })
    .filter(Boolean)
    .join(' ');
}
