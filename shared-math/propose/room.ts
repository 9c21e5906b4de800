import type { Point } from '../geometry/points.ts';
import { add, cross, dot, scaled, subtract, unit } from '../geometry/vectors.ts';
import type { Layout } from '../layout/index.ts';
import { type RouteObstacle, routeObstacles, segmentToObstacle } from '../shaft/index.ts';
import { type LengthStyle, lengthBeside } from '../units/index.ts';
import { turnedAbout } from './arms.ts';
import { railFacesNear } from './rail-faces.ts';
import { BODY, PLATE } from './sizes.ts';

// Where a box can be bolted: near enough to a rail or crossmember to reach it with a plate or bracket, in none of them,
// and clear of engine, headers and whatever else the frame carries.

/** mm that a box wants around it to be put in and taken out with a wrench; common practice, no published source. */
const AROUND = 10;
/** What stands in for the round body's flat ends: the line is drawn in by this share of the radius. */
const DRAWN_IN = 0.6;

interface Thing {
  readonly obstacle: RouteObstacle;
  /** Whether a box may be bolted to it. */
  readonly holds: boolean;
}

/** The box's body as a line and a radius, mm. */
export interface BoxLine {
  readonly from: Point;
  readonly to: Point;
  readonly radius: number;
}

export function boxLine({ steering }: Layout): BoxLine {
  const { sectorCentre, sectorAxis, pitmanBall, assist } = steering.box;
  const axis = unit(sectorAxis);
  const toArm = dot(subtract(pitmanBall, sectorCentre), axis) >= 0 ? 1 : -1;
  const size = assist === 'power' ? BODY.assisted : 1;
  const radius = BODY.radius * size;
  const drawnIn = DRAWN_IN * radius;
  const [face, cover] = [BODY.face * size - drawnIn, BODY.cover * size - drawnIn];
  return {
    from: add(sectorCentre, scaled(axis, toArm * face)),
    to: add(sectorCentre, scaled(axis, -toArm * cover)),
    radius,
  };
}

/** Lines on the skin of a box's body, flat ends and all: along it and from the middles of its ends outward, 24 around. */
function skinOf(layout: Layout): (readonly [Point, Point])[] {
  const { from, to, radius } = boxLine(layout);
  const axis = unit(subtract(to, from));
  const drawnIn = scaled(axis, DRAWN_IN * radius);
  const [face, cover] = [subtract(from, drawnIn), add(to, drawnIn)];
  const aside = unit(cross(axis, Math.abs(axis[2]) > 0.7 ? [1, 0, 0] : [0, 0, 1]));
  return Array.from({ length: 24 }, (_, i) => {
    const out = scaled(turnedAbout(axis, (i * Math.PI) / 12, aside), radius);
    const [a, b] = [add(face, out), add(cover, out)];
    return [[a, b] as const, [face, a] as const, [cover, b] as const];
  }).flat();
}

/** mm from the box's body to the nearest crossmember that is drawn; infinity where none is. */
export function crossmemberGap(layout: Layout): number {
  const crossmembers = layout.obstacles.filter(({ role }) => role === 'crossmember');
  if (crossmembers.length === 0) return Number.POSITIVE_INFINITY;
  const { from, to, radius } = boxLine(layout);
  const distances = routeObstacles({ ...layout, rails: [], obstacles: crossmembers }).map((obstacle) =>
    segmentToObstacle(obstacle, from, to),
  );
  return Math.min(...distances) - radius;
}

/** mm along the sector shaft from the face of a usual box to the middle of its arm. */
export function sectorOut({ steering }: Layout): number {
  const { sectorCentre, sectorAxis, pitmanBall, assist } = steering.box;
  const along = Math.abs(dot(subtract(pitmanBall, sectorCentre), unit(sectorAxis)));
  return along - BODY.face * (assist === 'power' ? BODY.assisted : 1);
}

/** mm that stay under the box where the frame has gone down by all of its bump travel; common practice, no published source. */
const OVER_THE_ROAD = 50.8;

/** mm by which the box's underside stands too low over the road. */
export function tooLow(layout: Layout): number {
  const { from, to, radius } = boxLine(layout);
  return Math.max(0, layout.travel.bump + OVER_THE_ROAD - (Math.min(from[2], to[2]) - radius));
}

/** mm of road under a box, below which it is the first of the frame to touch where it hangs under its rail; common practice, no published source. */
const FIRST_TO_TOUCH = 203.2;

