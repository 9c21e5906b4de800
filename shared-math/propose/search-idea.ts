import { speech } from '../findings/index.ts';
import { type Layout, steeringRefusal } from '../layout/index.ts';
import { type FrontEnd, prepareFrontEnd, prepareMoved } from '../linkage/index.ts';
import { seededRandom } from '../solve/random.ts';
import { type Found, type Problem, searchLeast } from '../tune/index.ts';
import { toDegrees, toRadians } from '../units/index.ts';
import { Archive } from './archive.ts';
import { leverage } from './arms.ts';
import { bentPast, inputsFor } from './box-input.ts';
import { BumpWeigher } from './bump-weigher.ts';
import { type Car, limitOf } from './car.ts';
import { rimForceAt } from './choose-box.ts';
import { type Closed, closeIn, pastLimitsOnly, stoppedAlready, withoutRoom } from './close-in.ts';
import type { Idea } from './idea.ts';
import { Keeper } from './keeper.ts';
import { laidDocument } from './laid-document.ts';
import type { NoFit, Proposal, ProposeNews, TaskResult } from './proposal.ts';
import { withUsualArms } from './usual-arms.ts';
import { ideaWords } from './words.ts';

/** Generations of a search, and places that the closing in may ask for each number chosen. */
const EFFORT = {
  /** Whether the box has a place at all: microseconds each. */
  place: { members: 20, generations: 12, closingIn: 10 },
  /** Bump steer alone, to know whether an idea can keep it low at all: microseconds each. */
  bound: { members: 20, generations: 14, closingIn: 6 },
  /** Least bump steer within all limits: a hundredth of a degree less is nobody's gain. */
  bump: { members: 22, generations: 20, closingIn: 14 },
  /** Where that came near and found none. */
  again: { members: 22, generations: 20, closingIn: 25 },
  /** Least bump steer of what is seldom built. */
  seldom: { members: 16, generations: 12, closingIn: 12 },
  /** Lightest and tightest, with bump steer to spare. */
  light: { members: 16, generations: 12, closingIn: 8 },
} as const;

/** rad for one unit of what is missed while the best is closed in on. */
const PENALTY = toRadians(0.5);
/** Units of what is missed for bump steer of twice its limit. */
const BUMP_UNITS = 20;
/** Share of the bump steer's limit that is used where something else is sought: the rest is the builder's. */
const LIGHT_BUMP = 0.6;
/** Kept below a limit while searching, as the full grids see a little more: share. */
const BUMP_SPARE = 0.02;
/** Of so many times its limit a bump steer is a stop. */
const STOP_AT = 2;
/** Units of what is missed: nearer than this a search is begun again. */
const AGAIN_WITHIN = 15;
/** Degrees of bump steer that arms of usual lengths may add. */
const HAIR = 0.03;
/** mm: what more of looking may still find of a box's place. */
const NEARLY_PLACED = 6;
/** Places from which the shaft is tried, where the best cannot be reached. */
const TRIES = 3;

/** Front ends of an idea by the numbers chosen; the last one is kept. */
class Trials {
  private readonly idea: Idea;
  private base: FrontEnd | undefined;
  private last: { x: readonly number[]; frontEnd: FrontEnd | undefined } | undefined;

  constructor(idea: Idea) {
    this.idea = idea;
  }

  at(x: readonly number[]): FrontEnd | undefined {
    if (this.last?.x === x) return this.last.frontEnd;
    const layout = this.idea.lay(x);
    let frontEnd: FrontEnd | undefined;
    if (layout && !steeringRefusal(layout)) {
      this.base ??= prepareFrontEnd(layout);
      frontEnd = prepareMoved(this.base, layout, this.idea.movesAxle, this.idea.movesTieRod);
    }
    this.last = { x, frontEnd };
    return frontEnd;
  }
}

/** The front end of the first of an idea's usual places that is a layout; undefined if none is. */
export function firstFrontEnd(idea: Idea): FrontEnd | undefined {
  for (const x of idea.starts()) {
    const at = new Trials(idea).at(x);
    if (at) return at;
  }
  return undefined;
}

