import { type LimitName, limitInForce, type ShopLimits } from '../findings/index.ts';
import {
  type Layout,
  type LayoutDocument,
  readLayout,
  resolveLayout,
  steeringRefusal,
} from '../layout/index.ts';
import { type FrontEnd, prepareFrontEnd, prepareMoved } from '../linkage/index.ts';
import { failed, type Outcome, succeeded } from '../outcome.ts';
import { seededRandom } from '../solve/random.ts';
import { type ClearanceNeeds, type Figures, figuresOf } from './figures.ts';
import type { Freedom } from './freedoms.ts';
import { HoldChecker } from './hold-checker.ts';
import { contextOf, usualHolds } from './hold-context.ts';
import { COARSE, FULL, type HoldState, type Holds, violationOf } from './holds.ts';
import { type Found, type SearchProgress, searchLeast } from './search.ts';
import { Weigher } from './weigher.ts';

/** What is free and how far each may be moved from where it is drawn, mm. */
export interface FreeMove {
  readonly freedom: Freedom;
  readonly from: number;
  readonly to: number;
}

export interface TuneOptions {
  /** What must hold; absent, whatever of ratio, lock and tilt is within the shop's limits as drawn, and clearances. */
  readonly holds?: Holds;
  readonly seed?: number;
  readonly shop?: ShopLimits;
}

/** Why a tune was not begun or came to nothing. */
export type TuneRefusal =
  | { readonly kind: 'nothing-free' }
  | { readonly kind: 'bounds-crossed'; readonly freedom: string; readonly from: number; readonly to: number }
  | { readonly kind: 'not-there'; readonly freedom: string; readonly reason: string }
  | { readonly kind: 'given-twice'; readonly freedom: string }
  | { readonly kind: 'no-pose' }
  | { readonly kind: 'cannot-hold'; readonly missing: readonly HoldState[] };

/** A tune's answer: a proposal to take or leave. */
export interface TuneResult {
  readonly document: LayoutDocument;
  /** What was moved and by how much, mm. */
  readonly moves: readonly { readonly name: string; readonly words: string; readonly by: number }[];
  readonly before: Figures;
  readonly after: Figures;
  /** How every hold stands, before and after. */
  readonly holds: readonly {
    readonly name: HoldState['name'];
    readonly before: number;
    readonly after: number;
  }[];
  /** Whether the worst bump steer is less than as drawn. */
  readonly improved: boolean;
  readonly evaluations: number;
}

/** mm. Proposals are reported to this: finer than anyone builds. */
const REPORTED_TO = 0.01;
/** rad. What a violation of one unit weighs against bump steer while the best is closed in on. */
const PENALTY = 0.02;
/**
 * rad. What moving everything to its bounds weighs against bump steer: of places that are as good to a thousandth of a
 * degree the one nearest to the drawing is taken.
 */
const STAY = 3e-5;

/** Moves everything free by the numbers given. */
function movedBy(document: LayoutDocument, free: readonly FreeMove[], by: readonly number[]): LayoutDocument {
  return free.reduce((moved, { freedom }, i) => freedom.move(moved, by[i] as number), document);
}

/** The layout of a moved document, or undefined if it is none: a link of no length, an arm on its own axis. */
function layoutIfAny(document: LayoutDocument): Layout | undefined {
  const read = readLayout(document);
  return read.ok ? resolveLayout(read.value) : undefined;
}

/** Front ends with things moved, for the search: without documents, and with all of the drawn one that is not moved. */
class Trials {
  private readonly drawn: FrontEnd;
  private readonly free: readonly FreeMove[];
  private readonly movesAxle: boolean;
  private last: { by: readonly number[]; frontEnd: FrontEnd | undefined } | undefined;

  constructor(drawn: FrontEnd, free: readonly FreeMove[], movesAxle: boolean) {
    this.drawn = drawn;
    this.free = free;
    this.movesAxle = movesAxle;
  }

  /** The front end with everything moved so far; undefined if that is no layout. The last one asked for is kept. */
  at(by: readonly number[]): FrontEnd | undefined {
    if (this.last?.by === by) return this.last.frontEnd;
    // What freedoms move has no sides: a layout that is moved as a document is a layout still.
    const layout = movedBy(this.drawn.layout, this.free, by) as Layout;
    const frontEnd = steeringRefusal(layout) ? undefined : prepareMoved(this.drawn, layout, this.movesAxle);
    this.last = { by, frontEnd };
    return frontEnd;
  }
}

