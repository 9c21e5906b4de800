import type { JointSide, ShaftDocument, ShaftEnd } from '../layout/index.ts';
import type { Degrees } from '../units/index.ts';
import { endsAt, engagement, type MeetingPlace } from './ends.ts';
import type { Route } from './route.ts';
import { DIMPLE_DEPTH, NOTCH_CLEARANCE, SLIDING_OVERLAP, SUPPORT_BORE_OVER } from './usual.ts';

/** A notch across a shaft for a pinch bolt, mm. */
export interface Notch {
  /** From the shaft's tip to the notch's middle. */
  readonly fromTip: number;
  /** From the round surface down, the bolt's clearance included. */
  readonly depth: number;
  /** Along the shaft, at the surface. */
  readonly width: number;
  readonly boltDiameter: number;
}

/** A dimple under a set screw, mm. */
export interface Dimple {
  readonly fromTip: number;
  readonly depth: number;
  readonly screwDiameter: number;
}

/** How one end of a piece is made. */
export interface EndWork {
  readonly place: MeetingPlace;
  /** How deep it sits in the joint as drawn, mm: what notch and dimple are measured for. */
  readonly engaged: number | undefined;
  /** How deep the joint's bore is, mm; what is engaged less than that stands short of fully home. */
  readonly bore: number | undefined;
  /** From the shaft's tip to the joint's centre, mm. */
  readonly tipToCentre: number | undefined;
  readonly notch: Notch | undefined;
  readonly dimple: Dimple | undefined;
  readonly weld: boolean;
}

/** One piece to be cut, mm. */
export interface CutPiece {
  readonly name: string;
  readonly length: number;
  /** Of a shaft that slides: the piece that takes the other in, or the one that goes into it. */
  readonly slides?: 'outer' | 'inner';
}

/** An intermediate shaft to be made. */
export interface ShaftCut {
  readonly shaft: number;
  /** Tip to tip, both pieces of a sliding shaft together at the length that is drawn; nothing while a figure is missing. */
  readonly length: number | undefined;
  /** One, or the two that slide in one another. */
  readonly pieces: readonly CutPiece[];
  /** What has to be measured first: "joint 1, box side: depth of the bore". */
  readonly missing: readonly string[];
  readonly columnEnd: EndWork;
  readonly boxEnd: EndWork;
  /** mm. How far the two joints' ends alone reach past one another: no shaft fits between. 0 where one does. */
  readonly noRoom: number;
  /** mm. What the overlap of a sliding shaft lacks of its slip and an inch; 0 where it has it. */
  readonly overlapShort: number;
}

/**
 * A notch where a pinch bolt crosses an end. The bolt runs past the round of the shaft at `offset` from its axis, so
 * it takes what lies beyond offset - bolt/2; filed a little deeper and wider so that the bolt goes through freely.
 * Units: mm. Undefined if the bolt passes clear of the shaft.
 */
export function notchFor(
  end: ShaftEnd,
  bolt: { readonly diameter: number; readonly fromFace: number; readonly offset: number },
  engaged: number,
): Notch | undefined {
  const cut = end.diameter / 2 - (bolt.offset - bolt.diameter / 2);
  if (!(cut > 0)) return undefined;
  const depth = cut + NOTCH_CLEARANCE;
  const radius = bolt.diameter / 2 + NOTCH_CLEARANCE;
  return {
    fromTip: engaged - bolt.fromFace,
    depth,
    width: depth >= radius ? 2 * radius : 2 * Math.sqrt(radius ** 2 - (radius - depth) ** 2),
    boltDiameter: bolt.diameter,
  };
}

function boltOf(into: JointSide | undefined) {
  return into && 'bolt' in into ? into.bolt : undefined;
}

/** The work on the end that a part turns into a joint; dimensions that are missing leave nothing in their place. */
export function endWork(shaft: ShaftDocument, route: Route, place: MeetingPlace): EndWork {
  const { end, into } = endsAt(shaft, place);
  const engaged = engagement(shaft, route, place);
  const bolt = boltOf(into);
  const screw = into && 'screw' in into ? into.screw : undefined;
  return {
    place,
    engaged,
    bore: into?.depth,
    tipToCentre: engaged === undefined || into?.reach === undefined ? undefined : into.reach - engaged,
    notch: end && bolt && engaged !== undefined ? notchFor(end, bolt, engaged) : undefined,
    dimple:
      screw && engaged !== undefined
        ? { fromTip: engaged - screw.fromFace, depth: DIMPLE_DEPTH, screwDiameter: screw.diameter }
        : undefined,
    weld: into?.kind === 'weld',
  };
}

