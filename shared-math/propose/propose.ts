import { carOf } from './car.ts';
import { gatherProposals } from './front.ts';
import type { Idea } from './idea.ts';
import { ideasFor } from './ideas.ts';
import { promisingFirst } from './promising.ts';
import type { ProposeAnswer, ProposeNews, TaskResult } from './proposal.ts';
import type { ProposeQuestion } from './question.ts';
import { searchIdea } from './search-idea.ts';
import { whyNothingFits } from './why-none.ts';
import { ideaWords } from './words.ts';

/** A piece of the search that any worker may take: one idea. The ideas and their order follow from the question alone. */
export interface ProposeTask {
  readonly task: number;
  /** "Side steer, box outside the left rail, behind the axle, manual". */
  readonly words: string;
}

/** All pieces of the search for a question, those first that are nearest to fitting at their usual places. */
export function proposeTasks(question: ProposeQuestion): ProposeTask[] {
  const car = carOf(question);
  const ideas = ideasFor(car);
  return promisingFirst(car, ideas).map((task) => ({ task, words: ideaWords(car, ideas[task] as Idea) }));
}

/** One piece of the search. Its answer depends on the question and the piece alone, not on who else searches. */
export function* proposeTask(question: ProposeQuestion, task: number): Generator<ProposeNews, TaskResult> {
  const car = carOf(question);
  const idea = ideasFor(car)[task];
  if (!idea) return { task, found: [], noFit: undefined, evaluations: 0 };
  return yield* searchIdea(car, idea, task);
}

/** A worker's share: every so-manieth piece from its own place on. */
export interface ProposeShare {
  readonly question: ProposeQuestion;
  /** Which worker, counted from 0, of how many. */
  readonly worker: number;
  readonly workers: number;
}

/**
 * A share of the search as a job beside the page: steps of some ten milliseconds, between which it can be called off. All
 * shares together, in whatever order they come, are brought into the answer by `gatherProposals`.
 */
export function* proposeShareJob({
  question,
  worker,
  workers,
}: ProposeShare): Generator<ProposeNews, TaskResult[]> {
  const results: TaskResult[] = [];
  const mine = proposeTasks(question).filter((_, at) => at % workers === worker);
  for (const [done, { task }] of mine.entries()) {
    const search = proposeTask(question, task);
    let step = search.next();
    while (!step.done) {
      yield { ...step.value, share: (done + step.value.share) / mine.length };
      step = search.next();
    }
    results.push(step.value);
  }
  return results;
}

/**
 * Whole arrangements that fit a car, or why there is none: the ideas that there is room for, each searched through, and of
 * all that was found the front of what is possible.
 * A generator of news; the same question gives the same answer, however many workers share it (`proposeShareJob`).
 * Frame:    vehicle. Units: mm; degrees in figures.
 * Outcomes: three to six proposals where there are so many, none of them with a stop among its findings; or none, and why
 *           each idea came to nothing.
 * Source:   own derivation; differential evolution as in `searchLeast`.
 * Checked:  tests/unit/propose, tests/thorough/propose (a coarse grid; mirrored cars; every proposal judged anew).
 */
export function* propose(question: ProposeQuestion): Generator<ProposeNews, ProposeAnswer> {
  const results = yield* proposeShareJob({ question, worker: 0, workers: 1 });
  const answer = gatherProposals(results);
  if (answer.proposals.length > 0) return answer;
  return { ...answer, why: yield* whyNothingFits(question, results) };
}
