import type { Layout, Obstacle } from '../layout/index.ts';
import { railFacesNear, railStretch } from './rail-faces.ts';

// What a box can be bolted to between the rails.

/**
 * The crossmember that every pair of rails has at its front end, where none is drawn there: level with the rails, as deep and as
 * wide as they are. Common practice, no published source. Undefined where no pair of rails is drawn to imply it.
 *
 * The one over a spring across the car is implied as well, but stands over the axle, where no box has room over the beam.
 */
export function impliedFrontCrossmember(layout: Layout): Obstacle | undefined {
  if (!layout.rails.some(({ mirrored }) => mirrored)) return undefined;
  const [, front] = railStretch(layout);
  const { outer, inner, top, bottom } = railFacesNear(layout, front);
  const wide = outer - inner;
  return {
    kind: 'box',
    role: 'crossmember',
    name: 'Assumed front crossmember',
    mirrored: false,
    centre: [front - wide / 2, 0, (top + bottom) / 2],
    size: [wide, 2 * inner, top - bottom],
  };
}

/** x from the hindmost to the foremost place of an obstacle. mm. */
function stretchOf(obstacle: Obstacle): readonly [number, number] {
  if (obstacle.kind !== 'box')
    return [
      Math.min(obstacle.from[0], obstacle.to[0]) - obstacle.radius,
      Math.max(obstacle.from[0], obstacle.to[0]) + obstacle.radius,
    ];
  const half = obstacle.size[0] / 2;
  return [obstacle.centre[0] - half, obstacle.centre[0] + half];
}

/** Whether a crossmember that is drawn comes within `reach` of a stretch along the car. mm. */
export function hasCrossmember({ obstacles }: Layout, from: number, to: number, reach: number): boolean {
  return obstacles.some((obstacle) => {
    if (obstacle.role !== 'crossmember') return false;
    const [back, front] = stretchOf(obstacle);
    return back - reach < to && front + reach > from;
  });
}
