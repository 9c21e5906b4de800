import type { Contributor } from '../../board/contributor.ts';
import { proposedAt } from '../../board/proposed-note.ts';
import type { OpenLayout } from '../../document/open-layout.svelte.ts';
import { solvePose } from '../../document/reach.ts';
import type { Proposing } from './proposing.svelte.ts';

/** A proposed arrangement over the drawing, in broken lines, before it is laid. */
export const ghostOnBoard =
  (openLayout: OpenLayout, proposing: Proposing): Contributor =>
  () => {
    const shown = () => (proposing.onBoard ? proposing.ghostEnd : undefined);
    return {
      id: 'proposals',
      overlay: (source) => ({
        firstNotes: proposedAt(shown()?.layout.steering.box.pitmanBall, source.shown, source.onBoard),
      }),
      proposed: () => {
        const frontEnd = shown();
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
