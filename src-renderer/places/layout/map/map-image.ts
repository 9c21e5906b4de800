import type { BumpSteerMap } from '../../../../shared-math/aim/index.ts';

/** Which stretch of the scale each pixel of a map's picture is in, row by row from its upper left. */
export interface MapImage {
  readonly width: number;
  readonly height: number;
  /** The number of levels that the value is above; NOWHERE where there is no value. */
  readonly bands: Uint8Array;
}

export const NOWHERE = 255;

/**
 * The picture of a map: `fold` pixels for each cell of the grid, their values by the two-way straight line between the
 * cell's nodes. `leftward` where the view shows the axis across running to the left. Levels ascending, rad.
 */
export function mapImage(
  map: BumpSteerMap,
  levels: readonly number[],
  fold: number,
  leftward: boolean,
): MapImage {
  const { columns, rows, worst } = map;
  const width = (columns - 1) * fold;
  const height = (rows - 1) * fold;
  const bands = new Uint8Array(width * height);
  for (let py = 0; py < height; py += 1) {
    // Pixel rows run down, the map's rows up.
    const v = (height - 0.5 - py) / fold;
    const row = Math.min(rows - 2, Math.floor(v));
    const fv = v - row;
    for (let px = 0; px < width; px += 1) {
      const u = ((leftward ? width - 0.5 - px : px + 0.5) as number) / fold;
      const column = Math.min(columns - 2, Math.floor(u));
      const fu = u - column;
      const at = row * columns + column;
      const low = (worst[at] as number) * (1 - fu) + (worst[at + 1] as number) * fu;
      const high = (worst[at + columns] as number) * (1 - fu) + (worst[at + columns + 1] as number) * fu;
      const value = low * (1 - fv) + high * fv;
      bands[py * width + px] = Number.isFinite(value) ? bandOf(value, levels) : NOWHERE;
    }
  }
  return { width, height, bands };
}

/** How many of the ascending levels a value is above. */
export function bandOf(value: number, levels: readonly number[]): number {
  let band = 0;
  while (band < levels.length && value >= (levels[band] as number)) band += 1;
  return band;
}
