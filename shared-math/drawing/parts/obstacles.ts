import { mirrored, type Point } from '../../geometry/points.ts';
import { subtract, unit } from '../../geometry/vectors.ts';
import type { Layout, Obstacle } from '../../layout/index.ts';
import { toRadians } from '../../units/index.ts';
import type { Shape } from '../drawing.ts';
import type { Pen } from '../pen.ts';

const WAYS = [1, -1] as const;

/** The eight corners of a box, turned about z. */
function corners({ centre, size, turn = 0 }: Extract<Obstacle, { kind: 'box' }>): Point[] {
  const angle = toRadians(turn);
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  return WAYS.flatMap((along) =>
    WAYS.flatMap((across) =>
      WAYS.map((up): Point => {
        const [x, y] = [(along * size[0]) / 2, (across * size[1]) / 2];
        return [centre[0] + c * x - s * y, centre[1] + s * x + c * y, centre[2] + (up * size[2]) / 2];
      }),
    ),
  );
}

function shapeOf(pen: Pen, obstacle: Obstacle, twin: boolean): Shape {
  const place = (at: Point) => (twin ? mirrored(at) : at);
  if (obstacle.kind === 'box') return { ...pen.block('frame', corners(obstacle).map(place)), fill: 'hatch' };
  const [from, to] = [place(obstacle.from), place(obstacle.to)];
  if (obstacle.kind === 'capsule')
    return {
      ...pen.hull(pen.ball('frame', from, obstacle.radius), pen.ball('frame', to, obstacle.radius)),
      fill: 'hatch',
    };
  const axis = unit(subtract(to, from));
  return {
    ...pen.hull(pen.disc('frame', from, axis, obstacle.radius), pen.disc('frame', to, axis, obstacle.radius)),
    fill: 'hatch',
  };
}

/** On which side of the middle most of an obstacle lies. */
function across(obstacle: Obstacle): number {
  return obstacle.kind === 'box' ? obstacle.centre[1] : obstacle.from[1] + obstacle.to[1];
}

/** The obstacles, with their mirror images. */
export function drawObstacles(pen: Pen, layout: Layout): void {
  layout.obstacles.forEach((obstacle, i) => {
    for (const twin of obstacle.mirrored ? [false, true] : [false]) {
      const right = across(obstacle) < 0 !== twin;
      pen.add({
        id: twin ? `obstacle-${i}-mirrored` : `obstacle-${i}`,
        name: obstacle.name,
        role: 'obstacle',
        ...(obstacle.mirrored ? { side: right ? 'right' : 'left' } : {}),
        hardpoints: [],
        shapes: [shapeOf(pen, obstacle, twin)],
      });
    }
  });
}
