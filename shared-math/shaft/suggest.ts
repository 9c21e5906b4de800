import type { Point } from '../geometry/points.ts';
import { dot, subtract, unit } from '../geometry/vectors.ts';
import type { JointKind, ShaftDocument, ShaftEnd } from '../layout/index.ts';
import { failed, type Outcome, succeeded } from '../outcome.ts';
import { type Radians, toDegrees } from '../units/index.ts';
import type { ShaftMotion } from './motion.ts';
import { type ClearanceOf, clearanceOf, type Nearest, type RouteObstacle } from './obstacles.ts';
import { type Route, routeOf } from './route.ts';
import { type SupportCheck, supportCheck } from './route-check.ts';
import {
  measureTrial,
  meetingOfAxes,
  type RouteSpace,
  type RouteTrial,
  searchRoute,
} from './route-search.ts';
import { type Stub, stubsOf, UNHELD } from './stubs.ts';
import { turningOf } from './turning.ts';
import { type JointLimits, SUPPORT_FROM_JOINT, USUAL_JOINT_LIMITS } from './usual.ts';
import { ON_ITS_END } from './usual-ends.ts';

/** What is to be joined. Axes from the handwheel toward the box; mm. */
export interface RouteTask {
  readonly column: { readonly end: Point; readonly axis: Point; readonly fit?: ShaftEnd | undefined };
  readonly box: { readonly end: Point; readonly axis: Point; readonly fit?: ShaftEnd | undefined };
  /** The obstacles: convex bodies, or a function that answers how near a stretch of line comes. */
  readonly obstacles?: readonly RouteObstacle[];
  readonly clearanceOf?: ClearanceOf;
}

/** A shop's figures for suggested routes, mm and rad; usual ones, common practice, where absent. */
export interface RouteWishes {
  /** Half the shaft's diameter: 3/8 in. */
  readonly tubeRadius?: number;
  /** Half the size of a joint's body: 7/8 in. */
  readonly jointRadius?: number;
  /** Room wanted around shaft and joints: 1/2 in. */
  readonly clearance?: number;
  /**
   * How far from the part's end the joint's centre may stand along its axis; the least is a joint pushed home. Absent, on
   * the ends as they are where that does, else as far as they could be made longer.
   */
  readonly columnSlide?: readonly [number, number];
  readonly boxSlide?: readonly [number, number];
  /** Centre to centre: shorter leaves no shaft between two joints. */
  readonly leastShaft?: number;
  readonly limits?: JointLimits;
  /** How many of the joints may be double ones; all of them if absent. */
  readonly mostDoubles?: number;
}

const USUAL = {
  tubeRadius: 9.525,
  jointRadius: 22.225,
  clearance: 12.7,
  leastShaft: 100,
  limits: USUAL_JOINT_LIMITS,
} as const;

/** mm from the ends within which a joint may stand where ends are made longer for it. */
export const WIDE_SLIDES = { columnSlide: [12, 300], boxSlide: [12, 200] } as const;
/** The same where ends are made longer by no more than they can be without a bearing. */
export const SHORT_SLIDES = {
  columnSlide: [12, ON_ITS_END[0] + UNHELD],
  boxSlide: [12, ON_ITS_END[0] + UNHELD],
} as const;
const ON_ENDS = { columnSlide: ON_ITS_END, boxSlide: ON_ITS_END } as const;

/** A route that could be taken over as it is, with its figures. mm, rad. */
export interface RouteProposal {
  readonly shaft: ShaftDocument;
  readonly route: Route;
  readonly worstAngle: Radians;
  /** The largest share that a joint's angle has of the limit of its own kind; over 1 is past it. */
  readonly worstShare: number;
  /** The ends that have to be made longer for it. */
  readonly stubs: readonly Stub[];
  /**
   * How many pieces are bought and fitted: joints, a double one counted twice, shafts between them, supports; of an end that
   * is made longer the stub, its coupling and its bearing.
   */
  readonly parts: number;
  /** Every joint is within the limit of its kind. */
  readonly withinLimits: boolean;
  /** Room between surfaces at the narrowest place, and what is there; infinite where nothing stands near. */
  readonly nearest: Nearest;
  /** Clocked best. */
  readonly motion: ShaftMotion;
  readonly support: SupportCheck;
}

/** Why there is no route of so many joints. */
export type NoRoute =
  /** One joint needs axes that meet; these pass so far apart, mm, or are parallel (infinite). */
  | { readonly kind: 'axes-apart'; readonly gap: number }
  /** The axes meet where no joint can stand on both. */
  | { readonly kind: 'out-of-slide' }
  /** Nothing clear was found; the best still lacks so much room, mm, beside this. */
  | { readonly kind: 'not-clear'; readonly lacking: number; readonly name: string }
  /** The best that was found folds a joint to a right angle. */
  | { readonly kind: 'locked' };

export interface Suggestion {
  readonly joints: RouteJoints;
  readonly outcome: Outcome<RouteProposal, NoRoute>;
}

