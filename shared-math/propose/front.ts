import type { LayoutDocument } from '../layout/index.ts';
import { routeOf, stubsOf } from '../shaft/index.ts';
import type { NoFit, Proposal, ProposeAnswer, TaskResult } from './proposal.ts';

/** At most so many are proposed, and at least so many where there are. */
const MOST = 6;
const LEAST = 3;
/** A proposal is worth showing beside others where some figure is better by this share of itself. */
const BETTER_BY = 0.03;

/** Degrees of all joints together, below which a steering shaft is as good as straight. */
const HARDLY_BENT = 10;

/** Pieces that ends take which are made longer for the steering shaft: a stub, its coupling, its bearing. */
function longerEnds({ shaft }: LayoutDocument): number {
  if (!shaft) return 0;
  return stubsOf(routeOf(shaft)).reduce((sum, { bearing }) => sum + (bearing ? 3 : 2), 0);
}

/** What proposals are weighed by: less is better in each. */
function weights({ figures, newParts, costs, layout }: Proposal): readonly number[] {
  const bought = newParts.reduce((sum, { count, onShelf }) => sum + count - onShelf, 0);
  return [
    Math.max(figures.bumpSteer, figures.oneWheel ?? Number.POSITIVE_INFINITY, 0.05),
    figures.rimForceMost,
    figures.circle,
    bought,
    figures.shaftJoints.length + figures.supports + longerEnds(layout),
    Math.max(
      figures.shaftJoints.reduce((sum, angle) => sum + angle, 0),
      HARDLY_BENT,
    ),
    Math.max(figures.band ?? Number.POSITIVE_INFINITY, 0.05),
    costs.length,
  ];
}

/** Whether one is better than another in nothing. */
function isBehind(one: readonly number[], other: readonly number[]): boolean {
  return one.every((value, i) => value >= (other[i] as number) * (1 - BETTER_BY) - 1e-9);
}

/** Sum of what each figure is beside the best of all: the smaller, the better all round. */
function allRound(all: readonly (readonly number[])[]): number[] {
  const best = (all[0] ?? []).map((_, i) => Math.min(...all.map((row) => row[i] as number)));
  return all.map((row) =>
    row.reduce((sum, value, i) => sum + value / Math.max(best[i] as number, 1e-6) - 1, 0),
  );
}

/** How unlike two ideas are in words: way, mount, side of the axle, box. */
function unlike(one: string, other: string): number {
  const [a, b] = [one.split(' '), other.split(' ')];
  return a.reduce((count, word, i) => count + (word === b[i] ? 0 : i === 0 ? 2 : 1), 0);
}

/** The idea that a proposal is one of: its key without what was sought in it. */
const ideaOf = ({ key }: Proposal): string => key.split(' ').slice(0, -1).join(' ');

/** Those that none of the others is ahead of in everything; of two alike the earlier. */
function onFront(rows: readonly (readonly number[])[], order: readonly number[]): number[] {
  return order.filter((i, place) =>
    order.every((j, other) => {
      if (i === j || !isBehind(rows[i] as number[], rows[j] as number[])) return true;
      return isBehind(rows[j] as number[], rows[i] as number[]) && place < other;
    }),
  );
}

/** Takes from a pool, best first, always the one most unlike those already taken. */
function takeUnlike(found: readonly Proposal[], pool: number[], taken: number[], most: number): void {
  while (taken.length < most && pool.length > 0) {
    let pick = 0;
    let furthest = -1;
    for (const [k, i] of pool.entries()) {
      const away = Math.min(4, ...taken.map((j) => unlike(found[i]?.key ?? '', found[j]?.key ?? '')));
      if (away > furthest) [pick, furthest] = [k, away];
    }
    taken.push(...pool.splice(pick, 1));
  }
}

/**
 * Of all that was found those on the front of what is possible, three to six, as unlike one another as they come: one of
 * each idea, the best all round first, then always the one that is most unlike those already taken. Where that makes fewer
 * than three, other ways of the same ideas, and last those that pass a limit, which their costs say.
 */
export function frontOf(found: readonly Proposal[]): Proposal[] {
  const rows = found.map(weights);
  const scores = allRound(rows);
  const order = found
    .map((_, i) => i)
    .sort(
      (a, b) =>
        (scores[a] as number) - (scores[b] as number) ||
        ((found[a] as Proposal).key < (found[b] as Proposal).key ? -1 : 1),
    );
  const clean = order.filter((i) => found[i]?.pastLimits === 0);
  const front = onFront(rows, clean);
  const firstOfIdea = (list: readonly number[]) =>
    list.filter(
      (i, place) =>
        list.findIndex((j) => ideaOf(found[j] as Proposal) === ideaOf(found[i] as Proposal)) === place,
    );
  const taken: number[] = [];
  takeUnlike(found, oneAssumed(found, firstOfIdea(front)), taken, MOST);
  for (const more of [firstOfIdea(clean), clean, firstOfIdea(order)]) {
    if (taken.length >= LEAST) break;
    const fresh = more.filter((i) => !taken.includes(i));
    takeUnlike(found, fresh, taken, LEAST);
  }
  return namedApart(taken.map((i) => found[i] as Proposal));
}

/** Of those that take for granted what nobody has drawn, only the first. */
function oneAssumed(found: readonly Proposal[], list: readonly number[]): number[] {
  const assumed = list.filter((i) => found[i]?.assumes !== null);
  return list.filter((i) => !assumed.slice(1).includes(i));
}

/** Proposals of one name are named by what was sought in each as well. */
function namedApart(proposals: readonly Proposal[]): Proposal[] {
  return proposals.map((proposal) => {
    if (proposals.filter(({ name }) => name === proposal.name).length === 1) return proposal;
    const name = `${proposal.name}, ${(proposal.key.split(' ').at(-1) ?? '').replaceAll('-', ' ')}`;
    return { ...proposal, name, layout: { ...proposal.layout, name } };
  });
}

/** The answer out of the results of all tasks, in whatever order they came. */
export function gatherProposals(results: readonly TaskResult[]): ProposeAnswer {
  const inOrder = results.toSorted((a, b) => a.task - b.task);
  const proposals = frontOf(inOrder.flatMap(({ found }) => found));
  const noFits: NoFit[] = inOrder
    .flatMap((result) => result.noFit ?? [])
    .sort((a, b) => a.missing - b.missing);
  return {
    proposals,
    noFits: proposals.length > 0 ? [] : noFits,
    evaluations: inOrder.reduce((sum, { evaluations }) => sum + evaluations, 0),
  };
}
