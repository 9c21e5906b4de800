import { AXLE_TERMS } from './axle-terms.ts';
import { BOARD_TERMS } from './board-terms.ts';
import { SHAFT_TERMS } from './shaft-terms.ts';
import { STEERING_TERMS } from './steering-terms.ts';
import type { Term } from './term.ts';
import { WHEEL_TERMS } from './wheel-terms.ts';

export type { Term, Usual } from './term.ts';

/** A family of words that belong together, in the order of the job. A new word is one entry in its family's file. */
export interface TermFamily {
  readonly title: string;
  readonly terms: Readonly<Record<string, Term>>;
}

export const TERM_FAMILIES: readonly TermFamily[] = [
  { title: 'Wheels', terms: WHEEL_TERMS },
  { title: 'Steering', terms: STEERING_TERMS },
  { title: 'Axle and springs', terms: AXLE_TERMS },
  { title: 'Shaft, joints and links', terms: SHAFT_TERMS },
  { title: 'This board', terms: BOARD_TERMS },
];

const ALL = { ...WHEEL_TERMS, ...STEERING_TERMS, ...AXLE_TERMS, ...SHAFT_TERMS, ...BOARD_TERMS };

/** The name that code gives to a word. */
export type TermId = keyof typeof ALL;

export const TERMS: Readonly<Record<TermId, Term>> = ALL;

const plain = (text: string) =>
  text
    .toLowerCase()
    .normalize('NFD')
    .replace(/[\u0300-\u036f’']/g, '');

/**
 * The words that have every word typed in them, those first whose name begins with what was typed, then by name or other
 * name, then by their sentences; all of them, in order, where nothing was typed.
 */
export function findTerms(typed: string): TermId[] {
  const asked = plain(typed).split(/\s+/).filter(Boolean);
  const ids = Object.keys(TERMS) as TermId[];
  if (asked.length === 0) return ids;
  const whole = asked.join(' ');
  const rank = (id: TermId): number => {
    const { name, also = [], what, measured, usual } = TERMS[id];
    const names = [name, ...also].map(plain);
    if (names[0]?.startsWith(whole)) return 0;
    if (names.some((each) => each.startsWith(whole))) return 1;
    if (asked.every((word) => names.some((each) => each.includes(word)))) return 2;
    const all = plain([name, ...also, what, measured, usual.words].join(' '));
    return asked.every((word) => all.includes(word)) ? 3 : 4;
  };
  return ids
    .map((id) => ({ id, rank: rank(id) }))
    .filter((each) => each.rank < 4)
    .sort((a, b) => a.rank - b.rank)
    .map(({ id }) => id);
}
