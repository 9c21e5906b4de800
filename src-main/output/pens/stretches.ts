import bidiFactory from 'bidi-js';
import { noType } from './no-type.ts';

// A line of text as stretches of one font each, in the order in which they stand on paper.

/** A font that may be set with. */
export interface Candidate {
  readonly name: string;
  has(codePoint: number): boolean;
}

/** A piece of a line in one font and one direction; its letters in the order in which they are spoken. */
export interface Stretch {
  readonly font: string;
  readonly text: string;
}

/** Letters that are not seen: joiners, marks of direction, variation selectors. */
const UNSEEN = /^(?:\p{Cf}|\p{Cc}|\p{Cs}|\p{Variation_Selector})$/u;
const MARK = /^\p{M}$/u;
const RIGHT_TO_LEFT = /[\p{Script=Hebrew}\p{Script=Arabic}\u200f\u202b\u202e\u2067]/u;

/** The letters of a text that none of the fonts has, each once. */
export function unsettable(text: string, fonts: readonly Candidate[]): string[] {
  const letters = [...text.normalize('NFC')].filter(
    (letter) =>
      !UNSEEN.test(letter) &&
      !/\s/.test(letter) &&
      !fonts.some((font) => font.has(letter.codePointAt(0) as number)),
  );
  return [...new Set(letters)];
}

const bidi = bidiFactory();

/**
 * Stretches of a line, left to right as they stand on paper. A letter is taken from the first font that has it; marks
 * stay with the letter before them. Where letters run from right to left the stretches are put in order by the
 * Unicode bidirectional algorithm (UAX #9, rule L2); fonts turn the letters inside a stretch themselves.
 * Errors: NoType where no font has a letter.
 */
export function stretchesOf(text: string, fonts: readonly Candidate[]): Stretch[] {
  const line = text.normalize('NFC');
  const turned = RIGHT_TO_LEFT.test(line);
  const levels = turned ? bidi.getEmbeddingLevels(line).levels : undefined;
  const mirrored = levels ? bidi.getMirroredCharactersMap(line, levels) : undefined;
  const found: { font: string; text: string; level: number }[] = [];
  let at = 0;
  for (const letter of line) {
    const level = levels?.[at] ?? 0;
    const set = mirrored?.get(at) ?? letter;
    at += letter.length;
    const last = found[found.length - 1];
    const inLast = fonts.find(({ name }) => name === last?.font)?.has(letter.codePointAt(0) as number);
    if (UNSEEN.test(letter) && !inLast) continue;
    const font =
      last && inLast && (MARK.test(letter) || UNSEEN.test(letter))
        ? last.font
        : fonts.find((one) => one.has(set.codePointAt(0) as number))?.name;
    if (!font) throw noType('The text', text, unsettable(text, fonts));
    if (last?.font === font && last.level === level) last.text += set;
    else found.push({ font, text: set, level });
  }
  return levels ? inOrder(found) : found;
}

/** Rule L2: from the highest level down, every run of that level and above is turned about. */
function inOrder(runs: { font: string; text: string; level: number }[]): Stretch[] {
  const highest = Math.max(0, ...runs.map(({ level }) => level));
  const ordered = [...runs];
  for (let level = highest; level > 0; level -= 1)
    for (let from = 0; from < ordered.length; from += 1) {
      if ((ordered[from] as (typeof runs)[number]).level < level) continue;
      let to = from;
      while (to + 1 < ordered.length && (ordered[to + 1] as (typeof runs)[number]).level >= level) to += 1;
      ordered.splice(from, to - from + 1, ...ordered.slice(from, to + 1).reverse());
      from = to;
    }
  // Blanks and marks among them are in a font that does not turn them itself.
  return ordered.map(({ font, text, level }) => ({
    font,
    text: level % 2 === 1 && !RIGHT_TO_LEFT.test(text) ? [...text].reverse().join('') : text,
  }));
}
