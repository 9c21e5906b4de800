import { chmodSync, existsSync, mkdirSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, onTestFinished, test } from 'vitest';
import type { CallHost, CallResult } from '../../src-main/api/contract.ts';
import { SAVE_CHANNEL } from '../../src-main/hosts/electron/channels.ts';
import { runElectron } from '../../src-main/hosts/electron/run-electron.ts';
import { electronStandIn } from '../support/electron-stand-ins.ts';
import { testFolder } from '../support/host-folder.ts';
import { begin } from '../support/host-session.ts';
import { fixtureRenderer, value } from '../support/host-transports.ts';

async function ready() {
  const folder = testFolder();
  const standIn = electronStandIn();
  const rendererFolder = fixtureRenderer(folder);
  await runElectron(standIn.electron, { dataFolder: folder, rendererFolder, preload: '/out/preload.cjs' });
  onTestFinished(() => void standIn.pieces.app.emit('will-quit'));
  const bridge = standIn.wire.bridge();
  const call: CallHost = (name, input) => bridge.call(name, input) as Promise<CallResult<typeof name>>;
  const { id } = await begin(call);
  const wish = { kind: 'table', table: 'points' } as const;
  const { job } = await value(call, 'output.start', { id, wish, unit: 'in', fraction: 16 });
  await expect.poll(async () => (await value(call, 'output.progress', { job })).state).toBe('ready');
  const { showSaveDialog } = standIn.pieces.dialog;
  const choose = (filePath: string) => showSaveDialog.mockResolvedValueOnce({ canceled: false, filePath });
  return { ...standIn, folder, bridge, job, choose, showSaveDialog };
}

describe('saving in Electron', () => {
  test('asks where, by the name that the file has, and writes it there', async () => {
    const { bridge, job, folder, choose, showSaveDialog, windows } = await ready();
    const path = join(folder, 'points.csv');
    choose(path);
    expect(await bridge.saveOutput(job)).toEqual({ state: 'written', path });
    expect(readFileSync(path, 'utf8')).toContain('steering.box.pitmanBall,Pitman ball,pitman,');
    const [window, asked] = showSaveDialog.mock.calls[0] as [
      unknown,
      { defaultPath: string; filters: unknown },
    ];
    expect(window).toBe(windows[0]);
    expect(asked.defaultPath).toMatch(/Roadster - Arm down - Points\.csv$/);
    expect(asked.filters).toEqual([{ name: 'CSV', extensions: ['csv'] }]);
  });

  test('writes nothing where the person thinks better of it', async () => {
    const { bridge, job } = await ready();
    expect(await bridge.saveOutput(job)).toEqual({ state: 'given-up' });
  });

  test('tells why a place does not take it, and leaves no half file', async () => {
    const { bridge, job, folder, choose } = await ready();
    const taken = join(folder, 'taken.csv');
    mkdirSync(taken);
    choose(taken);
    expect(await bridge.saveOutput(job)).toEqual({
      state: 'failed',
      reason: `${taken}: a folder of that name is in the way`,
    });
    const lost = join(folder, 'nowhere', 'points.csv');
    choose(lost);
    expect(await bridge.saveOutput(job)).toEqual({
      state: 'failed',
      reason: `${lost}: its folder does not exist`,
    });
    const closed = join(folder, 'closed');
    mkdirSync(closed);
    chmodSync(closed, 0o555);
    chmodSync(folder, 0o755);
    choose(join(closed, 'points.csv'));
    process.seteuid?.(process.getuid?.() === 0 ? 65_534 : (process.geteuid?.() ?? 0));
    const answer = await bridge.saveOutput(job);
    process.seteuid?.(process.getuid?.() ?? 0);
    expect(answer).toEqual({
      state: 'failed',
      reason: `${join(closed, 'points.csv')}: this program may not write there`,
    });
    expect(readdirSync(closed)).toEqual([]);
  });

  test('a strange name or frame gets nothing', async () => {
    const { bridge, wire, folder, job } = await ready();
    for (const name of ['x', 7, '00000000-0000-4000-8000-000000000000'])
      expect(await bridge.saveOutput(name as string)).toEqual({
        state: 'failed',
        reason: 'it is no longer kept: make it again',
      });
    const stranger = { senderFrame: { url: 'https://evil.example/', parent: null } };
    expect(await wire.invokeFrom(stranger, SAVE_CHANNEL, job)).toEqual({
      state: 'failed',
      reason: 'saving is for the board only',
    });
    expect(existsSync(join(folder, 'points.csv'))).toBe(false);
  });
});
