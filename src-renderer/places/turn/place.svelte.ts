import { getOpenLayout } from '../../document/open-layout.svelte.ts';
import { getComparison } from '../../panels/compare/comparison.svelte.ts';
import { latePiece } from '../late-piece.svelte.ts';
import type { Place } from '../place.ts';
import { turnOnBoard } from './turn-on-board.ts';

/** How the car turns: its curves below the board and its marks on it, beside the home place's column. */
export function turnPlace(): Place {
  const openLayout = getOpenLayout();
  let open = $state(false);
  return {
    id: 'turn',
    name: 'Turn',
    strip: latePiece(() => import('./TurnStrip.svelte'), { openLayout, comparison: getComparison() }),
    contributors: [turnOnBoard(openLayout, () => open)],
    ownMarks: true,
    entered: () => {
      open = true;
    },
    left: () => {
      open = false;
    },
  };
}
