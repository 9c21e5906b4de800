import { describe, expect, test } from 'vitest';
import { MENU } from '../../../src-main/hosts/electron/menu.ts';
import { Actions } from '../../../src-renderer/actions/actions.ts';
import { documentActions } from '../../../src-renderer/actions/document-actions.ts';
import { actionFor, nudgeFor, pressed, strokeText } from '../../../src-renderer/actions/keys.ts';
import { shellActions } from '../../../src-renderer/actions/shell-actions.ts';
import type { Focus, KeyPress } from '../../../src-renderer/controls/action.ts';
import { layoutActions } from '../../../src-renderer/places/layout/layout-actions.ts';
import { roadActions } from '../../../src-renderer/places/road/road-actions.ts';
import { pullsByKeys } from '../../../src-renderer/places/road/road-keys.ts';

/** The page's own actions upon stand-ins that have only what a test gives them. */
function actionsOn({
  openLayout = {},
  axlePull = {},
}: {
  openLayout?: object;
  axlePull?: object;
} = {}): Actions {
  const nothing = {} as never;
  return new Actions([
    ...documentActions(openLayout as never, nothing),
    ...shellActions(openLayout as never, nothing),
    ...layoutActions(openLayout as never, nothing, nothing, () => {}),
    ...roadActions(openLayout as never, nothing, axlePull as never),
  ]);
}
const ALL = actionsOn();
const ACTIONS = ALL.list;

const press = (key: string, more: Partial<KeyPress> = {}): KeyPress => ({
  key,
  ctrlKey: false,
  metaKey: false,
  altKey: false,
  shiftKey: false,
  ...more,
});
const meant = (key: string, more: Partial<KeyPress> = {}, focus: Focus = 'board') =>
  actionFor(press(key, more), focus, ALL)?.id;

describe('the table of actions', () => {
  test('no two actions share a name, an id or a stroke', () => {
    const strokes = ACTIONS.flatMap((action) => action.strokes.map((stroke) => strokeText(stroke, false)));
    for (const list of [ACTIONS.map(({ id }) => id), ACTIONS.map(({ name }) => name), strokes])
      expect(new Set(list).size).toBe(list.length);
  });

  test('every action that the native menu sends is known, and each of its lines says what the table says', () => {
    const items = MENU.flatMap(({ items }) => items).filter((item) => item.action !== undefined);
    expect(items.length).toBeGreaterThan(5);
    for (const item of items) expect(ALL.named(item.action ?? '')?.id, item.label).toBe(item.action);
  });

  test('what cannot be done is not done', () => {
    const log: string[] = [];
    const openLayout = {
      canUndo: false,
      canRedo: true,
      edits: { undo: () => log.push('undo'), redo: () => log.push('redo') },
    };
    const actions = actionsOn({ openLayout });
    actions.perform('undo');
    actions.perform('redo');
    actions.perform('no such action');
    expect(log).toEqual(['redo']);
  });
});

describe('keys', () => {
  test('undo and redo in each of their ways', () => {
    expect(meant('z', { ctrlKey: true })).toBe('undo');
    expect(meant('z', { metaKey: true })).toBe('undo');
    expect(meant('Z', { ctrlKey: true, shiftKey: true })).toBe('redo');
    expect(meant('y', { ctrlKey: true })).toBe('redo');
  });

  test('a letter with a modifier that is not its own means nothing', () => {
    expect(meant('f')).toBe('fit');
    expect(meant('f', { ctrlKey: true })).toBeUndefined();
    expect(meant('f', { altKey: true })).toBeUndefined();
    expect(meant('F', { shiftKey: true })).toBeUndefined();
    expect(meant('z')).toBeUndefined();
  });

  test('a sign is found whether or not the keyboard needs Shift for it', () => {
    expect(meant('?', { shiftKey: true })).toBe('keys');
    expect(meant('?')).toBe('keys');
  });

  test('while text is typed, every key belongs to the text', () => {
    for (const key of ['f', 'u', 't', '?']) expect(meant(key, {}, 'text')).toBeUndefined();
    expect(meant('z', { ctrlKey: true }, 'text')).toBeUndefined();
  });

  test('a list of choices is looked through by typing: its letters fire nothing, undo still undoes', () => {
    for (const key of ['f', 'u', 't', 's', '?']) expect(meant(key, {}, 'choices')).toBeUndefined();
    expect(meant('z', { ctrlKey: true }, 'choices')).toBe('undo');
    expect(nudgeFor(press('ArrowUp'), 'choices')).toBeUndefined();
  });

  test('arrows nudge on the board, but not where a control uses them', () => {
    expect(nudgeFor(press('ArrowUp', { shiftKey: true }), 'board')).toBe('ArrowUp');
    expect(nudgeFor(press('ArrowUp'), 'arrows')).toBeUndefined();
    expect(nudgeFor(press('ArrowUp', { altKey: true }), 'board')).toBeUndefined();
    expect(nudgeFor(press('Enter'), 'board')).toBeUndefined();
  });

  test('an arrow nudges the selected point, further with Shift, and is not used without one', () => {
    const nudges: [string, boolean][] = [];
    const openLayout = { inHand: { id: 'x' }, nudge: (...nudge: [string, boolean]) => nudges.push(nudge) };
    const pulls = pullsByKeys({ byKeys: false } as never);
    const arrow = (more: Partial<KeyPress>, on: object) =>
      pressed(press('ArrowLeft', more), 'board', ALL, on as never, [pulls]);
    expect(arrow({}, openLayout)).toBe(true);
    expect(arrow({ shiftKey: true }, openLayout)).toBe(true);
    expect(nudges).toEqual([
      ['ArrowLeft', false],
      ['ArrowLeft', true],
    ]);
    expect(arrow({}, { inHand: undefined })).toBe(false);
  });

  test('P takes hold of the axle and Shift P lets go', () => {
    expect(meant('p')).toBe('pull-axle');
    expect(meant('P', { shiftKey: true })).toBe('let-go');
    for (const key of ['g', ',', '.', 'Enter']) expect(meant(key)).toBeUndefined();
    const done: string[] = [];
    const axlePull = { hold: null as object | null, letGo: () => done.push('let go') };
    const actions = actionsOn({ axlePull });
    actions.perform('let-go');
    axlePull.hold = {};
    actions.perform('let-go');
    expect(done).toEqual(['let go']);
  });

  test('arrows up and down pull the axle that keys took hold of; Enter and a slider’s arrows are left alone', () => {
    const done: (number | string)[] = [];
    const axlePull = {
      byKeys: true,
      pulled: { up: 25.4, over: 0 },
      pull: (up: number) => done.push(up),
      letGo: () => done.push('let go'),
    };
    const openLayout = { inHand: { id: 'x' }, nudge: () => done.push('nudge') };
    const answer = (key: string, shiftKey: boolean, focus: Focus) =>
      pressed(press(key, { shiftKey }), focus, ALL, openLayout as never, [pullsByKeys(axlePull as never)]);
    for (const [key, shiftKey] of [
      ['ArrowUp', false],
      ['ArrowDown', true],
    ] as const)
      expect(answer(key, shiftKey, 'board')).toBe(true);
    expect(answer('Enter', false, 'board')).toBe(false);
    expect(done).toEqual([31.75, 0]);
    expect(answer('ArrowUp', false, 'arrows')).toBe(false);
  });

  test('strokes are written as the keyboard at hand writes them', () => {
    expect(strokeText({ key: 'z', mod: true, shift: true }, false)).toBe('Ctrl Shift Z');
    expect(strokeText({ key: 'z', mod: true, shift: true }, true)).toBe('⇧⌘Z');
  });
});
