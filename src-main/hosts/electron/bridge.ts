import type { IpcRenderer } from 'electron';
import type { Call, Request } from '../../api/contract.ts';
import { CALL_CHANNEL, MENU_CHANNEL, OPENED_CHANNEL, SAVE_CHANNEL } from './channels.ts';

/** What the preload hands to the page as `toeboardHost`: the contract's calls, saving and the menu, nothing of Electron. */
export interface Bridge {
  /** Answers with a CallResult. */
  call<Name extends Call>(name: Name, input: Request<Name>): Promise<unknown>;
  /** Asks the person where an output that is ready goes, and writes it there. Answers with a Saved. */
  saveOutput(job: string): Promise<unknown>;
  /** The next file that was opened with the program, an OpenedFile; undefined if there is none. */
  takeOpened(): Promise<unknown>;
  /** Tells which action was chosen in the menu, by name. Returns how to stop listening. */
  onMenu(listener: (action: string) => void): () => void;
}

export function createBridge(ipcRenderer: Pick<IpcRenderer, 'invoke' | 'on' | 'off'>): Bridge {
  return {
    call: (name, input) => ipcRenderer.invoke(CALL_CHANNEL, name, input),
    saveOutput: (job) => ipcRenderer.invoke(SAVE_CHANNEL, job),
    takeOpened: () => ipcRenderer.invoke(OPENED_CHANNEL),
    onMenu: (listener) => {
      // The event itself would hand the page a way to send anything.
      const hear = (_event: unknown, action: string) => listener(action);
      ipcRenderer.on(MENU_CHANNEL, hear);
      return () => {
        ipcRenderer.off(MENU_CHANNEL, hear);
      };
    },
  };
}
