import type { Archive } from '../document/archive.svelte.ts';
import type { CarClearances } from '../document/clearances.svelte.ts';
import type { Copies } from '../document/copies.svelte.ts';
import type { Shell } from '../document/shell.svelte.ts';
import type { Shop } from '../document/shop.svelte.ts';
import type { Workbench } from '../document/workbench.svelte.ts';
import type { Comparison } from '../panels/compare/comparison.svelte.ts';
import type { Verdict } from '../panels/findings/verdict.svelte.ts';
import type { Shelf } from '../panels/shelf/shelf.svelte.ts';
import type { Studies } from '../places/layout/studies.svelte.ts';
import type { AxlePull } from '../places/road/axle-pull.svelte.ts';
import type { RoadRun } from '../places/road/road-run.svelte.ts';
import { handOver } from './files.ts';

/** What the actions work on. */
export interface Tools {
  readonly bench: Workbench;
  readonly shop: Shop;
  readonly archive: Archive;
  readonly copies: Copies;
  readonly shell: Shell;
  readonly shelf: Shelf;
  readonly comparison: Comparison;
  readonly verdict: Verdict;
  readonly studies: Studies;
  readonly clearances: CarClearances;
  readonly axlePull: AxlePull;
  readonly road: RoadRun;
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

async function duplicateOpen(bench: Workbench, shop: Shop): Promise<void> {
  const copy = bench.variant && (await shop.duplicate('variant', bench.variant.id));
  if (copy && (await shop.open(copy.id)))
    bench.tell('This is the copy; the one it was taken from stays as it was.');
}

/** Hands a layout or a whole car over as a file. */
export async function sendOut(shop: Shop, kind: 'car' | 'variant', id: string | undefined): Promise<void> {
  const file = id && (await shop.exported(kind, id));
  if (file) handOver(file);
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
    id: 'view-side',
    name: 'Side view fills the board',
    strokes: [{ key: '1' }],
    enabled: drawn,
    run: ({ bench }) => bench.enlarge('side'),
  },
  {
    id: 'view-top',
    name: 'Top view fills the board',
    strokes: [{ key: '2' }],
    enabled: drawn,
    run: ({ bench }) => bench.enlarge('top'),
  },
  {
    id: 'view-front',
    name: 'Front view fills the board',
    strokes: [{ key: '3' }],
    enabled: drawn,
    run: ({ bench }) => bench.enlarge('front'),
  },
  {
    id: 'view-all',
    name: 'All three views',
    strokes: [{ key: '0' }],
    enabled: drawn,
    run: ({ bench }) => bench.enlarge(null),
  },
  {
    id: 'run-travel',
    name: 'Run the travel, or drive over the road; or stop it',
    strokes: [{ key: 't' }],
    enabled: drawn,
    run: ({ bench, road }) => {
      if (road.open) road.toggle();
      else if (bench.playing) bench.stop();
      else bench.play();
    },
  },
  {
    id: 'ride-height',
    name: 'Back to ride height',
    strokes: [{ key: 'r' }],
    enabled: (tools) => drawn(tools) && (!tools.bench.atRide || tools.bench.playing || tools.bench.carried),
    run: ({ bench }) => bench.toRide(),
  },
  {
    id: 'pull-axle',
    name: 'Pull the axle, then either tyre: by arrows up and down',
    strokes: [{ key: 'p' }],
    enabled: drawn,
    run: ({ axlePull }) => axlePull.takeNext(),
  },
  {
    id: 'let-go',
    name: 'Let go of what is pulled: it settles on its springs',
    strokes: [{ key: 'p', shift: true }],
    enabled: ({ axlePull }) => axlePull.hold !== null,
    run: ({ axlePull }) => axlePull.letGo(),
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
    id: 'limits',
    name: 'Limits that the verdict holds to',
    strokes: [{ key: 'l' }],
    enabled: () => true,
    run: ({ shell }) => shell.toggleDrawer('limits'),
  },
  {
    id: 'shelf',
    name: 'Shelf of this shop',
    strokes: [{ key: 'k' }],
    enabled: () => true,
    run: ({ shell }) => shell.toggleDrawer('shelf'),
  },
  {
    id: 'new-variant',
    name: 'New variant of this car',
    strokes: [{ key: 'n' }],
    enabled: () => true,
    run: ({ bench, shell }) => {
      if (bench.variant) shell.showForm('add', 'car', bench.variant.carId);
      else shell.drawer = 'cars';
    },
  },
  {
    id: 'duplicate-variant',
    name: 'Duplicate this variant and open the copy',
    strokes: [{ key: 'd', mod: true }],
    enabled: drawn,
    run: ({ bench, shop }) => void duplicateOpen(bench, shop),
  },
  {
    id: 'compare',
    name: 'Compare with other variants of this car',
    strokes: [{ key: 'v' }],
    enabled: drawn,
    run: ({ shell }) => {
      shell.arranged = null;
      shell.column = 'compare';
    },
  },
  {
    id: 'arrange',
    name: 'Choose an arrangement for this car',
    strokes: [{ key: 'a' }],
    enabled: drawn,
    run: ({ bench, shell }) => {
      if (bench.variant && bench.document)
        shell.arrange({
          carId: bench.variant.carId,
          carName: bench.variant.carName,
          document: bench.document,
        });
    },
  },
  {
    id: 'map',
    name: 'Where can the ball go? Map of bump steer',
    strokes: [{ key: 'm' }],
    enabled: drawn,
    run: ({ studies }) => studies.map.toggle(),
  },
  {
    id: 'tune',
    name: 'Tune: let the board look for the best',
    strokes: [{ key: 'b' }],
    enabled: drawn,
    run: ({ shell }) => {
      shell.column = 'tune';
    },
  },
  {
    id: 'tolerance',
    name: 'Tolerance band on the steer curve, or not',
    strokes: [{ key: 'w' }],
    enabled: drawn,
    run: ({ studies }) => {
      studies.tolerance.shown = !studies.tolerance.shown;
    },
  },
  {
    id: 'import',
    name: 'Import files',
    strokes: [{ key: 'i', mod: true }],
    enabled: () => true,
    run: ({ shell }) => shell.chooseFiles({}),
  },
  {
    id: 'export-variant',
    name: 'Export this layout',
    strokes: [{ key: 'e', mod: true }],
    enabled: drawn,
    run: ({ bench, shop }) => void sendOut(shop, 'variant', bench.variant?.id),
  },
  {
    id: 'export-car',
    name: 'Export the whole car',
    strokes: [{ key: 'e', mod: true, shift: true }],
    enabled: drawn,
    run: ({ bench, shop }) => void sendOut(shop, 'car', bench.variant?.carId),
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

/** The action of that name, for menus that come from outside; nothing where there is none. */
export function actionNamed(id: string): Action | undefined {
  return ACTIONS.find((action) => action.id === id);
}

/** Runs an action if nothing is in its way. */
export function perform(id: string, tools: Tools): void {
  const action = actionNamed(id);
  if (action?.enabled(tools)) action.run(tools);
}
