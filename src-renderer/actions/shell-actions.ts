import { QUESTION_KINDS, QUESTION_WORDS } from '../../shared-math/counter/question-words.ts';
import type { Action } from '../controls/action.ts';
import type { OpenLayout } from '../document/open-layout.svelte.ts';
import type { Shell } from '../document/shell.svelte.ts';

/** What can be opened around the board. */
export function shellActions(openLayout: OpenLayout, shell: Shell): Action[] {
  const drawn = () => openLayout.document !== null;
  return [
    {
      id: 'find',
      name: 'Find anything',
      strokes: [{ key: '/' }],
      enabled: () => true,
      run: () => shell.toggleDrawer('find'),
    },
    {
      id: 'new-car',
      name: 'Add a car',
      strokes: [],
      enabled: () => true,
      run: () => shell.beginCar(),
    },
    {
      id: 'cars',
      name: 'Cars and variants',
      strokes: [{ key: 'c' }, { key: 'o', mod: true }],
      enabled: () => true,
      run: () => shell.toggleDrawer('cars'),
    },
    {
      id: 'history',
      name: 'History of this variant',
      strokes: [{ key: 'h' }],
      enabled: drawn,
      run: () => shell.toggleDrawer('history'),
    },
    {
      id: 'limits',
      name: 'Limits that the verdict holds to',
      strokes: [{ key: 'l' }],
      enabled: () => true,
      run: () => shell.toggleDrawer('limits'),
    },
    {
      id: 'shelf',
      name: 'Shelf of this shop',
      strokes: [{ key: 'k' }],
      enabled: () => true,
      run: () => shell.toggleDrawer('shelf'),
    },
    {
      id: 'settings',
      name: 'Settings of this shop: units, driver’s side, instruments',
      strokes: [],
      enabled: () => true,
      run: () => shell.toggleDrawer('settings'),
    },
    {
      id: 'copies',
      name: 'Copies of the shop',
      strokes: [],
      enabled: () => true,
      run: () => shell.toggleDrawer('copies'),
    },
    {
      id: 'bin',
      name: 'Bin',
      strokes: [],
      enabled: () => true,
      run: () => shell.toggleDrawer('bin'),
    },
    {
      id: 'counter',
      name: 'Answer a question at the counter',
      strokes: [{ key: 'q' }],
      enabled: () => true,
      run: () => {
        if (shell.counter) shell.counter = null;
        else shell.openCounter();
      },
    },
    ...QUESTION_KINDS.map(
      (kind): Action => ({
        id: `counter-${kind}`,
        name: `At the counter: ${QUESTION_WORDS[kind].asks}`,
        strokes: [],
        enabled: () => true,
        run: () => shell.openCounter({ kind }),
      }),
    ),
    {
      id: 'new-variant',
      name: 'New variant of this car',
      strokes: [{ key: 'n' }],
      enabled: () => true,
      run: () => {
        if (openLayout.variant) shell.showForm('add', 'car', openLayout.variant.carId);
        else shell.drawer = 'cars';
      },
    },
    {
      id: 'compare',
      name: 'Compare with other variants of this car',
      strokes: [{ key: 'v' }],
      enabled: drawn,
      run: () => {
        shell.arranged = null;
        shell.column = 'compare';
      },
    },
    {
      id: 'arrange',
      name: 'Choose an arrangement for this car',
      strokes: [{ key: 'a' }],
      enabled: drawn,
      run: () => {
        if (openLayout.variant && openLayout.document)
          shell.arrange({
            carId: openLayout.variant.carId,
            carName: openLayout.variant.carName,
            document: openLayout.document,
            variantId: openLayout.variant.id,
          });
      },
    },
    {
      id: 'import',
      name: 'Import files',
      strokes: [{ key: 'i', mod: true }],
      enabled: () => true,
      run: () => shell.chooseFiles({}),
    },
    {
      id: 'keys',
      name: 'Words and keys',
      strokes: [{ key: '?' }],
      enabled: () => true,
      run: () => {
        if (shell.help) shell.help = null;
        else shell.showWord();
      },
    },
  ];
}
