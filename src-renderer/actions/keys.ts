import type { Arrow } from '../document/nudge.ts';
import { ACTIONS, type Action, type Stroke, type Tools } from './actions.ts';

/** What of a keyboard event decides; a plain object in tests. */
export interface KeyPress {
  readonly key: string;
  readonly ctrlKey: boolean;
  readonly metaKey: boolean;
  readonly altKey: boolean;
  readonly shiftKey: boolean;
}

/** Where the press goes first: into text, into a control that has its own use for arrows, or nowhere special. */
export type Focus = 'text' | 'arrows' | 'board';

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
export function actionFor(press: KeyPress, focus: Focus): Action | undefined {
  if (focus === 'text') return undefined;
  return ACTIONS.find((action) => action.strokes.some((stroke) => isStroke(press, stroke)));
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
  if (target instanceof HTMLSelectElement) return 'arrows';
  return target.closest('[role="tablist"], [role="menu"], [role="slider"]') ? 'arrows' : 'board';
}

/** mm of one press of an arrow while the axle is in the hand; with Shift, and without. */
const PULL = { small: 6.35, large: 25.4 };

/** What a press does to the hand that holds the axle; nothing where there is none, or the key is another's. */
function pulls(press: KeyPress, focus: Focus, { axlePull }: Tools): boolean {
  if (!axlePull.byKeys || focus !== 'board' || press.ctrlKey || press.metaKey || press.altKey) return false;
  if (press.key !== 'ArrowUp' && press.key !== 'ArrowDown') return false;
  axlePull.pull(
    axlePull.pulled.up + (press.key === 'ArrowUp' ? 1 : -1) * (press.shiftKey ? PULL.large : PULL.small),
  );
  return true;
}

/** Answers a key press: an action, a nudge of the selected point, or nothing. Tells whether it was used. */
export function pressed(press: KeyPress, focus: Focus, tools: Tools): boolean {
  const action = actionFor(press, focus);
  if (action) {
    if (action.enabled(tools)) action.run(tools);
    return true;
  }
  if (pulls(press, focus, tools)) return true;
  const arrow = nudgeFor(press, focus);
  if (arrow && tools.bench.inHand) {
    tools.bench.nudge(arrow, press.shiftKey);
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
