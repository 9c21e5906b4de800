import { bandOf } from './map-image.ts';

/** Degrees at which the map has a line: each about twice the one before, as bump steer is judged by its order. */
const LADDER = [0.1, 0.25, 0.5, 1, 2, 4, 8] as const;
/** A rung this near to the limit, as a share of it, gives its place to it. */
const NEAR = 0.25;

/** The levels of the map's scale, degrees ascending, and which of them is the limit. */
export interface MapScale {
  readonly levels: readonly number[];
  readonly limit: number;
}

/** The usual levels with the limit in force as one of them. */
export function mapScale(limit: number): MapScale {
  const kept = LADDER.filter((level) => Math.abs(level - limit) > NEAR * limit);
  return { levels: [...kept, limit].sort((a, b) => a - b), limit };
}

/** How many steps of the scale are within the limit. */
export function stepsWithin({ levels, limit }: MapScale): number {
  return bandOf(limit, levels);
}

/** A level's figure, without more decimals than it has. */
export function levelWords(degrees: number): string {
  return `${Number(degrees.toFixed(2))}°`;
}
