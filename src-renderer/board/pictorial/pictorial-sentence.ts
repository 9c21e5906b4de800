import type { Turn } from '../../../shared-math/pictorial/index.ts';
import { pictureWords, poseWords } from '../../../shared-math/words/index.ts';
import { brakingWords } from '../../document/braked-car.ts';
import type { OpenLayout } from '../../document/open-layout.svelte.ts';

/** What the pictorial shows at the moment, in plain sentences; `pale`, whether the car at ride height stands behind the one in its pose. */
export function pictorialSentence(openLayout: OpenLayout, turn: Turn, pale: boolean): string {
  const { layout, carPose } = openLayout;
  const length = (mm: number) => openLayout.length(mm);
  const { braking } = carPose.pose;
  const pose = `${poseWords(carPose.pose, length)}${braking > 0 ? `, braked at ${brakingWords(braking)}` : ''}`;
  const words = pictureWords(layout, turn, pose, length);
  return pale ? `${words} Pale behind it, the same car stands at ride height.` : words;
}
