import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Point } from '../../shared-math/geometry/points.ts';
import { type LayoutDocument, parseLayout, resolveLayout } from '../../shared-math/layout/index.ts';
import type { Pinhole } from './pinhole.ts';

// The invented front end as it stands before two invented cameras, with what a builder would have measured beside it.

export const PHOTOGRAPHED = join(import.meta.dirname, '../../projects/hairpins-box-too-low.json');

/** The layout that the photos are rendered from. */
export function photographedCar(): LayoutDocument {
  const read = parseLayout(readFileSync(PHOTOGRAPHED, 'utf8'));
  if (!read.ok) throw new Error(read.failure.reason);
  return read.value;
}

/** A photo, the frame of battens that stands in it, and a straight edge; mm of the car. */
export interface Shot {
  readonly view: 'side' | 'top';
  readonly file: string;
  readonly camera: Pinhole;
  /** Upper left corner first, then around to the right, as the photo shows them. */
  readonly frame: readonly [Point, Point, Point, Point];
  readonly width: number;
  readonly height: number;
  /** Where the frame's plane stands along the view, and how far from it the camera. */
  readonly depth: number;
  readonly distance: number;
  readonly edge: readonly [Point, Point];
}

const SIDE_PLANE = 860;
const TOP_PLANE = 0;

export const SHOTS: readonly Shot[] = [
  {
    view: 'side',
    file: 'from the side.png',
    camera: {
      at: [-250, 4700, 820],
      lookAt: [-420, SIDE_PLANE, 450],
      up: [0, 0, 1],
      roll: 0.025,
      focal: 3100,
      size: [2400, 1600],
      bend: 0.035,
    },
    frame: [
      [300, SIDE_PLANE, 800],
      [-1100, SIDE_PLANE, 800],
      [-1100, SIDE_PLANE, 100],
      [300, SIDE_PLANE, 100],
    ],
    width: 1400,
    height: 700,
    depth: SIDE_PLANE,
    distance: 4700 - SIDE_PLANE,
    edge: [
      [650, SIDE_PLANE, 1150],
      [-1450, SIDE_PLANE, 1150],
    ],
  },
  {
    view: 'top',
    file: 'from above.png',
    camera: {
      at: [-350, 250, 4900],
      lookAt: [-430, 60, TOP_PLANE],
      up: [0, -1, 0],
      roll: -0.03,
      focal: 3500,
      size: [2400, 1600],
      bend: 0.03,
    },
    frame: [
      [450, -900, TOP_PLANE],
      [-1350, -900, TOP_PLANE],
      [-1350, 900, TOP_PLANE],
      [450, 900, TOP_PLANE],
    ],
    width: 1800,
    height: 1800,
    depth: TOP_PLANE,
    distance: 4900,
    edge: [
      [900, 1000, TOP_PLANE],
      [-1800, 1000, TOP_PLANE],
    ],
  },
];

const ASKEW = (15 * Math.PI) / 180;
const [FROM_SIDE, FROM_ABOVE] = SHOTS as [Shot, Shot];

/** The same car and frames from four metres, 15° off square: from ahead of the car, and from a ladder before it. */
export const ASKEW_SHOTS: readonly Shot[] = [
  {
    ...FROM_SIDE,
    file: 'askew from the side.png',
    camera: {
      ...FROM_SIDE.camera,
      at: [-420 + 4000 * Math.sin(ASKEW), SIDE_PLANE + 4000 * Math.cos(ASKEW), 820],
      focal: 3000,
    },
    distance: 4000 * Math.cos(ASKEW),
  },
  {
    ...FROM_ABOVE,
    file: 'askew from above.png',
    camera: {
      ...FROM_ABOVE.camera,
      at: [-430 + 4200 * Math.sin(ASKEW), 150, 4200 * Math.cos(ASKEW)],
      focal: 2900,
    },
    distance: 4200 * Math.cos(ASKEW),
  },
];

/** A bar of the car: a thick line from point to point. */
export interface DrawnBar {
  readonly from: Point;
  readonly to: Point;
  readonly radius: number;
  readonly colour: readonly [number, number, number];
}

const STEEL = [88, 98, 108] as const;
const PAINT = [150, 62, 44] as const;
const FRAME = [60, 64, 70] as const;
const LINK = [196, 160, 70] as const;

/** The front end as bars, and its hardpoints as balls of white with a dark dot. */
export function carBars(document: LayoutDocument): { readonly bars: DrawnBar[]; readonly balls: Point[] } {
  const { axle, location, steering, rails } = resolveLayout(document);
  if (location.kind !== 'hairpins') throw new Error('the photographed car has hairpins');
  const bars: DrawnBar[] = [];
  const bar = (from: Point, to: Point, radius: number, colour: DrawnBar['colour']) =>
    bars.push({ from, to, radius, colour });
  for (const rail of rails)
    for (const side of [1, -1])
      for (const [i, to] of rail.path.entries()) {
        const from = rail.path[i - 1];
        const at = ([x, y, z]: Point): Point => [x, side * y, z];
        if (from) bar(at(from), at(to), 40, FRAME);
      }
  const balls: Point[] = [];
  bar(axle.right.kingpinBottom, axle.left.kingpinBottom, 26, PAINT);
  for (const side of ['right', 'left'] as const) {
    const half = axle[side];
    bar(half.kingpinBottom, half.kingpinTop, 20, STEEL);
    bar(half.kingpinBottom, half.wheelCentre, 14, STEEL);
    bar(half.kingpinBottom, half.tieRodBall, 10, STEEL);
    const pivot = location[side].framePivot;
    bar(half.kingpinTop, pivot, 9, PAINT);
    bar(half.kingpinBottom, pivot, 9, PAINT);
    balls.push(half.wheelCentre, half.kingpinTop, half.kingpinBottom, half.tieRodBall, pivot);
  }
  bar(axle.left.tieRodBall, axle.right.tieRodBall, 11, STEEL);
  const { sectorCentre, pitmanBall } = steering.box;
  bar(axle[steering.dragLinkTo].kingpinTop, steering.dragLinkBall, 10, STEEL);
  bar(steering.dragLinkBall, pitmanBall, 11, LINK);
  bar(sectorCentre, pitmanBall, 14, LINK);
  bar(sectorCentre, [sectorCentre[0], sectorCentre[1] - 90, sectorCentre[2]], 45, FRAME);
  balls.push(steering.dragLinkBall, sectorCentre, pitmanBall);
  return { bars, balls };
}
