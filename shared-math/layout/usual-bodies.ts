import type { Point } from '../geometry/points.ts';
import { toRadians } from '../units/index.ts';
import type { LayoutDocument, Obstacle, Rail } from './schema.ts';

// Where obstacles usually stand, and how large they are: common practice, no published source. First places to be
// measured over on the car.

/** What a builder adds from the list. */
export type ObstacleRole = Obstacle['role'];

export const OBSTACLE_ROLES: readonly ObstacleRole[] = [
  'engine',
  'sump',
  'header',
  'crossmember',
  'radiator',
  'other',
];

const NAMES: Record<ObstacleRole, string> = {
  engine: 'Engine',
  sump: 'Sump',
  header: 'Header tube',
  crossmember: 'Crossmember',
  radiator: 'Radiator',
  other: 'Part in the way',
};

/** How far the rails' inner faces stand from the middle at a place along the car, and how high their middle is. */
function betweenRails({ rails }: LayoutDocument, x: number): { inner: number; height: number } {
  let inner = Number.POSITIVE_INFINITY;
  let height = 0;
  for (const { path, width } of rails)
    for (let i = 1; i < path.length; i += 1) {
      const [a, b] = [path[i - 1] as Point, path[i] as Point];
      if (a[0] === b[0] || (x - a[0]) * (x - b[0]) > 0) continue;
      const share = (x - a[0]) / (b[0] - a[0]);
      const y = Math.abs(a[1] + share * (b[1] - a[1])) - width / 2;
      if (y >= inner || y <= 0) continue;
      inner = y;
      height = a[2] + share * (b[2] - a[2]);
    }
  return Number.isFinite(inner) ? { inner, height } : { inner: 320, height: 430 };
}

/** A name that no other has yet: "Engine", then "Engine 2". */
function freeName(taken: readonly string[], name: string): string {
  if (!taken.includes(name)) return name;
  let count = 2;
  while (taken.includes(`${name} ${count}`)) count += 1;
  return `${name} ${count}`;
}

const whole = (value: number) => Math.round(value);

/** What of an obstacle depends on what it is: its shape, place and whether there are two. */
function usualShape(document: LayoutDocument, role: ObstacleRole) {
  const ahead = (document.axle.left.wheelCentre[0] as number) + 0;
  const at = (x: number) => betweenRails(document, ahead + x);
  switch (role) {
    case 'engine': {
      const { height } = at(-560);
      const size = [600, 440, 420] as const;
      return box([ahead - 560, 0, whole(height + 30 + size[2] / 2)], size);
    }
    case 'sump': {
      const { height } = at(-690);
      const size = [280, 210, 110] as const;
      return box([ahead - 690, 0, whole(height + 30 - size[2] / 2)], size);
    }
    case 'header': {
      const { inner, height } = at(-760);
      const y = whole(Math.max(60, inner - 45));
      return {
        kind: 'capsule' as const,
        from: [ahead - 480, whole(Math.max(60, y - 40)), whole(height + 170)] as Point,
        to: [ahead - 1000, y, whole(height - 40)] as Point,
        radius: 22,
        mirrored: true,
      };
    }
    case 'crossmember': {
      const { inner, height } = at(0);
      return box([ahead, 0, whole(height + 20)], [76, whole(2 * inner), 50]);
    }
    case 'radiator': {
      const { inner, height } = at(230);
      const size = [60, whole(Math.min(520, 2 * inner - 40)), 460] as const;
      return box([ahead + 230, 0, whole(height + size[2] / 2)], size);
    }
    case 'other': {
      const { height } = at(-300);
      return box([ahead - 300, 0, whole(height)], [100, 100, 100]);
    }
  }
}

function box(centre: Point, size: readonly [number, number, number]) {
  return { kind: 'box' as const, centre, size, mirrored: false };
}

/** An obstacle, at a usual place and of a usual size on this car, under a name of its own. Units: mm. */
export function usualObstacle(document: LayoutDocument, role: ObstacleRole): Obstacle {
  const taken = document.obstacles.map(({ name }) => name);
  return { name: freeName(taken, NAMES[role]), role, ...usualShape(document, role) };
}

/** A pair of frame rails as such cars often have them: 4 by 2 inches, straight, or beside those that are there. */
export function usualRail(document: LayoutDocument): Rail {
  const taken = document.rails.map(({ name }) => name);
  const x = document.axle.left.wheelCentre[0];
  const inward = document.rails.length > 0 ? 100 : 0;
  const z = whole(document.axle.left.kingpinTop[2] + 105);
  return {
    name: freeName(taken, 'Frame rail'),
    path: [
      [x + 430, 345 - inward, z],
      [x - 1500, 400 - inward, z],
    ],
    height: 100,
    width: 50,
    mirrored: true,
  };
}

/** The same thing in another shape, taking up about the same room: a tube lies along a box's longest side. */
export function withKind(obstacle: Obstacle, kind: Obstacle['kind']): Obstacle {
  if (obstacle.kind === kind) return obstacle;
  const { name, role, mirrored } = obstacle;
  if (obstacle.kind !== 'box') {
    if (kind !== 'box') return { ...obstacle, kind };
    const { from, to, radius } = obstacle;
    const middle = from.map((value, axis) => (value + (to[axis] as number)) / 2) as unknown as Point;
    const size = from.map((value, axis) => Math.max(2 * radius, Math.abs(value - (to[axis] as number))));
    return { name, role, mirrored, kind, centre: middle, size: size as [number, number, number] };
  }
  const { centre, size, turn = 0 } = obstacle;
  const longest = size.indexOf(Math.max(...size));
  const others = size.filter((_, axis) => axis !== longest);
  const angle = toRadians(turn);
  const ways: Point[] = [
    [Math.cos(angle), Math.sin(angle), 0],
    [-Math.sin(angle), Math.cos(angle), 0],
    [0, 0, 1],
  ];
  const half = ways[longest]?.map((share) => (share * (size[longest] as number)) / 2) as unknown as Point;
  const end = (way: 1 | -1) =>
    centre.map((value, axis) => whole(10 * (value + way * (half[axis] as number))) / 10) as unknown as Point;
  if (kind === 'box') return obstacle;
  return { name, role, mirrored, kind, from: end(1), to: end(-1), radius: Math.min(...others) / 2 };
}

/** A rail with one more point: midway to the next one, or beyond the last as far as that is from the one before. */
export function withRailPoint(rail: Rail, after: number): Rail {
  const at = rail.path[after] as Point;
  const next = rail.path[after + 1];
  const before = rail.path[after - 1] as Point;
  const between = (a: Point, b: Point, share: number): Point =>
    [0, 1, 2].map((axis) =>
      whole((a[axis] as number) + share * ((b[axis] as number) - (a[axis] as number))),
    ) as unknown as Point;
  const added = next ? between(at, next, 0.5) : between(before, at, 1.5);
  return { ...rail, path: rail.path.toSpliced(after + 1, 0, added) };
}
