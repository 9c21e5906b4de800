import { mirrored } from '../geometry/points.ts';
import { mirroredSide } from './resolve.ts';
import type { LayoutDocument } from './schema.ts';
import type { Side } from './sides.ts';

// Left-hand and right-hand drive. The layout says where the driver sits in `car.driverSide`; what is laid out anew
// stands on that side, and choosing the other side takes the steering across the car.

/** The side that the steering is drawn on: that of the column's end where a steering shaft is drawn, else of the box. */
export function steeringSide({ shaft, steering }: Pick<LayoutDocument, 'shaft' | 'steering'>): Side {
  const y = shaft ? shaft.column.end[1] : steering.box.sectorCentre[1];
  return y < 0 ? 'right' : 'left';
}

/** The side that the driver sits on; where nobody has said, the one that the steering is drawn on. */
export function driverSideOf(document: Pick<LayoutDocument, 'car' | 'shaft' | 'steering'>): Side {
  return document.car.driverSide ?? steeringSide(document);
}

const OTHER: Record<Side, Side> = { left: 'right', right: 'left' };
const MOVED = /^(steering|lateral)\./;

/**
 * The document with its steering on the other side of the car: box, arm, drag link with the wheel that it goes to, lateral
 * bar and steering shaft, each mirrored in the centre plane; axle, rails and obstacles stay. The sector axis is
 * mirrored as a direction: the turn about it, which a mirror reverses, then still steers left for a handwheel turned left.
 * Clocking is reversed, as a right-hand turn about the shaft is left-hand in the mirror.
 */
export function withSteeringMirrored(document: LayoutDocument): LayoutDocument {
  const { steering, lateral, shaft, studs } = document;
  return {
    ...document,
    steering: {
      ...mirroredSide(steering),
      dragLinkTo: OTHER[steering.dragLinkTo],
    },
    lateral: mirroredSide(lateral),
    shaft: shaft && {
      ...shaft,
      column: { ...shaft.column, end: mirrored(shaft.column.end), axis: mirrored(shaft.column.axis) },
      box: { ...shaft.box, end: mirrored(shaft.box.end), axis: mirrored(shaft.box.axis) },
      joints: shaft.joints.map((joint) => ({ ...joint, centre: mirrored(joint.centre) })),
      shafts: shaft.shafts.map((piece) => ({
        ...piece,
        clock: piece.clock === 90 || piece.clock === 0 ? piece.clock : -piece.clock,
      })),
    },
    ...(studs
      ? {
          studs: Object.fromEntries(
            Object.entries(studs).map(([id, axis]) => [id, MOVED.test(id) ? mirrored(axis) : axis]),
          ),
        }
      : {}),
  };
}

/** A left and a right of a document, changed over in the centre plane. */
function changedOver<Pair>(pair: Pair): Pair {
  if (typeof pair !== 'object' || pair === null || !('right' in pair)) return mirroredSide(pair);
  const { left, right } = pair as { left?: unknown; right: unknown };
  return right === 'mirror'
    ? pair
    : ({ ...pair, left: mirroredSide(right), right: mirroredSide(left) } as Pair);
}

/** What is on the left and on the right, changed over; what is on neither stays on neither. */
function exchanged<End>({ left, right }: { left?: End; right?: End }): { left?: End; right?: End } {
  return {
    ...(right === undefined ? {} : { left: right }),
    ...(left === undefined ? {} : { right: left }),
  };
}

/** The whole front end in the mirror, for whoever lays out cars of one hand only: axle and its location change sides too. */
export function inTheMirror(document: LayoutDocument): LayoutDocument {
  const { axle, location } = document;
  const ends = document.links?.tieRod?.ends;
  return {
    ...withSteeringMirrored(document),
    axle: changedOver(axle),
    location: changedOver(location),
    ...(ends
      ? { links: { ...document.links, tieRod: { ...document.links?.tieRod, ends: exchanged(ends) } } }
      : {}),
  };
}

/** The document of a car whose driver sits on that side: its steering goes there if it is drawn on the other. */
export function withDriverSide(document: LayoutDocument, side: Side): LayoutDocument {
  const there = steeringSide(document) === side ? document : withSteeringMirrored(document);
  return { ...there, car: { ...there.car, driverSide: side } };
}