function refusalOf(document: LayoutDocument, free: readonly FreeMove[]): TuneRefusal | undefined {
  if (free.length === 0) return { kind: 'nothing-free' };
  const seen = new Set<string>();
  for (const { freedom, from, to } of free) {
    const { name } = freedom;
    if (seen.has(name)) return { kind: 'given-twice', freedom: name };
    seen.add(name);
    const reason = freedom.absent(document);
    if (reason !== undefined) return { kind: 'not-there', freedom: name, reason };
    if (!(from <= to)) return { kind: 'bounds-crossed', freedom: name, from, to };
  }
  if (free.every(({ from, to }) => from === to)) return { kind: 'nothing-free' };
  return undefined;
}

function needsOf(shop: ShopLimits): ClearanceNeeds {
  const limit = (name: LimitName) => limitInForce(name, shop).value;
  return { moving: limit('clearanceMoving'), tyre: limit('clearanceTyre') };
}

/** How far things are moved, as a share of how far they may be: the mean of the squares. */
function wayOf(by: readonly number[], free: readonly FreeMove[]): number {
  let sum = 0;
  free.forEach(({ from, to }, i) => {
    const most = Math.max(Math.abs(from), Math.abs(to));
    sum += most > 0 ? ((by[i] as number) / most) ** 2 : 0;
  });
  return sum / free.length;
}

/** Things that are rounded each on its own way; with more, only to the nearest. */
const ROUNDED_EACH = 4;

/**
 * The places a hundredth of a millimetre wide about the one found, nearest first, inside the bounds: at a condition's
 * edge the nearest may lie beyond it.
 */
function roundings(at: readonly number[], free: readonly FreeMove[]): number[][] {
  let places: number[][] = [[]];
  free.forEach(({ from, to }, i) => {
    const steps = (at[i] as number) / REPORTED_TO;
    const near = Math.round(steps);
    const other = near > steps ? near - 1 : near + 1;
    const ways = free.length <= ROUNDED_EACH ? [near, other] : [near];
    places = places.flatMap((place) =>
      ways.map((way) => [...place, Math.min(to, Math.max(from, Number((way * REPORTED_TO).toFixed(2))))]),
    );
  });
  return places;
}

/** A violation of less is rounding. */
const HOLDS = 1e-9;

interface Candidate {
  readonly by: readonly number[];
  readonly document: LayoutDocument;
  readonly states: readonly HoldState[];
  readonly violation: number;
}

/** The first place at which everything holds; where there is none, the one that misses least. */
function bestOf(
  places: readonly (readonly number[])[],
  candidateAt: (by: readonly number[]) => Candidate | undefined,
): Candidate | undefined {
  let best: Candidate | undefined;
  for (const place of places) {
    const candidate = candidateAt(place);
    if (candidate && candidate.violation <= HOLDS) return candidate;
    if (candidate && !(best && best.violation <= candidate.violation)) best = candidate;
  }
  return best;
}

/**
 * Moves what is free within its bounds so that the worst |bump steer| over heave and roll is least and every hold
 * holds. While searching, holds are looked at on a coarse grid of travel and turn; the answer is looked at on the full
 * one, and where it misses there by a little the search goes on with that much kept to spare.
 * A generator: each step is some tens of milliseconds after which the caller may stop; the answer is returned at the
 * end. The same document, bounds, holds and seed give the same answer.
 * Frame:    vehicle. Units: mm, rad; holds in degrees.
 * Outcomes: a result (which may be the layout as drawn, where nothing better was found); or a named refusal.
 * Source:   own derivation: `fillRow`, `searchLeast`.
 * Checked:  tests/thorough/tune.test.ts (a planar linkage whose best is known; bad bounds; holds that cannot hold).
 */
