import { join } from 'node:path';
import { _electron } from 'playwright-core';
import { expect, onTestFinished, test } from 'vitest';
import { build } from '../../src-main/hosts/launch/build.ts';
import { electronBinary } from '../../src-main/hosts/launch/electron-binary.ts';
import { testFolder } from '../support/host-folder.ts';
import { ROOT } from '../support/host-process.ts';
import { programTree } from '../support/host-tree.ts';

test('the real Electron opens the board and answers its calls', async (context) => {
  const binary = electronBinary(ROOT);
  if (!binary.ok) return context.skip(binary.failure);
  if (process.platform === 'linux' && !process.env['DISPLAY'] && !process.env['WAYLAND_DISPLAY'])
    return context.skip('there is no display for Electron');

  const root = programTree(testFolder());
  expect(await build(root)).toBe(true);
  const asRoot = process.platform === 'linux' && process.getuid?.() === 0 ? ['--no-sandbox'] : [];
  const app = await _electron.launch({
    executablePath: binary.value,
    args: [...asRoot, root],
    env: { ...(process.env as Record<string, string>), TOEBOARD_DATA: join(root, 'data') },
  });
  onTestFinished(() => app.close());
  const page = await app.firstWindow();
  expect(page.url()).toBe('app://toeboard/');
  expect(await page.title()).toBe('Toeboard');
  expect(await page.evaluate("toeboardHost.call('program.about', {})")).toMatchObject({
    ok: true,
    value: { dataFolder: join(root, 'data') },
  });
  expect(
    await page.evaluate('[typeof require, typeof process, Object.keys(toeboardHost).sort().join()]'),
  ).toEqual(['undefined', 'undefined', 'call,onMenu,saveOutput,takeOpened']);
});
