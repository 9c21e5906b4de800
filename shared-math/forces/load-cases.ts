import { type BrakingCar, brakeLoads, brakingCar, GRIP_RANGE, prepareBraked } from '../brake/index.ts';
import { distance, type Point } from '../geometry/points.ts';
import { add, dot, scaled, subtract } from '../geometry/vectors.ts';
import { type Layout, type Refusal, SIDES, type Side } from '../layout/index.ts';
import {
  carriedTo,
  createState,
  type FrontEnd,
  type FrontEndState,
  kingpinDirection,
  solveFrontEnd,
  steerAxle,
} from '../linkage/index.ts';
import { type ArmBending, type ArmKey, armBending, armMaking } from '../links/index.ts';
import { failed, type Outcome, succeeded } from '../outcome.ts';
import { GRAVITY, type RideParameters, rideParameters } from '../ride/index.ts';
import { BOX_EFFICIENCY, contactOf, sweepTurn } from '../sweep/index.ts';
import type { Radians } from '../units/index.ts';
import { type ForceFigure, forceFigures, pullOn, type ReadFigure } from './figures.ts';
import { PARKING_GRIPS, scrubAbout } from './scrub.ts';
import {
  type SpringSeats,
  type Statics,
  type StaticsFailure,
  solveStatics,
  springSeats,
  type Wrench,
} from './statics.ts';

/**
 * N·m at the sector shaft of an assisted box at its relief: a piston of 64 to 70 mm at 7 to 9 MPa on a sector of 26 to 30 mm;
 * common practice, no published source.
 */
export const USUAL_BOX_OUTPUT = [600, 1000] as const;

/** N at the rim: what a driver pulls who means it, and with both arms against a jammed wheel; no published source. */
export const DRIVER_PULL = [300, 700] as const;

export type LoadCaseId = 'parking' | 'box' | 'braking';

/** A figure at its most, and where: N or N·mm and the handwheel in rad; 0 if it never goes that way. */
export interface Peak {
  readonly value: number;
  readonly handwheel: number;
}

/** The most of a figure each way over a case: below 0 and above it. */
export interface Reach {
  readonly least: Peak;
  readonly most: Peak;
}

/** A figure over a case, at the case's lighter and heavier load. */
export interface FigureReach {
  readonly figure: ForceFigure;
  readonly light: Reach;
  readonly heavy: Reach;
}

/** An arm where a case bends it most, at a handwheel angle (rad). */
export interface ArmAt extends ArmBending {
  readonly handwheel: number;
}

/** An arm over a case, at the case's lighter and heavier load. */
export interface ArmReach {
  readonly key: ArmKey;
  /** Of the two arms of the tie rod. */
  readonly side: Side | undefined;
  readonly light: ArmAt;
  readonly heavy: ArmAt;
}

/** One load case over the poses that it is looked at in. */
export interface LoadCase {
  readonly id: LoadCaseId;
  /** The lighter and the heavier load: grip as a share of the load, or N·m at the sector shaft. */
  readonly loads: readonly [number, number];
  /** True if the loads are usual ones, which nobody gave. */
  readonly assumed: boolean;
  /** In the order of the car's figures; none where no pose has forces. */
  readonly figures: readonly FigureReach[];
  readonly arms: readonly ArmReach[];
  /** Poses that have no forces, with why: the first of them, by handwheel (rad). */
  readonly failure: { readonly failure: StaticsFailure; readonly handwheel: number } | undefined;
}

export interface LinkForces {
  readonly heave: number;
  readonly roll: Radians;
  readonly figures: readonly ForceFigure[];
  readonly cases: readonly LoadCase[];
}

/** Positions from lock to lock at which a turn is looked at. */
const TURN_ROWS = 21;

/** What every case needs of the car. */
interface Car {
  readonly frontEnd: FrontEnd;
  readonly heave: number;
  readonly roll: Radians;
  readonly ride: RideParameters;
  readonly seats: SpringSeats;
  readonly figures: readonly ReadFigure[];
}

interface Worst {
  readonly key: ArmKey;
  readonly side: Side | undefined;
  readonly at: [ArmAt | undefined, ArmAt | undefined];
}

