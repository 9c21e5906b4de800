import { Matrix, SingularValueDecomposition } from 'ml-matrix';
import { describe, expect, test } from 'vitest';
import {
  type OutsideLoads,
  type Statics,
  solveStatics,
  springSeats,
} from '../../shared-math/forces/index.ts';
import type { Point } from '../../shared-math/geometry/points.ts';
import {
  carriedTo,
  createState,
  type FrontEnd,
  type FrontEndState,
  solveFrontEnd,
} from '../../shared-math/linkage/index.ts';
import { CROSS_STEER, frontEndOf, LATERALS, LOCATIONS, PLAIN_HALF, SIDE_STEER } from '../support/layouts.ts';

// Every body of the front end by itself, with every reaction at every joint, and all equations of equilibrium at once, solved
// by the singular values of a registry's matrix library (ml-matrix). Written out here without the program's statics; only
// the places of points in the pose are the program's.

type Vector = readonly number[];
const cross = (a: Vector, b: Vector): number[] => [
  (a[1] as number) * (b[2] as number) - (a[2] as number) * (b[1] as number),
  (a[2] as number) * (b[0] as number) - (a[0] as number) * (b[2] as number),
  (a[0] as number) * (b[1] as number) - (a[1] as number) * (b[0] as number),
];
const minus = (a: Vector, b: Vector) => a.map((each, i) => each - (b[i] as number));
const unit = (a: Vector) => a.map((each) => each / Math.hypot(...a));
const BODIES = ['left spindle', 'right spindle', 'left half', 'right half', 'pitman arm'] as const;
type BodyName = (typeof BODIES)[number];
const NONE = [0, 0, 0];
const X = [1, 0, 0];
const Y = [0, 1, 0];
const Z = [0, 0, 1];

/** What one unknown puts on bodies: a force at a place, and a couple. */
type Press = readonly [body: BodyName, at: Vector, force: Vector, couple: Vector];

class Equilibrium {
  readonly names: string[] = [];
  readonly #columns: number[][] = [];
  readonly #load = new Array<number>(6 * BODIES.length).fill(0);

