import type { Point } from '../geometry/points.ts';
import type { Layout, Refusal } from '../layout/index.ts';
import { failed, type Outcome, succeeded } from '../outcome.ts';
import { cantileverCentre, clampLine } from '../pose/index.ts';
import { formatLoad, toRadians } from '../units/index.ts';
import { springRateOf } from './spring-rate.ts';

/** m/s², the standard acceleration of free fall (ISO 80000-3). */
export const GRAVITY = 9.80665;

/** The usual figures that stand where a layout tells none: common practice, no published source. */
export const USUAL_RIDE = {
  /** Share of the front axle's mass that the springs do not carry: a beam, two wheels, brakes, half of the links. */
  unsprungShare: 0.2,
  /** Hz: the sprung mass on the springs alone. */
  frequency: 1.5,
  /** Of critical damping, as the mean of bump and rebound damping, which are as 1 to 2. */
  dampingRatio: 0.3,
  bumpShare: 2 / 3,
  /** N/mm and N·s/mm of one tyre. */
  tyreRate: 190,
  tyreDamping: 0.05,
  /** Between the springs, and between the dampers, as a share of the track. */
  base: 0.62,
  /** Middle of the sprung mass above the ground, as a share of the tyre's radius. */
  sprungHeight: 1.7,
  /** Radii of gyration in roll, as shares of the track. */
  gyration: 0.4,
} as const;

/** A travel of none is judged over an inch each way, as everywhere. mm. */
const LEAST_TRAVEL = 25.4;

/** Bump and droop stops: how much stiffer than the spring they begin, and mm in which they grow as stiff again. */
const STOP_TIMES = 6;
const STOP_DEPTH = 20;

/** Where a figure comes from: the document, the rest of the layout, or what is usual. */
export type RideOrigin = 'told' | 'worked-out' | 'usual';

/** What the car rides on, every figure there. mm, N, kg, s, rad; springs, dampers and tyres of one side, at the axle. */
export interface RideParameters {
  readonly sprungMass: number;
  readonly unsprungMass: number;
  /** N/mm. */
  readonly springRate: number;
  readonly springBase: number;
  /** N·s/mm. */
  readonly bumpDamping: number;
  readonly reboundDamping: number;
  readonly damperBase: number;
  readonly tyreRate: number;
  readonly tyreDamping: number;
  /** Between the middles of the tyres. */
  readonly track: number;
  /** N·mm/rad, beside the springs. */
  readonly rollStiffness: number;
  /** kg·mm²: of the sprung mass about its middle, of the axle with its wheels. */
  readonly sprungInertia: number;
  readonly axleInertia: number;
  /** Height of the middle of the sprung mass above the ground, and of the place where the axle is held sideways. */
  readonly sprungHeight: number;
  readonly rollCentre: number;
  /** mm of the axle at a spring before its stops are met; N/mm as they are met, mm in which they double that. */
  readonly bump: number;
  /** Travel in droop; named as in the document, since the command line prints it. */
  readonly rebound: number;
  readonly stopRate: number;
  readonly stopDepth: number;
}

export type RideParameterName = keyof RideParameters;

export interface RideSetUp {
  readonly parameters: RideParameters;
  readonly origin: Readonly<Partial<Record<RideParameterName, RideOrigin>>>;
}

/** Height at which the line through two points crosses the centre plane; halfway between them where it never does. mm. */
function whereCrossed(a: Point, b: Point): number {
  const across = b[1] - a[1];
  const share = across === 0 ? 0.5 : -a[1] / across;
  return a[2] + share * (b[2] - a[2]);
}

/**
 * Height where the frame and the axle are held to one another sideways: where the bar's line crosses the centre plane,
 * as the bar pulls along its line, and a half spring with a fixed eye along that from the eye to its arc's centre;
 * the bolt of a rocker, through which all pulls of its bars go; or the spring's height.
 */
function rollCentreOf({ lateral, axle }: Layout): number {
  if (lateral.kind === 'bar') return whereCrossed(lateral.axle, lateral.frame);
  if (lateral.kind === 'watt') return lateral.pivot[2];
  if (lateral.kind === 'fixed-spring')
    return whereCrossed(lateral.eye, cantileverCentre(lateral.clamp, clampLine(lateral), lateral.eye));
  return lateral.height ?? (axle.left.wheelCentre[2] + axle.right.wheelCentre[2]) / 2;
}

/**
 * What a layout's car rides on: as its `ride` tells, the rest from the layout, the rest of that as is usual.
 * Outcomes: a refusal where the unsprung mass leaves nothing of the axle load for the springs.
 */
