import { EventEmitter } from 'node:events';
import type { BrowserWindowConstructorOptions, MenuItemConstructorOptions } from 'electron';
import { vi } from 'vitest';
import { createBridge } from '../../src-main/hosts/electron/bridge.ts';
import type { Electron } from '../../src-main/hosts/electron/electron.ts';

type Listener = (...args: never[]) => unknown;

/** Who sends a call, as Electron tells the host. */
export interface Sender {
  readonly senderFrame: { readonly url: string; readonly parent: object | null } | null;
}

const BOARD: Sender = { senderFrame: { url: 'app://toeboard/', parent: null } };

/** The two ends of the wire. Everything that crosses it is copied by the same rules as in Electron. */
export class WireStandIn {
  readonly handlers = new Map<string, Listener>();
  readonly page = new EventEmitter();

  readonly ipcMain = {
    handle: (channel: string, handler: Listener) => void this.handlers.set(channel, handler),
  };

  readonly ipcRenderer = {
    invoke: (channel: string, ...args: unknown[]) => this.invokeFrom(BOARD, channel, ...args),
    on: (channel: string, listener: Listener) => this.page.on(channel, listener as () => void),
    off: (channel: string, listener: Listener) => this.page.off(channel, listener as () => void),
  };

  async invokeFrom(sender: Sender, channel: string, ...args: unknown[]): Promise<unknown> {
    const handler = this.handlers.get(channel) as ((...all: unknown[]) => unknown) | undefined;
    if (!handler) throw new Error(`No handler registered for '${channel}'`);
    return structuredClone(await handler(sender, ...structuredClone(args)));
  }

  /** The page's side, as the preload builds it. */
  bridge() {
    return createBridge(this.ipcRenderer as unknown as Parameters<typeof createBridge>[0]);
  }
}

export class ContentsStandIn extends EventEmitter {
  windowOpenHandler: (() => { action: string }) | undefined;
  readonly #page: EventEmitter;

  constructor(page: EventEmitter) {
    super();
    this.#page = page;
  }

  setWindowOpenHandler(handler: () => { action: string }): void {
    this.windowOpenHandler = handler;
  }

  send(channel: string, ...args: unknown[]): void {
    this.#page.emit(channel, {}, ...structuredClone(args));
  }
}

export class WindowStandIn extends EventEmitter {
  readonly options: BrowserWindowConstructorOptions;
  readonly webContents: ContentsStandIn;
  maximised = false;
  minimised = false;
  readonly loadURL = vi.fn(async (_address: string) => {});
  readonly maximize = vi.fn();
  readonly restore = vi.fn();
  readonly focus = vi.fn();
  readonly show = vi.fn();

  constructor(options: BrowserWindowConstructorOptions, page: EventEmitter) {
    super();
    this.options = options;
    this.webContents = new ContentsStandIn(page);
  }

  getNormalBounds() {
    const { x, y, width, height } = this.options;
    return { x, y, width, height };
  }
  isMaximized = () => this.maximised;
  isMinimized = () => this.minimised;
}

interface Settings {
  readonly locked?: boolean;
  readonly workAreas?: readonly { x: number; y: number; width: number; height: number }[];
}

/** As much of Electron as the host uses, every piece open to be looked at and driven. */
export function electronStandIn({
  locked = false,
  workAreas = [{ x: 0, y: 0, width: 1920, height: 1040 }],
}: Settings = {}) {
  const wire = new WireStandIn();
  const windows: WindowStandIn[] = [];
  const app = Object.assign(new EventEmitter(), {
    setPath: vi.fn(),
    requestSingleInstanceLock: () => !locked,
    whenReady: async () => {},
    quit: vi.fn(),
    exit: vi.fn(),
  });

  class BrowserWindow extends WindowStandIn {
    constructor(options: BrowserWindowConstructorOptions) {
      super(options, wire.page);
      windows.push(this);
      app.emit('web-contents-created', {}, this.webContents);
    }
  }

  const displays = workAreas.map((workArea, id) => ({ id, workArea }));
  const electron = {
    app,
    BrowserWindow,
    ipcMain: wire.ipcMain,
    dialog: {
      showErrorBox: vi.fn(),
      /** The last argument tells what was asked; it answers what the person chose. */
      showSaveDialog: vi.fn(async (..._asked: unknown[]) => ({ canceled: true, filePath: '' })),
    },
    Menu: {
      buildFromTemplate: (template: MenuItemConstructorOptions[]) => template,
      setApplicationMenu: vi.fn<(menu: MenuItemConstructorOptions[]) => void>(),
    },
    protocol: {
      registerSchemesAsPrivileged: vi.fn(),
      handle: vi.fn<(scheme: string, handler: (request: Request) => Promise<Response>) => void>(),
    },
    screen: { getPrimaryDisplay: () => displays[0], getAllDisplays: () => displays },
    session: {
      defaultSession: {
        setPermissionRequestHandler:
          vi.fn<
            (handler: (contents: object, asked: string, answer: (granted: boolean) => void) => void) => void
          >(),
        setPermissionCheckHandler: vi.fn<(handler: () => boolean) => void>(),
        setDevicePermissionHandler: vi.fn<(handler: () => boolean) => void>(),
      },
    },
  };
  return { electron: electron as unknown as Electron, pieces: electron, wire, windows };
}
