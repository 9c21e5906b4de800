// Clearance: how near the bodies of a front end come to one another over travel and turn.

export { bodiesOf } from './bodies.ts';
export type { Body, BodyPart } from './body.ts';
export {
  type Clearance,
  type ClearanceOptions,
  type Clearances,
  leastClearances,
  nearerOfBothSides,
  REPORTED_WITHIN,
} from './clearances.ts';
export { type MapHit, type MapHitOptions, markHits, withBoxAt } from './map-hits.ts';
export type { Locks } from './motion.ts';
export { type BodyPair, type ClearanceLimit, pairsOf } from './pairs.ts';
export { type ClearanceNeed, NeedsOf, SPARE, underNeeds } from './under-needs.ts';
