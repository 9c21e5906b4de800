import { type RideOrigin, type RideRange, type RoadKind, roadKind } from '../../../shared-math/ride/index.ts';
import type { SpringKnown } from './ride-edits.ts';
import { CHOSEN_KINDS } from './road-choice.ts';

export const ROAD_WORDS: readonly (readonly [RoadKind, string])[] = CHOSEN_KINDS.map((kind) => [
  kind,
  roadKind(kind).board?.words ?? 'From my own file',
]);

export const SPRING_WORDS: readonly (readonly [SpringKnown, string])[] = [
  ['usual', 'not measured: a usual rate'],
  ['measured', 'a load put on the car'],
  ['leaf', 'the size of the leaves'],
  ['rate', 'the spring’s maker'],
];

export const LIE_WORDS = [
  ['across', 'one across the car'],
  ['along', 'one along each rail'],
] as const;

/** How a figure that nobody typed stands in its field. */
export function originWords(figure: string, origin: RideOrigin | undefined): string {
  return origin === 'worked-out' ? `makes ${figure}` : `usual ${figure}`;
}

/** Whether a figure is within what is usual, in a word. */
export function usualWord(value: number, { least, most }: RideRange): 'usual' | 'low' | 'high' {
  if (value < least) return 'low';
  return value > most ? 'high' : 'usual';
}

/** A moment of the drive: "0.42 s, 15 ft 4 in along". */
export const momentWords = (time: number, along: string): string => `${time.toFixed(2)} s, ${along} along`;
