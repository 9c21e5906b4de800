import type { Action } from '../../controls/action.ts';
import type { OpenLayout } from '../../document/open-layout.svelte.ts';
import type { Shell } from '../../document/shell.svelte.ts';
import type { Studies } from './studies.svelte.ts';

/** What the board works out about a layout. */
export function layoutActions(
  openLayout: OpenLayout,
  studies: Studies,
  shell: Shell,
  toggleDetail: () => void,
): Action[] {
  const drawn = () => openLayout.document !== null;
  return [
    {
      id: 'map',
      name: 'Where can the ball go? Map of bump steer',
      strokes: [{ key: 'm' }],
      enabled: drawn,
      run: () => studies.map.toggle(),
    },
    {
      id: 'detail',
      name: 'Detail of the arcs, or not',
      strokes: [{ key: 'd' }],
      enabled: drawn,
      run: toggleDetail,
    },
    {
      id: 'tune',
      name: 'Tune: let the board find the best',
      strokes: [{ key: 'b' }],
      enabled: drawn,
      run: () => {
        shell.column = 'tune';
      },
    },
    {
      id: 'tolerance',
      name: 'Tolerance band on the steer curve, or not',
      strokes: [{ key: 'w' }],
      enabled: drawn,
      run: () => {
        studies.tolerance.shown = !studies.tolerance.shown;
      },
    },
  ];
}
