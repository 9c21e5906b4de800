// How a car sits: lower or higher over its axles than it was drawn, and what that does.
export { type Lowered, type SatCar, type SitFailure, sat } from './sit.ts';
export { type SitRow, sitRows } from './sit-curve.ts';
export { SIT_PLAINLY, sitFailureWords } from './sit-words.ts';