/** What the searches of one idea share. */
export class IdeaSearch {
  private readonly car: Car;
  private readonly idea: Idea;
  private readonly trials: Trials;
  private readonly weigher: BumpWeigher;
  private readonly keeper: Keeper;
  readonly archive: Archive;
  evaluations = 0;
  readonly limit: number;

  constructor(car: Car, idea: Idea, first: FrontEnd) {
    this.car = car;
    this.idea = idea;
    this.trials = new Trials(idea);
    this.weigher = new BumpWeigher(idea.movesAxle || idea.movesTieRod);
    this.keeper = new Keeper(car, first, idea);
    this.archive = new Archive(idea.choices);
    this.limit = limitOf(car, 'bumpSteerWorst');
  }

  layoutAt(x: readonly number[]): Layout | undefined {
    return this.trials.at(x)?.layout;
  }

  /** rad. */
  bump = (x: readonly number[]): number => {
    this.evaluations += 1;
    const at = this.trials.at(x);
    return at ? this.weigher.worst(at) : Number.POSITIVE_INFINITY;
  };

  /** How heavy to park and how wide to turn, each as a share of what is usual. */
  weight = (x: readonly number[]): number => {
    this.evaluations += 1;
    const at = this.trials.at(x);
    if (!at) return Number.POSITIVE_INFINITY;
    const { layout } = at;
    const { steering, car } = layout;
    const force = rimForceAt(layout, steering.box.ratio * leverage(layout)) / limitOf(this.car, 'rimForce');
    const stop = toRadians(steering.stopAngle ?? limitOf(this.car, 'lockMost'));
    const circle = (2 * car.wheelbase) / Math.tan(stop) / 10_000;
    return force + circle;
  };

  /** How far two joints would be bent past their limit on the way to a laid box, as a share of that limit; 0 without a column. */
  bentPast(layout: Layout): number {
    const { shaft } = this.car.document;
    if (!shaft) return 0;
    const limit = toRadians(limitOf(this.car, 'jointSingle'));
    const past = inputsFor(this.car, layout).map((input) => bentPast(input, shaft.column, limit));
    return Math.min(...past) / limit;
  }

  /** mm that a box has not of its place; infinity where nothing can be laid. */
  place = (x: readonly number[]): number => {
    this.evaluations += 1;
    const layout = this.idea.lay(x);
    return layout ? this.keeper.missingByPlace(layout) : Number.POSITIVE_INFINITY;
  };

  /** All that is missed, bump steer beyond a share of its limit too; exact below `settledAt`. */
  missing(x: readonly number[], settledAt: number, share: number): number {
    const at = this.trials.at(x);
    if (!at) return Number.MAX_VALUE;
    const worst = this.weigher.worst(at);
    const over = toDegrees(worst) / this.limit - share * (1 - BUMP_SPARE);
    const bump = over > 0 ? Math.min(BUMP_UNITS * over, 1e5) : 0;
    if (bump >= settledAt) return bump;
    const missing = bump + this.keeper.missing(at, settledAt - bump);
    if (missing === 0) this.archive.add(x, worst);
    return missing;
  }

  /** A place that misses no more than `missing`, its arms of usual lengths where that costs no more than a hair. */
  withUsualArms(x: readonly number[], missing: number, share: number): readonly number[] {
    const most = this.bump(x) + toRadians(HAIR);
    return withUsualArms(
      this.car,
      this.idea,
      x,
      (other) => this.bump(other) <= most && this.missing(other, missing + 1e-9, share) <= missing,
    );
  }

  /** The same place with the box turned toward the column as far as it may be; undefined where that cannot be, or misses a limit. */
  turned(x: readonly number[], share: number): readonly number[] | undefined {
    const { turn } = this.idea;
    if (!turn || turn.most === 0) return undefined;
    const other = x.with(turn.choice, turn.most);
    return this.missing(other, 1e-9, share) === 0 ? other : undefined;
  }

  /** Whether it is worth turning a box toward the column: two joints then do, or nearly, which else do not. */
  gainsByTurning(square: Layout, turned: Layout): boolean {
    return this.bentPast(turned) < this.bentPast(square) - 0.02;
  }

