import type { WebFrameMain } from 'electron';
import { dispatch, type FaultLog } from '../../api/dispatch.ts';
import type { Handlers } from '../../api/handlers/index.ts';
import { isBoard } from './board-scheme.ts';
import { CALL_CHANNEL } from './channels.ts';
import type { Electron } from './electron.ts';

/** Whether a call comes from the board: the main frame of a page of our own. */
export function isBoardFrame(frame: WebFrameMain | null): boolean {
  return frame !== null && frame.parent === null && isBoard(frame.url);
}

/** Answers the board's calls, and only the board's: the main frame of a page of our own. */
export function serveCalls(
  ipcMain: Pick<Electron['ipcMain'], 'handle'>,
  handlers: Handlers,
  log: FaultLog,
): void {
  ipcMain.handle(CALL_CHANNEL, ({ senderFrame }, name: unknown, input: unknown) => {
    if (!isBoardFrame(senderFrame))
      return { ok: false, failure: { code: 'bad-request', reason: 'calls are taken from the board only' } };
    return dispatch(handlers, name, input, log);
  });
}
