// The room that what moves needs over travel and turn: in space, and as outlines from any side.
export {
  COARSE_OUTLINE,
  FINE_OUTLINE,
  type Look,
  lookOf,
  type OutlineFineness,
  roomOutlines,
} from './room-outlines.ts';
export {
  COARSE_SWEEP,
  FINE_SWEEP,
  SWEPT_PARTS,
  type SweptPart,
  type SweptRoom,
  type SweptRooms,
  type SweptSteps,
  sweepRooms,
  type TurnEnds,
} from './swept-room.ts';
