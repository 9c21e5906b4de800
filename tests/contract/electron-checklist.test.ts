import { spawnSync } from 'node:child_process';
import { EventEmitter } from 'node:events';
import { globSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test, vi } from 'vitest';
import { headersOf } from '../../src-main/hosts/content-policy.ts';
import { createBridge } from '../../src-main/hosts/electron/bridge.ts';
import { CALL_CHANNEL, OPENED_CHANNEL, SAVE_CHANNEL } from '../../src-main/hosts/electron/channels.ts';
import { runElectron } from '../../src-main/hosts/electron/run-electron.ts';
import { electronStandIn } from '../support/electron-stand-ins.ts';
import { testFolder } from '../support/host-folder.ts';
import { ROOT } from '../support/host-process.ts';
import { fixtureRenderer } from '../support/host-transports.ts';

/*
 * Electron's own checklist, "Security", in its documentation (docs/tutorial/security.md, "Checklist: Security
 * recommendations"): one test for each of its twenty lines, in its order and under its number. Driven on stand-ins: the
 * binary itself is not needed. What a setting does inside Electron is Electron's word.
 */

async function run() {
  const dataFolder = testFolder();
  const standIn = electronStandIn();
  const rendererFolder = fixtureRenderer(dataFolder);
  await runElectron(standIn.electron, { dataFolder, rendererFolder, preload: '/out/preload.cjs' });
  const [window] = standIn.windows;
  if (!window) throw new Error('no window was opened');
  const answer = standIn.pieces.protocol.handle.mock.calls[0]?.[1];
  if (!answer) throw new Error('no scheme is served');
  return { ...standIn, window, answer, preferences: window.options.webPreferences ?? {} };
}

const sources = (folder: string) =>
  globSync(`${folder}/**/*.{ts,cjs,svelte,html}`, { cwd: ROOT }).map((path) => ({
    path,
    text: readFileSync(join(ROOT, path), 'utf8'),
  }));

/** Those of the program's own files in which something stands. */
const whereStands = (pattern: RegExp, folder = 'src-main') =>
  sources(folder)
    .filter(({ text }) => pattern.test(text))
    .map(({ path }) => path.replaceAll('\\', '/'));

const POLICY = async () => {
  const { answer } = await run();
  return (await answer(new Request('app://toeboard/'))).headers.get('content-security-policy') ?? '';
};

