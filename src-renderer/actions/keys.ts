import type { Action, Focus, KeyPress, KeyUse, Stroke } from '../controls/action.ts';
import type { Arrow } from '../document/nudge.ts';
import type { OpenLayout } from '../document/open-layout.svelte.ts';
import type { Actions } from './actions.ts';

function isStroke(press: KeyPress, stroke: Stroke): boolean {
  const mod = press.ctrlKey || press.metaKey;
  if (mod !== (stroke.mod === true) || press.altKey) return false;
  // Signs such as "?" need Shift on some keyboards and not on others; letters say whether they want it.
  const letter = /^[a-z]$/.test(stroke.key);
  if (letter && press.shiftKey !== (stroke.shift === true)) return false;
  return press.key.toLowerCase() === stroke.key;
}

/**
 * The action that a press asks for. While text is typed, letters belong to the text, and so does undo: a field
 * takes back its own typing.
 */
export function actionFor(press: KeyPress, focus: Focus, { list }: Actions): Action | undefined {
  if (focus === 'text') return undefined;
  const action = list.find((action) => action.strokes.some((stroke) => isStroke(press, stroke)));
  // A list of choices is looked through by typing: what has no modifier is its own.
  return focus === 'choices' && !press.ctrlKey && !press.metaKey ? undefined : action;
}

const ARROWS: readonly string[] = ['ArrowLeft', 'ArrowRight', 'ArrowUp', 'ArrowDown'];

/** The arrow that nudges the selected point, unless the focused control uses arrows itself. */
export function nudgeFor(press: KeyPress, focus: Focus): Arrow | undefined {
  if (focus !== 'board' || press.ctrlKey || press.metaKey || press.altKey) return undefined;
  return ARROWS.includes(press.key) ? (press.key as Arrow) : undefined;
}

const NO_TEXT = ['range', 'checkbox', 'radio', 'button', 'file'];

/** What the focused element does with keys of its own. */
export function focusOf(target: EventTarget | null): Focus {
  if (!(target instanceof HTMLElement)) return 'board';
  if (target instanceof HTMLInputElement) return NO_TEXT.includes(target.type) ? 'arrows' : 'text';
  if (target instanceof HTMLTextAreaElement || target.isContentEditable) return 'text';
  if (target instanceof HTMLSelectElement) return 'choices';
  return target.closest('[role="tablist"], [role="menu"], [role="slider"]') ? 'arrows' : 'board';
}

/**
 * Answers a key press: an action, what a place makes of it, a nudge of the selected point, or nothing. Returns whether
 * it was used.
 */
export function pressed(
  press: KeyPress,
  focus: Focus,
  actions: Actions,
  openLayout: Pick<OpenLayout, 'inHand' | 'nudge'>,
  uses: readonly KeyUse[] = [],
): boolean {
  const action = actionFor(press, focus, actions);
  if (action) {
    if (action.enabled()) action.run();
    return true;
  }
  if (uses.some((use) => use(press, focus))) return true;
  const arrow = nudgeFor(press, focus);
  if (arrow && openLayout.inHand) {
    openLayout.nudge(arrow, press.shiftKey);
    return true;
  }
  return false;
}

const SIGNS: Record<string, string> = { ArrowLeft: '←', ArrowRight: '→', ArrowUp: '↑', ArrowDown: '↓' };

/** A stroke as this keyboard writes it: "Ctrl Z", "⇧⌘Z". */
export function strokeText(stroke: Stroke, mac: boolean): string {
  const key = SIGNS[stroke.key] ?? stroke.key.toUpperCase();
  if (mac) return `${stroke.shift ? '⇧' : ''}${stroke.mod ? '⌘' : ''}${key}`;
  return [stroke.mod ? 'Ctrl' : '', stroke.shift ? 'Shift' : '', key].filter(Boolean).join(' ');
}

export function onMac(): boolean {
  return navigator.platform.startsWith('Mac');
}