  problem(
    effort: { members: number; closingIn: number },
    more: Pick<Problem, 'value' | 'violation'>,
  ): Problem {
    const { choices } = this.idea;
    const starts = this.idea.starts();
    return {
      from: choices.map(({ from }) => from),
      to: choices.map(({ to }) => to),
      start: starts[0] as readonly number[],
      starts: starts.slice(1, effort.members - 6),
      members: effort.members,
      closingIn: effort.closingIn * choices.filter(({ from, to }) => to > from).length,
      penalty: PENALTY,
      ...more,
    };
  }

  /** Looks for any place where the box can be bolted, and ends with the first; else with the one that lacks least, mm. */
  *somePlace(
    effort: { members: number; generations: number; closingIn: number },
    task: number,
  ): Generator<ProposeNews, { readonly at: readonly number[]; readonly missing: number }> {
    const starts = this.idea.starts();
    for (const at of starts) if (this.place(at) === 0) return { at, missing: 0 };
    const steps = searchLeast(
      this.problem(effort, { value: this.place, violation: () => 0 }),
      this.seeded(4, task),
      effort.generations,
    );
    let step = steps.next();
    while (!step.done) {
      if (step.value.best === 0) return { at: starts[0] as readonly number[], missing: 0 };
      step = steps.next();
    }
    return { at: step.value.at, missing: step.value.value };
  }

  /** Looks for a place with bump steer within its limit, and ends with the first; else with the lowest there is, rad. */
  *lowBump(
    effort: { members: number; generations: number; closingIn: number },
    task: number,
    news: (share: number) => ProposeNews,
  ): Generator<ProposeNews, { readonly at: readonly number[]; readonly value: number }> {
    let at = this.idea.starts()[0] as readonly number[];
    let value = Number.POSITIVE_INFINITY;
    const bump = (x: readonly number[]) => {
      const worst = this.bump(x);
      if (worst < value) [at, value] = [[...x], worst];
      return worst;
    };
    const steps = searchLeast(
      this.problem(effort, { value: bump, violation: () => 0 }),
      this.seeded(0, task),
      effort.generations,
    );
    for (const { share } of steps) {
      if (toDegrees(value) <= this.limit) break;
      yield news(share);
    }
    return { at, value };
  }

  seeded(step: number, task: number) {
    return seededRandom(this.car.seed * 7919 + 31 * task + step);
  }
}

/** Runs a search to its end, with news after each of its steps. */
function* followed(
  search: ReturnType<typeof searchLeast>,
  news: (share: number) => ProposeNews,
  after: () => Generator<ProposeNews, void> = function* () {},
): Generator<ProposeNews, Found> {
  let step = search.next();
  while (!step.done) {
    yield news(step.value.share);
    yield* after();
    step = search.next();
  }
  return step.value;
}

/**
 * The best of one idea on a car. First bump steer alone, to know whether the idea can keep it low at all; then the least
 * bump steer within all limits; then, with bump steer to spare, the lightest and tightest. By differential evolution over
 * what the idea leaves open, the places that the analysis by parts finds likely first; what costs microseconds is asked
 * before what costs milliseconds; the shaft's route and the whole verdict come last.
 * A generator: the caller may stop between steps of some ten milliseconds. The same car, idea and seed give the same answer.
 */