  #pressed(presses: readonly Press[], into: number[]) {
    for (const [body, at, force, couple] of presses) {
      const row = 6 * BODIES.indexOf(body);
      const moment = cross(at, force).map((each, i) => (each + (couple[i] as number)) / 1000);
      for (let i = 0; i < 3; i += 1) {
        into[row + i] = (into[row + i] as number) + (force[i] as number);
        into[row + 3 + i] = (into[row + 3 + i] as number) + (moment[i] as number);
      }
    }
    return into;
  }

  unknown(name: string, ...presses: Press[]) {
    this.names.push(name);
    this.#columns.push(this.#pressed(presses, new Array<number>(6 * BODIES.length).fill(0)));
  }

  /** Between two bodies at a point: whatever forces and couples in these directions. */
  joint(name: string, one: BodyName, other: BodyName | undefined, at: Vector, couples: readonly Vector[]) {
    const both = (force: Vector, couple: Vector): Press[] => [
      [one, at, force, couple],
      ...(other ? [[other, at, force.map((each) => -each), couple.map((each) => -each)] as Press] : []),
    ];
    for (const axis of [X, Y, Z]) this.unknown(`${name} force`, ...both(axis, NONE));
    for (const couple of couples)
      this.unknown(
        `${name} couple`,
        ...both(
          NONE,
          couple.map((each) => 1000 * each),
        ),
      );
  }

  load(...presses: Press[]) {
    this.#pressed(presses, this.#load);
  }

  solve(): Map<string, number> {
    const a = new Matrix(this.#columns).transpose();
    const svd = new SingularValueDecomposition(a, { autoTranspose: true });
    const x = svd.solve(Matrix.columnVector(this.#load.map((each) => -each)));
    const left = a
      .mmul(x)
      .to1DArray()
      .map((each, i) => each + (this.#load[i] as number));
    expect(Math.max(...left.map(Math.abs))).toBeLessThan(1e-6);
    expect(svd.rank, 'statically determinate').toBe(this.names.length);
    return new Map(this.names.map((name, i) => [name, x.get(i, 0)]));
  }
}

/** Two directions square to a third. */
function squareTo(axis: Vector): [number[], number[]] {
  const one = unit(cross(axis, Math.abs(axis[0] as number) < 0.9 ? X : Y));
  return [one, cross(axis, one)];
}

function allBodies(
  frontEnd: FrontEnd,
  state: FrontEndState,
  loads: OutsideLoads,
  seats: Record<'left' | 'right', Point>,
) {
  const { layout, driven } = frontEnd;
  const at = (carrier: Parameters<typeof carriedTo>[2], point: Point) =>
    carriedTo(frontEnd, state, carrier, point);
  const bodies = new Equilibrium();
  const half = (side: string) => `${side} half` as BodyName;
  const spindle = (side: string) => `${side} spindle` as BodyName;
  for (const side of ['left', 'right'] as const) {
    const bottom = at(`axle-${side}`, layout.axle[side].kingpinBottom);
    const pin = unit(minus(at(`axle-${side}`, layout.axle[side].kingpinTop), bottom));
    bodies.joint(`kingpin ${side}`, spindle(side), half(side), bottom, squareTo(pin));
    const { at: where, force, couple } = loads.wheels[side];
    bodies.load([spindle(side), where, force, couple]);
    bodies.unknown(`spring ${side}`, [half(side), at(`axle-${side}`, seats[side]), [0, 0, -1], NONE]);
  }
  const drag = at(`spindle-${driven}`, layout.steering.dragLinkBall);
  const pitman = at('pitman', layout.steering.box.pitmanBall);
  const dragWay = unit(minus(pitman, drag));
  bodies.unknown(
    'dragLink',
    [spindle(driven), drag, dragWay, NONE],
    ['pitman arm', pitman, dragWay.map((each) => -each), NONE],
  );
  const [tieLeft, tieRight] = [
    at('spindle-left', layout.axle.left.tieRodBall),
    at('spindle-right', layout.axle.right.tieRodBall),
  ];
  const tieWay = unit(minus(tieRight, tieLeft));
  bodies.unknown(
    'tieRod',
    ['left spindle', tieLeft, tieWay, NONE],
    ['right spindle', tieRight, tieWay.map((each) => -each), NONE],
  );
  const sector = unit(layout.steering.box.sectorAxis);
  bodies.joint('sector shaft', 'pitman arm', undefined, layout.steering.box.sectorCentre, squareTo(sector));
  bodies.unknown('sector', ['pitman arm', NONE, NONE, sector.map((each) => 1000 * each)]);
  const centre = at('axle-left', frontEnd.axle.centre);
  const across = unit(
    minus(
      at('axle-left', [centre[0], centre[1] + 500, frontEnd.axle.centre[2]]),
      at('axle-left', [centre[0], centre[1], frontEnd.axle.centre[2]]),
    ),
  );
  // An I-beam's halves are hinged about the line of the wheel centres; a wishbone's are one.
  const hinge = layout.location.kind === 'wishbone' ? [X, Y, Z] : squareTo(across);
  bodies.joint('beam', 'left half', 'right half', centre, hinge);
  bodies.load(['left half', centre, loads.axle, NONE]);
  const pull = (name: string, side: string, axle: Point, frame: Point) =>
    bodies.unknown(name, [half(side), axle, unit(minus(frame, axle)), NONE]);

  const { location, lateral } = layout;
  if (location.kind === 'hairpins')
    for (const side of ['left', 'right'] as const) {
      const ball = at(`axle-${side}`, location[side].framePivot as Point);
      bodies.unknown(`${side} ball x`, [half(side), ball, X, NONE]);
      bodies.unknown(`${side} ball z`, [half(side), ball, Z, NONE]);
    }
  if (location.kind === 'wishbone')
    for (const [name, axis] of [
      ['x', X],
      ['y', Y],
      ['z', Z],
    ] as const)
      bodies.unknown(`ball ${name}`, [
        'left half',
        at('axle-left', location.framePivot as Point),
        axis,
        NONE,
      ]);
  if (location.kind === 'four-bar')
    for (const side of ['left', 'right'] as const)
      for (const bar of ['upper', 'lower'] as const)
        pull(`${side} ${bar}`, side, at(`axle-${side}`, location[side][bar].axle), location[side][bar].frame);
  if (lateral.kind === 'bar') pull('lateral', 'right', at('axle-right', lateral.axle), lateral.frame);
  return bodies.solve();
}

const LOADS: OutsideLoads = {
  wheels: {
    left: { at: [12, 705, 4], force: [-1900, 310, 2600], couple: [40_000, -15_000, 120_000] },
    right: { at: [-9, -712, -3], force: [-1100, 260, 2240], couple: [-22_000, 9000, 75_000] },
  },
  axle: [420, 0, -900],
};

function solved(over: Record<string, unknown>, heave: number, roll: number, handwheel: number) {
  const frontEnd = frontEndOf({
    axle: { beam: 'i-beam', left: PLAIN_HALF, right: 'mirror' },
    lateral: LATERALS.bar,
    ...over,
  });
  const state = createState();
  expect(solveFrontEnd(frontEnd, heave, roll as never, handwheel as never, state)).toBe('ok');
  const seats = springSeats(frontEnd.layout, 640);
  const statics = solveStatics(frontEnd, state, seats, LOADS);
  if (!statics.ok) throw new Error(statics.failure);
  return { ours: statics.value, all: allBodies(frontEnd, state, LOADS, seats) };
}

/** Within a hundredth of a newton, or a newton-millimetre in a million. */
function agree(ours: Statics, all: Map<string, number>, rows: readonly (readonly [string, number])[]) {
  const of = (name: string) => all.get(name) as number;
  expect(ours.dragLink).toBeCloseTo(of('dragLink'), 4);
  expect(ours.tieRod).toBeCloseTo(of('tieRod'), 4);
  expect(ours.sector / 1000).toBeCloseTo(of('sector'), 4);
  expect(ours.springs.left).toBeCloseTo(of('spring left'), 4);
  expect(ours.springs.right).toBeCloseTo(of('spring right'), 4);
  for (const [name, value] of rows) expect(value, name).toBeCloseTo(of(name), 4);
}

const POSES = [
  [0, 0, 0],
  [22, 0.017, 3.4],
  [-35, -0.02, -4.1],
] as const;

describe.each([
  ['side steer', SIDE_STEER],
  ['cross steer', CROSS_STEER],
] as const)('%s: the forces are those of all bodies with all their reactions', (_, steering) => {
  test.each(POSES)('hairpins and a bar, at %d mm, %d rad, handwheel %d', (...pose) => {
    const { ours, all } = solved({ location: LOCATIONS.hairpins, steering }, ...pose);
    const [left, right, bar] = ours.rows;
    agree(ours, all, [
      ['left ball x', left?.force[0] as number],
      ['left ball z', left?.force[2] as number],
      ['right ball x', right?.force[0] as number],
      ['right ball z', right?.force[2] as number],
      ['lateral', bar?.along as number],
    ]);
    expect(left?.force[1]).toBe(0);
  });

  test.each(POSES)('four bars and a bar, at %d mm, %d rad, handwheel %d', (...pose) => {
    const { ours, all } = solved({ location: LOCATIONS['four-bar'], steering }, ...pose);
    const names = ['left upper', 'left lower', 'right upper', 'right lower', 'lateral'];
    agree(
      ours,
      all,
      names.map((name, i) => [name, ours.rows[i]?.along as number]),
    );
  });

  test.each(POSES)('a wishbone and a bar, at %d mm, %d rad, handwheel %d', (...pose) => {
    const { ours, all } = solved({ location: LOCATIONS.wishbone, steering }, ...pose);
    const [ball, bar] = ours.rows;
    agree(ours, all, [
      ['ball x', ball?.force[0] as number],
      ['ball y', ball?.force[1] as number],
      ['ball z', ball?.force[2] as number],
      ['lateral', bar?.along as number],
    ]);
  });
});
