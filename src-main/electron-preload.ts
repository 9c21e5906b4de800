import { contextBridge, ipcRenderer } from 'electron';
import { createBridge } from './hosts/electron/bridge.ts';

contextBridge.exposeInMainWorld('toeboardHost', createBridge(ipcRenderer));
