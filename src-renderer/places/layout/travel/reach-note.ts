import { brakingWords } from '../../../document/braked-car.ts';
import type { OpenLayout } from '../../../document/open-layout.svelte.ts';
import { stopSentence } from '../../../document/pose-sentences.ts';
import { RIDE_HEIGHT, reachToward } from '../../../document/reach.ts';
import type { Along } from './travel-data.ts';

/** Why a curve has gaps, and from where on, one sentence for each end of the travel that is out of reach. */
export function reachNote(openLayout: OpenLayout, along: Along): string {
  if (openLayout.carPose.state.status !== 'ok') return '';
  const held = { ...RIDE_HEIGHT, handwheel: openLayout.carPose.pose.handwheel };
  return openLayout.carPose.limits[along]
    .map((end) => {
      const { pose, stoppedBy } = reachToward(openLayout.frontEnd, held, { ...held, [along]: end });
      if (stoppedBy === '') return '';
      const figure = {
        heave: () => openLayout.length(Math.abs(pose.heave)),
        roll: () => openLayout.degrees(Math.abs(pose.roll)),
        braking: () => brakingWords(pose.braking ?? 0),
      }[along]();
      return stopSentence(stoppedBy, { along, figure, positive: end > 0 });
    })
    .filter(Boolean)
    .join(' ');
}
