import { join } from 'node:path';
import { app, BrowserWindow, dialog, ipcMain, Menu, protocol, screen, session } from 'electron';
import { programFolder, rendererFolder } from './files/index.ts';
import { runElectron } from './hosts/electron/run-electron.ts';
import { keepPrivate } from './hosts/private-folder.ts';
import { dataFolder } from './store/index.ts';

keepPrivate();

// Not awaited: Electron becomes ready only after this file has been read to its end.
runElectron(
  { app, BrowserWindow, dialog, ipcMain, Menu, protocol, screen, session },
  {
    dataFolder: dataFolder(),
    rendererFolder: rendererFolder(),
    args: process.argv,
    preload: join(programFolder(), 'out', 'preload', 'electron-preload.cjs'),
  },
).catch((fault: unknown) => {
  console.error(fault);
  app.exit(1);
});
