import type { Point } from '../geometry/points.ts';
import { add, cross, dot, norm, scaled, subtract, unit } from '../geometry/vectors.ts';
import type { Carrier, Layout, Side } from '../layout/index.ts';
import { carriedTo, type FrontEnd, type FrontEndState, kingpinDirection } from '../linkage/index.ts';
import { failed, type Outcome, succeeded } from '../outcome.ts';
import { ANGLE_ARM, type AxleRow, LEAF_PITCH_WEIGHT } from '../pose/index.ts';
import { factorise, solveFactored } from '../solve/cholesky.ts';

/** A force in N at a point in mm, and a couple in N·mm beside it; car's axes. */
export interface Wrench {
  readonly at: Point;
  readonly force: Point;
  readonly couple: Point;
}

/** What presses on the car from the road and on the axle from its own mass, in one pose. */
export interface OutsideLoads {
  /** On each wheel's spindle, the wheel held to it as by its brake: at the tyre's contact. */
  readonly wheels: Readonly<Record<Side, Wrench>>;
  /** On the axle's centre: what it and its wheels weigh, and their own inertia. */
  readonly axle: Point;
}

/** Why there are no forces: a pose that is none, an arm that its link cannot turn, links that leave the axle free. */
export type StaticsFailure =
  | 'no-pose'
  | 'drag-link-dead-centre'
  | 'tie-rod-dead-centre'
  | 'box-dead-centre'
  | 'axle-free';

/** What a row of the axle's pose pulls or pushes with. */
export interface RowForce {
  readonly row: AxleRow;
  /** N on the axle, car's axes. */
  readonly force: Point;
  /** Where it acts on the axle, and the other end on the frame, in the pose; one spot where they coincide. mm. */
  readonly axleEnd: Point;
  readonly frameEnd: Point;
  /** N along the link from end to end, pull positive; of rows that are no link 0. */
  readonly along: number;
  /** N·mm about the axle's line, of a leaf that is clamped to it. */
  readonly couple: number;
  /** N, pull positive, of both bars of a Watt's linkage; the ends above are then those of the rocker's bolt and the upper bar. */
  readonly bars?: readonly [upper: number, lower: number];
}

/** All forces of one pose under one load; pull positive. N, N·mm, car's axes. */
export interface Statics {
  readonly dragLink: number;
  readonly tieRod: number;
  /** What the links hold about each kingpin: the moment of wheel and road about it, positive turning the wheel left. */
  readonly kingpin: Readonly<Record<Side, number>>;
  /** What the box holds about the sector axis. */
  readonly sector: number;
  readonly rows: readonly RowForce[];
  /** N of each side's spring on the axle, positive down. */
  readonly springs: Readonly<Record<Side, number>>;
  /** The axle's centre in the pose. */
  readonly centre: Point;
  /** The balls in the pose: on the pitman arm, on the steering arm, of the tie rod. */
  readonly balls: Balls;
}

interface Balls {
  readonly pitman: Point;
  readonly steeringArm: Point;
  readonly tieRod: Readonly<Record<Side, Point>>;
}

/** Where each side's spring presses on the axle, as drawn at ride height: mm. */
export type SpringSeats = Readonly<Record<Side, Point>>;

/** A link that turns its arm by less than this share of the arm's length to each mm stands at a dead centre. */
const LEVER_LEAST = 1e-3;
/** Springs give far more than links do: where both can carry a load, the links carry it. */
const SPRING_WEIGHT = 1e-3;

/** An unknown of the system: what one newton (or one N·m per metre) of it puts on each body. */
interface Unknown {
  readonly weight: number;
  readonly column: Float64Array;
}

// The equations: moments about the two kingpins and the sector axis, force and moment on the whole axle, and, of a beam
// that twists freely, the moment on its left half about the axle's line. Moments count as what presses at ANGLE_ARM.
const KINGPIN = { left: 0, right: 1 } as const;
const SECTOR = 2;
const FORCE = 3;
const MOMENT = 6;
const TWIST = 9;

