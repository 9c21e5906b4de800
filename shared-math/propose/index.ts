// The board proposes: whole arrangements of the steering that fit a car, or why none does.
export { drawnFigures } from './drawn.ts';
export { type FigureRow, figureRows } from './figure-rows.ts';
export { heldWords, type ProposeFreedom, type ProposeWay, proposeFreedoms, roomsWords } from './freedoms.ts';
export { gatherProposals } from './front.ts';
export type {
  NearestLimit,
  NewPart,
  NoFit,
  Proposal,
  ProposalFigures,
  ProposeAnswer,
  ProposeNews,
  TaskResult,
  WayOut,
  WhyNone,
} from './proposal.ts';
export {
  type ProposeShare,
  type ProposeTask,
  propose,
  proposeShareJob,
  proposeTask,
  proposeTasks,
} from './propose.ts';
export {
  HOLDS,
  type HoldName,
  heldAsMeasured,
  openRooms,
  type ProposeQuestion,
  standsBy,
  withSteeringForgotten,
} from './question.ts';
export { isRoomName, ROOM_NAMES, type Room, type RoomName, type Rooms, readRoom } from './rooms.ts';
export {
  isWordedRoomName,
  ROOMS_IN_WORDS,
  readWordedRoom,
  type WordedRoom,
  type WordedRoomName,
} from './rooms-in-words.ts';
export { whyNothingFits } from './why-none.ts';
export { givingWords, NONE_LEFT } from './why-words.ts';
