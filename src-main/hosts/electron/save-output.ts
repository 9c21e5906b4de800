import { homedir } from 'node:os';
import { extname, join } from 'node:path';
import type { BrowserWindow } from 'electron';
import type { FaultLog } from '../../api/dispatch.ts';
import { writeAside, writeReason } from '../../files/index.ts';
import type { OutputJobs } from '../../output/jobs/index.ts';
import { usualFileMode } from '../private-folder.ts';
import { SAVE_CHANNEL } from './channels.ts';
import type { Electron } from './electron.ts';
import { isBoardFrame } from './serve-calls.ts';

/** Where an output went, or why nowhere. */
export type Saved =
  | { readonly state: 'written'; readonly path: string }
  | { readonly state: 'given-up' }
  | { readonly state: 'failed'; readonly reason: string };

const failed = (reason: string): Saved => ({ state: 'failed', reason });

/** Asks where an output goes, and writes it whole or not at all. */
async function save(
  { dialog }: Pick<Electron, 'dialog'>,
  outputs: OutputJobs,
  window: BrowserWindow | undefined,
  job: unknown,
  log: FaultLog,
): Promise<Saved> {
  const made = typeof job === 'string' ? outputs.made(job) : undefined;
  const content = made?.parts[0];
  if (!made || !content) return failed('it is no longer kept: make it again');
  const ending = extname(made.fileName).slice(1);
  const asked = {
    defaultPath: join(homedir(), made.fileName),
    filters: [{ name: ending.toUpperCase(), extensions: [ending] }],
  };
  const { canceled, filePath } = window
    ? await dialog.showSaveDialog(window, asked)
    : await dialog.showSaveDialog(asked);
  if (canceled || !filePath) return { state: 'given-up' };
  try {
    await writeAside(filePath, content, usualFileMode());
    return { state: 'written', path: filePath };
  } catch (error) {
    const reason = writeReason(error);
    if (reason === undefined) log(error);
    return failed(`${filePath}: ${reason ?? 'it could not be written'}`);
  }
}

/** Lets the board save what it has had made, and only the board. */
export function serveSaving(
  electron: Pick<Electron, 'dialog' | 'ipcMain'>,
  outputs: OutputJobs,
  window: () => BrowserWindow | undefined,
  log: FaultLog,
): void {
  electron.ipcMain.handle(SAVE_CHANNEL, ({ senderFrame }, job: unknown) =>
    isBoardFrame(senderFrame)
      ? save(electron, outputs, window(), job, log)
      : failed('saving is for the board only'),
  );
}
