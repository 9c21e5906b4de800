import type { Contribution } from '../../../board/contributor.ts';
import type { OpenLayout } from '../../../document/open-layout.svelte.ts';
import { arcMarks, arcNotes } from './arc-marks.ts';
import { arcsOf, gapOf } from './arcs.ts';

/** What the travel says on the board while it is shown: the two arcs, the gap between them, the aim. */
export const travelOnBoard = (openLayout: OpenLayout, shown: () => boolean) => (): Contribution => {
  const arcs = $derived.by(() => arcsOf(openLayout.held, openLayout.aim));
  const gap = $derived.by(() => gapOf(openLayout.frontEnd, arcs, openLayout.carPose.pose.heave));
  return {
    id: 'travel',
    overlay: (board) => {
      if (!shown()) return {};
      const source = { ...board, arcs, gap };
      return { ...arcMarks(source), notes: arcNotes(source) };
    },
  };
};
