import type { Disc, Drawing, Section, Shape } from '../../shared-math/drawing/drawing.ts';

/**
 * Where rays meet the convex solids of a drawing, by brute force: each solid as many half spaces, from points all over it.
 * Knows nothing of how the pictorial orders them.
 */

type Vector = readonly [number, number, number];

const dot = (a: Vector, b: Vector) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const plus = (a: Vector, b: Vector, factor = 1): Vector => [
  a[0] + factor * b[0],
  a[1] + factor * b[1],
  a[2] + factor * b[2],
];
const times = (a: Vector, b: Vector): Vector => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
const unit = (a: Vector): Vector => {
  const length = Math.hypot(...a) || 1;
  return [a[0] / length, a[1] / length, a[2] / length];
};

/** Directions spread evenly over a sphere, on a golden spiral. */
const SPREAD: readonly Vector[] = Array.from({ length: 500 }, (_, i) => {
  const z = 1 - (2 * i + 1) / 500;
  const around = i * Math.PI * (3 - Math.sqrt(5));
  const level = Math.sqrt(1 - z * z);
  return [level * Math.cos(around), level * Math.sin(around), z];
});

interface Bounded {
  readonly part: number;
  /** Outward normals and how far the solid reaches along each. */
  readonly normals: readonly Vector[];
  readonly reaches: readonly number[];
  /** Two discs through both of which one sees past. */
  readonly opening?: readonly { readonly at: Vector; readonly axis: Vector; readonly radius: number }[];
}

const pointOf = (placed: Float64Array, point: number): Vector => [
  placed[3 * point] as number,
  placed[3 * point + 1] as number,
  placed[3 * point + 2] as number,
];

function squareTo(axis: Vector): readonly [Vector, Vector] {
  const first = unit(times(axis, Math.abs(axis[2]) < 0.8 ? [0, 0, 1] : [1, 0, 0]));
  return [first, times(axis, first)];
}

const AROUND = Array.from({ length: 60 }, (_, i) => (i * Math.PI) / 30);

/** Points of a disc's rim, its axis, and the directions square to it. */
function spread(disc: Disc, placed: Float64Array) {
  const at = pointOf(placed, disc.at);
  const axis = unit(plus(pointOf(placed, disc.tip), at, -1));
  if (disc.radius === 0) return { axis: undefined, rim: [at], square: [] };
  const [a, b] = squareTo(axis);
  const square = AROUND.map((angle) => plus(scale(a, Math.cos(angle)), b, Math.sin(angle)));
  return { axis, rim: square.map((way) => plus(at, way, disc.radius)), square };
}
const scale = (a: Vector, factor: number): Vector => [a[0] * factor, a[1] * factor, a[2] * factor];

function boundedBy(
  part: number,
  points: readonly { readonly at: Vector; readonly round: number }[],
  special: readonly Vector[],
  opening?: Bounded['opening'],
): Bounded {
  const normals = [...SPREAD, ...special.flatMap((way) => [unit(way), scale(unit(way), -1)])];
  const reaches = normals.map((normal) =>
    points.reduce((most, { at, round }) => Math.max(most, dot(at, normal) + round), -Infinity),
  );
  return opening ? { part, normals, reaches, opening } : { part, normals, reaches };
}

function boundedShape(part: number, shape: Shape, placed: Float64Array): Bounded[] {
  if (shape.kind === 'line') return [];
  if (shape.kind === 'body') {
    const discs = shape.discs.map((disc) => ({ ...spread(disc, placed), round: disc.round }));
    const points = discs.flatMap(({ rim, round }) => rim.map((at) => ({ at, round })));
    const special = discs.flatMap(({ axis, square }) => (axis ? [axis, ...square] : []));
    // Rods and arms: square to the way from one end to the other, which their discs do not say.
    const middles = shape.discs.map((disc) => pointOf(placed, disc.at));
    const along = plus(middles.at(-1) as Vector, middles[0] as Vector, -1);
    const [a, b] = squareTo(unit(along));
    special.push(...AROUND.map((angle) => plus(scale(a, Math.cos(angle)), b, Math.sin(angle))));
    const opening = shape.opening?.map((disc) => ({
      at: pointOf(placed, disc.at),
      axis: unit(plus(pointOf(placed, disc.tip), pointOf(placed, disc.at), -1)),
      radius: disc.radius,
    }));
    return [boundedBy(part, points, special, opening)];
  }
  if (shape.kind === 'block') {
    const corners = shape.points.map((point) => pointOf(placed, point));
    const edges = [1, 2, 4].map((corner) => plus(corners[corner] as Vector, corners[0] as Vector, -1));
    const [a, b, c] = edges as [Vector, Vector, Vector];
    return [
      boundedBy(
        part,
        corners.map((at) => ({ at, round: 0 })),
        [times(a, b), times(b, c), times(c, a)],
      ),
    ];
  }
  return shape.sections.slice(1).map((to, i) => {
    const from = shape.sections[i] as Section;
    const sides = [from, to].map((section) => {
      const centre = pointOf(placed, section.centre);
      return {
        centre,
        up: plus(pointOf(placed, section.up), centre, -1),
        out: plus(pointOf(placed, section.out), centre, -1),
      };
    });
    const corners = sides.flatMap(({ centre, up, out }) =>
      [1, -1].flatMap((u) => [1, -1].map((o) => plus(plus(centre, up, u), out, o))),
    );
    const [a, b] = sides as [(typeof sides)[number], (typeof sides)[number]];
    const along = plus(b.centre, a.centre, -1);
    return boundedBy(
      part,
      corners.map((at) => ({ at, round: 0 })),
      [times(along, a.up), times(along, a.out), times(a.up, a.out)],
    );
  });
}

/** The solids of the shapes of a drawing that `isDrawn` says are drawn. */
export function boundedSolids(
  drawing: Drawing,
  placed: Float64Array,
  isDrawn: (shape: Shape) => boolean,
): Bounded[] {
  return drawing.parts.flatMap((part, index) =>
    part.shapes.filter(isDrawn).flatMap((shape) => boundedShape(index, shape, placed)),
  );
}

/**
 * The stretch of the ray from `origin` along `way` that lies in a solid, mm; undefined if it misses it, or passes through its
 * opening. Never shorter than the true one.
 */
export function stretchIn(
  { normals, reaches, opening }: Bounded,
  origin: Vector,
  way: Vector,
): readonly [from: number, to: number] | undefined {
  let from = -Infinity;
  let to = Infinity;
  for (let i = 0; i < normals.length; i += 1) {
    const normal = normals[i] as Vector;
    const rate = dot(normal, way);
    const left = (reaches[i] as number) - dot(normal, origin);
    if (Math.abs(rate) < 1e-12) {
      if (left < 0) return undefined;
    } else if (rate > 0) to = Math.min(to, left / rate);
    else from = Math.max(from, left / rate);
    if (from >= to) return undefined;
  }
  const through = opening?.every(({ at, axis, radius }) => {
    const share = dot(plus(at, origin, -1), axis) / dot(way, axis);
    return Math.hypot(...plus(plus(origin, way, share), at, -1)) < radius;
  });
  return through ? undefined : [from, to];
}
