import {
  drawnFigures,
  type ProposalFigures,
  type ProposeNews,
  type ProposeQuestion,
  type ProposeTask,
  proposeTask,
  proposeTasks,
  type TaskResult,
  type WhyNone,
  whyNothingFits,
} from '../../../shared-math/propose/index.ts';
import { serveJobs } from '../../jobs/serve-jobs.ts';

/** One piece of the search for arrangements, as a worker is given it. */
export interface ProposeInput {
  readonly question: ProposeQuestion;
  readonly task: number;
}

/** What there is to look through, the most promising first. */
// biome-ignore lint/correctness/useYield: a job in one step.
function* tasksJob(question: ProposeQuestion): Generator<undefined, ProposeTask[]> {
  return proposeTasks(question);
}

function* proposeJob({ question, task }: ProposeInput): Generator<ProposeNews, TaskResult> {
  return yield* proposeTask(question, task);
}

/** What a worker is given to find out why nothing fits: all that came of the search. */
export interface WhyInput {
  readonly question: ProposeQuestion;
  readonly results: readonly TaskResult[];
}

function* whyJob({ question, results }: WhyInput): Generator<ProposeNews, WhyNone> {
  return yield* whyNothingFits(question, results);
}

/** The figures of the layout that was asked about, to be shown beside. */
// biome-ignore lint/correctness/useYield: a job in one step.
function* drawnJob(question: ProposeQuestion): Generator<undefined, ProposalFigures | undefined> {
  return drawnFigures(question);
}

// The script that runs in the workers that look for arrangements.
serveJobs({ tasks: tasksJob, propose: proposeJob, drawn: drawnJob, why: whyJob });
