import { untrack } from 'svelte';
import { toRadians } from '../../../shared-math/units/index.ts';
import type { BoardStage } from '../../board/board-stage.ts';
import type { BoardView } from '../../board/board-view.svelte.ts';
import type { OverlaySource } from '../../board/overlay-picture.ts';
import { solvePose } from '../../document/reach.ts';
import type { Workbench } from '../../document/workbench.svelte.ts';
import type { Studies } from './studies.svelte.ts';
import { type Arrows, effectArrows, mapNotes, proposalNotes, triedNotes } from './study-notes.ts';

const NO_ARROWS: Arrows = { lines: [], texts: [], rects: [] };

/** What the studies put on the canvas, and what they add to the overlay. To be called where effects may be made. */
export function studiesCanvas(
  stage: BoardStage,
  view: BoardView,
  workbench: Workbench,
  studies: Studies,
  colours: () => readonly string[],
  settle: () => void,
) {
  const { map, tuning, effects } = studies;

  $effect(() => {
    const { answer, hits, view: on } = map;
    if (!map.shown || !answer || !view.shown.includes(on)) {
      stage.showMap(undefined);
      return;
    }
    // A window of another place keeps no hatches of the one before.
    const same =
      hits &&
      hits.window.from.join() === answer.window.from.join() &&
      hits.window.to.join() === answer.window.to.join();
    const { camera, sheet } = view;
    const left = sheet.origin[on][0] * camera.scale + camera.x;
    const top = sheet.origin[on][1] * camera.scale + camera.y;
    const across = on === 'side' ? -camera.scale : camera.scale;
    stage.showMap(
      { answer, hits: same ? hits : null, colours: colours(), limit: toRadians(map.scale.limit) },
      (x, z) => [left + x * across, top - z * camera.scale],
    );
  });

  $effect(() => {
    const proposed = tuning.proposed ?? studies.tried;
    const links = JSON.stringify(proposed?.layout.lateral) !== JSON.stringify(workbench.layout.lateral);
    stage.proposed.show(proposed, proposed && solvePose(proposed, workbench.pose), links);
  });

  // What is written finds its room again once there are arrows to keep off.
  $effect(() => {
    if (effects.current) untrack(settle);
  });

  return {
    notes: ({ shown, onBoard }: OverlaySource) => [
      ...mapNotes(map, shown, onBoard),
      ...proposalNotes(tuning.proposed, shown, onBoard),
      ...triedNotes(studies.tried, shown, onBoard),
    ],
    arrows: ({ handles, chosen, chosenView }: OverlaySource) => {
      const told = effects.last;
      const own = handles.filter(({ point }) => point.id === chosen);
      const handle = own.find((each) => each.view === chosenView) ?? own[0];
      // On the map the same is told everywhere at once, and away from ride height the arrows would not hold.
      if (!told || !handle || map.shown || tuning.proposal || !workbench.atRide) return NO_ARROWS;
      const measure = (text: string) => stage.measure(text, true);
      return effectArrows(told, handle, view.weight, workbench.enlarged !== null, measure);
    },
  };
}
