import { createContext } from 'svelte';

/** A stroke of the keyboard. `mod` is Command on a Mac and Control elsewhere. */
export interface Stroke {
  readonly key: string;
  readonly mod?: true;
  readonly shift?: true;
}

/** One thing that a person can do: read by the keys, the buttons, the key list and the native menu. */
export interface Action {
  readonly id: string;
  /** As the key list and tooltips say it. */
  readonly name: string;
  readonly strokes: readonly Stroke[];
  /** False where it cannot be done now: a disabled button, a key that does nothing. */
  enabled(): boolean;
  run(): void;
}

/** What of a keyboard event decides; a plain object in tests. */
export interface KeyPress {
  readonly key: string;
  readonly ctrlKey: boolean;
  readonly metaKey: boolean;
  readonly altKey: boolean;
  readonly shiftKey: boolean;
}

/**
 * Where the press goes first: into text, into a list of choices that is looked through by arrows and by typing, into a
 * control that has its own use for arrows, or nowhere special.
 */
export type Focus = 'text' | 'choices' | 'arrows' | 'board';

/** A use of keys that are no action, as arrows for what is held; returns whether it took the press. */
export type KeyUse = (press: KeyPress, focus: Focus) => boolean;

/** Runs an action by its id, if nothing is in its way. */
export type Perform = (id: string) => void;

export const [getPerform, setPerform] = createContext<Perform>();
