import type * as electron from 'electron';

/** The pieces of Electron that the host works with: handed in, so that stand-ins can drive every part of it. */
export type Electron = Pick<
  typeof electron,
  'app' | 'BrowserWindow' | 'dialog' | 'ipcMain' | 'Menu' | 'protocol' | 'screen' | 'session'
>;
