// Outputs: what leaves the board, made beside the host's calls, watched and called off from the board.
export { type JobState, type JobStatus, OutputJobs, type OutputJobsOptions } from './output-jobs.ts';
export type { Made, OutputRequest, Source } from './request.ts';
