import type { NoFit, Proposal, ProposeAnswer, TaskResult } from './proposal.ts';

/** At most so many are proposed, and at least so many where there are. */
const MOST = 6;
/** A proposal is worth showing beside others where some figure is better by this share of itself. */
const BETTER_BY = 0.03;

/** What proposals are weighed by: less is better in each. */
function weights({ figures, newParts, costs }: Proposal): readonly number[] {
  const bought = newParts.reduce((sum, { count, onShelf }) => sum + count - onShelf, 0);
  return [
    Math.max(figures.bumpSteer, figures.oneWheel ?? Number.POSITIVE_INFINITY, 0.05),
    figures.rimForceMost,
    figures.circle,
    bought,
    figures.shaftJoints.length + figures.supports,
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

/**
 * Of all that was found those on the front of what is possible, three to six, as unlike one another as they come: the best
 * all round first, then always the one that is most unlike those already taken.
 */
export function frontOf(found: readonly Proposal[]): Proposal[] {
  if (found.length === 0) return [];
  const rows = found.map(weights);
  const scores = allRound(rows);
  const order = found
    .map((_, i) => i)
    .sort(
      (a, b) =>
        (scores[a] as number) - (scores[b] as number) ||
        (found[a]?.key ?? '').localeCompare(found[b]?.key ?? ''),
    );
  const onFront = order.filter(
    (i) =>
      !order.some(
        (j) =>
          j !== i &&
          isBehind(rows[i] as number[], rows[j] as number[]) &&
          !(isBehind(rows[j] as number[], rows[i] as number[]) && order.indexOf(j) > order.indexOf(i)),
      ),
  );
  const rest = order.filter((i) => !onFront.includes(i));
  const taken: number[] = [];
  const pool = [...onFront, ...rest.slice(0, Math.max(0, 3 - onFront.length))];
  while (taken.length < MOST && pool.length > 0) {
    let pick = 0;
    let most = -1;
    for (const [k, i] of pool.entries()) {
      const away = Math.min(4, ...taken.map((j) => unlike(found[i]?.key ?? '', found[j]?.key ?? '')));
      if (away > most) [pick, most] = [k, away];
    }
    taken.push(...pool.splice(pick, 1));
  }
  return taken.map((i) => found[i] as Proposal);
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
