import type { RideOrigin, RideRange } from '../../../shared-math/ride/index.ts';
import type { SpringKnown } from './ride-edits.ts';
import type { ChosenKind } from './road-choice.ts';

export const ROAD_WORDS: readonly (readonly [ChosenKind, string])[] = [
  ['one-wheel', 'Bump, one wheel'],
  ['bump', 'Bump, both wheels'],
  ['kerb', 'Kerb edge'],
  ['washboard', 'Washboard'],
  ['random', 'Rough, ISO 8608'],
  ['measured', 'From my own file'],
];

export const WHEEL_WORDS = [
  ['left', 'left wheel'],
  ['right', 'right wheel'],
] as const;

export const KERB_WORDS = [['both', 'both wheels'], ...WHEEL_WORDS] as const;

/** What the classes of ISO 8608 look like. The letters are the standard's; the words are ours. */
export const CLASS_WORDS = [
  ['A', 'A, smooth as new'],
  ['B', 'B, good road'],
  ['C', 'C, worn road'],
  ['D', 'D, poor road'],
  ['E', 'E, gravel'],
  ['F', 'F, rough track'],
  ['G', 'G, field'],
  ['H', 'H, hardly passable'],
] as const;

export const SPRING_WORDS: readonly (readonly [SpringKnown, string])[] = [
  ['usual', 'nobody has yet'],
  ['measured', 'a load laid on it'],
  ['leaf', 'the leaves’ sizes'],
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
