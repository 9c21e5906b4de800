import { PLACE_OK } from '../../../../shared-math/aim/index.ts';
import type { MapAnswer, MapHits } from './map-job.ts';

/** Why the node nearest to a place is hatched; PLACE_OK outside the window. */
export function reasonAt({ window, columns, rows, reason }: MapHits, across: number, up: number): number {
  const { from, to } = window;
  const column = Math.round(((across - from[0]) / (to[0] - from[0])) * (columns - 1));
  const row = Math.round(((up - from[1]) / (to[1] - from[1])) * (rows - 1));
  if (column < 0 || column >= columns || row < 0 || row >= rows) return PLACE_OK;
  return reason[row * columns + column] ?? PLACE_OK;
}

/** Where the ridge is at a place across, by the straight line between its points; undefined if it does not go. */
export function nearestOnRidge(
  ridge: Float64Array,
  across: number,
): { readonly across: number; readonly up: number } | undefined {
  for (let i = 0; i + 5 < ridge.length; i += 3) {
    const [from, to] = [ridge[i] as number, ridge[i + 3] as number];
    if (across < Math.min(from, to) || across > Math.max(from, to)) continue;
    const share = to === from ? 0 : (across - from) / (to - from);
    const [low, high] = [ridge[i + 1] as number, ridge[i + 4] as number];
    return { across, up: low + share * (high - low) };
  }
  return undefined;
}

/** What a place of the map is drawn to: the best spot within `reach` of it, else the ridge straight above or below. */
export function drawnTo(
  { best, ridge }: Pick<MapAnswer, 'best' | 'ridge'>,
  across: number,
  up: number,
  reach: number,
): { readonly across: number; readonly up: number; readonly on: 'best' | 'ridge' } | undefined {
  if (best && Math.hypot(best.across - across, best.up - up) <= reach) return { ...best, on: 'best' };
  const on = nearestOnRidge(ridge, across);
  return on && Math.abs(on.up - up) <= reach ? { ...on, on: 'ridge' } : undefined;
}
