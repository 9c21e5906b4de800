import { getWorkbench } from '../../document/workbench.svelte.ts';
import { getComparison } from '../../panels/compare/comparison.svelte.ts';
import { type Place, placePiece } from '../place.ts';
import TurnStrip from './TurnStrip.svelte';
import { turnOnBoard } from './turn-on-board.ts';

/** How the car turns: its curves below the board and its marks on it, beside the home place's column. */
export function turnPlace(): Place {
  const workbench = getWorkbench();
  return {
    id: 'turn',
    name: 'Turn',
    strip: placePiece(TurnStrip, { workbench, comparison: getComparison() }),
    contributors: [turnOnBoard(workbench)],
  };
}
