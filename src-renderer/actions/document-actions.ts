import type { Action } from '../controls/action.ts';
import { handOver } from '../document/hand-over.ts';
import type { Shop } from '../document/shop.svelte.ts';
import type { Workbench } from '../document/workbench.svelte.ts';

async function duplicateOpen(workbench: Workbench, shop: Shop): Promise<void> {
  const copy = workbench.variant && (await shop.duplicate('variant', workbench.variant.id));
  if (copy && (await shop.open(copy.id)))
    workbench.tell('This is the copy; the one it was taken from stays as it was.');
}

/** Hands a layout or a whole car over as a file. */
export async function sendOut(shop: Shop, kind: 'car' | 'variant', id: string | undefined): Promise<void> {
  const file = id && (await shop.exported(kind, id));
  if (file) handOver(file);
}

/** What can be done to the open layout and to how it is looked at. */
export function documentActions(workbench: Workbench, shop: Shop): Action[] {
  const drawn = () => workbench.document !== null;
  return [
    {
      id: 'undo',
      name: 'Undo',
      strokes: [{ key: 'z', mod: true }],
      enabled: () => workbench.canUndo,
      run: () => workbench.undo(),
    },
    {
      id: 'redo',
      name: 'Redo',
      strokes: [
        { key: 'z', mod: true, shift: true },
        { key: 'y', mod: true },
      ],
      enabled: () => workbench.canRedo,
      run: () => workbench.redo(),
    },
    {
      id: 'fit',
      name: 'Show the whole sheet',
      strokes: [{ key: 'f' }],
      enabled: drawn,
      run: () => workbench.fit(),
    },
    {
      id: 'view-side',
      name: 'Side view fills the board',
      strokes: [{ key: '1' }],
      enabled: drawn,
      run: () => workbench.enlarge('side'),
    },
    {
      id: 'view-top',
      name: 'Top view fills the board',
      strokes: [{ key: '2' }],
      enabled: drawn,
      run: () => workbench.enlarge('top'),
    },
    {
      id: 'view-front',
      name: 'Front view fills the board',
      strokes: [{ key: '3' }],
      enabled: drawn,
      run: () => workbench.enlarge('front'),
    },
    {
      id: 'view-all',
      name: 'All three views',
      strokes: [{ key: '0' }],
      enabled: drawn,
      run: () => workbench.enlarge(null),
    },
    {
      id: 'ride-height',
      name: 'Back to ride height',
      strokes: [{ key: 'r' }],
      enabled: () => drawn() && (!workbench.atRide || workbench.playing || workbench.carried),
      run: () => workbench.toRide(),
    },
    {
      id: 'units',
      name: 'Inches or millimetres',
      strokes: [{ key: 'u' }],
      enabled: () => true,
      run: () => void shop.changeSettings({ unit: workbench.settings.unit === 'in' ? 'mm' : 'in' }),
    },
    {
      id: 'snap',
      name: 'Snap to the grid, or not',
      strokes: [{ key: 's' }],
      enabled: drawn,
      run: () => {
        const snap = !workbench.settings.snap;
        workbench.tell(snap ? 'Points snap to the grid and to their neighbours.' : 'Points no longer snap.');
        void shop.changeSettings({ snap });
      },
    },
    {
      id: 'duplicate-variant',
      name: 'Duplicate this variant and open the copy',
      strokes: [{ key: 'd', mod: true }],
      enabled: drawn,
      run: () => void duplicateOpen(workbench, shop),
    },
    {
      id: 'export-variant',
      name: 'Export this layout',
      strokes: [{ key: 'e', mod: true }],
      enabled: drawn,
      run: () => void sendOut(shop, 'variant', workbench.variant?.id),
    },
    {
      id: 'export-car',
      name: 'Export the whole car',
      strokes: [{ key: 'e', mod: true, shift: true }],
      enabled: drawn,
      run: () => void sendOut(shop, 'car', workbench.variant?.carId),
    },
  ];
}
