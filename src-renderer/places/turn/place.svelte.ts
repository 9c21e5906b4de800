import { getOpenLayout } from '../../document/open-layout.svelte.ts';
import { getComparison } from '../../panels/compare/comparison.svelte.ts';
import { lateStrip } from '../late-strip.ts';
import type { Place } from '../place.ts';
import { turnOnBoard } from './turn-on-board.ts';

/** How the car turns: its curves below the board and its marks on it, beside the home place's column. */
export function turnPlace(): Place {
  const openLayout = getOpenLayout();
  const comparison = getComparison();
  let open = $state(false);
  return {
    id: 'turn',
    name: 'Turn',
    strip: lateStrip(
      () => import('./turn-strip.svelte.ts'),
      ({ turnStrip }) => turnStrip(openLayout, comparison),
    ),
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