export function* searchIdea(car: Car, idea: Idea, task: number): Generator<ProposeNews, TaskResult> {
  const words = ideaWords(car, idea);
  const none = (noFit: Omit<NoFit, 'idea'>, evaluations: number): TaskResult => ({
    task,
    found: [],
    noFit: { idea: words, ...noFit },
    evaluations,
  });
  const first = firstFrontEnd(idea);
  if (!first)
    return none(
      { sentences: ['None of its usual places is a layout.'], missing: Number.MAX_VALUE, layout: undefined },
      0,
    );
  const search = new IdeaSearch(car, idea, first);
  const news = (doing: string, share: number, found: readonly Proposal[] = []): ProposeNews => ({
    doing: `${words}: ${doing}`,
    share,
    evaluations: search.evaluations,
    found,
  });
  yield news('looking at usual places', 0);

  const { place, bound, bump, again, seldom, light } = EFFORT;
  const placed = yield* search.somePlace(place, task);
  if (placed.missing > NEARLY_PLACED) {
    const layout = search.layoutAt(placed.at);
    const closed = layout && withoutRoom(car, idea, layout);
    if (closed)
      return none(
        { ...closed.noFit, missing: search.missing(placed.at, Number.POSITIVE_INFINITY, 1) },
        search.evaluations,
      );
  }
  const least = yield* search.lowBump(bound, task, (share) =>
    news('how low its bump steer can be', 0.1 * share),
  );
  if (toDegrees(least.value) > STOP_AT * search.limit) {
    const speak = speech(car.style, car.limits);
    const sentence = Number.isFinite(least.value)
      ? `Bump steer ${speak.angle(least.value, 2)} at the least (limit ${speak.figure(search.limit)}°).`
      : 'The linkage reaches nowhere.';
    const layout = search.layoutAt(least.at);
    return none(
      {
        sentences: [sentence],
        missing: search.missing(least.at, Number.POSITIVE_INFINITY, 1),
        layout: layout && laidDocument(car, layout, null, words),
      },
      search.evaluations,
    );
  }

  const proposals = new Map<string, Proposal>();
  let noFit: Omit<NoFit, 'idea'> | undefined;
  /** What came of a place, or of the same with its box turned toward the column where the shaft asks for that. */
  const closedTurned = (
    x: readonly number[],
    share: number,
    square: Layout,
    closed: Closed,
    flavour: string,
  ): Closed => {
    const joints = closed.kind === 'found' ? closed.proposal.figures.shaftJoints.length : 4;
    if (joints < 3) return closed;
    const at = search.turned(x, share);
    const turned = at && search.layoutAt(at);
    if (!turned || !search.gainsByTurning(square, turned)) return closed;
    const other = closeIn(car, idea, turned, flavour);
    if (other.kind !== 'found') return closed;
    return closed.kind === 'found' && other.proposal.figures.shaftJoints.length >= joints ? closed : other;
  };
  /** Closes in on the best places of the archive until one can be built. */
  const close = (
    flavour: string,
    places: readonly (readonly number[])[],
    share = 1,
  ): Proposal | undefined => {
    let best: Proposal | undefined;
    for (const x of places.slice(0, idea.uncommon ? 1 : TRIES)) {
      const usual = search.withUsualArms(x, 0, share);
      const layout = search.layoutAt(usual);
      if (!layout) continue;
      const square = closeIn(car, idea, layout, flavour);
      const closed = closedTurned(usual, share, layout, square, flavour);
      if (closed.kind === 'stopped') {
        if (!noFit || closed.noFit.missing < noFit.missing) noFit = closed.noFit;
        continue;
      }
      const { proposal } = closed;
      if (!best || proposal.pastLimits < best.pastLimits) best = proposal;
      if (best.pastLimits === 0) break;
    }
    if (best) proposals.set(flavour, best);
    return best;
  };
  /** A first proposal as soon as there is any place that keeps all limits. */
  let shown = idea.uncommon ? 2 : 0;
  function* early(): Generator<ProposeNews, void> {
    if (shown > 1 || search.archive.size === 0 || proposals.size > 0) return;
    shown += 1;
    const found = close('least bump steer', search.archive.best().slice(0, 1));
    if (found) yield news('a first arrangement', 0.2, [found]);
  }
  // What fits at a usual place is shown before anything is searched.
  for (const x of idea.starts()) if (search.missing(x, Number.MIN_VALUE, 1) === 0) break;
  yield* early();
  // Past the axle a shaft takes long to look for: else that waits for the best place.
  if (idea.ahead) shown = 2;
  const kept = (share: number) => (x: readonly number[], settledAt: number) =>
    search.missing(x, settledAt, share);
  const effort = idea.uncommon ? seldom : bump;
  let best = yield* followed(
    searchLeast(
      search.problem(effort, { value: search.bump, violation: kept(1) }),
      search.seeded(1, task),
      effort.generations,
    ),
    (share) => news('least bump steer within all limits', 0.1 + 0.4 * share),
    early,
  );
  // So near that another beginning may do.
  if (effort === bump && search.archive.size === 0 && best.violation < AGAIN_WITHIN)
    best = yield* followed(
      searchLeast(
        {
          ...search.problem(again, { value: search.bump, violation: kept(1) }),
          start: best.at,
          starts: [least.at],
        },
        search.seeded(3, task),
        again.generations,
      ),
      (share) => news('least bump steer within all limits, from another beginning', 0.5 + 0.1 * share),
      early,
    );
  if (search.archive.size === 0) {
    const layout = search.layoutAt(search.withUsualArms(best.at, best.violation, 1));
    const closed =
      layout && Number.isFinite(best.value)
        ? (stoppedAlready(car, idea, layout) ??
          (idea.uncommon ? pastLimitsOnly(car, idea, layout) : closeIn(car, idea, layout, 'nearest')))
        : undefined;
    if (closed?.kind === 'found')
      // Past some limit, but with no stop: what it costs says so.
      return { task, found: [closed.proposal], noFit: undefined, evaluations: search.evaluations };
    return none(
      closed
        ? { ...closed.noFit, missing: best.violation }
        : { sentences: ['The linkage reaches nowhere.'], missing: Number.MAX_VALUE, layout: undefined },
      search.evaluations,
    );
  }
  yield news('leading the steering shaft there and judging it', 0.6);
  const one = close('least bump steer', search.archive.best());
  if (one) yield news('the least bump steer', 0.65, [one]);
  const result = (): TaskResult => {
    const found = [...proposals.values()];
    return {
      task,
      found,
      noFit: found.length > 0 || !noFit ? undefined : { idea: words, ...(noFit as Omit<NoFit, 'idea'>) },
      evaluations: search.evaluations,
    };
  };
  if (idea.uncommon) return result();

  search.archive.weighAnew(search.weight);
  yield* followed(
    searchLeast(
      {
        ...search.problem(light, { value: search.weight, violation: kept(LIGHT_BUMP) }),
        start: search.archive.best()[0] as readonly number[],
        starts: search.archive.best().slice(1, 8),
      },
      search.seeded(2, task),
      light.generations,
    ),
    (share) => news('lightest and tightest', 0.65 + 0.25 * share),
  );
  yield news('leading the steering shaft there and judging it', 0.9);
  search.archive.weighAnew(search.weight, (worst) => toDegrees(worst) <= LIGHT_BUMP * search.limit);
  const two = close('light and tight', search.archive.best(), LIGHT_BUMP);
  if (two) yield news('the lightest and tightest', 1, [two]);

  return result();
}

