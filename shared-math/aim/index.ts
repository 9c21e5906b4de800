// The aim point: the best place for the frame end of the drag link, and the arcs that show why.
export {
  type Aim,
  type AimFailure,
  type AimOutcome,
  aimAtPlane,
  type BestSpot,
  findAim,
  findBestSpot,
  judgedPlane,
} from './aim.ts';
export { ballPath, linkArc, pathGap, type TravelPath } from './arcs.ts';
export { type HeldTravel, holdTravel, worstBumpSteerAt } from './held-travel.ts';