/** Everything about the posed axle that the equations are taken about. */
interface Frame {
  readonly centre: Point;
  /** To the left, length 1: the line that each half turns about. */
  readonly line: Point;
  /** The same level, and ahead, square to it. */
  readonly level: Point;
  readonly ahead: Point;
  /** Cosine of the roll. */
  readonly cosRoll: number;
  readonly equations: 9 | 10;
}

function pressing(frame: Frame, column: Float64Array, half: Side | undefined, wrench: Wrench): void {
  const moment = add(cross(subtract(wrench.at, frame.centre), wrench.force), wrench.couple);
  for (let axis = 0; axis < 3; axis += 1) {
    column[FORCE + axis] = (column[FORCE + axis] as number) + (wrench.force[axis] as number);
    column[MOMENT + axis] = (column[MOMENT + axis] as number) + (moment[axis] as number) / ANGLE_ARM;
  }
  if (frame.equations === 10 && half === 'left')
    column[TWIST] = (column[TWIST] as number) + dot(moment, frame.line) / ANGLE_ARM;
}

const NONE: Point = [0, 0, 0];
const AXES: readonly Point[] = [
  [1, 0, 0],
  [0, 1, 0],
  [0, 0, 1],
];

/** What one unit of a force that a row can have does: on a half of the axle, and on another half beside that. */
interface UnitForce {
  readonly weight: number;
  readonly wrench: Wrench;
  readonly frameEnd: Point;
  readonly half?: Side;
  readonly also?: { readonly half: Side; readonly wrench: Wrench };
  /** Of a rocker: what each of its bars then pulls with. */
  readonly bars?: readonly [upper: number, lower: number];
}

/**
 * What a rocker passes on: its bars pull so that they balance about its bolt, hence as the levers of one another. On the axle
 * the bolt takes both pulls; on the frame each bar pulls at its own end.
 */
function rockerForce(
  frontEnd: FrontEnd,
  state: FrontEndState,
  row: Extract<AxleRow, { form: 'rocker' }>,
): UnitForce[] {
  const onAxle = row.on === 'axle';
  const bearer = onAxle ? (`axle-${row.half}` as const) : 'frame';
  const bolt = carriedTo(frontEnd, state, bearer, row.pivot);
  const along = unit(subtract(carriedTo(frontEnd, state, bearer, add(row.pivot, [ANGLE_ARM, 0, 0])), bolt));
  const bars = [row.upper, row.lower].map(({ rocker, end, half }) => {
    const near = carriedTo(frontEnd, state, 'rocker', rocker);
    const far = carriedTo(frontEnd, state, onAxle ? 'frame' : `axle-${half}`, end);
    const [axleEnd, frameEnd] = onAxle ? [near, far] : [far, near];
    const lever = dot(along, cross(subtract(near, bolt), unit(subtract(far, near))));
    return { half, axleEnd, way: unit(subtract(frameEnd, axleEnd)), lever };
  });
  const [upper, lower] = bars as [(typeof bars)[number], (typeof bars)[number]];
  const size = Math.hypot(upper.lever, lower.lever);
  // Both bars in line with the rocker hold nothing.
  if (size < 1e-9) return [];
  const pulls = [-lower.lever / size, upper.lever / size] as const;
  const forces = [scaled(upper.way, pulls[0]), scaled(lower.way, pulls[1])] as const;
  if (!onAxle) {
    const on = (bar: typeof upper, force: Point) => ({
      half: bar.half,
      wrench: { at: bar.axleEnd, force, couple: NONE },
    });
    return [{ weight: 1, frameEnd: bolt, bars: pulls, ...on(upper, forces[0]), also: on(lower, forces[1]) }];
  }
  const couple = add(
    cross(subtract(upper.axleEnd, bolt), forces[0]),
    cross(subtract(lower.axleEnd, bolt), forces[1]),
  );
  return [
    {
      weight: 1,
      wrench: { at: bolt, force: add(...forces), couple },
      frameEnd: bolt,
      half: row.half,
      bars: pulls,
    },
  ];
}

