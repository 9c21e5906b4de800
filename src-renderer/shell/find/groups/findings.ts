import { SEVERITY_WORDS } from '../../../../shared-math/words/index.ts';
import { getOpenLayout } from '../../../document/open-layout.svelte.ts';
import { getShell } from '../../../document/shell.svelte.ts';
import { restsOnGuesses } from '../../../panels/findings/resting.ts';
import { getVerdict } from '../../../panels/findings/verdict.svelte.ts';
import type { FindGroup } from '../find-group.ts';

/** What the verdict finds on the open layout, what is to be mended first. */
export function foundFindings(): FindGroup {
  const openLayout = getOpenLayout();
  const verdict = getVerdict();
  const shell = getShell();
  return {
    id: 'findings',
    title: 'Findings',
    entries: () => {
      const rests = restsOnGuesses(openLayout.points, openLayout.guessed);
      return [...verdict.list.toMend, ...verdict.list.inOrder].map((entry) => ({
        id: entry.key,
        name: entry.finding.sentence,
        aside: rests(entry.finding.part) ? 'Waits for measurements' : SEVERITY_WORDS[entry.finding.severity],
        run: () => {
          shell.arranged = null;
          shell.column = 'verdict';
          shell.openHome();
          if (!verdict.isChosen(entry)) verdict.choose(entry);
        },
      }));
    },
  };
}
