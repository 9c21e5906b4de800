import { mirrored, type Point } from '../../../../shared-math/geometry/points.ts';
import {
  add,
  cross,
  dot,
  midpoint,
  scaled,
  subtract,
  unit,
} from '../../../../shared-math/geometry/vectors.ts';
import {
  type Carrier,
  halvesOfSpring,
  lateralBars,
  type Obstacle,
  SIDES,
} from '../../../../shared-math/layout/index.ts';
import { toRadians } from '../../../../shared-math/units/index.ts';
import type { Scene } from '../scene.ts';
import type { ViewLayer } from './layers.ts';

/** A line in space between places of the car, mm. */
export interface SpaceLine {
  readonly layer: ViewLayer;
  readonly name: string;
  readonly points: readonly Point[];
}

/** The foot of a point on the line through two others. */
function footOn(point: Point, a: Point, b: Point): Point {
  const along = unit(subtract(b, a));
  return add(a, scaled(along, dot(subtract(point, a), along)));
}

/** The middle lines of everything that steers or holds the axle, and of the shaft; in the scene's pose. */
export function centreLines({ layout, place }: Scene): SpaceLine[] {
  const { axle, steering, location, lateral, shaft } = layout;
  const { box, dragLinkBall, dragLinkTo } = steering;
  const lines: SpaceLine[] = [];
  const line = (layer: ViewLayer, name: string, ...ends: (readonly [Carrier, Point])[]) =>
    lines.push({ layer, name, points: ends.map(([carrier, at]) => place(carrier, at)) });

  line('axle', 'axle', ['axle-left', axle.left.wheelCentre], ['axle-right', axle.right.wheelCentre]);
  for (const side of SIDES) {
    const { kingpinTop, kingpinBottom, tieRodBall, wheelCentre } = axle[side];
    line('axle', 'kingpin', [`axle-${side}`, kingpinBottom], [`axle-${side}`, kingpinTop]);
    const foot = footOn(wheelCentre, kingpinBottom, kingpinTop);
    line('axle', 'spindle', [`spindle-${side}`, foot], [`spindle-${side}`, wheelCentre]);
    line(
      'steering',
      'tie rod arm',
      [`spindle-${side}`, footOn(tieRodBall, kingpinBottom, kingpinTop)],
      [`spindle-${side}`, tieRodBall],
    );
  }
  line(
    'steering',
    'tie rod',
    ['spindle-left', axle.left.tieRodBall],
    ['spindle-right', axle.right.tieRodBall],
  );
  const driven = axle[dragLinkTo];
  const spindle = `spindle-${dragLinkTo}` as const;
  line(
    'steering',
    'steering arm',
    [spindle, footOn(dragLinkBall, driven.kingpinBottom, driven.kingpinTop)],
    [spindle, dragLinkBall],
  );
  line('steering', 'drag link', [spindle, dragLinkBall], ['pitman', box.pitmanBall]);
  const hub = footOn(box.pitmanBall, box.sectorCentre, add(box.sectorCentre, box.sectorAxis));
  line('steering', 'pitman arm', ['pitman', hub], ['pitman', box.pitmanBall]);
  line('steering', 'sector shaft', ['frame', box.sectorCentre], ['frame', hub]);

  if (location.kind === 'wishbone')
    for (const side of SIDES)
      line(
        'location',
        'wishbone',
        [`axle-${side}`, axle[side].kingpinBottom],
        ['frame', location.framePivot],
      );
  else
    for (const side of SIDES) {
      const half = `axle-${side}` as const;
      if (location.kind === 'hairpins') {
        const ends = [axle[side].kingpinTop, axle[side].kingpinBottom];
        for (const end of ends)
          line('location', 'hairpin', [half, end], ['frame', location[side].framePivot]);
      } else if (location.kind === 'quarter-elliptic') {
        const { butt, clamp, eye, rod } = location[side];
        line('location', 'quarter-elliptic spring', ['frame', butt], ['frame', clamp], [half, eye]);
        line('location', 'radius rod', [half, rod.axle], ['frame', rod.frame]);
      } else if (location.kind === 'split-rods')
        line(
          'location',
          'radius rod',
          [half, midpoint(axle[side].kingpinTop, axle[side].kingpinBottom)],
          ['frame', location[side].framePivot],
        );
      else if (location.kind === 'four-bar')
        for (const bar of ['upper', 'lower'] as const)
          line(
            'location',
            `${bar} bar`,
            [half, location[side][bar].axle],
            ['frame', location[side][bar].frame],
          );
      else
        line(
          'location',
          'leaf spring',
          ['frame', location[side].fixedEye],
          [half, location[side].seat],
          ['frame', location[side].shackleEye],
        );
    }
  for (const { name, from, to } of lateralBars(lateral))
    line(
      'location',
      name.charAt(0).toLowerCase() + name.slice(1),
      [from.carrier, from.at],
      [to.carrier, to.at],
    );
  if (lateral.kind === 'watt')
    line(
      'location',
      'rocker',
      ['rocker', lateral.upper.rocker],
      ['rocker', lateral.pivot],
      ['rocker', lateral.lower.rocker],
    );
  if (lateral.kind === 'fixed-spring') {
    const { fixed, shackled } = halvesOfSpring(lateral);
    const { clamp, eye } = lateral;
    line(
      'location',
      'transverse spring',
      [`axle-${fixed}`, eye],
      ['frame', clamp],
      ['frame', mirrored(clamp)],
      [`axle-${shackled}`, mirrored(eye)],
    );
  }

  if (shaft)
    lines.push({
      layer: 'shaft',
      name: 'shaft',
      points: [shaft.column.end, ...shaft.joints.map(({ centre }) => centre), shaft.box.end],
    });
  for (const { path, mirrored: both, name } of layout.rails)
    for (const twin of both ? [false, true] : [false])
      lines.push({ layer: 'rails', name, points: twin ? path.map(mirrored) : path });
  for (const obstacle of layout.obstacles)
    for (const twin of obstacle.mirrored ? [false, true] : [false])
      for (const points of edgesOf(obstacle))
        lines.push({ layer: 'obstacles', name: obstacle.name, points: twin ? points.map(mirrored) : points });
  return lines;
}