/** What one unit of a row's force does, for each force that it can have. */
function rowForces(frontEnd: FrontEnd, state: FrontEndState, frame: Frame, row: AxleRow): UnitForce[] {
  if (row.form === 'rocker') return rockerForce(frontEnd, state, row);
  if (row.form === 'centred') {
    // The row, y - rise · sin roll, passes on a push across at the spring's height: at the axle's line with a couple.
    const { centre } = frontEnd.axle;
    const rise = row.height === undefined ? 0 : row.height - centre[2];
    const couple = scaled(frame.ahead, -rise * frame.cosRoll);
    return [{ weight: 1, wrench: { at: frame.centre, force: [0, 1, 0], couple }, frameEnd: frame.centre }];
  }
  const carrier = `axle-${row.half}` as const;
  if (row.form === 'leaf-pitch') {
    const at = carriedTo(frontEnd, state, carrier, row.seat);
    return [
      {
        weight: LEAF_PITCH_WEIGHT,
        // The row, pitch - k rise, passes on a couple that works on the pitch alone, with -k times it on the rise.
        wrench: {
          at,
          force: [0, 0, -row.pitchPerRise * ANGLE_ARM],
          couple: scaled(frame.level, ANGLE_ARM / frame.cosRoll),
        },
        frameEnd: at,
        half: row.half,
      },
    ];
  }
  const axleEnd = carriedTo(frontEnd, state, carrier, row.axle);
  if (row.form === 'distance') {
    const way = unit(subtract(row.frame, axleEnd));
    return [
      { weight: 1, wrench: { at: axleEnd, force: way, couple: NONE }, frameEnd: row.frame, half: row.half },
    ];
  }
  // A sideways offset that only guides the pose carries no load to speak of.
  return AXES.flatMap((force, axis) =>
    row.weights[axis] === 1
      ? [{ weight: 1, wrench: { at: axleEnd, force, couple: NONE }, frameEnd: row.frame, half: row.half }]
      : [],
  );
}

function frameOf(
  { axle }: FrontEnd,
  carried: (carrier: Carrier, at: Point) => Point,
  joined: boolean,
): Frame {
  const centre = carried('axle-left', axle.centre);
  const line = unit(subtract(carried('axle-left', add(axle.centre, [0, ANGLE_ARM, 0])), centre));
  const level = unit([line[0], line[1], 0]);
  return {
    centre,
    line,
    level,
    ahead: cross(level, [0, 0, 1]),
    cosRoll: dot(level, line),
    equations: joined ? 9 : 10,
  };
}

/**
 * The forces that hold a posed front end still under loads from the road, by one linear system.
 *
 * Bodies: both spindles with their wheels, about their kingpins; the pitman arm, about the sector axis; the axle with its
 * spindles, in space; and, where the beam twists freely, its left half by itself about the line through the wheel centres.
 * Links with a ball at each end pull or push along themselves; what holds the axle does what its row of the pose can (a
 * workless bond passes on the force along its own slope); springs press along the car's upright at their seats.
 * Unknown are pull of drag link and tie rod, the box's moment, the rows' forces and both springs. Where there are more
 * unknowns than equations (a tube on hairpins or leaves, four bars and a tube) the load is shared as by links of one
 * stiffness and springs of a thousandth of it: Σ u²/w least, so u = W Aᵀ (A W Aᵀ)⁻¹ b; that share is rough.
 * Frame:    vehicle, ISO 8855. Units: N, mm, N·mm.
 * Outcomes: the names of `StaticsFailure`; a lever below a thousandth of its arm counts as a dead centre. Never NaN.
 * Left out: friction, what the pose binds already, flexing, what the dampers do, weight of the links.
 * Source:   own derivation; equilibrium of rigid bodies (any textbook of statics).
 * Checked:  tests/unit/statics.test.ts (virtual work against differences of the solved linkage),
 *           tests/reference/link-forces.test.ts (all bodies with all their reactions by a registry's singular values).
 */
