import { carOf } from './car.ts';
import type { Idea } from './idea.ts';
import { ideasFor } from './ideas.ts';
import { promisingFirst } from './promising.ts';
import type { NoFit, ProposeNews, TaskResult, WayOut, WhyNone } from './proposal.ts';
import type { ProposeQuestion } from './question.ts';
import { BOX_AND_BALL, bothRelaxed, type Relaxation, type Relaxed, relaxationsOf } from './relaxations.ts';
import { nearestPlace } from './search-idea.ts';

/** Ideas that are looked at: the nearest to fitting. */
const IDEAS = 2;
/** Of relaxations that do not free by themselves, those that help most are tried in pairs. */
const PAIRED = 4;
/** At most so many ways out are worked out to the least that does. */
const WAYS = 3;

interface Tried {
  readonly relaxation: Relaxation;
  readonly missing: number;
  readonly fits: boolean;
}

/** Ideas by their keys: the nearest to fitting, and all that there was room for as asked. */
interface Keys {
  readonly nearest: readonly string[];
  readonly known: ReadonlySet<string>;
}

interface Fit {
  readonly missing: number;
  readonly way: WayOut | undefined;
}

/** Whether one of the ideas, by their keys, fits a relaxed question; how much is missed at the best where it does not. */
function* tryOut(relaxed: Relaxed, keys: Keys, tally: { evaluations: number }): Generator<undefined, Fit> {
  const car = carOf(relaxed.question);
  const ideas = ideasFor(car);
  const isKnown = (task: number) => keys.known.has((ideas[task] as Idea).key);
  const tasks = ideas.map((_, task) => task);
  // An idea that what is held had left no room for is new, and looked at too.
  const fresh = tasks.every(isKnown)
    ? []
    : promisingFirst(car, ideas)
        .filter((task) => !isKnown(task))
        .slice(0, IDEAS);
  let missing = Number.MAX_VALUE;
  for (const task of [
    ...tasks.filter((each) => keys.nearest.includes((ideas[each] as Idea).key)),
    ...fresh,
  ]) {
    const idea = ideas[task] as Idea;
    const nearest = yield* nearestPlace(car, idea, task);
    tally.evaluations += nearest.evaluations;
    missing = Math.min(missing, nearest.missing);
    if (nearest.closed?.kind === 'found') {
      const { name, layout } = nearest.closed.proposal;
      return { missing: 0, way: { words: relaxed.words, name, layout } };
    }
  }
  return { missing, way: undefined };
}

/**
 * The least step of a relaxation that does, of the ladder on which it is least, each by halving: that more of it does as well
 * is taken for granted. Where none of a ladder's steps does, all of it taken away.
 */
function* leastStep(
  { ladders, most }: Relaxation,
  keys: Keys,
  tally: { evaluations: number },
  doing: (words: string) => ProposeNews,
): Generator<ProposeNews, WayOut | undefined> {
  let best: { readonly way: WayOut; readonly at: number } | undefined;
  for (const steps of ladders) {
    // A ladder is of interest as far as it does with less than the best one.
    let [low, high] = [-1, best ? best.at : steps.length];
    let asked = high - 1;
    while (asked > low && asked < high) {
      const step = steps[asked] as Relaxed;
      yield doing(step.words);
      const { way } = yield* quietly(tryOut(step, keys, tally), doing(step.words));
      if (way) {
        best = { way, at: asked };
        high = asked;
      } else low = asked;
      asked = Math.floor((low + high) / 2);
    }
  }
  if (best) return best.way;
  yield doing(most.words);
  return (yield* quietly(tryOut(most, keys, tally), doing(most.words))).way;
}

/** Runs what has no news of its own, with the same news after each step. */
function* quietly<Answer>(
  work: Generator<undefined, Answer>,
  news: ProposeNews,
): Generator<ProposeNews, Answer> {
  let step = work.next();
  while (!step.done) {
    yield news;
    step = work.next();
  }
  return step.value;
}

/**
 * What excludes one another where nothing fits. Each limit, obstacle and thing held is taken away by itself, as far as it
 * goes, and the nearest ideas are sought anew: those that free so belong to every set that excludes itself, and the
 * smallest such set is made of them. Where none frees by itself, those that bring an idea nearest are taken away together, as
 * `togetherOf` has them. Of what frees, the least of it that does is found by halving.
 * A generator of news; the same question and results give the same answer.
 * Outcomes: the reason; ways out empty where not even relaxations together free.
 * Source:   own derivation. The sets are those of the search, which may overlook a place: a reason to look, not a proof.
 * Checked:  tests/unit/propose/why-none.test.ts (an obstacle put in for it is the one that is named).
 */
