import { join } from 'node:path';
import type { BrowserWindow } from 'electron';
import { oneLine } from '../../../shared-math/outside/index.ts';
import type { FaultLog } from '../../api/dispatch.ts';
import { StoreError } from '../../store/index.ts';
import { REFUSED_EXIT } from '../launch/exit-codes.ts';
import { openProgram } from '../open-program.ts';
import { makeFolders, preparePrivate } from '../private-folder.ts';
import { registerBoardScheme, serveBoard } from './board-scheme.ts';
import { openBoardWindow } from './board-window.ts';
import { FILE_WAITS, MENU_CHANNEL, OPENED_CHANNEL } from './channels.ts';
import type { Electron } from './electron.ts';
import { confineEveryPage, denyPermissions } from './guards.ts';
import { menuTemplate } from './menu.ts';
import { filesNamed, OpenedFiles } from './opened-files.ts';
import { serveSaving } from './save-output.ts';
import { isBoardFrame, serveCalls } from './serve-calls.ts';

export interface ElectronOptions {
  readonly dataFolder: string;
  readonly rendererFolder: string;
  /** The built preload, one CommonJS file. */
  readonly preload: string;
  readonly log?: FaultLog;
  /** What the program was started with: a file that is opened with it, elsewhere than on a Mac. */
  readonly args?: readonly string[];
}

/** Does a part of opening; where the data folder refuses it, says so and ends. */
function orRefused<Value>({ app, dialog }: Electron, work: () => Value): Value | undefined {
  try {
    return work();
  } catch (error) {
    if (!(error instanceof StoreError)) throw error;
    const line = oneLine(error.message);
    console.error(line);
    dialog.showErrorBox('Toeboard cannot be opened', line);
    app.exit(REFUSED_EXIT);
    return undefined;
  }
}

function prepared(electron: Electron, dataFolder: string, profile: string): true | undefined {
  return orRefused(electron, () => {
    preparePrivate(dataFolder);
    makeFolders(profile);
    return true;
  });
}

/** The Electron host from start to end: one program for each data folder, one window, nothing but the board in it. */
export async function runElectron(electron: Electron, options: ElectronOptions): Promise<void> {
  const { app, ipcMain, Menu, protocol, session } = electron;
  const { dataFolder, rendererFolder, preload, log = console.error, args = [] } = options;
  const profile = join(dataFolder, 'electron');
  if (!prepared(electron, dataFolder, profile)) return;
  // Also what the single-instance lock is held by, so it comes first.
  app.setPath('userData', profile);
  if (!app.requestSingleInstanceLock()) {
    console.log('Toeboard is open already; its window comes to the front.');
    app.quit();
    return;
  }
  registerBoardScheme(protocol);
  confineEveryPage(app);
  let window: BrowserWindow | undefined;
  const opened = new OpenedFiles();
  const open = (...paths: readonly string[]) => {
    opened.add(...paths);
    if (paths.length > 0) window?.webContents.send(MENU_CHANNEL, FILE_WAITS);
  };
  open(...filesNamed(args));
  // On a Mac, where it may come before anything is ready.
  app.on('open-file', (event, path) => {
    event.preventDefault();
    open(path);
  });
  await app.whenReady();

  const program = orRefused(electron, () => openProgram(dataFolder, log));
  if (!program) return;
  app.on('will-quit', program.close);
  denyPermissions(session.defaultSession);
  serveBoard(protocol, rendererFolder, program.photos, program.outputs, program.shop);
  serveCalls(ipcMain, program.handlers, log);
  ipcMain.handle(OPENED_CHANNEL, ({ senderFrame }) =>
    isBoardFrame(senderFrame) ? opened.take() : undefined,
  );
  serveSaving(electron, program.jobs, () => window, log);

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
  app.on('second-instance', (_event, argv: readonly string[] = []) => {
    open(...filesNamed(argv));
    if (window?.isMinimized()) window.restore();
    window?.focus();
  });
  // The window is the program, on a Mac too: there is nothing to come back to without one.
  app.on('window-all-closed', () => app.quit());
}
