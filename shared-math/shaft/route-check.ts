import type { ShaftDocument } from '../layout/index.ts';
import type { Radians } from '../units/index.ts';
import type { Route } from './route.ts';
import { LEAST_JOINT_ANGLE, LONGEST_SPAN } from './usual.ts';

/** Why a support bearing is called for: the shafts between would hang loose. */
export type SupportReason = 'three-joints' | 'double-joint';

/** Supports asked for and placed. */
export interface SupportCheck {
  /** Undefined if none is called for. */
  readonly because: SupportReason | undefined;
  /** Bearings on intermediate shafts that hold the chain; 0 where none is called for. */
  readonly needed: number;
  readonly placed: number;
  /** One double joint alone has no shaft to carry a bearing: the column's own, close to the joint, has to do it. */
  readonly byColumnBearing: boolean;
}

/** A stretch of a shaft without a bearing, longer than usual. */
export interface LongSpan {
  readonly shaft: number;
  /** mm. */
  readonly length: number;
}

/** What a route's geometry asks attention for, as data; sentences are made where they are shown. */
export interface RouteCheck {
  readonly overLimit: readonly { readonly joint: number; readonly angle: Radians; readonly limit: Radians }[];
  /** Single joints that run straight: their needles wear on one spot. */
  readonly straight: readonly number[];
  /** The joint at most of its limit, and that share; 1 is at the limit. */
  readonly worst: { readonly joint: number; readonly share: number };
  readonly support: SupportCheck;
  readonly longSpans: readonly LongSpan[];
}

/**
 * Supports that a chain calls for: common practice, no published source. Two single joints hold their shaft between
 * column and box; every further joint leaves one shaft loose, and a double joint counts as two. Any double joint
 * wants one.
 */
export function supportCheck(shaft: Pick<ShaftDocument, 'joints' | 'shafts' | 'supports'>): SupportCheck {
  const { joints, shafts, supports } = shaft;
  const doubles = joints.filter(({ kind }) => kind === 'double').length;
  const because = doubles > 0 ? 'double-joint' : joints.length > 2 ? 'three-joints' : undefined;
  const byColumnBearing = because !== undefined && shafts.length === 0;
  const needed =
    because === undefined || byColumnBearing ? 0 : Math.max(joints.length + doubles - 2, doubles > 0 ? 1 : 0);
  return { because, needed, placed: supports.length, byColumnBearing };
}

/**
 * What a route's angles, supports and spans ask attention for. Units: rad, mm. `longestSpan` is a shop's figure.
 */
export function checkRoute(
  shaft: ShaftDocument,
  route: Route,
  longestSpan: number = LONGEST_SPAN,
): RouteCheck {
  const shares = route.joints.map(({ angle, limit }) => angle / limit);
  const worst = shares.indexOf(Math.max(...shares));
  return {
    overLimit: route.joints.flatMap(({ angle, limit }, joint) =>
      angle > limit ? [{ joint, angle, limit }] : [],
    ),
    straight: route.joints.flatMap(({ kind, angle }, joint) =>
      kind === 'single' && angle < LEAST_JOINT_ANGLE ? [joint] : [],
    ),
    worst: { joint: worst, share: shares[worst] as number },
    support: supportCheck(shaft),
    longSpans: route.lengths.flatMap((length, index) => {
      const places = shaft.supports.filter((support) => support.shaft === index).map((support) => support.at);
      const stops = [0, ...places.sort((a, b) => a - b), 1];
      const longest = Math.max(...stops.slice(1).map((at, i) => (at - (stops[i] as number)) * length));
      return longest > longestSpan ? [{ shaft: index, length: longest }] : [];
    }),
  };
}
