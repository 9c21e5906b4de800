import { describe, expect, test } from 'vitest';
import {
  type OutsideLoads,
  type Statics,
  solveStatics,
  springSeats,
} from '../../shared-math/forces/index.ts';
import type { Point } from '../../shared-math/geometry/points.ts';
import { add, cross, dot, subtract } from '../../shared-math/geometry/vectors.ts';
import type { Side } from '../../shared-math/layout/index.ts';
import {
  carriedTo,
  createState,
  type FrontEnd,
  type FrontEndState,
  solveFrontEnd,
} from '../../shared-math/linkage/index.ts';
import { seededRandom } from '../../shared-math/solve/random.ts';
import { contactOf } from '../../shared-math/sweep/index.ts';
import { toRadians } from '../../shared-math/units/index.ts';
import { COMBINATIONS, CROSS_STEER, frontEndOf, SIDE_STEER } from '../support/layouts.ts';

// The forces are checked by virtual work: whatever the linkage is moved by, found by differences of the solved pose, the
// loads from the road, the box's moment and the springs do no work together. The statics know nothing of that solver's
// equations but where points are.

const SIDES = ['left', 'right'] as const;

function posed(frontEnd: FrontEnd, heave: number, roll: number, handwheel: number): FrontEndState {
  const state = createState();
  expect(solveFrontEnd(frontEnd, heave, roll as never, handwheel as never, state)).toBe('ok');
  return state;
}

/** Two forces on each wheel, at points fixed to its spindle: together a force and a couple of any direction. */
interface DrawnLoads {
  readonly points: Record<Side, readonly [Point, Point]>;
  readonly forces: Record<Side, readonly [Point, Point]>;
  readonly axle: Point;
}

function drawnLoads(frontEnd: FrontEnd, seed: number): DrawnLoads {
  const random = seededRandom(seed);
  const force = (size: number): Point => [
    size * (2 * random() - 1),
    size * (2 * random() - 1),
    size * (2 * random() - 1),
  ];
  const near = (at: Point): Point => add(at, force(300));
  const each = <Value>(of: (side: Side) => Value) => ({ left: of('left'), right: of('right') });
  const { axle } = frontEnd.layout;
  return {
    points: each((side) => [near(axle[side].wheelCentre), near(axle[side].wheelCentre)] as const),
    forces: each(() => [force(2000), force(2000)] as const),
    axle: force(800),
  };
}

function loadsIn(frontEnd: FrontEnd, state: FrontEndState, loads: DrawnLoads): OutsideLoads {
  const wheel = (side: Side) => {
    const [p, q] = loads.points[side].map((at) => carriedTo(frontEnd, state, `spindle-${side}`, at)) as [
      Point,
      Point,
    ];
    const [f, g] = loads.forces[side];
    return { at: p, force: add(f, g), couple: cross(subtract(q, p), g) };
  };
  return { wheels: { left: wheel('left'), right: wheel('right') }, axle: loads.axle };
}

/** The work of all that is not a bond, for each unit of a movement: by central differences of the solved pose. */
function work(
  frontEnd: FrontEnd,
  at: Pose,
  way: Pose,
  loads: DrawnLoads,
  statics: Statics,
  seats: Record<Side, Point>,
): number {
  const step = 1e-4;
  const moved = (by: number) =>
    posed(frontEnd, at[0] + by * way[0], at[1] + by * way[1], at[2] + by * way[2]);
  const [before, after] = [moved(-step), moved(step)];
  const gone = (carrier: Parameters<typeof carriedTo>[2], point: Point) =>
    subtract(carriedTo(frontEnd, after, carrier, point), carriedTo(frontEnd, before, carrier, point));
  let sum = (statics.sector * 2 * step * way[2]) / frontEnd.ratio;
  for (const side of SIDES) {
    const [p, q] = loads.points[side];
    const [f, g] = loads.forces[side];
    sum += dot(f, gone(`spindle-${side}`, p)) + dot(g, gone(`spindle-${side}`, q));
    sum -= statics.springs[side] * gone(`axle-${side}`, seats[side])[2];
  }
  sum += dot(loads.axle, gone('axle-left', frontEnd.axle.centre));
  return sum / (2 * step);
}

type Pose = readonly [heave: number, roll: number, handwheel: number];

const STEERINGS = [SIDE_STEER, CROSS_STEER];

describe('the forces do no work with any movement of the solved linkage', () => {
  // A tube that its rods bind in roll moves by giving, which is no bond; it is tried at roll 0 in heave and turn.
  test.each(COMBINATIONS.map(({ label, over }) => ({ label, over })))('$label', ({ label, over }) => {
    for (const [index, steering] of STEERINGS.entries()) {
      const frontEnd = frontEndOf({ ...over, steering });
      const seats = springSeats(frontEnd.layout, 700);
      const binds = label.includes('tube') && !label.includes('wishbone');
      // A hairpin's sideways offset guides the pose with a thousandth of a bond's weight, and carries nothing here.
      const guided = frontEnd.axle.rows.some(
        (row) => row.form === 'coincide' && row.weights.some((weight) => weight > 0 && weight < 1),
      );
      const roll = binds ? 0 : toRadians(1.1);
      for (const [heave, handwheel] of [
        [0, 0],
        [18, 2.5],
        [-31, -3.1],
      ] as const) {
        const at: Pose = [heave, roll, handwheel];
        const state = posed(frontEnd, ...at);
        const loads = drawnLoads(frontEnd, 17 + index + heave);
        const statics = solveStatics(frontEnd, state, seats, loadsIn(frontEnd, state, loads));
        if (!statics.ok) throw new Error(statics.failure);
        // A spring's fixed eye carries the axle across by a quarter of its rise: what guides or gives then works more.
        const much = label.includes('fixed-spring') ? 10 : 1;
        // Springs and rods that are askew in plan by unlike angles give more on a tube than four bars do.
        const gives = 0.1 * much * (label.includes('quarter-elliptic') ? (much > 1 ? 80 : 40) : 1);
        // N·mm for each radian of handwheel, of some 1e5; N for each mm of heave, of some 1e3; N·mm a radian of roll.
        const turned = work(frontEnd, at, [0, 0, 1], loads, statics.value, seats);
        expect(Math.abs(turned), `${heave} ${handwheel} turned`).toBeLessThan(0.01);
        const raised = work(frontEnd, at, [1, 0, 0], loads, statics.value, seats);
        expect(Math.abs(raised), `${heave} ${handwheel} raised`).toBeLessThan(
          guided ? 3 * much : binds ? gives : 1e-4,
        );
        if (!binds) {
          const rolled = work(frontEnd, at, [0, 1, 0], loads, statics.value, seats);
          expect(Math.abs(rolled), `${heave} ${handwheel} rolled`).toBeLessThan(
            guided ? 8000 * Math.min(2, much) : 0.05,
          );
        }
      }
    }
  });
});