/** mm. Axes that pass nearer than this can be brought to meet when the box is shimmed. */
const MEETING_WITHIN = 1;

/** How many joints a route may be asked for with. */
export const ROUTE_JOINTS = [1, 2, 3] as const;
export type RouteJoints = (typeof ROUTE_JOINTS)[number];

/**
 * The route with so many joints that keeps clear, with the fewest double joints, and of those the least share of each
 * joint's own limit at the joint that has most of its own.
 * The first and last joint slide on the column's and the box's axes. Single joints alone are tried first; where one of them
 * would be past its limit, one double joint in each place, then two, and so on, each searched anew, since a double joint
 * takes the bend off the others. Clocked best, and with the supports that are called for. Unless the wishes say how far
 * joints may slide, those that sit on the ends as they are come first; where none of them does, ends may be made longer.
 * Frame:    vehicle. Units: mm, rad.
 * Outcomes: a proposal, or why there is none.
 * Source:   own search; the usual figures are common practice, no published source.
 * Checked:  tests/thorough/shaft-routes.test.ts (against brute force; around obstacles).
 */
export function suggestRoute(task: RouteTask, joints: RouteJoints, wishes: RouteWishes = {}): Suggestion {
  const { columnSlide, boxSlide } = wishes;
  if (columnSlide || boxSlide || joints === 1)
    return { joints, outcome: routeWithin(task, joints, { ...WIDE_SLIDES, ...wishes }) };
  const onEnds = routeWithin(task, joints, { ...ON_ENDS, ...wishes });
  if (onEnds.ok && onEnds.value.withinLimits) return { joints, outcome: onEnds };
  const wide = routeWithin(task, joints, { ...WIDE_SLIDES, ...wishes });
  const isBetter = wide.ok && (!onEnds.ok || wide.value.worstShare < onEnds.value.worstShare);
  return { joints, outcome: isBetter || !onEnds.ok ? wide : onEnds };
}

function routeWithin(
  task: RouteTask,
  joints: RouteJoints,
  wishes: RouteWishes & Required<Pick<RouteWishes, 'columnSlide' | 'boxSlide'>>,
): Outcome<RouteProposal, NoRoute> {
  const { limits = USUAL.limits, ...own } = wishes;
  const space: RouteSpace = {
    ...USUAL,
    ...own,
    columnEnd: task.column.end,
    columnAxis: unit(task.column.axis),
    boxEnd: task.box.end,
    boxAxis: unit(task.box.axis),
    clearanceOf: task.clearanceOf ?? clearanceOf(task.obstacles ?? []),
  };
  if (joints === 1) return oneJoint(task, space, limits);
  return fewestDoubles(task, space, joints, limits, wishes.mostDoubles ?? joints);
}

/** Every way to make so many of the joints double. */
function kindPatterns(joints: number, doubles: number): JointKind[][] {
  return Array.from({ length: 2 ** joints }, (_, bits) =>
    Array.from({ length: joints }, (_, i): JointKind => ((bits >> i) & 1 ? 'double' : 'single')),
  ).filter((kinds) => kinds.filter((kind) => kind === 'double').length === doubles);
}

const shareOf = (angles: readonly number[], kinds: readonly JointKind[], limits: JointLimits) =>
  Math.max(...angles.map((angle, i) => angle / limits[kinds[i] as JointKind]));

function fewestDoubles(
  task: RouteTask,
  space: RouteSpace,
  joints: 2 | 3,
  limits: JointLimits,
  mostDoubles: number,
): Outcome<RouteProposal, NoRoute> {
  let best: { trial: RouteTrial; kinds: JointKind[]; share: number } | undefined;
  for (let doubles = 0; doubles <= mostDoubles; doubles += 1) {
    for (const kinds of kindPatterns(joints, doubles)) {
      const weights = kinds.map((kind) => limits.single / limits[kind]);
      const trial = searchRoute(space, joints, weights);
      // Room is dearer than any angle: what is not clear with single joints is with none.
      if (trial.spare < 0 && doubles === 0) return proposalOf(task, trial, kinds, limits);
      const share = shareOf(trial.angles, kinds, limits);
      if (trial.spare >= 0 && (!best || share < best.share)) best = { trial, kinds, share };
    }
    if (best && best.share <= 1) break;
  }
  const { trial, kinds } = best as NonNullable<typeof best>;
  return proposalOf(task, trial, kinds, limits);
}

/**
 * Suggestions in the order in which they are worth a look: those within every joint's limit, by the number of parts and then
 * by the share of the limits; then those past one, by the share; last the numbers of joints with which there is none.
 */
