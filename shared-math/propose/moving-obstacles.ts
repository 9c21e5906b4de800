import { type Body, bodiesOf } from '../clearance/index.ts';
import type { Point } from '../geometry/points.ts';
import type { Layout } from '../layout/index.ts';
import type { RouteObstacle } from '../shaft/index.ts';
import { toRadians } from '../units/index.ts';

/** mm to the right of the middle, beyond which no shaft of a driver on the left comes. */
const FAR_SIDE = -120;
/** mm that a beam or tie rod moves along the car as it rises and turns, to either side. */
const ALONG = 22;

/** The room that a body of the axle passes through over its travel, part by part, as upright boxes. */
function swept(body: Body, { travel }: Layout): RouteObstacle[] {
  return body.parts.flatMap((part): RouteObstacle[] => {
    if (part.kind !== 0) return [];
    const ends = [part.from.at, part.to.at];
    const range = (axis: 0 | 1 | 2) => {
      const values = ends.map((point) => point[axis]);
      return [Math.min(...values), Math.max(...values)] as const;
    };
    const [x, y, z] = [range(0), range(1), range(2)];
    if (y[1] < FAR_SIDE) return [];
    const leans = Math.max(...y.map(Math.abs)) * Math.sin(toRadians(travel.roll));
    const low = z[0] - part.radius - travel.rebound - leans;
    const high = z[1] + part.radius + travel.bump + leans;
    const middle = (pair: readonly [number, number]) => (pair[0] + pair[1]) / 2;
    const half = (pair: readonly [number, number], more: number) => (pair[1] - pair[0]) / 2 + more;
    const centre: Point = [middle(x), middle(y), (low + high) / 2];
    return [
      {
        kind: 'box',
        name: body.name,
        centre,
        halfSizes: [half(x, part.radius + ALONG), half(y, part.radius), (high - low) / 2],
      },
    ];
  });
}

/**
 * What a steering shaft that goes past the axle has to keep clear of, beyond what stands still: beam and tie rod over their
 * travel, and the drag link straight ahead at ride height and at full bump. A little more than they take, never less
 * than nothing: the whole verdict looks at what moves itself. mm.
 */
export function movingObstacles(layout: Layout): RouteObstacle[] {
  const bodies = bodiesOf({ ...layout, shaft: null });
  const boxes = bodies
    .filter(({ id }) => id === 'beam' || id === 'tie-rod')
    .flatMap((body) => swept(body, layout));
  const { dragLinkBall: ball, box } = layout.steering;
  const links = [0, layout.travel.bump].map(
    (up): RouteObstacle => ({
      kind: 'capsule',
      name: 'drag link',
      from: box.pitmanBall,
      to: [ball[0], ball[1], ball[2] + up],
      radius: 16,
    }),
  );
  return [...boxes, ...links];
}