export function* tune(
  document: LayoutDocument,
  free: readonly FreeMove[],
  options: TuneOptions = {},
): Generator<SearchProgress, Outcome<TuneResult, TuneRefusal>> {
  const { seed = 1, shop = {} } = options;
  const refusal = refusalOf(document, free);
  if (refusal) return failed(refusal);
  const layout = resolveLayout(document);
  const drawn = prepareFrontEnd(layout);
  const weigher = new Weigher(drawn);
  const movesAxle = free.some(({ freedom }) => freedom.movesAxle);
  const trials = new Trials(drawn, free, movesAxle);
  if (!weigher.hasPose) return failed({ kind: 'no-pose' });
  const holds = options.holds ?? usualHolds(drawn, shop);
  const reachable = free.map(({ freedom, from, to }) => freedom.move(document, to === 0 ? from : to));
  const context = contextOf(drawn, holds, reachable);
  if (!context) return failed({ kind: 'no-pose' });

  const weighed = (by: readonly number[]): number => {
    const at = trials.at(by);
    return at ? weigher.weigh(at) + STAY * wayOf(by, free) : Number.POSITIVE_INFINITY;
  };
  const coarse = new HoldChecker(drawn, context, COARSE);
  const full = new HoldChecker(drawn, context, FULL);
  const stand = (by: readonly number[], margin: number, settledAt: number): number => {
    const at = trials.at(by);
    return at ? coarse.missedBy(at, margin, settledAt) : 1e6;
  };
  const candidateAt = (by: readonly number[]): Candidate | undefined => {
    const moved = movedBy(document, free, by);
    const at = layoutIfAny(moved);
    if (!at) return undefined;
    const states = full.states(prepareMoved(drawn, at, movesAxle));
    return { by, document: moved, states, violation: violationOf(states) };
  };

  let margin = 0;
  let chosen: Candidate | undefined;
  let found: Found | undefined;
  let evaluations = 0;
  for (let round = 0; round < 3; round += 1) {
    const kept = margin;
    found = yield* searchLeast(
      {
        from: free.map(({ from }) => from),
        to: free.map(({ to }) => to),
        start: found?.at ?? free.map(() => 0),
        value: weighed,
        violation: (by, settledAt) => stand(by, kept, settledAt),
        penalty: PENALTY,
      },
      seededRandom(seed + round),
      round === 0 ? 40 : 10,
    );
    evaluations += found.evaluations;
    chosen = bestOf([...roundings(found.at, free), found.at], candidateAt) ?? chosen;
    if (chosen && chosen.violation <= HOLDS) break;
    // Only clearances differ between the grids by more than rounding: keep a little more than was missing.
    const missing = chosen?.states.find(({ name }) => name === 'clearance')?.slack ?? 0;
    if (found.violation > 0 || !(missing < 0)) break;
    margin += 0.05 - missing;
  }
  // As drawn everything may hold that does not quite hold at any better place.
  const inBounds = free.every(({ from, to }) => from <= 0 && to >= 0);
  if (!(chosen && chosen.violation <= HOLDS) && inBounds)
    chosen = bestOf([free.map(() => 0)], candidateAt) ?? chosen;
  if (!chosen || chosen.violation > HOLDS)
    return failed({
      kind: 'cannot-hold',
      missing: (chosen?.states ?? []).filter(({ slack }) => slack < 0),
    });
  return succeeded(resultOf(drawn, free, chosen, full, needsOf(shop), evaluations));
}

function resultOf(
  drawn: FrontEnd,
  free: readonly FreeMove[],
  chosen: Candidate,
  full: HoldChecker,
  needs: ClearanceNeeds,
  evaluations: number,
): TuneResult {
  const before = figuresOf(drawn.layout, needs);
  const after = figuresOf(resolveLayout(chosen.document), needs);
  const drawnStates = full.states(drawn);
  const worst = ({ worstHeave, worstRoll }: Figures) => Math.max(worstHeave, worstRoll);
  const improved = worst(after) < worst(before);
  return {
    document: chosen.document,
    moves: free.map(({ freedom }, i) => ({
      name: freedom.name,
      words: freedom.words,
      by: chosen.by[i] as number,
    })),
    before,
    after,
    holds: chosen.states.map(({ name, slack }) => ({
      name,
      before: drawnStates.find((state) => state.name === name)?.slack ?? Number.NEGATIVE_INFINITY,
      after: slack,
    })),
    improved,
    evaluations,
  };
}
