import { type RoadKindOf, rangeProblem, startProblem } from './road-kind.ts';

/** Waves one after another, `height` from trough to crest; the right track's lie `shift` behind the left's. mm. */
export interface WashboardRoad {
  readonly kind: 'washboard';
  readonly height: number;
  readonly length: number;
  readonly shift: number;
  readonly start: number;
}

/** From the flat up and down without an edge: (height/2)(1 - cos). */
function waves(height: number, length: number, start: number) {
  return (distance: number): number =>
    distance > start ? (height / 2) * (1 - Math.cos((2 * Math.PI * (distance - start)) / length)) : 0;
}

export const washboard: RoadKindOf<WashboardRoad> = {
  usual: { kind: 'washboard', height: 20, length: 900, shift: 0, start: 2000 },
  fields: [
    { key: 'height', words: 'Height', holds: 'length' },
    { key: 'length', words: 'From crest to crest', holds: 'length' },
    { key: 'shift', words: 'Right track lies behind', holds: 'length' },
  ],
  board: { words: 'Washboard', figures: { height: 19.05, length: 914.4, shift: 0 }, seconds: 4 },
  problem: ({ height, length, shift, start }) =>
    rangeProblem('height', height, 0, 300) ??
    rangeProblem('length', length, 100, 100_000) ??
    rangeProblem('shift', shift, 0, 100_000) ??
    startProblem(start),
  prepare: ({ height, length, shift, start }) => ({
    leftAt: waves(height, length, start),
    rightAt: waves(height, length, start + shift),
  }),
};
