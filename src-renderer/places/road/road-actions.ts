import type { Action } from '../../controls/action.ts';
import type { OpenLayout } from '../../document/open-layout.svelte.ts';
import type { AxlePull } from './axle-pull.svelte.ts';
import type { RoadRun } from './road-run.svelte.ts';

/** What can be done over a road and with a hand on the axle. */
export function roadActions(openLayout: OpenLayout, road: RoadRun, axlePull: AxlePull): Action[] {
  const drawn = () => openLayout.document !== null;
  return [
    {
      id: 'run-travel',
      name: 'Run the travel, or drive over the road; or stop it',
      strokes: [{ key: 't' }],
      enabled: drawn,
      run: () => {
        if (road.open) road.toggle();
        else if (openLayout.carPose.playing) openLayout.carPose.stop();
        else openLayout.carPose.play();
      },
    },
    {
      id: 'pull-axle',
      name: 'Pull the axle, then either tyre: by arrows up and down',
      strokes: [{ key: 'p' }],
      enabled: drawn,
      run: () => axlePull.takeNext(),
    },
    {
      id: 'let-go',
      name: 'Let go of what is pulled: it settles on its springs',
      strokes: [{ key: 'p', shift: true }],
      enabled: () => axlePull.hold !== null,
      run: () => axlePull.letGo(),
    },
  ];
}
