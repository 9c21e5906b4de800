import type { BoardView } from '../../board/board-view.svelte.ts';
import type { Contribution } from '../../board/contributor.ts';
import { handlesOf, numberBoxes, type OverlaySource } from '../../board/overlay-picture.ts';
import type { OpenLayout } from '../../document/open-layout.svelte.ts';
import { solvePose } from '../../document/reach.ts';
import type { Studies } from './studies.svelte.ts';
import { type Arrows, effectArrows, proposalNotes } from './study-notes.ts';

const NO_ARROWS: Arrows = { lines: [], texts: [], rects: [] };

/** What a search proposes and what a small step does, on the board. */
export const studiesOnBoard =
  (openLayout: OpenLayout, studies: Studies) =>
  (view: BoardView): Contribution => {
    const { map, tuning, effects } = studies;

    function arrows(source: OverlaySource): Arrows {
      const { handles, chosen, chosenView, measure } = source;
      const reported = effects.last;
      const own = handles.filter(({ point }) => point.id === chosen);
      const handle = own.find((each) => each.view === chosenView) ?? own[0];
      // On the map the same is reported everywhere at once, and away from ride height the arrows would not hold.
      if (!reported || !handle || map.shown || tuning.proposal || !openLayout.carPose.atRide)
        return NO_ARROWS;
      const numbers = numberBoxes(handlesOf(source), view.weight);
      return effectArrows(reported, handle, view.weight, openLayout.enlarged !== null, numbers, (text) =>
        measure(text, true),
      );
    }

    return {
      id: 'studies',
      overlay: (source) => ({
        ...arrows(source),
        firstNotes: proposalNotes(tuning.proposed, source.shown, source.onBoard),
      }),
      settles: () => Boolean(effects.current),
      proposed: () => {
        const frontEnd = tuning.proposed;
        return (
          frontEnd && {
            frontEnd,
            state: solvePose(frontEnd, openLayout.carPose.pose),
            links: JSON.stringify(frontEnd.layout.lateral) !== JSON.stringify(openLayout.layout.lateral),
          }
        );
      },
    };
  };
