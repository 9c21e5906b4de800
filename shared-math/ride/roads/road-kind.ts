import type { Refusal } from '../../layout/index.ts';

/** A road made ready: heights in mm at a distance in mm under each wheel. Allocates nothing. */
export interface Road {
  leftAt(distance: number): number;
  rightAt(distance: number): number;
}

/** One kind of road: what can be wrong with its figures, and how it is made ready for a wheel of a radius (mm). */
export interface RoadKindOf<Profile> {
  problem(profile: Profile, tyreRadius: number): Refusal | undefined;
  prepare(profile: Profile, tyreRadius: number): Road;
}

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
