import { TERMS, type TermId } from '../../../shared-math/words/terms/index.ts';

/** A stretch of a sentence: plain, or the name of another word of the table. */
export interface Linked {
  readonly text: string;
  readonly id?: TermId;
}

const IDS = Object.keys(TERMS) as TermId[];
/** Names that are also words of every day: they would be marked where nobody means them. */
const EVERYDAY = new Set<string>([
  'Point',
  'Limit',
  'Lock',
  'Beam',
  'Column',
  'Roll',
  'Curves',
  'Station',
  'Clock',
]);

const escaped = (text: string) => text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');
const BY_NAME = new Map(
  IDS.filter((id) => !EVERYDAY.has(TERMS[id].name)).map((id) => [TERMS[id].name.toLowerCase(), id] as const),
);
const ANY = new RegExp(
  `\\b(${[...BY_NAME.keys()]
    .sort((a, b) => b.length - a.length)
    .map(escaped)
    .join('|')})(?=s?\\b)`,
  'gi',
);

/** A sentence of one word's entry, with the names of other words marked, each the first time that it comes. */
export function linkedWords(sentence: string, own: TermId): Linked[] {
  const out: Linked[] = [];
  const seen = new Set<TermId>([own]);
  let from = 0;
  for (const match of sentence.matchAll(ANY)) {
    const id = BY_NAME.get(match[0].toLowerCase());
    if (id === undefined || seen.has(id)) continue;
    seen.add(id);
    if (match.index > from) out.push({ text: sentence.slice(from, match.index) });
    out.push({ text: match[0], id });
    from = match.index + match[0].length;
  }
  if (from < sentence.length) out.push({ text: sentence.slice(from) });
  return out;
}
