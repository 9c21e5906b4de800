import { mirrored, type Point } from '../geometry/points.ts';
import { add, dot, scaled, subtract, unit } from '../geometry/vectors.ts';
import type { Layout, Obstacle, Rail } from '../layout/index.ts';
import { toRadians } from '../units/index.ts';
import type { Body, BodyPart, Carried } from './body.ts';
import { BOX, SEGMENT, SOLID } from './shapes.ts';

const fixed = (at: Point): Carried => ({ carrier: 'frame', at });

/**
 * A stretch of a rail: the block between its upright sections at both ends, as rails are drawn and mitred. Width lies
 * across the car for a rail along it, along the car for one across, and in plan for one that stands.
 */
function railBlock(rail: Rail, from: Point, to: Point): BodyPart {
  const half = scaled(subtract(to, from), 0.5);
  const size = half.map(Math.abs) as [number, number, number];
  const main = size.indexOf(Math.max(...size));
  const wide: Point = main === 1 ? [rail.width / 2, 0, 0] : [0, rail.width / 2, 0];
  const high: Point = main === 2 ? [rail.height / 2, 0, 0] : [0, 0, rail.height / 2];
  return { kind: BOX, numbers: [...add(from, half), ...half, ...wide, ...high] };
}

function railPaths(layout: Layout): { id: string; rail: Rail; path: readonly Point[] }[] {
  return layout.rails.flatMap((rail, i) => [
    { id: `rail-${i}`, rail, path: rail.path },
    ...(rail.mirrored ? [{ id: `rail-${i}-mirrored`, rail, path: rail.path.map(mirrored) }] : []),
  ]);
}

function distanceFromPath(point: Point, path: readonly Point[]): number {
  let least = Number.POSITIVE_INFINITY;
  for (let i = 1; i < path.length; i += 1) {
    const from = path[i - 1] as Point;
    const along = subtract(path[i] as Point, from);
    const share = Math.min(1, Math.max(0, dot(subtract(point, from), along) / dot(along, along)));
    least = Math.min(least, Math.hypot(...subtract(point, add(from, scaled(along, share)))));
  }
  return least;
}

/** mm. A frame end within this of a crossmember's middle is taken as bolted to it. */
const BOLTED = 150;

/** Ids of what carries a frame end by design: the rail that is nearest to it, and crossmembers beside it. */
export function nearestRail(layout: Layout, point: Point): string[] {
  const rails = railPaths(layout)
    .map(({ id, path }) => ({ id, off: distanceFromPath(point, path) }))
    .sort((a, b) => a.off - b.off)
    .slice(0, 1);
  return [...rails.map(({ id }) => id), ...crossmembersAt(layout, point)];
}

/** Ids of the crossmembers that a frame end beside them is bolted to. */
export function crossmembersAt(layout: Layout, point: Point): string[] {
  return layout.obstacles.flatMap((obstacle, i) => {
    if (obstacle.role !== 'crossmember') return [];
    return [false, true]
      .filter((twin) => !twin || obstacle.mirrored)
      .filter((twin) => distanceFromPath(twin ? mirrored(point) : point, middleLine(obstacle)) < BOLTED)
      .map((twin) => obstacleId(i, twin));
  });
}

function obstacleId(index: number, twin: boolean): string {
  return `obstacle-${index}${twin ? '-mirrored' : ''}`;
}

/** Half edges of an obstacle that is a box, turned about z. */
function halfEdges(obstacle: Extract<Obstacle, { kind: 'box' }>): [Point, Point, Point] {
  const [length, width, height] = obstacle.size;
  const c = Math.cos(toRadians(obstacle.turn ?? 0));
  const s = Math.sin(toRadians(obstacle.turn ?? 0));
  return [
    [(length / 2) * c, (length / 2) * s, 0],
    [(-width / 2) * s, (width / 2) * c, 0],
    [0, 0, height / 2],
  ];
}

/** The line through an obstacle's length. */
function middleLine(obstacle: Obstacle): [Point, Point] {
  if (obstacle.kind !== 'box') return [obstacle.from, obstacle.to];
  const [length, width] = obstacle.size;
  const edges = halfEdges(obstacle);
  const along = edges[length >= width ? 0 : 1];
  return [subtract(obstacle.centre, along), add(obstacle.centre, along)];
}

