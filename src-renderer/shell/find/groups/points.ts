import { getOpenLayout } from '../../../document/open-layout.svelte.ts';
import { getShell } from '../../../document/shell.svelte.ts';
import type { FindGroup } from '../find-group.ts';

/** The points of the open layout. */
export function foundPoints(): FindGroup {
  const openLayout = getOpenLayout();
  const shell = getShell();
  return {
    id: 'points',
    title: 'Points',
    entries: () =>
      openLayout.document === null
        ? []
        : openLayout.points.map((point) => {
            const number = openLayout.numbers.get(point.id);
            return {
              id: point.id,
              name: point.name,
              aside: number === undefined ? '' : `point ${number}`,
              run: () => {
                shell.arranged = null;
                shell.column = 'points';
                shell.openHome();
                openLayout.selection = point.id;
              },
            };
          }),
  };
}
