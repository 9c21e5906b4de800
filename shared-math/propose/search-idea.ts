import type { Finding } from '../findings/index.ts';
import { type Layout, steeringRefusal } from '../layout/index.ts';
import { type FrontEnd, prepareFrontEnd, prepareMoved } from '../linkage/index.ts';
import { seededRandom } from '../solve/random.ts';
import { searchLeast } from '../tune/index.ts';
import { toRadians } from '../units/index.ts';
import { BumpWeigher } from './bump-weigher.ts';
import type { Car } from './car.ts';
import type { Idea } from './idea.ts';
import { judge } from './judge.ts';
import { Keeper } from './keeper.ts';
import { laidDocument } from './laid-document.ts';
import { newPartsOf } from './new-parts.ts';
import type { NoFit, Proposal, ProposeNews, TaskResult } from './proposal.ts';
import { shaftFor } from './shaft-for.ts';
import { costWords, goodWords, ideaWords, limitShares, proposalName } from './words.ts';

/** How long a search goes on, in generations of so many places each. */
const EFFORT = { members: 24, generations: 24 } as const;
/** rad for one unit of what is missed while the best is closed in on. */
const PENALTY = toRadians(0.5);

/** Front ends of an idea by the numbers chosen; the last one is kept. */
class Trials {
  private readonly idea: Idea;
  private base: FrontEnd | undefined;
  private last: { x: readonly number[]; frontEnd: FrontEnd | undefined } | undefined;
  evaluations = 0;

  constructor(idea: Idea) {
    this.idea = idea;
  }

  at(x: readonly number[]): FrontEnd | undefined {
    if (this.last?.x === x) return this.last.frontEnd;
    const layout = this.idea.lay(x);
    let frontEnd: FrontEnd | undefined;
    if (layout && !steeringRefusal(layout)) {
      this.base ??= prepareFrontEnd(layout);
      frontEnd = prepareMoved(this.base, layout, this.idea.movesAxle);
    }
    this.last = { x, frontEnd };
    return frontEnd;
  }
}

/** A place that was found, as a proposal or why it is none. */
type Closed =
  | { readonly kind: 'found'; readonly proposal: Proposal }
  | { readonly kind: 'stopped'; readonly noFit: NoFit };

function stopWords(stops: readonly Finding[]): string[] {
  return [...new Set(stops.map(({ sentence, limit }) => `${sentence}${limit ? ` (${limit})` : ''}.`))];
}

/** Routes the shaft to a place, judges the whole document, and puts it into words. */
function closeIn(car: Car, idea: Idea, layout: Layout, flavour: string, missing: number): Closed {
  const words = ideaWords(car, idea);
  const shaft = shaftFor(car, layout);
  if (shaft.kind === 'none')
    return {
      kind: 'stopped',
      noFit: {
        idea: words,
        sentences: [
          'No steering shaft of up to three joints gets from the column to this box within the joints’ limits.',
        ],
        missing: missing + 50,
        layout: laidDocument(car, layout, car.document.shaft, words),
      },
    };
  const laid = shaft.kind === 'laid' ? shaft.route.shaft : shaft.kind === 'held' ? shaft.shaft : null;
  const name = proposalName(car, idea, layout);
  const document = laidDocument(car, layout, laid, name);
  const judged = judge(car, document);
  if (judged.stops.length > 0 || !judged.figures)
    return {
      kind: 'stopped',
      noFit: {
        idea: words,
        sentences: stopWords(judged.stops),
        missing: missing + judged.stops.length,
        layout: document,
      },
    };
  const { box } = layout.steering;
  const kind = idea.boxes.find(
    ({ ratio, sectorTravel }) => ratio === box.ratio && sectorTravel === box.sectorTravel,
  );
  return {
    kind: 'found',
    proposal: {
      key: `${idea.key} ${flavour}`,
      name,
      layout: document,
      figures: judged.figures,
      good: goodWords(car, idea, judged),
      costs: costWords(car, idea, judged, kind, shaft.kind),
      nearestLimit: limitShares(car, judged.figures)[0],
      newParts: newPartsOf(car, document),
    },
  };
}

/**
 * The best of one idea on a car: by differential evolution over what the idea leaves open, the places that the analysis by
 * parts finds likely first; what costs microseconds is asked before what costs milliseconds; the shaft's route and the
 * whole verdict come last. A generator: the caller may stop between steps of some ten milliseconds. The same car, idea
 * and seed give the same answer.
 */
export function* searchIdea(car: Car, idea: Idea, task: number): Generator<ProposeNews, TaskResult> {
  const words = ideaWords(car, idea);
  const trials = new Trials(idea);
  const first = idea.starts.map((x) => trials.at(x)).find((at) => at !== undefined);
  if (!first)
    return {
      task,
      found: [],
      noFit: {
        idea: words,
        sentences: ['None of its usual places is a layout.'],
        missing: Number.MAX_VALUE,
        layout: undefined,
      },
      evaluations: 0,
    };
  const weigher = new BumpWeigher(idea.movesAxle);
  const keeper = new Keeper(car, first, idea.movesAxle);
  let evaluations = 0;
  const value = (x: readonly number[]) => {
    evaluations += 1;
    const at = trials.at(x);
    return at ? weigher.worst(at) : Number.POSITIVE_INFINITY;
  };
  const violation = (x: readonly number[], settledAt: number) => {
    const at = trials.at(x);
    return at ? keeper.missing(at, settledAt) : Number.MAX_VALUE;
  };
  const news = (doing: string, share: number, found: readonly Proposal[] = []): ProposeNews => ({
    doing: `${words}: ${doing}`,
    share,
    evaluations,
    found,
  });
  yield news('looking at usual places', 0);

  const search = searchLeast(
    {
      from: idea.choices.map(({ from }) => from),
      to: idea.choices.map(({ to }) => to),
      start: idea.starts[0] as readonly number[],
      starts: idea.starts.slice(1),
      members: Math.max(EFFORT.members, idea.starts.length + 8),
      value,
      violation,
      penalty: PENALTY,
    },
    seededRandom(car.seed * 7919 + task),
    EFFORT.generations,
  );
  let step = search.next();
  while (!step.done) {
    yield news('trying places', 0.8 * step.value.share);
    step = search.next();
  }
  const best = step.value;
  const at = trials.at(best.at) as FrontEnd | undefined;
  if (!at || !Number.isFinite(best.value))
    return {
      task,
      found: [],
      noFit: {
        idea: words,
        sentences: ['The linkage reaches nowhere.'],
        missing: Number.MAX_VALUE,
        layout: undefined,
      },
      evaluations,
    };
  yield news('leading the steering shaft there and judging it', 0.85);
  const closed = closeIn(car, idea, at.layout as Layout, 'least-bump', best.violation);
  if (closed.kind === 'found') {
    yield news('found', 1, [closed.proposal]);
    return { task, found: [closed.proposal], noFit: undefined, evaluations };
  }
  return { task, found: [], noFit: closed.noFit, evaluations };
}
