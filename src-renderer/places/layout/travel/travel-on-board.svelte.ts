import type { Contribution } from '../../../board/contributor.ts';
import type { Workbench } from '../../../document/workbench.svelte.ts';
import { arcMarks, arcNotes } from './arc-marks.ts';
import { arcsOf, gapOf } from './arcs.ts';

/** What the travel says on the board while its curves stand below: the two arcs, the gap between them, the aim. */
export const travelOnBoard = (workbench: Workbench) => (): Contribution => {
  const arcs = $derived.by(() => arcsOf(workbench.held, workbench.aim));
  const gap = $derived.by(() => gapOf(workbench.frontEnd, arcs, workbench.pose.heave));
  return {
    id: 'travel',
    overlay: (board) => {
      if (workbench.lookedAt !== 'travel') return {};
      const source = { ...board, arcs, gap };
      return { ...arcMarks(source), notes: arcNotes(source) };
    },
  };
};
