import type { Point } from '../../../shared-math/geometry/points.ts';
import { add, midpoint, scaled, subtract, unit } from '../../../shared-math/geometry/vectors.ts';
import type {
  JointKind,
  JointSide,
  LayoutDocument,
  ShaftDocument,
  ShaftEnd,
  ShaftStock,
} from '../../../shared-math/layout/index.ts';
import type { MeetingPlace } from '../../../shared-math/shaft/index.ts';

// Edits of the steering shaft, each giving a new one. What does not change is shared.

export const withShaft = (document: LayoutDocument, shaft: ShaftDocument | null): LayoutDocument => ({
  ...document,
  shaft,
});

const tenth = (value: number) => Math.round(value * 10) / 10 + 0;
const tidy = (point: Point): Point => [tenth(point[0]), tenth(point[1]), tenth(point[2])];

/** One joint more, in the middle of a shaft and a little above it; its stock stays with the longer way to the column. */
export function withJointIn(shaft: ShaftDocument, index: number): ShaftDocument {
  const [a, b] = [shaft.joints[index], shaft.joints[index + 1]];
  if (!a || !b) return shaft;
  const middle = midpoint(a.centre, b.centre);
  const piece = shaft.shafts[index] ?? { clock: 0 };
  return {
    ...shaft,
    joints: shaft.joints.toSpliced(index + 1, 0, {
      kind: 'single',
      centre: tidy([middle[0], middle[1], middle[2] + 25]),
    }),
    shafts: shaft.shafts.toSpliced(index, 1, piece, { ...piece, clock: 0 }),
    // A bearing keeps its place on the way: on which of the two halves that is, and where along it.
    supports: shaft.supports.map((support) => {
      if (support.shaft < index) return support;
      if (support.shaft > index) return { ...support, shaft: support.shaft + 1 };
      return support.at <= 0.5
        ? { shaft: index, at: Math.min(1, 2 * support.at) }
        : { shaft: index + 1, at: 2 * support.at - 1 };
    }),
  };
}

/** Without one joint, the shafts on its sides become one; undefined if it is the last one left. */
export function withoutJoint(shaft: ShaftDocument, joint: number): ShaftDocument | undefined {
  if (shaft.joints.length < 2) return undefined;
  // Of an end's joint its one shaft goes; of an inner one the shaft behind it.
  const gone = joint === 0 ? 0 : joint === shaft.joints.length - 1 ? joint - 1 : joint;
  return {
    ...shaft,
    joints: shaft.joints.toSpliced(joint, 1),
    shafts: shaft.shafts.toSpliced(gone, 1),
    supports: shaft.supports.flatMap((support) => {
      if (support.shaft === gone) return [];
      return [support.shaft > gone ? { ...support, shaft: support.shaft - 1 } : support];
    }),
  };
}

export function withKind(shaft: ShaftDocument, joint: number, kind: JointKind): ShaftDocument {
  return {
    ...shaft,
    joints: shaft.joints.map((each, i) => {
      if (i !== joint) return each;
      // A limit that was set for a joint of one kind says nothing of the other.
      const { limit: _, ...rest } = each;
      return { ...rest, kind };
    }),
  };
}

/** A joint's own limit, as its maker tells it, degrees; nothing goes back to the shop's for its kind. */
export function withLimit(shaft: ShaftDocument, joint: number, degrees: number | undefined): ShaftDocument {
  return {
    ...shaft,
    joints: shaft.joints.map((each, i) => {
      if (i !== joint) return each;
      const { limit: _, ...rest } = each;
      return degrees === undefined ? rest : { ...rest, limit: degrees };
    }),
  };
}

export function withClock(shaft: ShaftDocument, index: number, degrees: number): ShaftDocument {
  return {
    ...shaft,
    shafts: shaft.shafts.map((each, i) => (i === index ? { ...each, clock: degrees } : each)),
  };
}

/** A clock as it is written: ears are the same after half a turn. Degrees in (-90, 90]. */
export function halfTurned(degrees: number): number {
  const rest = degrees - 180 * Math.round(degrees / 180);
  return rest <= -90 ? 90 : rest + 0;
}

export function withSupport(shaft: ShaftDocument, index: number): ShaftDocument {
  return { ...shaft, supports: [...shaft.supports, { shaft: index, at: 0.5 }] };
}

export function withoutSupport(shaft: ShaftDocument, at: number): ShaftDocument {
  return { ...shaft, supports: shaft.supports.toSpliced(at, 1) };
}

export function withSupportAt(shaft: ShaftDocument, at: number, share: number): ShaftDocument {
  return {
    ...shaft,
    supports: shaft.supports.map((each, i) =>
      i === at ? { ...each, at: Math.min(1, Math.max(0, share)) } : each,
    ),
  };
}

/** The column's or the box's end moved or turned; the joint that sits on it goes along and stays on its axis. */
export function withPartAxis(shaft: ShaftDocument, part: 'column' | 'box', axis: Point): ShaftDocument {
  const end = shaft[part];
  const joint = part === 'column' ? 0 : shaft.joints.length - 1;
  const was = shaft.joints[joint];
  if (!was) return shaft;
  const from = subtract(was.centre, end.end);
  const u = unit(axis);
  const before = unit(end.axis);
  const along = from[0] * before[0] + from[1] * before[1] + from[2] * before[2];
  return {
    ...shaft,
    [part]: { ...end, axis },
    joints: shaft.joints.with(joint, { ...was, centre: add(end.end, scaled(u, along)) }),
  };
}

/** A part's fit, stock or a joint's side set; nothing takes it away. */
export function withEnd(
  shaft: ShaftDocument,
  part: 'column' | 'box',
  fit: ShaftEnd | undefined,
): ShaftDocument {
  const { fit: _, ...rest } = shaft[part];
  return { ...shaft, [part]: fit ? { ...rest, fit } : rest };
}

export function withStock(shaft: ShaftDocument, index: number, stock: ShaftStock | undefined): ShaftDocument {
  return {
    ...shaft,
    shafts: shaft.shafts.map((each, i) => {
      if (i !== index) return each;
      const { stock: _, ...rest } = each;
      return stock ? { ...rest, stock } : rest;
    }),
  };
}

export function withSide(
  shaft: ShaftDocument,
  { joint, side }: Pick<MeetingPlace, 'joint' | 'side'>,
  value: JointSide | undefined,
): ShaftDocument {
  return {
    ...shaft,
    joints: shaft.joints.map((each, i) => {
      if (i !== joint) return each;
      const { [side]: _, ...rest } = each;
      return (value ? { ...rest, [side]: value } : rest) as typeof each;
    }),
  };
}