/** What is gathered of a case as its poses go by. Level 0 is its lighter load, 1 its heavier. */
class Gathered {
  readonly #figures: readonly ReadFigure[];
  /** Least, where, most, where of each figure. */
  readonly #peaks: readonly (readonly [Float64Array, Float64Array])[];
  readonly #arms: readonly Worst[] = [
    { key: 'pitmanArm', side: undefined, at: [undefined, undefined] },
    { key: 'steeringArm', side: undefined, at: [undefined, undefined] },
    { key: 'tieRodArms', side: 'left', at: [undefined, undefined] },
    { key: 'tieRodArms', side: 'right', at: [undefined, undefined] },
  ];
  #failure: LoadCase['failure'];
  #taken = false;

  constructor(figures: readonly ReadFigure[]) {
    this.#figures = figures;
    this.#peaks = figures.map(() => [new Float64Array(4), new Float64Array(4)] as const);
  }

  take(level: 0 | 1, statics: Statics, handwheel: number, frontEnd: FrontEnd, state: FrontEndState): void {
    this.#taken = true;
    this.#figures.forEach((figure, index) => {
      const peak = (this.#peaks[index] as readonly [Float64Array, Float64Array])[level];
      const value = figure.of(statics);
      if (value < (peak[0] as number)) peak.set([value, handwheel], 0);
      if (value > (peak[2] as number)) peak.set([value, handwheel], 2);
    });
    for (const { key, side, at } of this.#arms) {
      const bent = armBent(frontEnd, state, statics, key, side);
      if (bent.share > (at[level]?.share ?? -1)) at[level] = { ...bent, handwheel };
    }
  }

  fail(failure: StaticsFailure, handwheel: number): void {
    this.#failure ??= { failure, handwheel };
  }

  done(id: LoadCaseId, loads: readonly [number, number], assumed: boolean): LoadCase {
    const reach = (peak: Float64Array): Reach => ({
      least: { value: peak[0] as number, handwheel: peak[1] as number },
      most: { value: peak[2] as number, handwheel: peak[3] as number },
    });
    return {
      id,
      loads,
      assumed,
      figures: (this.#taken ? this.#figures : []).map(({ of: _, ...figure }, index) => {
        const [light, heavy] = this.#peaks[index] as readonly [Float64Array, Float64Array];
        return { figure, light: reach(light), heavy: reach(heavy) };
      }),
      arms: this.#arms.flatMap(({ key, side, at: [light, heavy] }) =>
        light && heavy ? [{ key, side, light, heavy }] : [],
      ),
      // A turn without a single position has none to fail in.
      failure: this.#failure ?? (this.#taken ? undefined : { failure: 'no-pose', handwheel: 0 }),
    };
  }
}

/**
 * Bending of an arm by its links in a pose. The pitman arm is held where the document has the sector's centre; an arm of a
 * spindle is taken to leave its boss as near to its ball as the kingpin reaches: the document does not say where.
 */
function armBent(
  frontEnd: FrontEnd,
  state: FrontEndState,
  { balls, dragLink, tieRod }: Statics,
  key: ArmKey,
  side: Side | undefined,
): ArmBending {
  const { layout, driven, sectorAxis } = frontEnd;
  const making = armMaking(layout, key);
  if (key === 'pitmanArm') {
    const force = pullOn(balls.pitman, balls.steeringArm, dragLink);
    return armBending(making, layout.steering.box.sectorCentre, sectorAxis, balls.pitman, force);
  }
  const of = side ?? driven;
  const axis = kingpinDirection(frontEnd, state, of);
  const { kingpinTop, kingpinBottom } = layout.axle[of];
  const foot = carriedTo(frontEnd, state, `axle-${of}`, kingpinBottom);
  const ball = key === 'steeringArm' ? balls.steeringArm : balls.tieRod[of];
  const up = Math.max(0, Math.min(distance(kingpinBottom, kingpinTop), dot(subtract(ball, foot), axis)));
  const boss = add(foot, scaled(axis, up));
  const other = of === 'left' ? 'right' : 'left';
  return key === 'steeringArm'
    ? armBending(making, boss, axis, balls.steeringArm, pullOn(balls.steeringArm, balls.pitman, dragLink))
    : armBending(making, boss, axis, balls.tieRod[of], pullOn(balls.tieRod[of], balls.tieRod[other], tieRod));
}

const UP: Point = [0, 0, 1];

/** The road's push on a wheel at its contact: N up, N along its heading (braking below 0), N·mm about the upright. */
function onWheel(
  frontEnd: FrontEnd,
  state: FrontEndState,
  side: Side,
  { up, along = 0, twist = 0 }: { readonly up: number; readonly along?: number; readonly twist?: number },
): Wrench {
  const { steer } = state[side];
  return {
    at: contactOf(frontEnd, state, side),
    force: [along * Math.cos(steer), along * Math.sin(steer), up],
    couple: scaled(UP, twist),
  };
}

/** What axle and wheels weigh, and push on by their own mass when the car slows (share of g). N. */
function ownMass({ ride }: Car, slowing = 0): Point {
  const weight = ride.unsprungMass * GRAVITY;
  return [weight * slowing, 0, -weight];
}

