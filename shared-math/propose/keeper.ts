import { judgeBraking } from '../brake/index.ts';
import { bodiesOf, type ClearanceNeed, NeedsOf, pairsOf } from '../clearance/index.ts';
import { distance, type Point } from '../geometry/points.ts';
import { gridExtremes } from '../joints/index.ts';
import type { Layout } from '../layout/index.ts';
import { arrangementOf, type FrontEnd, HeldPoses, meanSteerRate, steerAxle } from '../linkage/index.ts';
import { type ClearanceOf, clearanceOf, routeObstacles } from '../shaft/index.ts';
import { lockAngles, locksFrom } from '../sweep/index.ts';
import { toDegrees } from '../units/index.ts';
import { inputLacks, inputsFor } from './box-input.ts';
import { type Car, limitOf } from './car.ts';
import { rimForceAt } from './choose-box.ts';
import type { Idea } from './idea.ts';
import { mountLacks } from './mounts.ts';
import { BoxPlaces, sectorOut, tooLow } from './room.ts';
import { SECTOR } from './sizes.ts';

/** A limit that is missed, by how much: degrees, mm, a tenth of a ratio or a turn, tens of N, poses. */
export interface Missed {
  readonly limit:
    | 'box-room'
    | 'box-reach'
    | 'box-mount'
    | 'road'
    | 'sector-shaft'
    | 'bump-steer'
    | 'roll-steer'
    | 'shaft-room'
    | 'bar-and-link'
    | 'direction'
    | 'ratio'
    | 'effort'
    | 'turn-ended'
    | 'lock'
    | 'lock-apart'
    | 'turns'
    | 'reach'
    | 'transmission'
    | 'tilt'
    | 'braking'
    | 'clearance';
  readonly by: number;
}

/** Coarse grids see a little less than the full ones of the verdict: so much is kept to spare. mm, degrees. */
const SPARE = { gap: 1.2, angle: 0.4, lock: 0.05, ratio: 0.05, bar: 0.02, roll: 0.003 } as const;
/** rad either side of level by which the car is leant to see how that steers it. */
const LEANT = 0.01;
/** How finely travel and turn are looked at in a search. */
const FINENESS = { heaves: 7, turns: 9 } as const;
/** Where a layout does not steer at all it misses more than by anything else. */
const STEERS_NOT = 1e4;

const STEERING = new Set(['drag-link', 'pitman-arm', 'steering-arm', 'box']);

/** Pairs that a new steering has a part in, and mm that each has to keep in this shop. */
function needsOf(car: Car, drawn: FrontEnd, { movesAxle, movesTieRod }: Idea): ClearanceNeed[] {
  const keep = {
    moving: limitOf(car, 'clearanceMoving') + SPARE.gap,
    tyre: limitOf(car, 'clearanceTyre') + SPARE.gap,
  };
  const bodies = bodiesOf({ ...drawn.layout, shaft: null });
  const concerned = (id: string) =>
    STEERING.has(id) ||
    (movesAxle && id === 'lateral-bar') ||
    (movesTieRod && (id === 'tie-rod' || id.startsWith('tie-rod-arm')));
  return pairsOf(bodies).flatMap(({ a, b, limit }) =>
    concerned(a.id) || concerned(b.id) ? [{ a: a.id, b: b.id, least: keep[limit] }] : [],
  );
}

/** In cross steer, degrees and hundredths of length by which lateral bar and drag link are too unlike, as the findings have it. */
function barUnlikeLink(car: Car, layout: Layout): number {
  const { lateral, steering } = layout;
  if (lateral.kind !== 'bar' || arrangementOf(layout) !== 'cross') return 0;
  const { dragLinkBall: ball, box } = steering;
  const slope = (from: Point, to: Point) => Math.atan((to[2] - from[2]) / (to[1] - from[1]));
  const apart = Math.abs(slope(lateral.axle, lateral.frame) - slope(ball, box.pitmanBall));
  const [bar, link] = [distance(lateral.axle, lateral.frame), distance(ball, box.pitmanBall)];
  const share = Math.abs(bar - link) / Math.max(bar, link);
  return (
    Math.max(0, toDegrees(apart) - limitOf(car, 'barLinkAngle') + SPARE.bar) +
    Math.max(0, 100 * (share - limitOf(car, 'barLinkLength')) + SPARE.bar)
  );
}