describe('a check that can fail', () => {
  test('a drag link pulled a thousandth harder does work', () => {
    const frontEnd = frontEndOf({ steering: SIDE_STEER });
    const seats = springSeats(frontEnd.layout, 700);
    const state = posed(frontEnd, 0, 0, 1);
    const loads = drawnLoads(frontEnd, 3);
    const statics = solveStatics(frontEnd, state, seats, loadsIn(frontEnd, state, loads));
    if (!statics.ok) throw new Error(statics.failure);
    const wrong = { ...statics.value, sector: statics.value.sector * 1.001 };
    expect(Math.abs(work(frontEnd, [0, 0, 1], [0, 0, 1], loads, wrong, seats))).toBeGreaterThan(1);
  });
});

describe('failures have names', () => {
  test('a pose out of reach has no forces', () => {
    const frontEnd = frontEndOf({ steering: { ...SIDE_STEER, dragLinkBall: [0, 560, 395] } });
    const state = createState();
    solveFrontEnd(frontEnd, 0, 0 as never, 20 as never, state);
    expect(state.status).not.toBe('ok');
    const none = { at: [0, 0, 0], force: [0, 0, 0], couple: [0, 0, 0] } as const;
    const loads = { wheels: { left: none, right: none }, axle: [0, 0, 0] } as const;
    expect(solveStatics(frontEnd, state, springSeats(frontEnd.layout, 700), loads)).toEqual({
      ok: false,
      failure: 'no-pose',
    });
  });

  test('a drag link in line with its arm is at its dead centre', () => {
    // The ball stands straight behind the kingpin's line, and the link runs straight ahead through it.
    const frontEnd = frontEndOf();
    const { kingpinTop, kingpinBottom } = frontEnd.layout.axle.left;
    const share = (330 - kingpinBottom[2]) / (kingpinTop[2] - kingpinBottom[2]);
    const onPin = kingpinBottom.map(
      (from, i) => from + share * ((kingpinTop[i] as number) - from),
    ) as unknown as Point;
    const ball: Point = [onPin[0] - 150, onPin[1], 330];
    const dead = frontEndOf({
      steering: {
        ...SIDE_STEER,
        dragLinkBall: ball,
        box: {
          ...SIDE_STEER.box,
          pitmanBall: [ball[0] - 600, ball[1], 330],
          sectorCentre: [ball[0] - 600, ball[1], 480],
        },
      },
    });
    const state = posed(dead, 0, 0, 0);
    const none = { at: [0, 0, 0], force: [0, 0, 0], couple: [0, 0, 0] } as const;
    const loads = { wheels: { left: none, right: none }, axle: [0, 0, 0] } as const;
    expect(solveStatics(dead, state, springSeats(dead.layout, 700), loads)).toEqual({
      ok: false,
      failure: 'drag-link-dead-centre',
    });
  });
});

test('the contact is the lowest point of the tyre’s rim', () => {
  const frontEnd = frontEndOf();
  for (const handwheel of [0, 3, -5])
    for (const side of SIDES) {
      const state = posed(frontEnd, 12, 0.01, handwheel);
      const contact = contactOf(frontEnd, state, side);
      const centre = carriedTo(frontEnd, state, `spindle-${side}`, frontEnd.layout.axle[side].wheelCentre);
      // The spin axis independently, from two drawn points of the spindle: through the wheel's centre.
      const { toeIn, camber } = frontEnd.layout.axle[side];
      const [t, c] = [toRadians(toeIn), toRadians(camber)];
      const inward = side === 'left' ? 1 : -1;
      const drawn: Point = [
        inward * Math.sin(t) * Math.cos(c),
        Math.cos(t) * Math.cos(c),
        -inward * Math.sin(c),
      ];
      const tip = carriedTo(
        frontEnd,
        state,
        `spindle-${side}`,
        add(frontEnd.layout.axle[side].wheelCentre, drawn),
      );
      const spin = subtract(tip, centre);
      const down = subtract(contact, centre);
      expect(dot(spin, down)).toBeCloseTo(0, 8);
      // As drawn the wheel, tipped by its camber, stands 330 mm above the ground.
      expect(Math.hypot(...down)).toBeCloseTo(330 / Math.cos(c), 8);
      // Of all points of the rim it is the lowest.
      const other = cross(spin, down);
      for (const angle of [-0.01, 0.01])
        expect(Math.cos(angle) * down[2] + Math.sin(angle) * other[2]).toBeGreaterThan(down[2]);
    }
});
