import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { MENU, menuTemplate } from '../../src-main/hosts/electron/menu.ts';
import {
  placeWindow,
  readWindowState,
  type WindowState,
  writeWindowState,
} from '../../src-main/hosts/electron/window-state.ts';
import { testFolder } from '../support/host-folder.ts';

const send = () => {};

function lines(platform: NodeJS.Platform): string[] {
  return menuTemplate(platform, send).flatMap(({ label, submenu }) =>
    (Array.isArray(submenu) ? submenu : []).map(
      (item) => `${label}: ${item.label ?? item.role ?? item.type} ${item.accelerator ?? ''}`,
    ),
  );
}

describe('the menu', () => {
  test("has each platform's usual keys for undo and redo", () => {
    expect(lines('darwin')).toContain('Edit: Redo Shift+Cmd+Z');
    expect(lines('win32')).toContain('Edit: Redo Ctrl+Y');
    expect(lines('linux')).toContain('Edit: Redo Ctrl+Shift+Z');
    for (const platform of ['darwin', 'win32', 'linux'] as const)
      expect(lines(platform)).toContain('Edit: Undo CmdOrCtrl+Z');
  });

  test("has what each platform expects: the program's own menu and closing on a Mac, quitting elsewhere", () => {
    expect(menuTemplate('darwin', send).map(({ label }) => label)).toEqual([
      'Toeboard',
      'File',
      'Edit',
      'View',
      'Window',
      'Help',
    ]);
    expect(menuTemplate('linux', send).map(({ label }) => label)).toEqual(['File', 'Edit', 'View', 'Help']);
    expect(lines('darwin').filter((line) => /close|quit/.test(line))).toEqual([
      'Toeboard: quit ',
      'File: close ',
    ]);
    expect(lines('win32').filter((line) => /close|quit/.test(line))).toEqual(['File: quit ']);
  });

  test('gives no two items the same keys, and takes no plain letter from the board', () => {
    for (const platform of ['darwin', 'win32', 'linux'] as const) {
      const keys = menuTemplate(platform, send).flatMap(({ submenu }) =>
        (Array.isArray(submenu) ? submenu : []).flatMap(({ accelerator }) => accelerator ?? []),
      );
      expect(new Set(keys).size).toBe(keys.length);
      for (const key of keys) expect(key).toMatch(/(CmdOrCtrl|Cmd|Ctrl)\+/);
    }
  });

  test('sends each action by the name in the table', () => {
    const sent: string[] = [];
    for (const { submenu } of menuTemplate('linux', (action) => sent.push(action)))
      for (const item of Array.isArray(submenu) ? submenu : []) (item.click as (() => void) | undefined)?.();
    const actions = MENU.flatMap(({ items }) => items.flatMap(({ action }) => action ?? []));
    expect(sent).toEqual(actions);
    expect(new Set(actions).size).toBe(actions.length);
    for (const action of actions) expect(action).toMatch(/^[a-z]+(-[a-z]+)*$/);
  });
});

const MAIN = { x: 0, y: 25, width: 1440, height: 815 };
const SIDE = { x: 1440, y: 0, width: 2560, height: 1400 };

function kept(x: number, y: number, width: number, height: number): WindowState {
  return { bounds: { x, y, width, height }, maximised: false };
}

describe("the window's place", () => {
  test('is the middle of the main screen at first, no larger than it', () => {
    expect(placeWindow(undefined, [MAIN, SIDE]).bounds).toEqual(MAIN);
    expect(placeWindow(undefined, [SIDE]).bounds).toEqual({ x: 2000, y: 250, width: 1440, height: 900 });
  });

  test('is where it was while a hand can reach its title bar', () => {
    for (const place of [kept(1600, 100, 1200, 800), kept(-900, 30, 1100, 700), kept(1300, 800, 1000, 700)])
      expect(placeWindow(place, [MAIN, SIDE])).toEqual(place);
  });

  test('is the main screen again where its own has gone or shows too little of it', () => {
    const middle = { x: 120, y: 58, width: 1200, height: 750 };
    for (const [x, y] of [
      [1600, 100],
      [-1150, 100],
      [100, 830],
      [100, -800],
      [99_999, 99_999],
    ] as const)
      expect(placeWindow(kept(x, y, 1200, 750), [MAIN]).bounds).toEqual(middle);
  });

  test('is never larger than its screen nor smaller than the board', () => {
    expect(placeWindow(kept(0, 25, 9000, 9000), [MAIN]).bounds).toEqual(MAIN);
    expect(placeWindow(kept(10, 30, 200, 100), [MAIN]).bounds).toEqual({
      x: 10,
      y: 30,
      width: 900,
      height: 600,
    });
    const tiny = { x: 0, y: 0, width: 640, height: 480 };
    expect(placeWindow(undefined, [tiny]).bounds).toEqual(tiny);
    expect(placeWindow(undefined, []).bounds).toEqual({ x: 0, y: 0, width: 1440, height: 900 });
  });

  test('is read back as written, and anything else is as if there were none', () => {
    const path = join(testFolder(), 'place.json');
    expect(readWindowState(path)).toBeUndefined();
    writeWindowState(path, kept(1, 2, 1000, 700));
    expect(readWindowState(path)).toEqual(kept(1, 2, 1000, 700));
    for (const text of [
      '',
      '{',
      'null',
      '{"bounds":{"x":0,"y":0,"width":0,"height":-1},"maximised":false}',
    ]) {
      writeFileSync(path, text);
      expect(readWindowState(path)).toBeUndefined();
    }
    writeWindowState('/dev/null/nowhere.json', kept(1, 2, 1000, 700));
  });
});
