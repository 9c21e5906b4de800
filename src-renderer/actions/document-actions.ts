import type { Action } from '../controls/action.ts';
import { handOver } from '../document/hand-over.ts';
import type { OpenLayout } from '../document/open-layout.svelte.ts';
import type { Shop } from '../document/shop.svelte.ts';

async function duplicateOpen(openLayout: OpenLayout, shop: Shop): Promise<void> {
  const copy = openLayout.variant && (await shop.duplicate('variant', openLayout.variant.id));
  if (copy && (await shop.open(copy.id)))
    openLayout.tell('This is the copy; the one it was taken from stays as it was.');
}

/** Hands a layout or a whole car over as a file. */
export async function sendOut(shop: Shop, kind: 'car' | 'variant', id: string | undefined): Promise<void> {
  const file = id && (await shop.exported(kind, id));
  if (file) handOver(file);
}

/** What can be done to the open layout and to how it is looked at. */
export function documentActions(openLayout: OpenLayout, shop: Shop): Action[] {
  const drawn = () => openLayout.document !== null;
  return [
    {
      id: 'undo',
      name: 'Undo',
      strokes: [{ key: 'z', mod: true }],
      enabled: () => openLayout.canUndo,
      run: () => openLayout.edits.undo(),
    },
    {
      id: 'redo',
      name: 'Redo',
      strokes: [
        { key: 'z', mod: true, shift: true },
        { key: 'y', mod: true },
      ],
      enabled: () => openLayout.canRedo,
      run: () => openLayout.edits.redo(),
    },
    {
      id: 'fit',
      name: 'Show the whole sheet',
      strokes: [{ key: 'f' }],
      enabled: drawn,
      run: () => openLayout.fit(),
    },
    {
      id: 'view-side',
      name: 'Side view fills the board',
      strokes: [{ key: '1' }],
      enabled: drawn,
      run: () => openLayout.enlarge('side'),
    },
    {
      id: 'view-top',
      name: 'Top view fills the board',
      strokes: [{ key: '2' }],
      enabled: drawn,
      run: () => openLayout.enlarge('top'),
    },
    {
      id: 'view-front',
      name: 'Front view fills the board',
      strokes: [{ key: '3' }],
      enabled: drawn,
      run: () => openLayout.enlarge('front'),
    },
    {
      id: 'view-pictorial',
      name: 'Pictorial fills the board',
      strokes: [{ key: '4' }],
      enabled: drawn,
      run: () => openLayout.enlarge('pictorial'),
    },
    {
      id: 'view-all',
      name: 'All views',
      strokes: [{ key: '0' }],
      enabled: drawn,
      run: () => openLayout.enlarge(null),
    },
    {
      id: 'ride-height',
      name: 'Back to ride height',
      strokes: [{ key: 'r' }],
      enabled: () =>
        drawn() && (!openLayout.carPose.atRide || openLayout.carPose.playing || openLayout.carPose.carried),
      run: () => openLayout.carPose.toRide(),
    },
    {
      id: 'units',
      name: 'Inches or millimetres',
      strokes: [{ key: 'u' }],
      enabled: () => true,
      run: () => void shop.changeSettings({ unit: openLayout.settings.unit === 'in' ? 'mm' : 'in' }),
    },
    {
      id: 'ground',
      name: 'Day or night: paper, or a dark ground',
      strokes: [],
      enabled: () => true,
      run: () => {
        const night = document.documentElement.dataset['ground'] !== 'night';
        openLayout.tell(night ? 'On a dark ground.' : 'On paper.');
        void shop.changeSettings({ ground: night ? 'night' : 'day' });
      },
    },
    {
      id: 'snap',
      name: 'Snap to the grid, or not',
      strokes: [{ key: 's' }],
      enabled: drawn,
      run: () => {
        const snap = !openLayout.settings.snap;
        openLayout.tell(snap ? 'Points snap to the grid and to their neighbours.' : 'Points no longer snap.');
        void shop.changeSettings({ snap });
      },
    },
    {
      id: 'walk',
      name: 'Walk round the board',
      strokes: [],
      enabled: drawn,
      run: () => void shop.changeSettings({ walk: { ...openLayout.settings.walk, shown: true } }),
    },
    {
      id: 'duplicate-variant',
      name: 'Duplicate this variant and open the copy',
      strokes: [{ key: 'd', mod: true }],
      enabled: drawn,
      run: () => void duplicateOpen(openLayout, shop),
    },
    {
      id: 'export-variant',
      name: 'Export this layout',
      strokes: [{ key: 'e', mod: true }],
      enabled: drawn,
      run: () => void sendOut(shop, 'variant', openLayout.variant?.id),
    },
    {
      id: 'export-car',
      name: 'Export the whole car',
      strokes: [{ key: 'e', mod: true, shift: true }],
      enabled: drawn,
      run: () => void sendOut(shop, 'car', openLayout.variant?.carId),
    },
  ];
}
