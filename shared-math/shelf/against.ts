import type { LengthStyle } from '../units/index.ts';
import { fitsNeed } from './fits.ts';
import type { PartNeed, Wanted } from './part-need.ts';
import type { Shelved } from './part-schema.ts';
import { partWords } from './part-words.ts';

/** mm that a saw takes between two cuts of one piece (common practice, no published source). */
const SAW = 3;

/** Taken from an entry of the shelf. */
export interface Drawn {
  readonly id: string;
  readonly name: string;
  readonly count: number;
}

/** A need and where its parts come from. */
export interface Against {
  readonly need: PartNeed;
  readonly drawn: readonly Drawn[];
  /** How many the shelf does not have. */
  readonly toOrder: number;
  /** "on the shelf: 2 × Weld joint", "order 1, by dimension: …", or both. */
  readonly line: string;
}

/** The entries that are what is wanted, in the shelf's order; those that have run out too. */
export function fittingParts(wanted: Wanted, shelf: readonly Shelved[]): Shelved[] {
  return shelf.filter(({ part }) => fitsNeed(wanted, part));
}

/** Whether pieces are cut from a longer one: not where an end is formed, which a cut would take away. */
function isCut({ part }: Shelved): boolean {
  return part.kind === 'stock' && !('ends' in part.stock);
}

/** What is left of an entry: the length of each piece of stock, or of each other part nothing but that it is there. */
type Left = Map<string, number[]>;

/** Takes one from the entries that fit: of stock, the shortest piece that is long enough. */
function takeOne(wanted: Wanted, fitting: readonly Shelved[], left: Left): Shelved | undefined {
  const length = wanted.kind === 'stock' ? (wanted.length ?? 0) : 0;
  let best: { readonly entry: Shelved; readonly piece: number; readonly long: number } | undefined;
  for (const entry of fitting)
    for (const [piece, long] of (left.get(entry.id) as number[]).entries())
      if (long >= length && (!best || long < best.long)) best = { entry, piece, long };
  if (!best) return undefined;
  const pieces = left.get(best.entry.id) as number[];
  const rest = isCut(best.entry) && length > 0 ? best.long - length - SAW : 0;
  if (rest > 0) pieces[best.piece] = rest;
  else pieces.splice(best.piece, 1);
  return best.entry;
}

function lineOf(need: PartNeed, drawn: readonly Drawn[], toOrder: number): string {
  const taken = drawn.map(({ name, count }) => (count === 1 ? name : `${count} × ${name}`)).join(', ');
  const verb = need.wanted.kind === 'tube' ? 'cut' : 'order';
  const order = toOrder === 0 ? '' : `${verb} ${toOrder}, by dimension: ${need.words}`;
  if (taken === '') return order;
  return `on the shelf: ${taken}${order && `; ${order}`}`;
}

/**
 * Holds what a car needs against the shelf: which parts lie there and how many, and what has to be ordered, by dimension.
 * No part is promised twice; of shaft stock, pieces are cut from the shortest that is long enough, the longest first.
 * Units: mm. Checked: tests/unit/shelf.test.ts.
 */
export function partsAgainstShelf(needs: readonly PartNeed[], shelf: readonly Shelved[]): Against[] {
  const left: Left = new Map(
    shelf.map(({ id, part }) => [
      id,
      Array.from({ length: part.count }, () => (part.kind === 'stock' ? part.length : 0)),
    ]),
  );
  const lengthOf = ({ wanted }: PartNeed) => (wanted.kind === 'stock' ? (wanted.length ?? 0) : 0);
  const found = new Map<PartNeed, Against>();
  for (const need of needs.toSorted((a, b) => lengthOf(b) - lengthOf(a))) {
    const fitting = fittingParts(need.wanted, shelf);
    const drawn = new Map<string, Drawn>();
    let toOrder = 0;
    for (let n = 0; n < need.count; n += 1) {
      const entry = takeOne(need.wanted, fitting, left);
      if (!entry) {
        toOrder = need.count - n;
        break;
      }
      const count = (drawn.get(entry.id)?.count ?? 0) + 1;
      drawn.set(entry.id, { id: entry.id, name: entry.part.name, count });
    }
    const taken = [...drawn.values()];
    found.set(need, { need, drawn: taken, toOrder, line: lineOf(need, taken, toOrder) });
  }
  return needs.map((need) => found.get(need) as Against);
}

/** "Weld joint · single: both ends round bore 3/4 in to weld · 2 there". */
export function entryWords({ part }: Shelved, style: LengthStyle): string {
  return `${part.name} · ${partWords(part, style)} · ${part.count} there`;
}
