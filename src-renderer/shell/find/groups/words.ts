import { TERMS, type TermId } from '../../../../shared-math/words/terms/index.ts';
import { getShell } from '../../../document/shell.svelte.ts';
import type { FindGroup } from '../find-group.ts';

/** The words of the trade and of this board, each as the page of words explains it. */
export function foundWords(): FindGroup {
  const shell = getShell();
  return {
    id: 'words',
    title: 'Words',
    entries: () =>
      (Object.keys(TERMS) as TermId[]).map((id) => ({
        id,
        name: TERMS[id].name,
        also: (TERMS[id].also ?? []).join(' '),
        run: () => shell.showWord(id),
      })),
  };
}
