// Outputs: what leaves the board, made beside the host's calls, watched and called off from the board.
export { type DeskOptions, type JobState, type JobTold, OutputDesk } from './desk.ts';
export type { Made, Source, Wish } from './wish.ts';
