import type { LayoutDocument, Rail } from '../layout/index.ts';
import type { CarFacts } from './propose.ts';

/** mm, outside to outside. A usual frame of these cars; common practice, no published source. */
export const USUAL_FRAME_WIDTH = 740;

/** How far from the middle a rail's own middle runs at a place along the car; its nearest end where it does not reach. */
function acrossAt(rail: Rail, x: number): number {
  const path = [...rail.path].sort((a, b) => a[0] - b[0]);
  const first = path[0] as Rail['path'][number];
  const last = path.at(-1) as Rail['path'][number];
  if (x <= first[0]) return first[1];
  if (x >= last[0]) return last[1];
  for (let i = 1; i < path.length; i += 1) {
    const [a, b] = [path[i - 1] as typeof first, path[i] as typeof first];
    if (x > b[0]) continue;
    return b[0] === a[0] ? b[1] : a[1] + ((x - a[0]) / (b[0] - a[0])) * (b[1] - a[1]);
  }
  return last[1];
}

/** Outside to outside of the rails beside the front axle, mm; undefined if none are drawn on both sides. */
export function frameWidth({ rails }: LayoutDocument): number | undefined {
  let left = 0;
  let right = 0;
  for (const rail of rails) {
    const across = acrossAt(rail, 0);
    const reach = Math.abs(across) + rail.width / 2;
    if (across >= 0 || rail.mirrored) left = Math.max(left, reach);
    if (across < 0 || rail.mirrored) right = Math.max(right, reach);
  }
  return left > 0 && right > 0 ? left + right : undefined;
}

/** The facts as they are before the person has said anything. */
export function firstFacts(document: LayoutDocument): CarFacts {
  return {
    frameWidth: frameWidth(document) ?? USUAL_FRAME_WIDTH,
    engineFillsFrame: false,
    driven: 'open-road',
  };
}
