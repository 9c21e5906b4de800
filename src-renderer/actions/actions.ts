import type { Shell } from '../document/shell.svelte.ts';
import type { Shop } from '../document/shop.svelte.ts';
import type { Workbench } from '../document/workbench.svelte.ts';

/** What the actions work on. */
export interface Tools {
  readonly bench: Workbench;
  readonly shop: Shop;
  readonly shell: Shell;
}

/** A stroke of the keyboard. `mod` is Command on a Mac and Control elsewhere. */
export interface Stroke {
  readonly key: string;
  readonly mod?: true;
  readonly shift?: true;
}

/** One thing that a person can do: read by the keys, the buttons, the key list and the native menu. */
export interface Action {
  readonly id: string;
  /** As the key list and tooltips say it. */
  readonly name: string;
  readonly strokes: readonly Stroke[];
  /** What is in the way, if anything is: a disabled button, a key that does nothing. */
  enabled(tools: Tools): boolean;
  run(tools: Tools): void;
}

const drawn = ({ bench }: Tools) => bench.document !== null;

export const ACTIONS: readonly Action[] = [
  {
    id: 'undo',
    name: 'Undo',
    strokes: [{ key: 'z', mod: true }],
    enabled: ({ bench }) => bench.canUndo,
    run: ({ bench }) => bench.undo(),
  },
  {
    id: 'redo',
    name: 'Redo',
    strokes: [
      { key: 'z', mod: true, shift: true },
      { key: 'y', mod: true },
    ],
    enabled: ({ bench }) => bench.canRedo,
    run: ({ bench }) => bench.redo(),
  },
  {
    id: 'fit',
    name: 'Show the whole sheet',
    strokes: [{ key: 'f' }],
    enabled: drawn,
    run: ({ bench }) => bench.fit(),
  },
  {
    id: 'run-travel',
    name: 'Run the travel, or stop it',
    strokes: [{ key: 't' }],
    enabled: drawn,
    run: ({ bench }) => (bench.playing ? bench.stop() : bench.play()),
  },
  {
    id: 'ride-height',
    name: 'Back to ride height',
    strokes: [{ key: 'r' }],
    enabled: (tools) => drawn(tools) && (!tools.bench.atRide || tools.bench.playing),
    run: ({ bench }) => bench.toRide(),
  },
  {
    id: 'units',
    name: 'Inches or millimetres',
    strokes: [{ key: 'u' }],
    enabled: () => true,
    run: ({ bench, shop }) => void shop.changeSettings({ unit: bench.settings.unit === 'in' ? 'mm' : 'in' }),
  },
  {
    id: 'snap',
    name: 'Snap to the grid, or not',
    strokes: [{ key: 's' }],
    enabled: drawn,
    run: ({ bench, shop }) => {
      const snap = !bench.settings.snap;
      bench.tell(snap ? 'Points snap to the grid and to their neighbours.' : 'Points no longer snap.');
      void shop.changeSettings({ snap });
    },
  },
  {
    id: 'cars',
    name: 'Cars and variants',
    strokes: [{ key: 'c' }, { key: 'o', mod: true }],
    enabled: () => true,
    run: ({ shell }) => shell.toggleDrawer('cars'),
  },
  {
    id: 'history',
    name: 'History of this variant',
    strokes: [{ key: 'h' }],
    enabled: drawn,
    run: ({ shell }) => shell.toggleDrawer('history'),
  },
  {
    id: 'keys',
    name: 'This list of keys',
    strokes: [{ key: '?' }],
    enabled: () => true,
    run: ({ shell }) => {
      shell.keysShown = !shell.keysShown;
    },
  },
];

export type ActionId =
  | 'undo'
  | 'redo'
  | 'fit'
  | 'run-travel'
  | 'ride-height'
  | 'units'
  | 'snap'
  | 'cars'
  | 'history'
  | 'keys';

/** The action of that name, for menus that come from outside; nothing where there is none. */
export function actionNamed(id: string): Action | undefined {
  return ACTIONS.find((action) => action.id === id);
}

/** Runs an action if nothing is in its way. */
export function perform(id: ActionId, tools: Tools): void {
  const action = actionNamed(id);
  if (action?.enabled(tools)) action.run(tools);
}
