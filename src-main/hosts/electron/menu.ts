import type { MenuItemConstructorOptions } from 'electron';

/** Actions that the menu sends to the board, which decides what each means just now. */
export type MenuAction =
  | 'new-variant'
  | 'duplicate-variant'
  | 'arrange'
  | 'cars'
  | 'shelf'
  | 'import'
  | 'export-variant'
  | 'export-car'
  | 'undo'
  | 'redo'
  | 'history'
  | 'fit'
  | 'ride-height'
  | 'run-travel'
  | 'compare'
  | 'units'
  | 'keys';

type Role = NonNullable<MenuItemConstructorOptions['role']>;
type System = 'mac' | 'windows' | 'linux';
type Keys = string | Readonly<Record<System, string>>;

/** One line of the menu: an action of the board, a role of the system, or a rule between groups. */
interface Item {
  readonly action?: MenuAction;
  readonly role?: Role;
  readonly label?: string;
  readonly keys?: Keys;
  /** Left out elsewhere. */
  readonly only?: 'mac' | 'other';
}

const RULE: Item = {};

const REDO: Keys = { mac: 'Shift+Cmd+Z', windows: 'Ctrl+Y', linux: 'Ctrl+Shift+Z' };

/** The whole menu. Keys without Control or Command stay with the board: here they would be taken from typed text. */
export const MENU: readonly {
  readonly label: string;
  readonly only?: 'mac';
  readonly items: readonly Item[];
}[] = [
  {
    label: 'Toeboard',
    only: 'mac',
    items: [
      { role: 'about' },
      RULE,
      { role: 'services' },
      RULE,
      { role: 'hide' },
      { role: 'hideOthers' },
      { role: 'unhide' },
      RULE,
      { role: 'quit' },
    ],
  },
  {
    label: 'File',
    items: [
      { action: 'new-variant', label: 'New variant', keys: 'CmdOrCtrl+N' },
      { action: 'duplicate-variant', label: 'Duplicate variant', keys: 'CmdOrCtrl+D' },
      { action: 'arrange', label: 'Choose an arrangement' },
      { action: 'cars', label: 'Cars and variants', keys: 'CmdOrCtrl+O' },
      { action: 'shelf', label: 'Shelf of this shop' },
      RULE,
      { action: 'import', label: 'Import…', keys: 'CmdOrCtrl+I' },
      { action: 'export-variant', label: 'Export variant…', keys: 'CmdOrCtrl+E' },
      { action: 'export-car', label: 'Export whole car…', keys: 'CmdOrCtrl+Shift+E' },
      RULE,
      { role: 'close', only: 'mac' },
      { role: 'quit', only: 'other' },
    ],
  },
  {
    label: 'Edit',
    items: [
      { action: 'undo', label: 'Undo', keys: 'CmdOrCtrl+Z' },
      { action: 'redo', label: 'Redo', keys: REDO },
      RULE,
      { role: 'cut' },
      { role: 'copy' },
      { role: 'paste' },
      { role: 'selectAll' },
      RULE,
      { action: 'history', label: 'History of this variant' },
    ],
  },
  {
    label: 'View',
    items: [
      { action: 'fit', label: 'Show the whole sheet' },
      { action: 'ride-height', label: 'Back to ride height' },
      { action: 'compare', label: 'Compare variants' },
      { action: 'run-travel', label: 'Run the travel, or stop it' },
      { action: 'units', label: 'Inches or millimetres' },
      RULE,
      { role: 'resetZoom' },
      { role: 'zoomIn' },
      { role: 'zoomOut' },
      RULE,
      { role: 'togglefullscreen' },
    ],
  },
  { label: 'Window', only: 'mac', items: [{ role: 'minimize' }, { role: 'zoom' }, RULE, { role: 'front' }] },
  { label: 'Help', items: [{ action: 'keys', label: 'Words and keys' }] },
];

function systemOf(platform: NodeJS.Platform): System {
  if (platform === 'darwin') return 'mac';
  return platform === 'win32' ? 'windows' : 'linux';
}

/** The menu as this system wants it; `send` is given the name of each action chosen. */
export function menuTemplate(
  platform: NodeJS.Platform,
  send: (action: MenuAction) => void,
): MenuItemConstructorOptions[] {
  const system = systemOf(platform);
  const here = ({ only }: { readonly only?: 'mac' | 'other' }) =>
    only === undefined || (only === 'mac') === (system === 'mac');

  function entry({ action, role, label, keys }: Item): MenuItemConstructorOptions {
    if (role) return { role };
    if (!action) return { type: 'separator' };
    const accelerator = typeof keys === 'object' ? keys[system] : keys;
    return { label: label ?? action, click: () => send(action), ...(accelerator ? { accelerator } : {}) };
  }

  return MENU.filter(here).map(({ label, items }) => ({ label, submenu: items.filter(here).map(entry) }));
}
