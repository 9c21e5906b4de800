import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import type { BrowserWindow } from 'electron';
import type { FaultLog } from '../../api/dispatch.ts';
import { StoreError } from '../../store/index.ts';
import { REFUSED_EXIT } from '../launch/exit-codes.ts';
import { type OpenProgram, openProgram } from '../open-program.ts';
import { registerBoardScheme, serveBoard } from './board-scheme.ts';
import { openBoardWindow } from './board-window.ts';
import { MENU_CHANNEL } from './channels.ts';
import type { Electron } from './electron.ts';
import { confineEveryPage, denyPermissions } from './guards.ts';
import { menuTemplate } from './menu.ts';
import { serveSaving } from './save-output.ts';
import { serveCalls } from './serve-calls.ts';

export interface ElectronOptions {
  readonly dataFolder: string;
  readonly rendererFolder: string;
  /** The built preload, one CommonJS file. */
  readonly preload: string;
  readonly log?: FaultLog;
}

function opened({ app, dialog }: Electron, dataFolder: string, log: FaultLog): OpenProgram | undefined {
  try {
    return openProgram(dataFolder, log);
  } catch (error) {
    if (!(error instanceof StoreError)) throw error;
    console.error(error.message);
    dialog.showErrorBox('Toeboard cannot be opened', error.message);
    app.exit(REFUSED_EXIT);
    return undefined;
  }
}

/** The Electron host from start to end: one program for each data folder, one window, nothing but the board in it. */
export async function runElectron(electron: Electron, options: ElectronOptions): Promise<void> {
  const { app, ipcMain, Menu, protocol, session } = electron;
  const { dataFolder, rendererFolder, preload, log = console.error } = options;
  const profile = join(dataFolder, 'electron');
  mkdirSync(profile, { recursive: true });
  // Also what the single-instance lock is held by, so it comes first.
  app.setPath('userData', profile);
  if (!app.requestSingleInstanceLock()) {
    console.log('Toeboard is open already; its window comes to the front.');
    app.quit();
    return;
  }
  registerBoardScheme(protocol);
  confineEveryPage(app);
  await app.whenReady();

  let window: BrowserWindow | undefined;
  const program = opened(electron, dataFolder, log);
  if (!program) return;
  app.on('will-quit', program.close);
  denyPermissions(session.defaultSession);
  serveBoard(protocol, rendererFolder, program.photos, program.outputs, program.shop);
  serveCalls(ipcMain, program.handlers, log);
  serveSaving(electron, program.desk, () => window, log);

  window = openBoardWindow(electron, {
    preload,
    state: join(profile, 'place.json'),
  });
  window.on('closed', () => {
    window = undefined;
  });
  Menu.setApplicationMenu(
    Menu.buildFromTemplate(
      menuTemplate(process.platform, (action) => window?.webContents.send(MENU_CHANNEL, action)),
    ),
  );
  app.on('second-instance', () => {
    if (window?.isMinimized()) window.restore();
    window?.focus();
  });
  // The window is the program, on a Mac too: there is nothing to come back to without one.
  app.on('window-all-closed', () => app.quit());
}