/** mm that a box hangs below the rail beside it, and what is left of the road under it; undefined where that is no matter. */
export function hangsLow(layout: Layout): { readonly below: number; readonly road: number } | undefined {
  const { from, to, radius } = boxLine(layout);
  const road = Math.min(from[2], to[2]) - radius;
  const below = railFacesNear(layout, from[0]).bottom - road;
  return below > radius / 4 && road < FIRST_TO_TOUCH ? { below, road } : undefined;
}

/** mm. The box's own shape is a usual one: nearer than this to nothing is as good as clear. */
export const HARDLY = 1;

/** Something that a box reaches into, and how deep, mm. */
export interface Reached {
  readonly name: string;
  readonly by: number;
}

/** Why no box can be bolted there, as a sentence; empty if one can. */
export function roomWords(outOfReach: number, reached: readonly Reached[], style: LengthStyle): string {
  if (reached.length > 0) {
    const into = reached.map(
      ({ name, by }) =>
        `${lengthBeside(by, [0], style)} into the ${name.charAt(0).toLowerCase()}${name.slice(1)}`,
    );
    return `The steering box reaches ${[into.slice(0, -1).join(', '), ...into.slice(-1)].filter((words) => words !== '').join(' and ')}.`;
  }
  return outOfReach > HARDLY ? 'Neither rail nor crossmember is in reach of the steering box.' : '';
}

/** What is missing of a box's room, mm each. */
export interface BoxRoom {
  /** To be bolted anywhere: 0 where a rail or crossmember is in reach. */
  readonly outOfReach: number;
  /** Into the nearest thing, with what is wanted around it. */
  readonly overlap: number;
}

/** Looks at the places of boxes on one car. */
export class BoxPlaces {
  private readonly things: readonly Thing[];
  private readonly unbounded: boolean;
  private readonly crossmembers: ReadonlySet<string>;

  constructor(layout: Layout) {
    const rails = layout.rails.reduce(
      (sum, { path, mirrored }) => sum + (path.length - 1) * (mirrored ? 2 : 1),
      0,
    );
    this.crossmembers = new Set(
      layout.obstacles.filter(({ role }) => role === 'crossmember').map(({ name }) => name),
    );
    this.things = routeObstacles(layout).map((obstacle, i) => ({
      obstacle,
      holds: i < rails || this.crossmembers.has(obstacle.name),
    }));
    // Without a rail or crossmember nobody knows what a box could be bolted to.
    this.unbounded = !this.things.some(({ holds }) => holds);
  }

  room(layout: Layout): BoxRoom {
    const { from, to, radius } = boxLine(layout);
    let reach = Number.POSITIVE_INFINITY;
    let overlap = 0;
    for (const { obstacle, holds } of this.things) {
      const distance = segmentToObstacle(obstacle, from, to) - radius;
      if (holds) reach = Math.min(reach, distance);
      overlap = Math.max(overlap, (holds ? 1 : AROUND + (obstacle.extra ?? 0)) - distance);
    }
    return { outOfReach: this.unbounded ? 0 : Math.max(0, reach - PLATE.most), overlap };
  }

  /**
   * What a bracket has to bridge from the nearest thing that holds the box, mm; undefined where nobody knows what that is.
   * `to` names the kind of thing that it is said to be on.
   */
  bridged(
    layout: Layout,
    to: 'crossmember' | 'any',
  ): { readonly by: number; readonly from: string } | undefined {
    const skin = skinOf(layout);
    let nearest: { readonly by: number; readonly from: string } | undefined;
    for (const { obstacle, holds } of this.things) {
      if (!holds || (to === 'crossmember' && !this.crossmembers.has(obstacle.name))) continue;
      const by = Math.min(...skin.map(([from, to]) => segmentToObstacle(obstacle, from, to)));
      if (!nearest || by < nearest.by) nearest = { by, from: obstacle.name };
    }
    return nearest;
  }

  /** All that the box itself reaches into, the deepest first; one of a pair speaks for both. */
  reached(layout: Layout): Reached[] {
    const { from, to, radius } = boxLine(layout);
    const deepest = new Map<string, number>();
    for (const { obstacle } of this.things) {
      const by = radius - segmentToObstacle(obstacle, from, to);
      if (by > HARDLY) deepest.set(obstacle.name, Math.max(by, deepest.get(obstacle.name) ?? 0));
    }
    return [...deepest].map(([name, by]) => ({ name, by })).sort((a, b) => b.by - a.by);
  }
}