export function rankedRoutes(suggestions: readonly Suggestion[]): Suggestion[] {
  const rank = ({ outcome }: Suggestion): readonly number[] => {
    if (!outcome.ok) return [2, 0, 0];
    const { withinLimits, parts, worstShare } = outcome.value;
    return withinLimits ? [0, parts, worstShare] : [1, worstShare, parts];
  };
  return suggestions
    .map((suggestion) => ({ suggestion, rank: rank(suggestion) }))
    .sort((a, b) => {
      const first = a.rank.findIndex((value, i) => value !== b.rank[i]);
      return first < 0 ? 0 : (a.rank[first] as number) - (b.rank[first] as number);
    })
    .map(({ suggestion }) => suggestion);
}

/** The routes with one, two and three joints, as `suggestRoute` finds each. */
export function suggestRoutes(task: RouteTask, wishes: RouteWishes = {}): Suggestion[] {
  return ROUTE_JOINTS.map((joints) => suggestRoute(task, joints, wishes));
}

function oneJoint(task: RouteTask, space: RouteSpace, limits: JointLimits): Outcome<RouteProposal, NoRoute> {
  const meeting = meetingOfAxes(space);
  if (!meeting) return failed({ kind: 'axes-apart', gap: Number.POSITIVE_INFINITY });
  if (meeting.gap > MEETING_WITHIN) return failed({ kind: 'axes-apart', gap: meeting.gap });
  const fromColumn = dot(subtract(meeting.centre, space.columnEnd), space.columnAxis);
  const fromBox = dot(subtract(space.boxEnd, meeting.centre), space.boxAxis);
  const inside = (value: number, [least, most]: readonly [number, number]) => value >= least && value <= most;
  if (!inside(fromColumn, space.columnSlide) || !inside(fromBox, space.boxSlide))
    return failed({ kind: 'out-of-slide' });
  const trial = measureTrial(space, [meeting.centre]);
  const [angle] = trial.angles as [Radians];
  return proposalOf(
    task,
    trial,
    [angle > limits.single && angle <= limits.double ? 'double' : 'single'],
    limits,
  );
}

function proposalOf(
  task: RouteTask,
  trial: RouteTrial,
  kinds: readonly JointKind[],
  limits: JointLimits,
): Outcome<RouteProposal, NoRoute> {
  if (trial.spare < 0) return failed({ kind: 'not-clear', lacking: -trial.spare, name: trial.nearest.name });
  const end = ({ end, axis, fit }: RouteTask['column']) => ({ end, axis, ...(fit ? { fit } : {}) });
  const bare: ShaftDocument = {
    column: end(task.column),
    box: end(task.box),
    joints: trial.centres.map((centre, i) => ({ kind: kinds[i] as JointKind, centre })),
    shafts: trial.centres.slice(1).map(() => ({ clock: 0 })),
    supports: [],
  };
  const route = routeOf(bare, limits);
  const turning = turningOf(bare, route);
  if (!turning.ok) return failed({ kind: 'locked' });
  const clocked = {
    ...bare,
    shafts: bare.shafts.map((_, i) => ({ clock: toDegrees(turning.value.bestClocks[i] as number) })),
  };
  const shaft = { ...clocked, supports: supportsFor(clocked, route) };
  const stubs = stubsOf(route);
  return succeeded({
    shaft,
    route,
    worstAngle: Math.max(...trial.angles),
    worstShare: shareOf(trial.angles, kinds, limits),
    stubs,
    parts: partsOf(shaft, stubs),
    withinLimits: route.joints.every(({ angle, limit }) => angle <= limit),
    nearest: trial.nearest,
    motion: turning.value.best,
    support: supportCheck(shaft),
  });
}

/** Joints, a double one counted twice, shafts and supports; of each stub itself, its coupling and its bearing. */
function partsOf({ joints, shafts, supports }: ShaftDocument, stubs: readonly Stub[]): number {
  const doubles = joints.filter(({ kind }) => kind === 'double').length;
  const longer = stubs.reduce((sum, { bearing }) => sum + (bearing ? 3 : 2), 0);
  return joints.length + doubles + shafts.length + supports.length + longer;
}

/** Supports where they are called for: beside the middle joints first, each on the longer of its two shafts. */
export function supportsFor(shaft: ShaftDocument, route: Route): ShaftDocument['supports'] {
  const { needed } = supportCheck(shaft);
  const last = shaft.joints.length - 1;
  const inner = shaft.joints.flatMap((_, i) => (i > 0 && i < last ? [i] : []));
  const outer = shaft.joints.flatMap(({ kind }, i) =>
    kind === 'double' && (i === 0 || i === last) ? [i] : [],
  );
  const taken = new Set<number>();
  return [...inner, ...inner, ...outer].flatMap((joint) => {
    const sides = [joint - 1, joint]
      .filter((index) => index >= 0 && index < shaft.shafts.length && !taken.has(index))
      .sort((a, b) => (route.lengths[b] as number) - (route.lengths[a] as number));
    const [index] = sides;
    if (index === undefined || taken.size >= needed) return [];
    taken.add(index);
    const share = Math.min(SUPPORT_FROM_JOINT / (route.lengths[index] as number), 0.5);
    return [{ shaft: index, at: index === joint ? share : 1 - share }];
  });
}