export function solveStatics(
  frontEnd: FrontEnd,
  state: FrontEndState,
  seats: SpringSeats,
  loads: OutsideLoads,
): Outcome<Statics, StaticsFailure> {
  if (state.status !== 'ok') return failed('no-pose');
  const { layout, driven } = frontEnd;
  const follower = driven === 'left' ? 'right' : 'left';
  const carried = (carrier: Carrier, at: Point) => carriedTo(frontEnd, state, carrier, at);
  const joined = frontEnd.axle.unknowns === 4;
  const frame = frameOf(frontEnd, carried, joined);
  const balls: Balls = {
    pitman: carried('pitman', layout.steering.box.pitmanBall),
    steeringArm: carried(`spindle-${driven}`, layout.steering.dragLinkBall),
    tieRod: {
      left: carried('spindle-left', layout.axle.left.tieRodBall),
      right: carried('spindle-right', layout.axle.right.tieRodBall),
    },
  };
  const foot = (side: Side) => carried(`axle-${side}`, layout.axle[side].kingpinBottom);
  const upward = {
    left: kingpinDirection(frontEnd, state, 'left'),
    right: kingpinDirection(frontEnd, state, 'right'),
  };
  const lever = (side: Side, at: Point, force: Point) =>
    dot(upward[side], cross(subtract(at, foot(side)), force));

  const dragWay = unit(subtract(balls.pitman, balls.steeringArm));
  const tieWay = unit(subtract(balls.tieRod.right, balls.tieRod.left));
  const dragLever = lever(driven, balls.steeringArm, dragWay);
  const tieLever = {
    left: lever('left', balls.tieRod.left, tieWay),
    right: lever('right', balls.tieRod.right, scaled(tieWay, -1)),
  };
  const armOf = (side: Side, ball: Point) => {
    const reach = subtract(ball, foot(side));
    return norm(subtract(reach, scaled(upward[side], dot(reach, upward[side]))));
  };
  if (Math.abs(dragLever) < LEVER_LEAST * armOf(driven, balls.steeringArm))
    return failed('drag-link-dead-centre');
  if (Math.abs(tieLever[follower]) < LEVER_LEAST * armOf(follower, balls.tieRod[follower]))
    return failed('tie-rod-dead-centre');

  const size = frame.equations;
  const unknowns: Unknown[] = [];
  const unknown = (weight: number) => {
    const column = new Float64Array(size);
    unknowns.push({ weight, column });
    return column;
  };
  const drag = unknown(1);
  drag[KINGPIN[driven]] = dragLever / ANGLE_ARM;
  // The other end pulls on the pitman ball the other way.
  const { sectorCentre } = layout.steering.box;
  const onSector = cross(subtract(balls.pitman, sectorCentre), scaled(dragWay, -1));
  drag[SECTOR] = dot(frontEnd.sectorAxis, onSector) / ANGLE_ARM;
  pressing(frame, drag, driven, { at: balls.steeringArm, force: dragWay, couple: NONE });
  const tie = unknown(1);
  for (const side of ['left', 'right'] as const) tie[KINGPIN[side]] = tieLever[side] / ANGLE_ARM;
  // Within the whole axle it cancels; on its halves by themselves it does not.
  pressing(frame, tie, 'left', { at: balls.tieRod.left, force: tieWay, couple: NONE });
  pressing(frame, tie, 'right', { at: balls.tieRod.right, force: scaled(tieWay, -1), couple: NONE });
  unknown(1)[SECTOR] = 1;

  const { rows } = frontEnd.axle;
  const pulls = rows.map((row) => rowForces(frontEnd, state, frame, row));
  for (const { weight, half, wrench, also } of pulls.flat()) {
    const column = unknown(weight);
    pressing(frame, column, half, wrench);
    if (also) pressing(frame, column, also.half, also.wrench);
  }
  for (const side of ['left', 'right'] as const)
    pressing(frame, unknown(SPRING_WEIGHT), side, {
      at: carried(`axle-${side}`, seats[side]),
      force: [0, 0, -1],
      couple: NONE,
    });

  const load = new Float64Array(size);
  const kingpin = { left: 0, right: 0 };
  for (const side of ['left', 'right'] as const) {
    const wrench = loads.wheels[side];
    kingpin[side] = lever(side, wrench.at, wrench.force) + dot(upward[side], wrench.couple);
    load[KINGPIN[side]] = kingpin[side] / ANGLE_ARM;
    pressing(frame, load, side, wrench);
  }
  // The axle's own mass is shared by its halves about their line, on which it stands.
  pressing(frame, load, undefined, { at: frame.centre, force: loads.axle, couple: NONE });

  const found = leastForces(unknowns, load);
  if (!found) return failed('axle-free');
  let next = 3;
  const rowResults = rows.map((row, index) => {
    const each = pulls[index] as ReturnType<typeof rowForces>;
    let force: Point = NONE;
    let couple = 0;
    let bars: RowForce['bars'];
    for (const { wrench, also, bars: pulls } of each) {
      const size = found[next] as number;
      next += 1;
      force = add(force, scaled(also ? add(wrench.force, also.wrench.force) : wrench.force, size));
      if (pulls) bars = [size * pulls[0], size * pulls[1]];
      couple += size * dot(wrench.couple, frame.line);
    }
    const first = each[0];
    const axleEnd = first?.wrench.at ?? NONE;
    const frameEnd = first?.frameEnd ?? NONE;
    const along = row.form === 'distance' ? dot(force, unit(subtract(frameEnd, axleEnd))) : 0;
    return { row, force, axleEnd, frameEnd, along, couple, ...(bars ? { bars } : {}) };
  });
  return succeeded({
    dragLink: found[0] as number,
    tieRod: found[1] as number,
    kingpin,
    sector: (found[2] as number) * ANGLE_ARM,
    rows: rowResults,
    springs: { left: found[next] as number, right: found[next + 1] as number },
    centre: frame.centre,
    balls,
  });
}