/** The nearest that an idea comes to fitting, with the fewest places tried, and what is missed there. */
export interface NearestPlace {
  readonly closed: Closed | undefined;
  readonly missing: number;
  readonly evaluations: number;
}

/** Looks for any place of an idea that fits, and ends with the first; where there is none, with the one that misses least. */
export function* nearestPlace(car: Car, idea: Idea, task: number): Generator<undefined, NearestPlace> {
  const first = firstFrontEnd(idea);
  if (!first) return { closed: undefined, missing: Number.MAX_VALUE, evaluations: 0 };
  const search = new IdeaSearch(car, idea, first);
  const steps = searchLeast(
    search.problem(EFFORT.seldom, {
      value: search.bump,
      violation: (x, settledAt) => search.missing(x, settledAt, 1),
    }),
    search.seeded(1, task),
    EFFORT.seldom.generations,
  );
  let step = steps.next();
  while (!step.done && search.archive.size === 0) {
    yield undefined;
    step = steps.next();
  }
  const missing = search.archive.size > 0 ? 0 : step.done ? step.value.violation : Number.MAX_VALUE;
  const at = search.archive.best()[0] ?? (step.done ? step.value.at : undefined);
  const layout = at && search.layoutAt(search.withUsualArms(at, missing, 1));
  const stopped = layout && missing > 0 ? stoppedAlready(car, idea, layout) : undefined;
  return {
    closed: stopped ?? (layout ? closeIn(car, idea, layout, 'nearest') : undefined),
    missing,
    evaluations: search.evaluations,
  };
}
