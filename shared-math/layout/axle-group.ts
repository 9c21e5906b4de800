import type { Point } from '../geometry/points.ts';
import { lateralPointsOn } from './lateral-kinds.ts';
import { LOCATION_FACTS } from './location-kinds.ts';
import { placeHardpoint } from './place-hardpoint.ts';
import { resolveLayout } from './resolve.ts';
import type { LayoutDocument, Location } from './schema.ts';
import type { Side } from './sides.ts';
import { withValue } from './values.ts';

// The axle is one body: wheels, kingpins, steering arms, and what the springs and bars take hold of on the beam. Its height
// is that of the wheel centres, one tyre radius above the ground; so the tyre's size, or the place of a wheel centre,
// carries all of it.

/** mm. Places that follow from others are kept as precisely as any tape measure has them. */
const tidy = (value: number) => Math.round(value * 1e4) / 1e4 + 0;

const shifted = (point: Point, by: Point): Point => [
  tidy(point[0] + by[0]),
  tidy(point[1] + by[1]),
  tidy(point[2] + by[2]),
];

/** Ends of bars and spring seats on the axle, by the kind of location. */
const onAxle = (kind: Location['kind']): string[] =>
  LOCATION_FACTS[kind].points.filter(({ carrier }) => carrier === 'axle').map(({ path }) => path);

/** Whether one entry of the document stands for both sides of a part. */
function isMirrored(part: LayoutDocument['axle'] | LayoutDocument['location']): boolean {
  return 'right' in part && part.right === 'mirror';
}

/** The points that go with the wheel centre of a side where that is moved, itself not among them. */
export function broughtByWheel(document: LayoutDocument, side: Side): string[] {
  const halves: readonly Side[] = isMirrored(document.axle) ? ['left', 'right'] : [side];
  const { lateral, location, steering } = document;
  return [
    ...halves.flatMap((half) => [
      ...['kingpinTop', 'kingpinBottom', 'wheelCentre', 'tieRodBall'].map((point) => `axle.${half}.${point}`),
      ...onAxle(location.kind).map((point) => `location.${half}.${point}`),
      ...(steering.dragLinkTo === half ? ['steering.dragLinkBall'] : []),
      ...lateralPointsOn(lateral, half),
    ]),
  ].filter((id) => id !== `axle.${side}.wheelCentre`);
}

function valueAt(document: object, id: string): Point {
  return id
    .split('.')
    .reduce<unknown>((value, key) => (value as Record<string, unknown>)[key], document) as Point;
}

/**
 * One half of the axle moved by `by`, mm: wheel centre, kingpin and steering arms with it in every direction, so that the
 * wheel keeps its offset from the kingpin; brackets and seats fore and aft and up and down alone, as a wider axle leaves
 * them where the frame is. Of a mirrored part only the left is written.
 */
function halfMoved(document: LayoutDocument, half: Side, by: Point): LayoutDocument {
  const { lateral, location, steering } = document;
  const inFrame: Point = [by[0], 0, by[2]];
  let moved = document;
  const move = (id: string, shift: Point) => {
    moved = withValue(moved, id, shifted(valueAt(document, id), shift));
  };
  if (half === 'left' || !isMirrored(document.axle))
    for (const point of ['kingpinTop', 'kingpinBottom', 'wheelCentre', 'tieRodBall'])
      move(`axle.${half}.${point}`, by);
  if (half === 'left' || !isMirrored(location))
    for (const point of onAxle(location.kind)) move(`location.${half}.${point}`, inFrame);
  if (steering.dragLinkTo === half) move('steering.dragLinkBall', by);
  for (const point of lateralPointsOn(lateral, half)) move(point, inFrame);
  return moved;
}

/** The location with its right side written out, for an axle of which only one half moves. */
function spelledOut(document: LayoutDocument): LayoutDocument {
  if (!isMirrored(document.location) || onAxle(document.location.kind).length === 0) return document;
  return { ...document, location: resolveLayout(document).location as Location };
}

const across = (by: Point): Point => [by[0], -by[1], by[2]];

/** mm. Mean height of the wheel centres above the ground: what the tyre's radius has to be. */
export function meanWheelHeight(document: LayoutDocument): number {
  const { left, right } = resolveLayout(document).axle;
  return (left.wheelCentre[2] + right.wheelCentre[2]) / 2;
}

/**
 * The document with a wheel centre at another place and the axle's half with it; both halves where the axle is mirrored. The
 * tyre's radius follows the wheel centres' mean height. Not validated.
 */
export function withWheelCentreAt(document: LayoutDocument, side: Side, to: Point): LayoutDocument {
  const from = resolveLayout(document).axle[side].wheelCentre;
  const by: Point = [to[0] - from[0], to[1] - from[1], to[2] - from[2]];
  const byLeft = side === 'left' ? by : across(by);
  const both = isMirrored(document.axle);
  const moved = both
    ? halfMoved(halfMoved(document, 'left', byLeft), 'right', across(byLeft))
    : halfMoved(by[0] === 0 && by[2] === 0 ? document : spelledOut(document), side, by);
  // As it was typed, whatever the difference left of it.
  const exact = placeHardpoint(moved, `axle.${side}.wheelCentre`, to);
  return by[2] === 0 ? exact : withValue(exact, 'car.tyreRadius', tidy(meanWheelHeight(exact)));
}

/** The document with tyres of another radius, mm, and the axle as high as they carry it. Not validated. */
export function withTyreRadius(document: LayoutDocument, radius: number): LayoutDocument {
  const by: Point = [0, 0, radius - meanWheelHeight(document)];
  const carried = by[2] === 0 ? document : halfMoved(halfMoved(document, 'left', by), 'right', by);
  return withValue(carried, 'car.tyreRadius', radius);
}

/** mm for each side by which a tyre reaches into the ground as drawn; below 0 it hangs above. */
export function groundGaps(document: Pick<LayoutDocument, 'car' | 'axle'>): Record<Side, number> {
  const { axle, car } = resolveLayout(document as LayoutDocument);
  return {
    left: car.tyreRadius - axle.left.wheelCentre[2],
    right: car.tyreRadius - axle.right.wheelCentre[2],
  };
}