function obstaclePart(obstacle: Obstacle, twin: boolean): BodyPart {
  const place = (point: Point) => (twin ? mirrored(point) : point);
  if (obstacle.kind === 'box')
    return {
      kind: BOX,
      numbers: [...place(obstacle.centre), ...halfEdges(obstacle).flatMap((edge) => [...place(edge)])],
    };
  const from = place(obstacle.from);
  const to = place(obstacle.to);
  if (obstacle.kind === 'capsule')
    return { kind: SEGMENT, radius: obstacle.radius, from: fixed(from), to: fixed(to) };
  const along = subtract(to, from);
  const centre = add(from, scaled(along, 0.5));
  return {
    kind: SOLID,
    centre: fixed(centre),
    tip: fixed(add(centre, unit(along))),
    half: Math.hypot(...along) / 2,
    outer: obstacle.radius,
    inner: 0,
  };
}

/** mm. A steering box as a cylinder about its sector shaft, from its cover to the face that the arm swings before. */
const BOX_BODY = { radius: 44, cover: 52, face: 22, off: 16, least: 4, power: 1.22 } as const;

/** The steering box where the layout has it. */
export function steeringBox(layout: Layout): Body {
  const { sectorCentre, sectorAxis, pitmanBall, assist } = layout.steering.box;
  const axis = unit(sectorAxis);
  const along = dot(subtract(pitmanBall, sectorCentre), axis);
  // With the ball level with the centre nothing tells on which side the box is: then it is inboard.
  const outward = Math.sign(axis[1] * sectorCentre[1]) || 1;
  const toArm = Math.abs(along) > 1 ? Math.sign(along) : outward;
  const size = assist === 'power' ? BOX_BODY.power : 1;
  const face = Math.max(BOX_BODY.least, Math.min(Math.abs(along) - BOX_BODY.off, BOX_BODY.face * size));
  const cover = BOX_BODY.cover * size;
  const centre = add(sectorCentre, scaled(axis, (toArm * (face - cover)) / 2));
  return {
    id: 'box',
    name: 'steering box',
    role: 'box',
    hardpoint: 'steering.box.sectorCentre',
    assumed: true,
    joins: ['pitman-arm'],
    parts: [
      {
        kind: SOLID,
        centre: fixed(centre),
        tip: fixed(add(centre, axis)),
        half: (face + cover) / 2,
        outer: BOX_BODY.radius * size,
        inner: 0,
      },
    ],
  };
}

/** "Engine block" as it stands within a sentence; "V8 block" as it is. */
function withinSentence(name: string): string {
  return /^\p{Lu}\p{Ll}/u.test(name) ? name.charAt(0).toLowerCase() + name.slice(1) : name;
}

/** mm. Half a usual shaft, and half the size of a usual joint's body. */
const SHAFT = { tube: 9.525, joint: 22.225 } as const;

/** The steering shaft, which turns where it is: for what moves it stands still. */
export function steeringShaft({ shaft }: Layout): Body[] {
  if (!shaft) return [];
  const stops = [shaft.column.end, ...shaft.joints.map(({ centre }) => centre), shaft.box.end];
  const tube = (i: number) => (shaft.shafts[i - 1]?.stock?.diameter ?? 2 * SHAFT.tube) / 2;
  const capsule = (from: Point, to: Point, radius: number): BodyPart => ({
    kind: SEGMENT,
    radius,
    from: fixed(from),
    to: fixed(to),
  });
  return [
    {
      id: 'shaft',
      name: 'steering shaft',
      role: 'box',
      hardpoint: `shaft.joints.${shaft.joints.length - 1}.centre`,
      joins: [],
      parts: [
        ...stops.slice(1).map((to, i) => capsule(stops[i] as Point, to, tube(i))),
        ...shaft.joints.map(({ centre }) => capsule(centre, centre, SHAFT.joint)),
      ],
    },
  ];
}

/** What the frame carries: rails, obstacles, the steering box and shaft; mirrored ones twice. */
export function fixedBodies(layout: Layout): Body[] {
  const rails = railPaths(layout).map(
    ({ id, rail, path }): Body => ({
      id,
      name: `${path[0] && path[0][1] < 0 ? 'right' : 'left'} rail`,
      role: 'frame',
      joins: [],
      parts: path.slice(1).map((to, i) => railBlock(rail, path[i] as Point, to)),
    }),
  );
  const obstacles = layout.obstacles.flatMap((obstacle, i) =>
    (obstacle.mirrored ? [false, true] : [false]).map(
      (twin): Body => ({
        id: obstacleId(i, twin),
        name: withinSentence(obstacle.name),
        role: 'obstacle',
        joins: [],
        parts: [obstaclePart(obstacle, twin)],
      }),
    ),
  );
  return [steeringBox(layout), ...steeringShaft(layout), ...rails, ...obstacles];
}
