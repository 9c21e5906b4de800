import { getOpenLayout } from '../../document/open-layout.svelte.ts';
import { getComparison } from '../../panels/compare/comparison.svelte.ts';
import { type Place, placePiece } from '../place.ts';
import TurnStrip from './TurnStrip.svelte';
import { turnOnBoard } from './turn-on-board.ts';

/** How the car turns: its curves below the board and its marks on it, beside the home place's column. */
export function turnPlace(): Place {
  const openLayout = getOpenLayout();
  return {
    id: 'turn',
    name: 'Turn',
    strip: placePiece(TurnStrip, { openLayout, comparison: getComparison() }),
    contributors: [turnOnBoard(openLayout)],
  };
}
