/** All that is done to the program. */
export type Kind =
  | 'drag'
  | 'nudge'
  | 'type'
  | 'undo'
  | 'redo'
  | 'pose'
  | 'pull'
  | 'place'
  | 'road'
  | 'tune'
  | 'map'
  | 'column'
  | 'drawer'
  | 'unit'
  | 'open another'
  | 'go back'
  | 'copy and bin'
  | 'two pages'
  | 'reload the other'
  | 'hide'
  | 'clock back'
  | 'full disk'
  | 'kill'
  | 'reload';

export interface Act {
  /** From 1; with the seed it decides everything about the act. */
  readonly number: number;
  readonly kind: Kind;
  /** From 0 to 1: which point, how far, how long. Read by the act, more of them than any needs. */
  readonly lots: readonly number[];
}

/** How often each comes in one round of the deck, and in which rounds: every so many, from the first on or not. */
const DECK: readonly {
  readonly kind: Kind;
  readonly times: number;
  readonly every?: number;
  readonly from?: number;
}[] = [
  { kind: 'drag', times: 18 },
  { kind: 'nudge', times: 4 },
  { kind: 'type', times: 4 },
  { kind: 'undo', times: 6 },
  { kind: 'redo', times: 3 },
  { kind: 'pose', times: 3 },
  { kind: 'pull', times: 2 },
  { kind: 'place', times: 6 },
  { kind: 'road', times: 1 },
  { kind: 'tune', times: 1 },
  { kind: 'map', times: 1 },
  { kind: 'column', times: 2 },
  { kind: 'drawer', times: 3 },
  { kind: 'unit', times: 1 },
  { kind: 'go back', times: 1 },
  { kind: 'copy and bin', times: 1 },
  { kind: 'two pages', times: 1 },
  { kind: 'reload the other', times: 1 },
  { kind: 'hide', times: 1 },
  { kind: 'clock back', times: 1 },
  { kind: 'full disk', times: 1, every: 2 },
  { kind: 'open another', times: 1 },
  // A page and a program must live for some time, or nothing can be seen to grow in them.
  { kind: 'kill', times: 1, every: 3 },
  { kind: 'reload', times: 1, every: 8, from: 7 },
];

const LOTS = 8;

/** Numbers from 0 to 1 that depend on the seed alone (Mulberry32, a 32-bit mixer in the public domain). */
export function lottery(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
}

function shuffled<Item>(items: readonly Item[], next: () => number): Item[] {
  const mixed = [...items];
  for (let at = mixed.length - 1; at > 0; at -= 1) {
    const other = Math.floor(next() * (at + 1));
    [mixed[at], mixed[other]] = [mixed[other] as Item, mixed[at] as Item];
  }
  return mixed;
}

/**
 * The acts of a seed, without end: one mixed deck after another, so that each kind has its turn even in a short run. Of
 * `only` these kinds, if given: to find out which of them makes something grow.
 */
export function* plan(seed: number, only?: ReadonlySet<Kind>): Generator<Act, never> {
  const next = lottery(seed);
  let number = 0;
  for (let round = 0; ; round += 1) {
    const cards = DECK.flatMap(({ kind, times, every = 1, from = 0 }) =>
      (round - from) % every === 0 && round >= from ? Array.from({ length: times }, () => kind) : [],
    );
    for (const kind of shuffled(cards, next)) {
      if (only && !only.has(kind)) continue;
      number += 1;
      yield { number, kind, lots: Array.from({ length: LOTS }, next) };
    }
  }
}

/** One of several, by a lot. */
export function drawn<Item>(items: readonly Item[], lot: number): Item {
  const item = items[Math.min(items.length - 1, Math.floor(lot * items.length))];
  if (item === undefined) throw new Error('there is nothing to choose from');
  return item;
}