describe("Electron's security checklist", () => {
  test('1. only secure content is loaded: the board comes from the program itself, and nothing from the net', async () => {
    const { window, windows } = await run();
    expect(windows).toHaveLength(1);
    expect(window.loadURL.mock.calls).toEqual([['app://toeboard/']]);
    expect(whereStands(/loadURL\(|loadFile\(/)).toEqual(['src-main/hosts/electron/board-window.ts']);
    expect(await POLICY()).not.toMatch(/https?:|wss?:|\*/);
    // An address in a page or a style would be a request to it; namespaces are none.
    const remote = /(?:src|href|url|import)\s*[=(]\s*["']?(?:https?:)?\/\/(?!www\.w3\.org)/;
    expect([...whereStands(remote, 'src-renderer'), ...whereStands(remote)]).toEqual([]);
  });

  test('2. Node is not handed to pages', async () => {
    const { preferences } = await run();
    expect(preferences).toMatchObject({
      nodeIntegration: false,
      nodeIntegrationInWorker: false,
      nodeIntegrationInSubFrames: false,
    });
  });

  test('3. contexts are isolated', async () => {
    expect((await run()).preferences.contextIsolation).toBe(true);
  });

  test('4. processes are sandboxed', async () => {
    expect((await run()).preferences.sandbox).toBe(true);
    // Switched off by the launchers, and for the superuser alone, whom Chromium refuses otherwise.
    expect(whereStands(/no-sandbox|disable-setuid/).sort()).toEqual([
      'src-main/hosts/loopback/window.ts',
      'src-main/start.ts',
    ]);
    expect(whereStands(/appendSwitch|commandLine/)).toEqual([]);
  });

  test('5. requests for permissions are handled, each by no', async () => {
    const session = (await run()).pieces.session.defaultSession;
    const granted: boolean[] = [];
    for (const asked of [
      'media',
      'geolocation',
      'notifications',
      'clipboard-read',
      'openExternal',
      'fileSystem',
    ])
      session.setPermissionRequestHandler.mock.calls[0]?.[0]({}, asked, (grant) => granted.push(grant));
    expect(granted).toEqual([false, false, false, false, false, false]);
    expect(session.setPermissionCheckHandler.mock.calls[0]?.[0]()).toBe(false);
    expect(session.setDevicePermissionHandler.mock.calls[0]?.[0]()).toBe(false);
  });

  test('6. web security is left on', async () => {
    expect((await run()).preferences.webSecurity).toBe(true);
  });

  test('7. there is a content policy, on every answer, and it lets no code in that is not a file of the program', async () => {
    const policy = await POLICY();
    expect(policy).toContain("default-src 'self'");
    expect(policy).not.toMatch(/unsafe-|script-src|'nonce-/);
    for (const nothing of [
      "object-src 'none'",
      "base-uri 'none'",
      "form-action 'none'",
      "frame-ancestors 'none'",
    ])
      expect(policy).toContain(nothing);
    const { answer } = await run();
    for (const path of ['assets/index.js', 'photo/none', 'output/none', 'shop/none'])
      expect(
        (await answer(new Request(`app://toeboard/${path}`))).headers.get('content-security-policy'),
        path,
      ).toBe(policy);
    // Decoders of pictures are compiled code: each of these workers may start it, by the policy of its own script alone.
    for (const path of ['assets/heic-decoder-worker-B135b1DC.js', 'assets/pdf-reader-worker-B5Yc7dP4.js'])
      expect(headersOf(`/${path}`)['content-security-policy'], path).toBe(
        `${policy}; script-src 'self' 'wasm-unsafe-eval'`,
      );
    for (const path of ['/assets/index-B5Yc7dP4.js', '/photo/heic-decoder-worker-B135b1DC.js', '/'])
      expect(headersOf(path)['content-security-policy'], path).toBe(policy);
  });

  test('8. insecure content is not let run', async () => {
    expect((await run()).preferences.allowRunningInsecureContent).toBe(false);
  });

  test('9. experimental features are off', async () => {
    expect((await run()).preferences.experimentalFeatures).toBe(false);
  });

  test('10. no features of the engine are switched on by name', async () => {
    expect((await run()).preferences).not.toHaveProperty('enableBlinkFeatures');
    expect(whereStands(/enableBlinkFeatures|enable-blink-features/)).toEqual([]);
  });

  test('11. no web view lets windows pop up: there is none', async () => {
    expect((await run()).preferences.webviewTag).toBe(false);
    expect([
      ...whereStands(/<webview|allowpopups/, 'src-renderer'),
      ...whereStands(/<webview|allowpopups/),
    ]).toEqual([]);
  });

  test('12. a web view that is made all the same is not attached', async () => {
    const { window } = await run();
    const attach = { preventDefault: vi.fn() };
    window.webContents.emit('will-attach-webview', attach);
    expect(attach.preventDefault).toHaveBeenCalledTimes(1);
  });

  test('13. pages are kept where they are, in every frame of every one', async () => {
    const { window, pieces } = await run();
    const later = Object.assign(new EventEmitter(), { setWindowOpenHandler: vi.fn() });
    pieces.app.emit('web-contents-created', {}, later);
    for (const contents of [window.webContents, later])
      for (const event of ['will-navigate', 'will-redirect', 'will-frame-navigate'])
        for (const url of [
          'https://evil.example/',
          'file:///etc/passwd',
          'app://toeboard.evil.example/',
          'app://other/',
          'javascript:alert(1)',
          'data:text/html,x',
          'http://app//toeboard/',
        ]) {
          const leave = { url, preventDefault: vi.fn() };
          contents.emit(event, leave);
          expect(leave.preventDefault, `${event} ${url}`).toHaveBeenCalledTimes(1);
        }
  });

  test('14. no page opens a window', async () => {
    const { window, pieces, windows } = await run();
    expect(window.webContents.windowOpenHandler?.()).toEqual({ action: 'deny' });
    const later = Object.assign(new EventEmitter(), { setWindowOpenHandler: vi.fn() });
    pieces.app.emit('web-contents-created', {}, later);
    expect(later.setWindowOpenHandler.mock.calls[0]?.[0]?.()).toEqual({ action: 'deny' });
    expect(windows).toHaveLength(1);
  });

  test('15. nothing is opened outside by the shell', async () => {
    expect(whereStands(/openExternal|openPath|\bshell\b\s*[,}]/)).toEqual([]);
    expect(Object.keys((await run()).pieces)).not.toContain('shell');
  });

  test('16. Electron is named by one exact version, and that one is installed', () => {
    const manifest = JSON.parse(readFileSync(join(ROOT, 'package.json'), 'utf8')) as {
      dependencies?: Record<string, string>;
      devDependencies?: Record<string, string>;
      optionalDependencies?: Record<string, string>;
    };
    const all = { ...manifest.dependencies, ...manifest.devDependencies, ...manifest.optionalDependencies };
    // Exact, so that what was tried is what runs; whether it is current no test without the net can know.
    expect(all['electron']).toMatch(/^\d+\.\d+\.\d+$/);
    const lock = JSON.parse(readFileSync(join(ROOT, 'package-lock.json'), 'utf8')) as {
      packages: Record<string, { version?: string }>;
    };
    expect(lock.packages['node_modules/electron']?.version).toBe(all['electron']);
  });

  test('17. the sender of every message is checked, on every channel that is heard', async () => {
    const { wire, pieces } = await run();
    expect([...wire.handlers.keys()].sort()).toEqual([CALL_CHANNEL, OPENED_CHANNEL, SAVE_CHANNEL].sort());
    // A file waits to be taken: a stranger gets none of it.
    pieces.app.emit('open-file', { preventDefault: () => {} }, '/etc/hostname.json');
    const strangers = [
      null,
      { url: 'app://toeboard/', parent: {} },
      { url: 'https://evil.example/', parent: null },
      { url: 'app://toeboard.evil.example/', parent: null },
    ];
    for (const senderFrame of strangers) {
      expect(await wire.invokeFrom({ senderFrame }, CALL_CHANNEL, 'shop.read', {})).toMatchObject({
        ok: false,
      });
      expect(await wire.invokeFrom({ senderFrame }, SAVE_CHANNEL, 'job')).toEqual({
        state: 'failed',
        reason: 'saving is for the board only',
      });
      expect(await wire.invokeFrom({ senderFrame }, OPENED_CHANNEL)).toBeUndefined();
    }
    expect(await wire.bridge().takeOpened()).toMatchObject({ fileName: 'hostname.json' });
    expect(whereStands(/ipcMain\.(on|once|handleOnce)\(/)).toEqual([]);
  });

  test('18. pages come by a scheme of their own, not from the file system', async () => {
    const { pieces, answer } = await run();
    expect(pieces.protocol.registerSchemesAsPrivileged.mock.calls).toEqual([
      // Neither around the content policy nor into service workers or streams of others.
      [[{ scheme: 'app', privileges: { standard: true, secure: true, supportFetchAPI: true } }]],
    ]);
    expect(pieces.protocol.handle.mock.calls.map(([scheme]) => scheme)).toEqual(['app']);
    for (const path of ['..%2fsecret.json', '%2e%2e/secret.json', 'secret.json', '..%5csecret.json'])
      expect((await answer(new Request(`app://toeboard/${path}`))).ok, path).toBe(false);
    expect(whereStands(/file:\/\//, 'src-main')).toEqual([]);
  });

  test('19. what fuses would turn off is not asked for: the binary is never run as a plain Node', () => {
    // Fuses are set in a binary that is packed with its program. Ours is the package's own, started by the launcher.
    const code = `import { runHost } from ${JSON.stringify(join(ROOT, 'src-main/hosts/launch/run-host.ts'))};
      const end = await runHost(process.execPath, ['-e', 'process.exit(process.env.ELECTRON_RUN_AS_NODE ? 3 : 4)']);
      process.exit(end.code);`;
    const env = { ...process.env, ELECTRON_RUN_AS_NODE: '1' };
    const { status } = spawnSync(process.execPath, ['--input-type=module', '-e', code], {
      env,
      stdio: 'ignore',
    });
    expect(status).toBe(4);
    expect(whereStands(/--inspect|--remote-debugging|NODE_OPTIONS/)).toEqual([]);
  });

  test('20. nothing of Electron is handed to the page, neither a sender nor an event', async () => {
    const ipc = Object.assign(new EventEmitter(), { invoke: vi.fn(async () => 'answer') });
    const bridge = createBridge(ipc as unknown as Parameters<typeof createBridge>[0]);
    expect(Object.keys(bridge).sort()).toEqual(['call', 'onMenu', 'saveOutput', 'takeOpened']);
    for (const value of Object.values(bridge)) expect(value).not.toBe(ipc.invoke);
    // The page names the call, never the channel.
    await bridge.call('shop.read', {});
    await bridge.saveOutput('job');
    expect(ipc.invoke.mock.calls.map(([channel]: unknown[]) => channel)).toEqual([
      CALL_CHANNEL,
      SAVE_CHANNEL,
    ]);
    const heard: unknown[][] = [];
    bridge.onMenu((...all: unknown[]) => heard.push(all));
    ipc.emit('toeboard-menu', { sender: ipc }, 'undo', ipc);
    expect(heard).toEqual([['undo']]);
    expect(whereStands(/exposeInMainWorld/)).toEqual(['src-main/electron-preload.ts']);
  });
});