export function rideParameters(layout: Layout): Outcome<RideSetUp, Refusal> {
  const ride = layout.ride ?? {};
  const origin: Partial<Record<RideParameterName, RideOrigin>> = {};
  const take = (name: RideParameterName, given: number | undefined, other: number, from: RideOrigin) => {
    origin[name] = given === undefined ? from : 'told';
    return given ?? other;
  };
  const { left, right } = layout.axle;
  const track = left.wheelCentre[1] - right.wheelCentre[1];
  const mass = layout.car.frontAxleLoad / GRAVITY;
  const load = `the front axle load of ${layout.car.frontAxleLoad} N`;
  const both = (kg: number) => `${Number(kg.toFixed(1))} kg (${formatLoad(kg * GRAVITY, 'in')})`;
  const { sprungMass: sprung } = ride;
  if (sprung !== undefined && ride.unsprungMass === undefined && sprung >= mass)
    return failed({
      path: 'ride.sprungMass',
      reason: `${both(sprung)} is more than ${load} leaves for the springs to carry: ${both(mass)} with the axle itself`,
    });
  const unsprungMass = take(
    'unsprungMass',
    ride.unsprungMass,
    sprung === undefined ? USUAL_RIDE.unsprungShare * mass : mass - sprung,
    sprung === undefined ? 'usual' : 'worked-out',
  );
  const sprungMass = take('sprungMass', sprung, mass - unsprungMass, 'worked-out');
  if (sprungMass <= 0)
    return failed({
      path: 'ride.unsprungMass',
      reason: `${both(unsprungMass)} is all that ${load} comes to, ${both(mass)}: nothing is left for the springs to carry`,
    });

  const omega = 2 * Math.PI * USUAL_RIDE.frequency;
  const springRate = take(
    'springRate',
    ride.spring && springRateOf(ride.spring, layout),
    (sprungMass * omega * omega) / 2000,
    'usual',
  );
  if (ride.spring && ride.spring.kind !== 'rate') origin.springRate = 'worked-out';
  // N·s/mm of one side: ζ · 2 √(k m) over two sides, with k in N/m, back to mm.
  const critical = Math.sqrt(2 * springRate * 1000 * sprungMass) / 1000;
  const usualDamping = USUAL_RIDE.dampingRatio * critical;
  const { location } = layout;
  const along =
    location.kind === 'parallel-leaf'
      ? location.left.seat[1] - location.right.seat[1]
      : location.kind === 'quarter-elliptic'
        ? location.left.eye[1] - location.right.eye[1]
        : undefined;
  const { spring } = ride;
  // Parallel leaves carry at their seats, quarter-elliptic springs at their eyes, a leaf across the car at its eyes.
  const base = spring?.kind === 'leaf' && spring.lie === 'across' ? spring.length : along;
  const gyration = (given: number | undefined) => given ?? USUAL_RIDE.gyration * track;
  const { bump, rebound } = layout.travel;
  const noTravel = bump + rebound === 0;
  return succeeded({
    origin,
    parameters: {
      sprungMass,
      unsprungMass,
      springRate,
      springBase: take(
        'springBase',
        ride.springBase,
        base ?? USUAL_RIDE.base * track,
        base === undefined ? 'usual' : 'worked-out',
      ),
      bumpDamping: take('bumpDamping', ride.damper?.bump, USUAL_RIDE.bumpShare * usualDamping, 'usual'),
      reboundDamping: take(
        'reboundDamping',
        ride.damper?.rebound,
        (2 - USUAL_RIDE.bumpShare) * usualDamping,
        'usual',
      ),
      damperBase: take('damperBase', ride.damperBase, USUAL_RIDE.base * track, 'usual'),
      tyreRate: take('tyreRate', ride.tyreRate, USUAL_RIDE.tyreRate, 'usual'),
      tyreDamping: take('tyreDamping', ride.tyreDamping, USUAL_RIDE.tyreDamping, 'usual'),
      track,
      rollStiffness: (take('rollStiffness', ride.rollStiffness, 0, 'usual') * 1000) / toRadians(1),
      sprungInertia: sprungMass * gyration(ride.sprungGyration) ** 2,
      axleInertia: unsprungMass * gyration(ride.axleGyration) ** 2,
      sprungHeight: take(
        'sprungHeight',
        ride.sprungHeight,
        USUAL_RIDE.sprungHeight * layout.car.tyreRadius,
        'usual',
      ),
      rollCentre: rollCentreOf(layout),
      bump: noTravel ? LEAST_TRAVEL : bump,
      rebound: noTravel ? LEAST_TRAVEL : rebound,
      stopRate: STOP_TIMES * springRate,
      stopDepth: STOP_DEPTH,
    },
  });
}
