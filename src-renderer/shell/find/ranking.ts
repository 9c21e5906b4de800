import { plainText } from '../../document/plain-text.ts';

/** A text that is looked in, made plain once. */
export interface LookedIn {
  /** What the eye reads first: counts before anything else. */
  readonly name: string;
  /** Further words by which it may be meant. */
  readonly also: string;
}

/** How far a word of the query is off a text; the less the better. A later place in the text counts within these. */
const AT_THE_START = 0;
const AT_A_WORD = 10;
const INSIDE = 30;
const IN_THE_FURTHER_WORDS = 40;
const LETTER_BY_LETTER = 60;
/** Letters of the query that have to be there before single letters are picked out of a text: fewer are in almost any. */
const LETTERS_LEAST = 2;
const LETTERS_MOST = 12;

/** Letters that may be left out between two of one word; the next may also begin a later word. */
const LEFT_OUT_MOST = 3;

/** Who leaves letters out leaves the vowels out first: one that is picked out from behind a gap was not meant. */
const VOWELS = new Set('aeiouy');

const isLetter = (text: string, at: number) => /[\p{L}\p{N}]/u.test(text[at] ?? '');

/**
 * Fewest letters left out where those of `word` are picked out of a text one after another, from a word's beginning on;
 * undefined if they cannot be. Works back from the last letter: `after[at]` is what the letters behind the present one
 * leave out if they follow place `at`.
 */
function gapsIn(word: string, text: string): number | undefined {
  const begins = Array.from(text, (_, at) => isLetter(text, at) && !isLetter(text, at - 1));
  let after = new Array<number>(text.length).fill(0);
  for (let letter = word.length - 1; letter > 0; letter -= 1) {
    const before = new Array<number>(text.length).fill(Number.POSITIVE_INFINITY);
    // What it costs to go on at the beginning of a later word.
    let later = Number.POSITIVE_INFINITY;
    for (let at = text.length - 1; at >= 0; at -= 1) {
      before[at] = later;
      for (let next = at + 1; next <= at + 1 + LEFT_OUT_MOST && isLetter(text, next); next += 1)
        if (text[next] === word[letter] && (next === at + 1 || !VOWELS.has(text[next] as string)))
          before[at] = Math.min(before[at] as number, next - at - 1 + (after[next] as number));
      if (begins[at] && text[at] === word[letter]) later = Math.min(later, 1 + (after[at] as number));
    }
    after = before;
  }
  const starts = after.filter((_, at) => begins[at] && text[at] === word[0]);
  const least = Math.min(...starts);
  return Number.isFinite(least) ? least : undefined;
}

/** Which word of the text begins with `word`: 0 the first; undefined if none does. */
function wordThatBegins(word: string, text: string): number | undefined {
  const words = text.split(/[^\p{L}\p{N}]+/u).filter(Boolean);
  const at = words.findIndex((each) => each.startsWith(word));
  return at < 0 ? undefined : at;
}

function farnessOf(word: string, { name, also }: LookedIn): number | undefined {
  if (name.startsWith(word)) return AT_THE_START;
  const begun = wordThatBegins(word, name);
  if (begun !== undefined) return AT_A_WORD + Math.min(begun, 9);
  if (name.includes(word)) return INSIDE;
  const further = wordThatBegins(word, also);
  if (further !== undefined) return IN_THE_FURTHER_WORDS + Math.min(further, 9);
  const gaps = word.length < LETTERS_LEAST || word.length > LETTERS_MOST ? undefined : gapsIn(word, name);
  return gaps === undefined ? undefined : LETTER_BY_LETTER + gaps;
}

/** An entry that was found, and how far off it is. */
export interface Ranked<Entry> {
  readonly entry: Entry;
  readonly farness: number;
}

/**
 * Those of the entries that every word of the query is found in, the nearest first: by the beginnings of words, then inside
 * them, then letter by letter from a word's beginning on. Accents and capitals count nowhere; equally near ones keep their
 * order, and an empty query finds all.
 */
export function ranked<Entry extends { readonly name: string; readonly also?: string }>(
  entries: readonly Entry[],
  query: string,
): Ranked<Entry>[] {
  const words = plainText(query)
    .split(/[^\p{L}\p{N}/?]+/u)
    .filter(Boolean);
  if (words.length === 0) return entries.map((entry) => ({ entry, farness: 0 }));
  return entries
    .flatMap((entry) => {
      const lookedIn = { name: plainText(entry.name), also: plainText(entry.also ?? '') };
      let farness = 0;
      for (const word of words) {
        const each = farnessOf(word, lookedIn);
        if (each === undefined) return [];
        farness += each;
      }
      return [{ entry, farness }];
    })
    .sort((a, b) => a.farness - b.farness);
}