export function* whyNothingFits(
  question: ProposeQuestion,
  results: readonly TaskResult[],
): Generator<ProposeNews, WhyNone> {
  const car = carOf(question);
  const ideas = ideasFor(car);
  const nearest = results
    .flatMap(({ task, noFit }) =>
      noFit && ideas[task] ? [{ noFit, key: (ideas[task] as { key: string }).key }] : [],
    )
    .sort((a, b) => a.noFit.missing - b.noFit.missing);
  const keys: Keys = {
    nearest: nearest.slice(0, IDEAS).map(({ key }) => key),
    known: new Set(ideas.map(({ key }) => key)),
  };
  const tally = { evaluations: 0 };
  const relaxations = relaxationsOf(question);
  let done = 0;
  const doing = (words: string): ProposeNews => ({
    doing: `Nothing fits. Looking for the reason: ${words}`,
    share: Math.min(0.95, done / (relaxations.length + 8)),
    evaluations: tally.evaluations,
    found: [],
  });

  const tried: Tried[] = [];
  for (const relaxation of relaxations) {
    const { most } = relaxation;
    yield doing(most.words);
    const fit = yield* quietly(tryOut(most, keys, tally), doing(most.words));
    tried.push({ relaxation, missing: fit.missing, fits: fit.way !== undefined });
    done += 1;
  }
  const freeing = tried.filter(({ fits }) => fits).map(({ relaxation }) => relaxation);
  const ways: WayOut[] = [];
  for (const relaxation of freeing.slice(0, WAYS)) {
    const way = yield* leastStep(relaxation, keys, tally, doing);
    if (way) ways.push(way);
  }
  if (freeing.length > 0)
    return reasonOf(
      freeing.map(({ stands }) => stands),
      true,
      ways,
      nearest[0]?.noFit,
    );

  for (const together of togetherOf(question, tried)) {
    yield doing(together.relaxed.words);
    const { way } = yield* quietly(tryOut(together.relaxed, keys, tally), doing(together.relaxed.words));
    if (way) return reasonOf(together.stands, false, [way], nearest[0]?.noFit);
  }
  return reasonOf([], false, [], nearest[0]?.noFit);
}

/** Several relaxations at once, as far as each goes. */
interface Together {
  readonly stands: readonly string[];
  readonly relaxed: Relaxed;
}

/**
 * Relaxations to be tried together where none frees by itself, of those that brought an idea nearest: two things held, then
 * everything held, then two with something of the car, and only then two with a limit of the shop among them, which are there
 * for a reason.
 */
function togetherOf(question: ProposeQuestion, tried: readonly Tried[]): Together[] {
  const nearest = tried.toSorted((a, b) => a.missing - b.missing).map(({ relaxation }) => relaxation);
  // Box and ball at once have been tried, and are in every two with one of them.
  const held = nearest.filter(({ gives, key }) => gives === 'held' && key !== BOX_AND_BALL);
  const pairsOf = (relaxations: readonly Relaxation[]) =>
    relaxations.flatMap((one, i) => relaxations.slice(i + 1).map((other) => [one, other] as const));
  const both = ([one, other]: readonly [Relaxation, Relaxation]): Together => ({
    stands: [one.stands, other.stands],
    relaxed: bothRelaxed(question, one.most, other.most),
  });
  const whole = held.reduce<Relaxed | undefined>(
    (all, each) => (all ? bothRelaxed(question, all, each.most) : each.most),
    undefined,
  );
  const others = pairsOf(nearest.slice(0, PAIRED)).filter((pair) =>
    pair.some(({ gives }) => gives !== 'held'),
  );
  const withLimit = (pair: readonly Relaxation[]) => pair.some(({ gives }) => gives === 'limit');
  return [
    ...pairsOf(held.slice(0, PAIRED)).map(both),
    ...(whole && held.length > 2
      ? [
          {
            stands: held.map(({ stands }) => stands),
            relaxed: { ...whole, words: 'all of the steering laid anew' },
          },
        ]
      : []),
    ...others.filter((pair) => !withLimit(pair)).map(both),
    ...others.filter(withLimit).map(both),
  ];
}

function reasonOf(
  excluding: readonly string[],
  single: boolean,
  ways: readonly WayOut[],
  nearest: NoFit | undefined,
): WhyNone {
  const idea = nearest ? `The nearest is: ${nearest.idea}. ` : '';
  const sentence =
    ways.length > 0
      ? `Nothing fits as the car stands. ${ways[0]?.name ?? ''} would fit with ${ways.map(({ words }) => words).join(', or something like it with ')}.`
      : `Nothing fits as the car stands, and no one change of it, nor several together, was found to free anything. ${idea}It breaks: ${(nearest?.sentences ?? []).join(' ')}`;
  return { sentence: sentence.trim(), excluding, single, ways, nearest };
}
