import { oneLine, shownText } from '../../../shared-math/outside/index.ts';

/** A text cannot be set: no font at hand has its letters. The message is one line that names both. */
export class NoType extends Error {}

const SCRIPTS =
  'Latin, Greek, Cyrillic, Hebrew, Arabic, Armenian, Georgian, Thai and Devanagari letters can be set';

/** The refusal of a text: what it is, the text, its letters that no font has. */
export function noType(what: string, text: string, letters: readonly string[]): NoType {
  const lacking = oneLine(letters.slice(0, 8).join(' ')) || 'a sign that cannot be seen';
  return new NoType(`${what} “${shownText(text)}”: no type at hand has ${lacking}; ${SCRIPTS}`);
}
