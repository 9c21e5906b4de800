import type { Refusal } from '../../layout/index.ts';

/** A road made ready: heights in mm at a distance in mm under each wheel. Allocates nothing. */
export interface Road {
  leftAt(distance: number): number;
  rightAt(distance: number): number;
}

type FigureOf<Profile> = Exclude<keyof Profile, 'kind' | 'start'> & string;

/** A figure of a road that a person gives. `words` stand before its field. */
export type RoadField<Profile> = {
  readonly key: FigureOf<Profile>;
  readonly words: string;
  /** On the command line an option of its own, and what is said of its values; else it is given with the kind. */
  readonly option?: { readonly name: string; readonly values: string };
} & (
  | { readonly holds: 'length' | 'number' }
  | { readonly holds: 'choice'; readonly choices: readonly (readonly [value: string, words: string])[] }
);

/** How a kind of road is chosen on the board: its name there, its figures at first, and s that it is usually driven. */
interface RoadChoiceOf<Profile> {
  readonly words: string;
  readonly figures: Omit<Profile, 'kind' | 'start'>;
  readonly seconds: number;
}

/** One kind of road, all of it: board, command line and form read from here what there is to give. */
export interface RoadKindOf<Profile> {
  /** One to begin from, of a size that cars meet. mm. */
  readonly usual: Profile;
  /** What can be given; of a road that is a table, nothing. */
  readonly fields: readonly RoadField<Profile>[];
  /** Undefined if the board does not offer it, or takes it from a file. */
  readonly board?: RoadChoiceOf<Profile>;
  /** Why no car could drive over it with wheels of a radius (mm); undefined if one could. */
  problem(profile: Profile, tyreRadius: number): Refusal | undefined;
  /** Makes it ready for wheels of a radius (mm). */
  prepare(profile: Profile, tyreRadius: number): Road;
}

export const WHEELS = [
  ['left', 'left wheel'],
  ['right', 'right wheel'],
] as const;

export const flatHeight = (): number => 0;
export const FLAT_ROAD: Road = { leftAt: flatHeight, rightAt: flatHeight };

/** The same heights under both wheels, or under one while the other stays on the flat. */
export function under(side: 'left' | 'right' | 'both', at: (distance: number) => number): Road {
  return { leftAt: side === 'right' ? flatHeight : at, rightAt: side === 'left' ? flatHeight : at };
}

/** A refusal where a figure is out of a range that any road has, by its name. */
export function rangeProblem(
  name: string,
  value: number,
  least: number,
  most: number,
  unit = 'mm',
): Refusal | undefined {
  if (value >= least && value <= most) return undefined;
  const found = Number.isFinite(value) ? `${value}` : 'no number';
  return {
    path: `road.${name}`,
    reason: `goes from ${least} to ${most}${unit && ` ${unit}`}, found ${found}`,
  };
}

/** mm. How far a car may roll on the flat before its road begins. */
const START_MOST = 1_000_000;
export const startProblem = (start: number) => rangeProblem('start', start, 0, START_MOST);
