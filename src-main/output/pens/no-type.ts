/** A text cannot be set: no font at hand has its letters. The message is one line that names both. */
export class NoType extends Error {}

const SCRIPTS =
  'Latin, Greek, Cyrillic, Hebrew, Arabic, Armenian, Georgian, Thai and Devanagari letters can be set';

/** The refusal of a text: what it is, the text, its letters that no font has. */
export function noType(what: string, text: string, letters: readonly string[]): NoType {
  const short = [...text.replaceAll(/\s+/g, ' ')];
  const shown = short.length > 60 ? `${short.slice(0, 60).join('')}…` : short.join('');
  return new NoType(`${what} “${shown}”: no type at hand has ${letters.slice(0, 8).join(' ')}; ${SCRIPTS}`);
}
