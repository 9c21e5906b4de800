import { mirrored, type Point } from '../../shared-math/geometry/points.ts';
import {
  type LayoutDocument,
  type Obstacle,
  type Rail,
  resolveLayout,
} from '../../shared-math/layout/index.ts';

// What the frame carries and a steering box or shaft reaches into, by points laid in them one by one: no distance of the
// program is asked. What stands still is not judged where only moving parts are.

const RAD = Math.PI / 180;
const sub = (a: Point, b: Point): Point => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
const dot = (a: Point, b: Point): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const along = (a: Point, b: Point, share: number): Point => [
  a[0] + share * (b[0] - a[0]),
  a[1] + share * (b[1] - a[1]),
  a[2] + share * (b[2] - a[2]),
];

function isInObstacle(obstacle: Obstacle, point: Point): boolean {
  if (obstacle.kind === 'box') {
    const [x, y, z] = sub(point, obstacle.centre);
    const turn = (obstacle.turn ?? 0) * RAD;
    const local = [x * Math.cos(turn) + y * Math.sin(turn), -x * Math.sin(turn) + y * Math.cos(turn), z];
    return local.every((value, i) => Math.abs(value) < (obstacle.size[i] as number) / 2);
  }
  const { from, to, radius } = obstacle;
  const way = sub(to, from);
  const share = dot(sub(point, from), way) / dot(way, way);
  if (obstacle.kind === 'cylinder' && (share < 0 || share > 1)) return false;
  const nearest = along(from, to, Math.min(1, Math.max(0, share)));
  return Math.hypot(...sub(point, nearest)) < radius;
}

/** Of rails that run along the car. */
function isInRail({ path, width, height }: Rail, [x, y, z]: Point): boolean {
  return path.slice(1).some((b, i) => {
    const a = path[i] as Point;
    if (a[0] === b[0] || (x - a[0]) * (x - b[0]) > 0) return false;
    const [, middle, up] = along(a, b, (x - a[0]) / (b[0] - a[0]));
    return Math.abs(y - middle) < width / 2 && Math.abs(z - up) < height / 2;
  });
}

/** mm about the sector shaft: less than any steering box is around it. */
const BOX = { radius: 38, toCover: 44, toFace: 10 };

/** Points of a round body about the sector shaft that is smaller than any box; 32 around, from the middle to its skin. */
function pointsOfBox({ sectorCentre, sectorAxis, pitmanBall }: LayoutDocument['steering']['box']): Point[] {
  const length = Math.hypot(...sectorAxis);
  const axis = sectorAxis.map((value) => value / length) as unknown as Point;
  const toArm = dot(sub(pitmanBall, sectorCentre), axis) >= 0 ? 1 : -1;
  const aside: Point = Math.abs(axis[2]) > 0.7 ? [1, 0, 0] : [0, 0, 1];
  const off = sub(aside, axis.map((value) => value * dot(aside, axis)) as unknown as Point);
  const e = off.map((value) => value / Math.hypot(...off)) as unknown as Point;
  const f: Point = [
    axis[1] * e[2] - axis[2] * e[1],
    axis[2] * e[0] - axis[0] * e[2],
    axis[0] * e[1] - axis[1] * e[0],
  ];
  const points: Point[] = [];
  for (let on = -BOX.toCover; on <= BOX.toFace; on += 6)
    for (const share of [0, 0.5, 1])
      for (let turn = 0; turn < 360; turn += 11.25) {
        const [c, s] = [Math.cos(turn * RAD), Math.sin(turn * RAD)].map(
          (each) => each * share * BOX.radius,
        ) as [number, number];
        points.push(
          [0, 1, 2].map(
            (i) =>
              (sectorCentre[i] as number) +
              toArm * on * (axis[i] as number) +
              c * (e[i] as number) +
              s * (f[i] as number),
          ) as unknown as Point,
        );
      }
  return points;
}

/** Points of the steering shaft's middle line, from the column's end to the box. */
function pointsOfShaft({ shaft }: LayoutDocument): Point[] {
  if (!shaft) return [];
  const stops = [shaft.column.end, ...shaft.joints.map(({ centre }) => centre), shaft.box.end];
  return stops.slice(1).flatMap((to, i) => {
    const from = stops[i] as Point;
    return Array.from({ length: 101 }, (_, step) => along(from, to, step / 100));
  });
}

/** Each thing on the frame that the box or the shaft is in, as "steering box in the engine". */
export function reachesInto(document: LayoutDocument): string[] {
  const { rails, obstacles } = resolveLayout(document);
  const things = [
    ...rails.map((rail) => ({
      name: rail.name,
      twin: rail.mirrored,
      has: (at: Point) => isInRail(rail, at),
    })),
    ...obstacles.map((obstacle) => ({
      name: obstacle.name,
      twin: obstacle.mirrored,
      has: (at: Point) => isInObstacle(obstacle, at),
    })),
  ];
  const parts = [
    ['steering box', pointsOfBox(document.steering.box)],
    ['steering shaft', pointsOfShaft(document)],
  ] as const;
  return parts.flatMap(([part, points]) =>
    things
      .filter(({ has, twin }) => points.some((at) => has(at) || (twin && has(mirrored(at)))))
      .map(({ name }) => `${part} in the ${name.toLowerCase()}`),
  );
}