/** Points of a circle about an axis, closed. */
function ring(centre: Point, axis: Point, radius: number, count = 48): Point[] {
  const along = unit(axis);
  const wish: Point = Math.abs(along[2]) < 0.9 ? [0, 0, 1] : [1, 0, 0];
  const u = unit(cross(along, wish));
  const v = cross(along, u);
  return Array.from({ length: count + 1 }, (_, i) => {
    const angle = (i / count) * 2 * Math.PI;
    return add(centre, add(scaled(u, radius * Math.cos(angle)), scaled(v, radius * Math.sin(angle))));
  });
}

/** An obstacle's edges: a box's rims and posts; a tube's middle line and its two ends. */
function edgesOf(obstacle: Obstacle): Point[][] {
  if (obstacle.kind !== 'box') {
    const { from, to, radius } = obstacle;
    const axis = subtract(to, from);
    return [[from, to], ring(from, axis, radius), ring(to, axis, radius)];
  }
  const { centre, size, turn = 0 } = obstacle;
  const [c, s] = [Math.cos(toRadians(turn)), Math.sin(toRadians(turn))];
  const rim = (up: number): Point[] =>
    [
      [1, 1],
      [-1, 1],
      [-1, -1],
      [1, -1],
      [1, 1],
    ].map(([along, across]) => {
      const [x, y] = [((along as number) * size[0]) / 2, ((across as number) * size[1]) / 2];
      return [centre[0] + c * x - s * y, centre[1] + s * x + c * y, centre[2] + (up * size[2]) / 2];
    });
  const [lower, upper] = [rim(-1), rim(1)];
  const posts = lower.slice(0, 4).map((at, i) => [at, upper[i] as Point]);
  return [lower, upper, ...posts];
}
