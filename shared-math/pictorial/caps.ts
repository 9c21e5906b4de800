import type { Disc, DrawnHull } from '../drawing/drawing.ts';
import { reach, type Solid } from './solids.ts';

/** A disc that ends a solid, so that its rim is seen from that side: 1 where it is ahead along the disc's axis, -1 behind. */
export interface Cap {
  readonly disc: DrawnHull;
  readonly way: 1 | -1;
}

/** A disc by itself. */
export const alone = (disc: Disc): DrawnHull => ({ kind: 'body', discs: [disc], ink: 'fine', fill: 'none' });

/** Which discs of a body end it, by the drawing at ride height: no point of the body lies beyond the disc's plane. */
export function capsOf(solid: Solid, elements: Float64Array): Cap[] {
  const { drawn } = solid;
  if (drawn.kind !== 'body') return [];
  return drawn.discs.flatMap((disc, i): Cap[] => {
    if (!(disc.radius > 0) || disc.round > 0.3 * disc.radius) return [];
    const at = 9 * (solid.from + i);
    const axis = [3, 4, 5].map((each) => elements[at + each] as number) as [number, number, number];
    const height = [0, 1, 2].reduce(
      (sum, each) => sum + (elements[at + each] as number) * (axis[each] as number),
      0,
    );
    return ([1, -1] as const).flatMap((way): Cap[] => {
      const most = reach(solid, elements, way * axis[0], way * axis[1], way * axis[2]);
      return most <= way * height + disc.round + 0.5 ? [{ disc: alone(disc), way }] : [];
    });
  });
}
