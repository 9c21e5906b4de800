import type { Point } from '../geometry/points.ts';
import type { Hardpoint } from './hardpoint.ts';
import type { LayoutDocument } from './schema.ts';
import type { ShaftDocument } from './shaft-schema.ts';

// The steering shaft's points: the column's end, every joint, the box's input. The first joint sits on the column and
// the last on the box's input, so they slide along those axes and go along with what they sit on.

const COLUMN = 'shaft.column.end';
const BOX = 'shaft.box.end';
const JOINT = /^shaft\.joints\.(\d+)\.centre$/;

const jointId = (joint: number) => `shaft.joints.${joint}.centre`;

/** The joint that a hardpoint of the shaft is, counted from 0; nothing for other points. */
export function jointOfPoint(id: string): number | undefined {
  const match = JOINT.exec(id);
  return match ? Number(match[1]) : undefined;
}

/** The joint on the box's input. A lone joint counts to the column, on whose axis it slides. */
function boxJoint({ joints }: ShaftDocument): number | undefined {
  return joints.length > 1 ? joints.length - 1 : undefined;
}

/** Ids of the shaft's points that are bolted to the steering box and move with it. */
export function shaftPointsOnBox(shaft: ShaftDocument | null): string[] {
  if (!shaft) return [];
  const joint = boxJoint(shaft);
  return joint === undefined ? [BOX] : [BOX, jointId(joint)];
}

/** On which axis a joint slides; nothing for one between two shafts, which goes anywhere. */
export function slideOf(shaft: ShaftDocument, joint: number): 'column' | 'box' | undefined {
  return joint === 0 ? 'column' : joint === boxJoint(shaft) ? 'box' : undefined;
}

/** The shaft's hardpoints, from column to box; mm, vehicle axes. */
export function shaftPoints(shaft: ShaftDocument): Hardpoint[] {
  const onBox = boxJoint(shaft);
  return [
    { id: COLUMN, name: 'Column end', carrier: 'frame', at: shaft.column.end, brings: [jointId(0)] },
    ...shaft.joints.map(({ centre }, joint): Hardpoint => {
      const slides = slideOf(shaft, joint);
      return {
        id: jointId(joint),
        name: `Joint ${joint + 1}`,
        carrier: 'frame',
        at: centre,
        ...(slides ? { slides } : {}),
      };
    }),
    {
      id: BOX,
      name: 'Box input',
      carrier: 'frame',
      at: shaft.box.end,
      brings: onBox === undefined ? [] : [jointId(onBox)],
    },
  ];
}

/** mm. A place that follows from where a hand went is kept as precisely as any tape measure has it. */
const tidy = (value: number) => Math.round(value * 1000) / 1000 + 0;

/** Squared: where what was changed shows less than a fifth of the axis' length, it says nothing of how far along. */
const SEEN_END_ON = 0.2 ** 2;
/** mm. Nearer than this a point stands on its axis, to what documents are rounded to. */
const ON_AXIS = 0.01;

/**
 * Where a point that stands at `from` on an axis goes when it is asked to go to `to`: to that place of the axis which is
 * nearest in the coordinates that change, so that it follows the hand in a view and meets a single coordinate exactly.
 * Where those show the axis end-on it stays. Units: mm.
 */
export function slidAlong(end: Point, axis: Point, from: Point, to: Point): Point {
  const changed = to.map((value, i) => value !== from[i]);
  const use = changed.some(Boolean) ? changed : [true, true, true];
  let along = 0;
  let seen = 0;
  let whole = 0;
  for (const i of [0, 1, 2] as const) {
    whole += axis[i] ** 2;
    if (!use[i]) continue;
    along += ((to[i] as number) - end[i]) * axis[i];
    seen += axis[i] ** 2;
  }
  if (seen < SEEN_END_ON * whole) {
    // It stays; what stood off the axis comes back onto it.
    const back =
      ((from[0] - end[0]) * axis[0] + (from[1] - end[1]) * axis[1] + (from[2] - end[2]) * axis[2]) / whole;
    const on: Point = [end[0] + back * axis[0], end[1] + back * axis[1], end[2] + back * axis[2]];
    return Math.hypot(on[0] - from[0], on[1] - from[1], on[2] - from[2]) < ON_AXIS ? from : on;
  }
  const share = along / seen;
  return [tidy(end[0] + share * axis[0]), tidy(end[1] + share * axis[1]), tidy(end[2] + share * axis[2])];
}

const shifted = (point: Point, by: Point): Point => [
  tidy(point[0] + by[0]),
  tidy(point[1] + by[1]),
  tidy(point[2] + by[2]),
];

const minus = (a: Point, b: Point): Point => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];

function withJoint(
  shaft: ShaftDocument,
  joint: number | undefined,
  centre: (from: Point) => Point,
): ShaftDocument {
  const entry = joint === undefined ? undefined : shaft.joints[joint];
  if (joint === undefined || !entry) return shaft;
  return { ...shaft, joints: shaft.joints.with(joint, { ...entry, centre: centre(entry.centre) }) };
}

/**
 * A shaft with one of its points moved. The column's end and the box's input take the joint that sits on them along; that
 * joint by itself slides on the axis. Not validated.
 */
export function withShaftPoint(shaft: ShaftDocument, id: string, to: Point): ShaftDocument {
  if (id === COLUMN || id === BOX) {
    const part = id === COLUMN ? 'column' : 'box';
    const by = minus(to, shaft[part].end);
    const moved = { ...shaft, [part]: { ...shaft[part], end: to } };
    return withJoint(moved, part === 'column' ? 0 : boxJoint(shaft), (from) => shifted(from, by));
  }
  const joint = jointOfPoint(id);
  const slides = joint === undefined ? undefined : slideOf(shaft, joint);
  return withJoint(shaft, joint, (from) =>
    slides ? slidAlong(shaft[slides].end, shaft[slides].axis, from, to) : to,
  );
}

/**
 * A document whose shaft went along with the steering box, to which its input end is bolted: the end, with its axis as
 * it was, and the joint on it. `from` is where the box's sector centre stood before; mm.
 */
export function withShaftAtBox(document: LayoutDocument, from: Point): LayoutDocument {
  const { shaft } = document;
  if (!shaft) return document;
  const by = minus(document.steering.box.sectorCentre, from);
  if (by.every((value) => value === 0)) return document;
  return { ...document, shaft: withShaftPoint(shaft, BOX, shifted(shaft.box.end, by)) };
}
