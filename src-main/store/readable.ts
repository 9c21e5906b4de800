import { shownText } from '../../shared-math/outside/index.ts';

/** Characters, as in the contract. */
const NAME_MOST = 200;
const NOTES_MOST = 20_000;
const ID = /^[0-9a-f-]{36}$/;

/** What stands for a name that is blank or missing. */
export const UNNAMED = 'unnamed';

/** A stored name as it can be shown: one that is blank must not make all others unreadable. */
export function readableName(stored: unknown): string {
  const name = typeof stored === 'string' ? stored.trim().slice(0, NAME_MOST).trim() : '';
  return name || UNNAMED;
}

/** The same as it may stand in a sentence. */
export function shownName(stored: unknown): string {
  return shownText(readableName(stored));
}

export function readableNotes(stored: unknown): string {
  return typeof stored === 'string' ? stored.slice(0, NOTES_MOST) : '';
}

/** ms since 1970; 0 for what is no moment. */
export function readableTime(stored: unknown): number {
  return typeof stored === 'number' && Number.isSafeInteger(stored) ? stored : 0;
}

/** Whether a stored thing can be asked for by its id. */
export function hasReadableId({ id }: { readonly id: unknown }): boolean {
  return typeof id === 'string' && ID.test(id);
}

/** What a stored text of JSON says; undefined if it is broken. */
export function parsedJson(text: string): unknown {
  try {
    return JSON.parse(text) as unknown;
  } catch {
    return undefined;
  }
}