/** Forces that follow each load in step: those of a load and so many times those that one more unit of it adds. */
function plus(base: Statics, unitMore: Statics, times: number): Statics {
  const at = (a: number, b: number) => a + times * (b - a);
  const points = (a: Point, b: Point): Point => [at(a[0], b[0]), at(a[1], b[1]), at(a[2], b[2])];
  return {
    ...base,
    dragLink: at(base.dragLink, unitMore.dragLink),
    tieRod: at(base.tieRod, unitMore.tieRod),
    sector: at(base.sector, unitMore.sector),
    kingpin: {
      left: at(base.kingpin.left, unitMore.kingpin.left),
      right: at(base.kingpin.right, unitMore.kingpin.right),
    },
    springs: {
      left: at(base.springs.left, unitMore.springs.left),
      right: at(base.springs.right, unitMore.springs.right),
    },
    rows: base.rows.map((row, index) => {
      const other = unitMore.rows[index] as typeof row;
      return {
        ...row,
        force: points(row.force, other.force),
        along: at(row.along, other.along),
        couple: at(row.couple, other.couple),
        ...(row.bars && other.bars
          ? { bars: [at(row.bars[0], other.bars[0]), at(row.bars[1], other.bars[1])] as const }
          : {}),
      };
    }),
  };
}

/** Every handwheel position from lock to lock at the car's heave and roll, as the state stands in it. */
function* positions(car: Car): Generator<{ readonly handwheel: number; readonly state: FrontEndState }> {
  const { frontEnd, heave, roll } = car;
  const turn = sweepTurn(frontEnd, heave, roll, TURN_ROWS);
  const state = createState();
  if (turn.status !== 'ok' || solveFrontEnd(frontEnd, heave, roll, 0 as Radians, state) !== 'ok') return;
  for (const handwheel of turn.handwheel)
    if (steerAxle(frontEnd, handwheel as Radians, state) === 'ok') yield { handwheel, state };
}

/** Standing, turned from lock to lock both ways: each tyre scrubs about the upright through its contact, against the turn. */
function parking(car: Car): LoadCase {
  const { frontEnd } = car;
  const gathered = new Gathered(car.figures);
  const up = frontEnd.layout.car.frontAxleLoad / 2;
  for (const { handwheel, state } of positions(car))
    for (const way of [1, -1])
      for (const level of [0, 1] as const) {
        const grip = PARKING_GRIPS[level];
        // The couple whose part about the kingpin is what the formula gives.
        const twist = (side: Side) =>
          (-way * scrubAbout(frontEnd, side, grip)) / dot(kingpinDirection(frontEnd, state, side), UP);
        const statics = solveStatics(frontEnd, state, car.seats, {
          wheels: {
            left: onWheel(frontEnd, state, 'left', { up, twist: twist('left') }),
            right: onWheel(frontEnd, state, 'right', { up, twist: twist('right') }),
          },
          axle: ownMass(car),
        });
        if (statics.ok) gathered.take(level, statics.value, handwheel, frontEnd, state);
        else gathered.fail(statics.failure, handwheel);
      }
  return gathered.done('parking', PARKING_GRIPS, true);
}

/** What a box gives at the most, N·m at the sector shaft: as given, by the usual of its kind, or by a driver's arms. */
export function greatestOutput(layout: Layout): {
  readonly loads: readonly [number, number];
  readonly assumed: boolean;
} {
  const { greatestOutput: given, assist, ratio } = layout.steering.box;
  if (given !== undefined) return { loads: [given, given], assumed: false };
  if (assist === 'power') return { loads: USUAL_BOX_OUTPUT, assumed: true };
  const by = (pull: number) => (pull * layout.car.handwheelRadius * ratio * BOX_EFFICIENCY) / 1000;
  return { loads: [by(DRIVER_PULL[0]), by(DRIVER_PULL[1])], assumed: true };
}

/** A sector that takes less than this share of a kingpin's moment stands at the dead centre of its arm. */
const SECTOR_LEAST = 1e-3;

/**
 * The box at its most, both ways, with one wheel held as by a kerb: the near one, so that the drag link takes all, or the far
 * one, so that the tie rod takes it too.
 */