/** Unknowns u with A u + b = 0 and Σ u²/w least; undefined if the columns do not span the equations. */
function leastForces(unknowns: readonly Unknown[], load: Float64Array): Float64Array | undefined {
  const n = load.length;
  const matrix = new Float64Array(n * n);
  for (const { weight, column } of unknowns)
    for (let i = 0; i < n; i += 1)
      for (let j = 0; j <= i; j += 1)
        matrix[i * n + j] =
          (matrix[i * n + j] as number) + weight * (column[i] as number) * (column[j] as number);
  const factor = new Float64Array(n * n);
  const dual = Float64Array.from(load, (value) => -value);
  if (!factorise(n, matrix, 0, load, factor)) return undefined;
  solveFactored(n, factor, dual);
  return Float64Array.from(unknowns, ({ weight, column }) => {
    let sum = 0;
    for (let i = 0; i < n; i += 1) sum += (column[i] as number) * (dual[i] as number);
    return weight * sum;
  });
}

/** Where the springs press on the axle: at the leaves' seats, else across from one another by `springBase` mm on the axle's line. */
export function springSeats(layout: Layout, springBase: number): SpringSeats {
  if (layout.location.kind === 'parallel-leaf')
    return { left: layout.location.left.seat, right: layout.location.right.seat };
  if (layout.location.kind === 'quarter-elliptic')
    return { left: layout.location.left.eye, right: layout.location.right.eye };
  const { left, right } = layout.axle;
  const middle = scaled(add(left.wheelCentre, right.wheelCentre), 0.5);
  return {
    left: [middle[0], middle[1] + springBase / 2, middle[2]],
    right: [middle[0], middle[1] - springBase / 2, middle[2]],
  };
}