function missingAt(shaft: ShaftDocument, place: MeetingPlace): string[] {
  const { into } = endsAt(shaft, place);
  const side = `joint ${place.joint + 1}, ${place.side === 'columnSide' ? 'column' : 'box'} side`;
  if (!into) return [`${side}: what it takes`];
  return [
    ...(into.depth === undefined ? [`${side}: depth of the bore`] : []),
    ...(into.reach === undefined ? [`${side}: from its face to the joint's centre`] : []),
  ];
}

/**
 * Cut length of every intermediate shaft, and the work on its ends: centre to centre, less at each end what the joint
 * takes from its centre to the shaft's tip.
 * Units:    mm.
 * Outcomes: a length, or what has to be measured first.
 * Source:   geometry.
 * Checked:  tests/unit/shaft.test.ts.
 */
export function cutList(shaft: ShaftDocument, route: Route): ShaftCut[] {
  return shaft.shafts.map(({ stock }, index) => {
    const at = (side: 'columnSide' | 'boxSide', joint: number): MeetingPlace => ({
      part: index,
      joint,
      side,
    });
    const columnEnd = endWork(shaft, route, at('boxSide', index));
    const boxEnd = endWork(shaft, route, at('columnSide', index + 1));
    const [first, second] = [columnEnd.tipToCentre, boxEnd.tipToCentre];
    const between =
      first === undefined || second === undefined
        ? undefined
        : (route.lengths[index] as number) - first - second;
    const length = between !== undefined && between > 0 ? between : undefined;
    const slip = stock && 'slip' in stock ? stock.slip : undefined;
    const name = `Shaft ${index + 1}`;
    const pieces =
      length === undefined
        ? []
        : slip
          ? [
              { name: `${name}, outer piece`, length: (length + slip.overlap) / 2, slides: 'outer' as const },
              { name: `${name}, inner piece`, length: (length + slip.overlap) / 2, slides: 'inner' as const },
            ]
          : [{ name, length }];
    return {
      shaft: index,
      length,
      pieces,
      missing: [columnEnd, boxEnd].flatMap(({ place }) => missingAt(shaft, place)),
      columnEnd,
      boxEnd,
      noRoom: between === undefined ? 0 : Math.max(-between, 0),
      overlapShort: slip ? Math.max(slip.travel + SLIDING_OVERLAP - slip.overlap, 0) : 0,
    };
  });
}

/** How finely the yokes of a shaft can be clocked when it is put together. */
export type ClockFreedom =
  | { readonly kind: 'free' }
  | { readonly kind: 'steps'; readonly step: Degrees }
  /** The flats decide: the joints have to be made with their yokes at the clock. */
  | { readonly kind: 'flats' }
  | { readonly kind: 'untold' };

function commonDivisor(a: number, b: number): number {
  return b === 0 ? a : commonDivisor(b, a % b);
}

/**
 * How a shaft's clock can be set: a welded end is set freely; splined ends move by a tooth, two of different counts by
 * less; flats at both ends leave no choice.
 */
export function clockFreedom(shaft: ShaftDocument, index: number): ClockFreedom {
  const sides = [shaft.joints[index]?.boxSide, shaft.joints[index + 1]?.columnSide];
  if (sides.some((side) => side?.kind === 'weld')) return { kind: 'free' };
  const [a, b] = sides;
  if (!a || !b) return { kind: 'untold' };
  const counts = [a, b].flatMap((side) => ('teeth' in side ? [side.teeth] : []));
  const [first, second] = counts;
  if (first === undefined) return { kind: 'flats' };
  const teeth = second === undefined ? first : (first * second) / commonDivisor(first, second);
  // Ears are the same after half a turn, which an odd count halves between two teeth.
  return { kind: 'steps', step: (teeth % 2 === 0 ? 360 : 180) / teeth };
}

/** A support's bearing: on which shaft, how far from its joints, and the bore that slides on it, mm. */
export interface SupportWork {
  readonly shaft: number;
  readonly fromColumnJoint: number;
  readonly fromBoxJoint: number;
  /** Nothing while the stock is not chosen. */
  readonly bore: number | undefined;
}

/** Where the supports stand and how they are bored: 0.007 in over the shaft (common practice). */
export function supportList(shaft: ShaftDocument, route: Route): SupportWork[] {
  return shaft.supports.map(({ shaft: index, at }) => {
    const length = route.lengths[index] as number;
    const stock = shaft.shafts[index]?.stock;
    return {
      shaft: index,
      fromColumnJoint: at * length,
      fromBoxJoint: (1 - at) * length,
      bore: stock ? stock.diameter + SUPPORT_BORE_OVER : undefined,
    };
  });
}