/**
 * By how much limits are missed by front ends that differ in their steering and lateral bar, one after another. A
 * cascade: what costs microseconds is asked before what costs milliseconds, and no more than is wanted to know.
 */
export class Keeper {
  private readonly car: Car;
  private readonly idea: Idea;
  private readonly places: BoxPlaces;
  private readonly needs: NeedsOf;
  private readonly poses = new HeldPoses();
  private readonly windsUp: boolean;
  private readonly clear: ClearanceOf;
  /** How often each of the three stages was gone through: room, turn, gaps. */
  readonly asked = { room: 0, turn: 0, gaps: 0 };

  constructor(car: Car, drawn: FrontEnd, idea: Idea) {
    this.car = car;
    this.idea = idea;
    // With what the idea takes for granted.
    this.places = new BoxPlaces(drawn.layout);
    this.needs = new NeedsOf({ ...drawn.layout, shaft: null }, needsOf(car, drawn, idea), FINENESS);
    this.clear = clearanceOf(routeObstacles({ ...drawn.layout, shaft: null }));
    const { kind } = drawn.layout.location;
    this.windsUp = kind === 'parallel-leaf' || kind === 'quarter-elliptic';
  }

  /** Degrees of steer into the turn for each degree that the car leans: the findings' slope, by the secant about level. */
  private rollsInto(frontEnd: FrontEnd, straight: number): number {
    if (frontEnd.layout.travel.roll === 0) return 0;
    let slope = 0;
    for (const roll of [-LEANT, LEANT]) {
      const leant = this.poses.at(frontEnd, 0, roll);
      if (!leant || steerAxle(frontEnd, 0, leant) !== 'ok') return 0;
      slope += (leant.meanSteer - straight) / roll / 2;
    }
    return -slope;
  }

  /** All that is missed together; exact below `settledAt`. */
  missing(frontEnd: FrontEnd, settledAt = Number.POSITIVE_INFINITY): number {
    let sum = 0;
    for (const { by } of this.missed(frontEnd, () => settledAt - sum)) {
      sum += by;
      if (sum >= settledAt) return sum;
    }
    return sum;
  }

  /**
   * What the place of a laid box misses by itself, whatever is steered with it: in closed form, some microseconds. None of a box
   * that is held: it stands where somebody has put it. mm.
   */
  *missedByPlace(layout: Layout): Generator<Missed> {
    if (this.car.held.has('box')) return;
    const room = this.places.room(layout);
    if (room.overlap > 0) yield { limit: 'box-room', by: room.overlap };
    if (room.outOfReach > 0) yield { limit: 'box-reach', by: room.outOfReach };
    const off = mountLacks(this.idea, layout);
    if (off > 0) yield { limit: 'box-mount', by: off };
    const low = tooLow(layout);
    if (low > 0) yield { limit: 'road', by: low };
    const far = sectorOut(layout) - SECTOR.most;
    if (far > 0) yield { limit: 'sector-shaft', by: far };
  }

  /** All that the place of a laid box misses, mm. */
  missingByPlace(layout: Layout): number {
    let sum = 0;
    for (const { by } of this.missedByPlace(layout)) sum += by;
    return sum;
  }

