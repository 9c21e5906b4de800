import { createHash } from 'node:crypto';

/** A word that a list names, with the place where it stands. */
export interface ForeignWord {
  readonly path: string;
  readonly line: number;
  readonly word: string;
}

/** Put before a word before it is hashed, so that no ready-made table of hashes reads the list. */
const SALT = 'toe:';
const HASH_DIGITS = 16;

/** A word as the list holds it: the first 16 hex digits of SHA-256 over salt and word. */
export function hashOfWord(word: string): string {
  return createHash('sha256').update(`${SALT}${word}`).digest('hex').slice(0, HASH_DIGITS);
}

/** The hashes that stand in a text, whatever stands around them. */
export function hashesIn(text: string): ReadonlySet<string> {
  return new Set(text.match(/\b[0-9a-f]{16}\b/g) ?? []);
}

/**
 * The words of a text, in small letters and without accents: each run of letters as a whole, in the parts that capitals
 * divide it into (`boxNear` is also `box` and `near`), and without a closing s.
 */
export function wordsOf(text: string): Set<string> {
  const bare = text.normalize('NFD').replaceAll(/\p{M}/gu, '');
  const words = new Set<string>();
  for (const run of bare.match(/[A-Za-z]{3,}/g) ?? []) {
    for (const part of [run, ...(run.match(/[A-Z]?[a-z]+|[A-Z]+(?![a-z])/g) ?? [])]) {
      const word = part.toLowerCase();
      words.add(word);
      if (word.endsWith('s')) words.add(word.slice(0, -1));
    }
  }
  return words;
}

/** Finds the words of a list in texts. Each different word is hashed once. */
export function foreignWordFinder(
  hashes: ReadonlySet<string>,
): (path: string, text: string) => ForeignWord[] {
  const listed = new Map<string, boolean>();
  const isListed = (word: string): boolean => {
    const known = listed.get(word);
    if (known !== undefined) return known;
    const found = hashes.has(hashOfWord(word));
    listed.set(word, found);
    return found;
  };
  const inLine = (path: string, text: string, line: number): ForeignWord[] =>
    [...wordsOf(text)].filter(isListed).map((word) => ({ path, line, word }));
  // Line 0 is the path itself.
  return (path, text) => [
    ...inLine(path, path, 0),
    ...text.split('\n').flatMap((words, i) => inLine(path, words, i + 1)),
  ];
}
