import type { BrowserWindow } from 'electron';
import { BOARD_ADDRESS } from './board-scheme.ts';
import type { Electron } from './electron.ts';
import { WEB_PREFERENCES } from './web-preferences.ts';
import { placeWindow, readWindowState, WINDOW_MIN, writeWindowState } from './window-state.ts';

export interface WindowPaths {
  /** The built preload, one CommonJS file. */
  readonly preload: string;
  /** Where the window's place is kept. */
  readonly state: string;
}

/** Opens the board's window where it was closed last. */
export function openBoardWindow(
  { BrowserWindow, screen }: Pick<Electron, 'BrowserWindow' | 'screen'>,
  { preload, state }: WindowPaths,
): BrowserWindow {
  const main = screen.getPrimaryDisplay();
  const others = screen.getAllDisplays().filter((display) => display.id !== main.id);
  const areas = [main, ...others].map((display) => display.workArea);
  const { bounds, maximised } = placeWindow(readWindowState(state), areas);

  const window = new BrowserWindow({
    ...bounds,
    minWidth: WINDOW_MIN.width,
    minHeight: WINDOW_MIN.height,
    title: 'Toeboard',
    backgroundColor: '#f5f1e7',
    // Shown when drawn: no white flash before the paper.
    show: false,
    webPreferences: { ...WEB_PREFERENCES, preload },
  });
  if (maximised) window.maximize();
  window.once('ready-to-show', () => window.show());
  window.on('close', () =>
    writeWindowState(state, { bounds: window.getNormalBounds(), maximised: window.isMaximized() }),
  );
  window.loadURL(BOARD_ADDRESS).catch(console.error);
  return window;
}