  /** What is missed, one limit after another, the cheap ones first. `left`: how much more is of interest. */
  *missed(frontEnd: FrontEnd, left: () => number = () => Number.POSITIVE_INFINITY): Generator<Missed> {
    const { car } = this;
    const { layout } = frontEnd;
    this.asked.room += 1;
    yield* this.missedByPlace(layout);

    const unlike = barUnlikeLink(car, layout);
    if (unlike > 0) yield { limit: 'bar-and-link', by: unlike };
    const { shaft } = car.document;
    if (shaft && !car.held.has('shaft')) {
      const wanted = limitOf(car, 'clearanceMoving');
      let least = Number.POSITIVE_INFINITY;
      for (const input of inputsFor(car, layout))
        if (least > 0) least = Math.min(least, inputLacks(input, this.clear, wanted));
      if (least > 0) yield { limit: 'shaft-room', by: least };
    }
    if (left() <= 0) return;

    const state = this.poses.at(frontEnd, 0, 0);
    const rate =
      state && steerAxle(frontEnd, 0, state) === 'ok' ? meanSteerRate(frontEnd, state) : Number.NaN;
    if (!state || !(rate > 0)) {
      yield { limit: 'direction', by: STEERS_NOT };
      return;
    }
    const rolls = this.rollsInto(frontEnd, state.meanSteer) - limitOf(car, 'rollOversteer') + SPARE.roll;
    if (rolls > 0) yield { limit: 'roll-steer', by: 10 * rolls };
    if (left() <= 0) return;
    this.asked.turn += 1;
    const overall = 1 / rate;
    const short = (least: number, value: number) => Math.max(0, least - value);
    const ratio =
      short(limitOf(car, 'ratioLeast') + SPARE.ratio, overall) +
      short(overall, limitOf(car, 'ratioMost') - SPARE.ratio);
    if (ratio > 0) yield { limit: 'ratio', by: 10 * ratio };
    if (layout.steering.box.assist === 'manual') {
      const force = rimForceAt(layout, overall) - limitOf(car, 'rimForce');
      if (force > 0) yield { limit: 'effort', by: force / 10 };
    }

    const turn = locksFrom(frontEnd, rate, state);
    const both = [turn.left, turn.right];
    const inner = both.map((lock) => toDegrees(lockAngles(layout, lock).inner));
    if (turn.left.handwheel === turn.right.handwheel) {
      yield { limit: 'direction', by: STEERS_NOT };
      return;
    }
    const stop = layout.steering.stopAngle ?? 90;
    if (both.some(({ cause }) => cause !== 'stop'))
      yield { limit: 'turn-ended', by: 1 + short(stop, Math.min(...inner)) };
    const lock =
      short(limitOf(car, 'lockLeast') + SPARE.lock, Math.min(...inner)) +
      short(Math.max(...inner), limitOf(car, 'lockMost') - SPARE.lock);
    if (lock > 0) yield { limit: 'lock', by: lock };
    const apart = short(
      Math.abs((inner[0] as number) - (inner[1] as number)),
      limitOf(car, 'lockApart') - 0.1,
    );
    if (apart > 0) yield { limit: 'lock-apart', by: apart };
    const turns = (turn.left.handwheel - turn.right.handwheel) / (2 * Math.PI);
    const turnsOff =
      short(limitOf(car, 'turnsLeast') + 0.01, turns) + short(turns, limitOf(car, 'turnsMost') - 0.01);
    if (turnsOff > 0) yield { limit: 'turns', by: 10 * turnsOff };
    if (left() <= 0) return;

    const locks = { right: turn.right.handwheel, left: turn.left.handwheel };
    const extremes = gridExtremes(frontEnd, locks, FINENESS.heaves, FINENESS.turns, this.poses);
    if (extremes.outOfReach > 0) yield { limit: 'reach', by: 10 * extremes.outOfReach };
    const square = toDegrees(
      Math.min(extremes.pitmanTransmission.angle, extremes.steeringArmTransmission.angle),
    );
    const flat = short(limitOf(car, 'transmissionLeast') + SPARE.angle, square);
    if (flat > 0) yield { limit: 'transmission', by: flat };
    const tilt = toDegrees(
      Math.max(
        0,
        ...extremes.tilts
          .filter(({ joint }) => joint.id.startsWith('steering.') || joint.id.startsWith('lateral.'))
          .map((worst) => worst.tilt),
      ),
    );
    const tilted = short(tilt, limitOf(car, 'ballTilt') - SPARE.angle);
    if (tilted > 0) yield { limit: 'tilt', by: tilted };
    if (this.windsUp) {
      const braking = judgeBraking(frontEnd);
      const steer = braking ? toDegrees(Math.abs(braking.hard.brakeSteer)) : 0;
      const braked = short(steer, limitOf(car, 'brakeSteer') - 0.01);
      if (braked > 0) yield { limit: 'braking', by: 10 * braked };
    }
    const interest = left();
    if (interest <= 0) return;
    this.asked.gaps += 1;
    const slack = this.needs.slack(frontEnd, locks, { most: 0, enough: -interest }, this.poses);
    if (slack < 0) yield { limit: 'clearance', by: -slack };
  }
}
