import { EventEmitter } from 'node:events';
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import BetterSqlite3 from 'better-sqlite3';
import { describe, expect, test, vi } from 'vitest';
import { CALL_CHANNEL, FILE_WAITS, OPENED_CHANNEL } from '../../src-main/hosts/electron/channels.ts';
import { runElectron } from '../../src-main/hosts/electron/run-electron.ts';
import { WEB_PREFERENCES } from '../../src-main/hosts/electron/web-preferences.ts';
import { REFUSED_EXIT } from '../../src-main/hosts/launch/exit-codes.ts';
import { DATABASE_FILE } from '../../src-main/store/index.ts';
import { electronStandIn } from '../support/electron-stand-ins.ts';
import { testFolder } from '../support/host-folder.ts';
import { fixtureRenderer } from '../support/host-transports.ts';

async function run(
  settings: Parameters<typeof electronStandIn>[0] = {},
  dataFolder = testFolder(),
  args: readonly string[] = [],
) {
  const standIn = electronStandIn(settings);
  const rendererFolder = fixtureRenderer(dataFolder);
  await runElectron(standIn.electron, { dataFolder, rendererFolder, preload: '/out/preload.cjs', args });
  return { ...standIn, dataFolder, window: standIn.windows[0] };
}

describe('the Electron host', () => {
  test('gives the page no more than a browser would', async () => {
    expect(WEB_PREFERENCES).toEqual({
      contextIsolation: true,
      sandbox: true,
      nodeIntegration: false,
      nodeIntegrationInSubFrames: false,
      nodeIntegrationInWorker: false,
      webSecurity: true,
      allowRunningInsecureContent: false,
      experimentalFeatures: false,
      webviewTag: false,
      navigateOnDragDrop: false,
      spellcheck: false,
    });
    const { window } = await run();
    expect(window?.options.webPreferences).toEqual({ ...WEB_PREFERENCES, preload: '/out/preload.cjs' });
    expect(window?.loadURL).toHaveBeenCalledWith('app://toeboard/');
  });

  test('the preload exposes the bridge and nothing else', async () => {
    const exposed: Record<string, object> = {};
    const ipcRenderer = { invoke: vi.fn(), on: vi.fn(), off: vi.fn() };
    vi.doMock('electron', () => ({
      contextBridge: {
        exposeInMainWorld: (name: string, api: object) => {
          exposed[name] = api;
        },
      },
      ipcRenderer,
    }));
    await import('../../src-main/electron-preload.ts');
    vi.doUnmock('electron');
    expect(Object.keys(exposed)).toEqual(['toeboardHost']);
    expect(Object.keys(exposed['toeboardHost'] ?? {}).sort()).toEqual([
      'call',
      'onMenu',
      'saveOutput',
      'takeOpened',
    ]);
  });

  test('serves the built board under its own scheme, with the same policy as the loopback host', async () => {
    const { pieces } = await run();
    expect(pieces.protocol.registerSchemesAsPrivileged).toHaveBeenCalledWith([
      { scheme: 'app', privileges: { standard: true, secure: true, supportFetchAPI: true } },
    ]);
    const [scheme, answer] = pieces.protocol.handle.mock.calls[0] ?? [];
    expect(scheme).toBe('app');
    const get = async (address: string, method = 'GET') => await answer?.(new Request(address, { method }));
    const page = await get('app://toeboard/');
    expect(await page?.text()).toContain('<title>Toeboard</title>');
    expect(page?.headers.get('content-security-policy')).toContain("default-src 'self'");
    expect((await get('app://toeboard/assets/index.js'))?.headers.get('content-type')).toMatch(/javascript/);
    expect((await get('app://other/'))?.status).toBe(404);
    expect((await get('app://toeboard/', 'POST'))?.status).toBe(405);
    expect((await get('app://toeboard/..%2fsecret.json'))?.status).toBe(403);
    expect((await get('app://toeboard/secret.json'))?.status).toBe(404);
  });

  test('keeps every page where it is and opens no other', async () => {
    const { pieces, window } = await run();
    const embedded = new EventEmitter() as EventEmitter & {
      setWindowOpenHandler: (handler: unknown) => void;
    };
    embedded.setWindowOpenHandler = () => {};
    pieces.app.emit('web-contents-created', {}, embedded);
    for (const contents of [window?.webContents, embedded]) {
      for (const event of ['will-navigate', 'will-redirect', 'will-frame-navigate']) {
        const leave = { url: 'https://evil.example/', preventDefault: vi.fn() };
        contents?.emit(event, leave);
        expect(leave.preventDefault, event).toHaveBeenCalledTimes(1);
      }
      const reload = { url: 'app://toeboard/', preventDefault: vi.fn() };
      contents?.emit('will-navigate', reload);
      expect(reload.preventDefault).not.toHaveBeenCalled();
      const attach = { preventDefault: vi.fn() };
      contents?.emit('will-attach-webview', attach);
      expect(attach.preventDefault).toHaveBeenCalledTimes(1);
    }
    expect(window?.webContents.windowOpenHandler?.()).toEqual({ action: 'deny' });
  });

  test('grants no permission', async () => {
    const { pieces } = await run();
    const session = pieces.session.defaultSession;
    const granted: boolean[] = [];
    session.setPermissionRequestHandler.mock.calls[0]?.[0]({}, 'media', (grant) => granted.push(grant));
    expect(granted).toEqual([false]);
    expect(session.setPermissionCheckHandler.mock.calls[0]?.[0]()).toBe(false);
    expect(session.setDevicePermissionHandler.mock.calls[0]?.[0]()).toBe(false);
  });

  test('answers the main frame of the board and nobody else', async () => {
    const { wire } = await run();
    const from = (senderFrame: { url: string; parent: object | null } | null) =>
      wire.invokeFrom({ senderFrame }, CALL_CHANNEL, 'shop.read', {});
    expect(await from({ url: 'app://toeboard/index.html', parent: null })).toMatchObject({ ok: true });
    for (const stranger of [
      null,
      { url: 'app://toeboard/', parent: {} },
      { url: 'https://evil.example/', parent: null },
      { url: 'app://toeboard.evil.example/', parent: null },
      { url: 'file:///etc/passwd', parent: null },
    ])
      expect(await from(stranger)).toEqual({
        ok: false,
        failure: { code: 'bad-request', reason: 'calls are taken from the board only' },
      });
  });

  test('tells the page which menu action was chosen, and stops when asked', async () => {
    const { pieces, wire } = await run();
    const heard: string[] = [];
    const stop = wire.bridge().onMenu((action) => heard.push(action));
    const items = pieces.Menu.setApplicationMenu.mock.calls[0]?.[0].flatMap(({ submenu }) =>
      Array.isArray(submenu) ? submenu : [],
    );
    const choose = (label: string) =>
      (items?.find((item) => item.label === label)?.click as (() => void) | undefined)?.();
    choose('Undo');
    choose('Export whole car…');
    expect(heard).toEqual(['undo', 'export-car']);
    stop();
    choose('Redo');
    expect(heard).toHaveLength(2);
  });

  test('hands the page each file that is opened with the program, at its start and later, as the page asks', async () => {
    const folder = testFolder();
    const car = (name: string) => {
      const path = join(folder, `${name}.toeboard-car`);
      writeFileSync(path, `car ${name}`);
      return path;
    };
    const { pieces, wire } = await run({}, folder, [
      '/toeboard',
      '--no-sandbox',
      car('one'),
      '/some/notes.txt',
    ]);
    const heard: string[] = [];
    wire.bridge().onMenu((action) => heard.push(action));
    const take = () => wire.bridge().takeOpened();
    expect(await take()).toEqual({ fileName: 'one.toeboard-car', text: 'car one' });
    expect(await take()).toBeUndefined();
    pieces.app.emit('second-instance', {}, ['/toeboard', car('two')]);
    const prevented = vi.fn();
    pieces.app.emit('open-file', { preventDefault: prevented }, join(folder, 'gone.toeboard-car'));
    expect(prevented).toHaveBeenCalled();
    expect(heard).toEqual([FILE_WAITS, FILE_WAITS]);
    expect(await take()).toEqual({ fileName: 'two.toeboard-car', text: 'car two' });
    expect(await take()).toEqual({ fileName: 'gone.toeboard-car', reason: 'it cannot be read' });
    pieces.app.emit('open-file', { preventDefault: prevented }, car('three'));
    const stranger = { senderFrame: { url: 'https://evil.example/', parent: null } };
    expect(await wire.invokeFrom(stranger, OPENED_CHANNEL)).toBeUndefined();
    expect(await take()).toEqual({ fileName: 'three.toeboard-car', text: 'car three' });
  });

  test('remembers where its window was', async () => {
    const areas = [{ x: 0, y: 0, width: 1920, height: 1040 }];
    const { window, dataFolder } = await run({ workAreas: areas });
    expect(window?.options).toMatchObject({ x: 240, y: 70, width: 1440, height: 900, show: false });
    expect(window?.maximize).not.toHaveBeenCalled();
    window?.emit('ready-to-show');
    expect(window?.show).toHaveBeenCalled();

    const place = join(dataFolder, 'electron', 'place.json');
    writeFileSync(
      place,
      JSON.stringify({ bounds: { x: 10, y: 20, width: 1000, height: 700 }, maximised: true }),
    );
    const again = await run({ workAreas: areas }, dataFolder);
    expect(again.window?.options).toMatchObject({ x: 10, y: 20, width: 1000, height: 700 });
    expect(again.window?.maximize).toHaveBeenCalled();
    again.window?.emit('close');
    expect(JSON.parse(readFileSync(place, 'utf8'))).toEqual({
      bounds: { x: 10, y: 20, width: 1000, height: 700 },
      maximised: false,
    });
  });

  test('runs once for each data folder: a second start brings the window forward', async () => {
    const said = vi.spyOn(console, 'log').mockImplementation(() => {});
    const second = await run({ locked: true });
    expect(said).toHaveBeenCalledWith('Toeboard is open already; its window comes to the front.');
    said.mockRestore();
    expect(second.pieces.app.quit).toHaveBeenCalled();
    expect(second.windows).toEqual([]);

    const { pieces, window, dataFolder } = await run();
    expect(pieces.app.setPath).toHaveBeenCalledWith('userData', join(dataFolder, 'electron'));
    if (window) window.minimised = true;
    pieces.app.emit('second-instance');
    expect(window?.restore).toHaveBeenCalled();
    expect(window?.focus).toHaveBeenCalled();
    pieces.app.emit('window-all-closed');
    expect(pieces.app.quit).toHaveBeenCalledTimes(1);
  });

  test('says in one line why it cannot open its data, and ends', async () => {
    const dataFolder = testFolder();
    mkdirSync(dataFolder, { recursive: true });
    const db = new BetterSqlite3(join(dataFolder, DATABASE_FILE));
    db.pragma('user_version = 99');
    db.close();
    const said = vi.spyOn(console, 'error').mockImplementation(() => {});
    const { pieces, windows } = await run({}, dataFolder);
    const line = said.mock.calls[0]?.[0];
    said.mockRestore();
    expect(line).toMatch(
      /toeboard\.sqlite: this database is version 99, newer than this program reads \(\d+\)/,
    );
    expect(pieces.dialog.showErrorBox).toHaveBeenCalledWith(expect.any(String), line);
    expect(pieces.app.exit).toHaveBeenCalledWith(REFUSED_EXIT);
    expect(windows).toEqual([]);
  });
});