function boxAtItsMost(car: Car): LoadCase {
  const { frontEnd } = car;
  const { loads, assumed } = greatestOutput(frontEnd.layout);
  const gathered = new Gathered(car.figures);
  const up = frontEnd.layout.car.frontAxleLoad / 2;
  const unitTwist = 1e5;
  for (const { handwheel, state } of positions(car)) {
    const held = (by: Side | undefined) =>
      solveStatics(frontEnd, state, car.seats, {
        wheels: {
          left: onWheel(frontEnd, state, 'left', { up, twist: by === 'left' ? unitTwist : 0 }),
          right: onWheel(frontEnd, state, 'right', { up, twist: by === 'right' ? unitTwist : 0 }),
        },
        axle: ownMass(car),
      });
    const free = held(undefined);
    if (!free.ok) {
      gathered.fail(free.failure, handwheel);
      continue;
    }
    for (const side of SIDES) {
      const one = held(side);
      if (!one.ok) {
        gathered.fail(one.failure, handwheel);
        continue;
      }
      const perUnit = one.value.sector - free.value.sector;
      if (Math.abs(perUnit) < SECTOR_LEAST * unitTwist) {
        gathered.fail('box-dead-centre', handwheel);
        continue;
      }
      for (const way of [1, -1])
        for (const level of [0, 1] as const) {
          const times = (way * 1000 * loads[level] - free.value.sector) / perUnit;
          gathered.take(level, plus(free.value, one.value, times), handwheel, frontEnd, state);
        }
    }
  }
  return gathered.done('box', loads, assumed);
}

/**
 * Braked straight ahead, the axle wound up as `brake` has it: both wheels by their grip, and either alone on it, the other one
 * on ice. The handwheel is held.
 */
function braking(car: Car, brakes: BrakingCar): LoadCase {
  const gathered = new Gathered(car.figures);
  GRIP_RANGE.forEach((grip, index) => {
    const level = index as 0 | 1;
    const frontEnd = prepareBraked(car.frontEnd, brakes, grip);
    const state = createState();
    if (solveFrontEnd(frontEnd, car.heave, car.roll, 0 as Radians, state) !== 'ok') {
      gathered.fail('no-pose', 0);
      return;
    }
    for (const alone of [undefined, ...SIDES]) {
      // One front wheel that grips, with the rear one behind it, slows the car half as much.
      const whole = brakeLoads(brakes, alone ? grip / 2 : grip);
      const up = whole.frontLoad / 2;
      const along = (side: Side) =>
        alone === undefined ? -whole.brakeForce / 2 : alone === side ? -grip * up : 0;
      const statics = solveStatics(frontEnd, state, car.seats, {
        wheels: {
          left: onWheel(frontEnd, state, 'left', { up, along: along('left') }),
          right: onWheel(frontEnd, state, 'right', { up, along: along('right') }),
        },
        axle: ownMass(car, whole.deceleration),
      });
      if (statics.ok) gathered.take(level, statics.value, 0, frontEnd, state);
      else gathered.fail(statics.failure, 0);
    }
  });
  return gathered.done('braking', GRIP_RANGE, true);
}

/**
 * The forces in links, arms, balls and shafts when the car is parked, when the box gives its most, and under full braking, each as
 * a range from a light to a heavy load. Rough bounds for a qualified person: they prove no part.
 * Frame:    vehicle, ISO 8855. Units: mm, rad; N, N·mm.
 * Outcomes: the refusal of `rideParameters` or `brakingCar` where masses cannot be; in a case, the first pose without forces.
 * Source:   `solveStatics`; loads by `parkingEffort`, `brakeLoads`, and what is usual where nobody gave it.
 * Checked:  tests/unit/load-cases.test.ts.
 */
export function linkForces(
  frontEnd: FrontEnd,
  heave = 0,
  roll: Radians = 0 as Radians,
): Outcome<LinkForces, Refusal> {
  const { layout } = frontEnd;
  const ride = rideParameters(layout);
  if (!ride.ok) return failed(ride.failure);
  const brakes = brakingCar(layout);
  if (!brakes.ok) return failed(brakes.failure);
  const { parameters } = ride.value;
  const figures = forceFigures(frontEnd);
  const car: Car = {
    frontEnd,
    heave,
    roll,
    ride: parameters,
    seats: springSeats(layout, parameters.springBase),
    figures,
  };
  return succeeded({
    heave,
    roll,
    figures: figures.map(({ of: _, ...figure }) => figure),
    cases: [parking(car), boxAtItsMost(car), braking(car, brakes.value)],
  });
}

/** What the figures leave out, and what that would change. */
export const FORCES_LEFT_OUT: readonly string[] = [
  'Potholes, kerbs taken at speed and any other blow: they load a link more than all of these.',
  'Fatigue, wear, rust, heat beside welds, threads and holes: they are what breaks parts that are strong enough.',
  'Ball joints, rod ends, studs, brackets, bolts and the box’s own mounting: by their makers’ figures.',
  'Cornering, and braking in a turn.',
  'Friction in joints, and what the pose binds already.',
  'Tubes of hairpins, wishbones and stout rods themselves, which bend as well: their balls’ forces are shown.',
];
