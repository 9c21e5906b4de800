import type { Side } from '../../layout/index.ts';
import { type RoadKindOf, rangeProblem, startProblem, under, WHEELS } from './road-kind.ts';

/** One wave, the upper half of a sine (the lower where the height is negative). mm. */
export interface BumpRoad {
  readonly kind: 'bump';
  readonly height: number;
  readonly length: number;
  readonly start: number;
}

/** The same under one wheel. */
export interface OneWheelRoad extends Omit<BumpRoad, 'kind'> {
  readonly kind: 'one-wheel';
  readonly side: Side;
}

/** Height of half a sine at a distance, mm. */
function halfSine({ height, length, start }: Omit<BumpRoad, 'kind'>) {
  return (distance: number): number => {
    const share = (distance - start) / length;
    return share > 0 && share < 1 ? height * Math.sin(Math.PI * share) : 0;
  };
}

const problem = ({ height, length, start }: Omit<BumpRoad, 'kind'>) =>
  rangeProblem('height', height, -500, 500) ??
  rangeProblem('length', length, 20, 100_000) ??
  startProblem(start);

const HEIGHT = { key: 'height', words: 'Height', holds: 'length' } as const;
const LENGTH = { key: 'length', words: 'Length', holds: 'length' } as const;

export const bump: RoadKindOf<BumpRoad> = {
  usual: { kind: 'bump', height: 40, length: 1000, start: 2000 },
  fields: [HEIGHT, LENGTH],
  board: { words: 'Bump, both wheels', figures: { height: 50.8, length: 1219.2 }, seconds: 2.5 },
  problem,
  prepare: (profile) => under('both', halfSine(profile)),
};

export const oneWheel: RoadKindOf<OneWheelRoad> = {
  usual: { kind: 'one-wheel', side: 'left', height: 40, length: 1000, start: 2000 },
  fields: [{ key: 'side', words: 'Met by', holds: 'choice', choices: WHEELS }, HEIGHT, LENGTH],
  board: {
    words: 'Bump, one wheel',
    figures: { side: 'left', height: 50.8, length: 1219.2 },
    seconds: 2.5,
  },
  problem,
  prepare: (profile) => under(profile.side, halfSine(profile)),
};
