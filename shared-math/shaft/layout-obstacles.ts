import { mirrored, type Point } from '../geometry/points.ts';
import { cross, dot, midpoint, norm, scaled, subtract, unit } from '../geometry/vectors.ts';
import type { Layout } from '../layout/index.ts';
import type { RouteObstacle } from './obstacles.ts';

/** mm. Room beyond the usual beside an exhaust: 3/4 in instead of 1/2. Common practice. */
const BESIDE_HEADERS = 6.35;

/** A stretch of a rail as a box along it. Its height and width are not foreshortened by a slope: a little more room. */
function railBox(
  name: string,
  size: { readonly height: number; readonly width: number },
  from: Point,
  to: Point,
): RouteObstacle | undefined {
  const stretch = subtract(to, from);
  const length = norm(stretch);
  if (!(length > 0)) return undefined;
  const along = scaled(stretch, 1 / length);
  // Width lies across the car; along the car for a rail that runs across it, and for one that stands.
  const main = along.map(Math.abs);
  const wide: Point =
    (main[1] as number) > Math.max(main[0] as number, main[2] as number) ? [1, 0, 0] : [0, 1, 0];
  const across = unit(subtract(wide, scaled(along, dot(wide, along))));
  return {
    kind: 'box',
    name,
    centre: midpoint(from, to),
    halfSizes: [length / 2, size.width / 2, size.height / 2],
    axes: [along, across, cross(along, across)],
  };
}

function* railObstacles({ rails }: Layout): Generator<RouteObstacle> {
  for (const rail of rails)
    for (const path of rail.mirrored ? [rail.path, rail.path.map(mirrored)] : [rail.path])
      for (let i = 1; i < path.length; i += 1) {
        const box = railBox(rail.name, rail, path[i - 1] as Point, path[i] as Point);
        if (box) yield box;
      }
}

function* bodyObstacles({ obstacles }: Layout): Generator<RouteObstacle> {
  for (const body of obstacles)
    for (const place of body.mirrored ? [(p: Point) => p, mirrored] : [(p: Point) => p]) {
      const facts = { name: body.name, ...(body.role === 'header' ? { extra: BESIDE_HEADERS } : {}) };
      if (body.kind !== 'box') {
        const tube = { ...facts, from: place(body.from), to: place(body.to), radius: body.radius };
        yield body.kind === 'capsule' ? { ...tube, kind: 'capsule' } : { ...tube, kind: 'cylinder' };
        continue;
      }
      const turn = (((place === mirrored ? -1 : 1) * (body.turn ?? 0)) / 180) * Math.PI;
      const [c, s] = [Math.cos(turn), Math.sin(turn)];
      yield {
        ...facts,
        kind: 'box',
        centre: place(body.centre),
        halfSizes: scaled(body.size, 0.5),
        axes: [
          [c, s, 0],
          [-s, c, 0],
          [0, 0, 1],
        ],
      };
    }
}

/** The obstacles of a layout to a steering shaft: its rails and obstacles, mirrored ones on both sides. mm. */
export function routeObstacles(layout: Layout): RouteObstacle[] {
  return [...railObstacles(layout), ...bodyObstacles(layout)];
}
