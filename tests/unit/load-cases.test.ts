import { describe, expect, test } from 'vitest';
import { brakingCar } from '../../shared-math/brake/index.ts';
import {
  type FigureReach,
  greatestOutput,
  type LinkForces,
  type LoadCaseId,
  linkForces,
  PARKING_GRIPS,
  parkedDragLink,
  USUAL_BOX_OUTPUT,
} from '../../shared-math/forces/index.ts';
import type { Point } from '../../shared-math/geometry/points.ts';
import { carriedTo, createState, type FrontEnd, solveFrontEnd } from '../../shared-math/linkage/index.ts';
import { groundEccentricity, parkingEffort, sweepTurn } from '../../shared-math/sweep/index.ts';
import {
  COMBINATIONS,
  CROSS_STEER,
  frontEndOf,
  LATERALS,
  LOCATIONS,
  SIDE_STEER,
} from '../support/layouts.ts';

function forcesOf(frontEnd: FrontEnd): LinkForces {
  const found = linkForces(frontEnd);
  if (!found.ok) throw new Error(`${found.failure.path}: ${found.failure.reason}`);
  return found.value;
}

function figure(forces: LinkForces, id: LoadCaseId, name: string): FigureReach {
  const found = forces.cases.find((each) => each.id === id)?.figures.find((each) => each.figure.id === name);
  if (!found) throw new Error(`no ${name}`);
  return found;
}

describe.each(COMBINATIONS)('$label', ({ over }) => {
  test.each([SIDE_STEER, CROSS_STEER])(
    'has every figure in every case, each a number, heavier loads the more',
    (steering) => {
      const forces = forcesOf(frontEndOf({ ...over, steering }));
      expect(forces.cases.map(({ id }) => id)).toEqual(['parking', 'box', 'braking']);
      expect(new Set(forces.figures.map(({ id }) => id)).size).toBe(forces.figures.length);
      for (const { figures, arms, failure } of forces.cases) {
        expect(failure).toBeUndefined();
        expect(figures.map((each) => each.figure)).toEqual(forces.figures);
        for (const { light, heavy } of figures)
          for (const { least, most } of [light, heavy]) {
            expect(least.value).toBeLessThanOrEqual(0);
            expect(most.value).toBeGreaterThanOrEqual(0);
            for (const { value, handwheel } of [least, most]) {
              expect(Number.isFinite(value)).toBe(true);
              expect(Number.isFinite(handwheel)).toBe(true);
            }
          }
        expect(arms.map(({ key, side }) => `${key} ${side ?? ''}`.trim())).toEqual([
          'pitmanArm',
          'steeringArm',
          'tieRodArms left',
          'tieRodArms right',
        ]);
        for (const { light, heavy } of arms) expect(heavy.share).toBeGreaterThanOrEqual(light.share * 0.99);
      }
      const drag = figure(forces, 'parking', 'dragLink');
      expect(drag.heavy.most.value).toBeGreaterThan(drag.light.most.value);
    },
  );
});

describe('parked', () => {
  // By the virtual work of the parking effort's own formula: what both kingpins take, by how far the wheels turn for the
  // sector. Wheels turn about a leaning kingpin, and the axle's weight wants them straight: hence the few in a hundred.
  test('the box holds about what the parking effort asks of it, straight ahead', () => {
    for (const steering of [SIDE_STEER, CROSS_STEER]) {
      const frontEnd = frontEndOf({ steering });
      const { layout } = frontEnd;
      const turn = sweepTurn(frontEnd, 0, 0 as never);
      const effort = parkingEffort({
        frontAxleLoad: layout.car.frontAxleLoad,
        tyreWidth: layout.car.tyreWidth,
        eccentricity: groundEccentricity(layout, 'left'),
        overallRatio: turn.straightRatio / frontEnd.ratio,
        handwheelRadius: 190,
        friction: PARKING_GRIPS[1],
        efficiency: 1,
      });
      // No sector travel to speak of keeps the turn at straight ahead.
      const still = forcesOf(
        frontEndOf({ steering: { ...steering, box: { ...steering.box, sectorTravel: 0.2 } } }),
      );
      const { heavy } = figure(still, 'parking', 'sector');
      const most = Math.max(heavy.most.value, -heavy.least.value) / 1000;
      expect(Math.abs(most / effort.handwheelTorque - 1)).toBeLessThan(0.04);
    }
  });
});

test('the drag link’s figure beside others is the whole statics’ without the axle’s weight', () => {
  for (const steering of [SIDE_STEER, CROSS_STEER])
    for (const frontAxleLoad of [4900, 9000]) {
      const car = { wheelbase: 2640, frontAxleLoad, tyreRadius: 330, tyreWidth: 150, handwheelRadius: 190 };
      // A scrub that dwarfs what the weight does: a tyre as wide as a cart's is long.
      const frontEnd = frontEndOf({ steering, car: { ...car, tyreWidth: 900 } });
      const { heavy } = figure(forcesOf(frontEnd), 'parking', 'dragLink');
      const whole = Math.max(heavy.most.value, -heavy.least.value);
      const found = parkedDragLink(frontEnd, sweepTurn(frontEnd, 0, 0 as never));
      expect(Math.abs((found as number) / whole - 1)).toBeLessThan(0.015);
    }
});

describe('the box at its most', () => {
  test('is as given, else usual for one with assistance, else a driver’s pull; the last two are marked', () => {
    const layout = frontEndOf().layout;
    const box = (over: object) => ({
      ...layout,
      steering: { ...layout.steering, box: { ...layout.steering.box, ...over } },
    });
    expect(greatestOutput(box({ greatestOutput: 820 }))).toEqual({ loads: [820, 820], assumed: false });
    expect(greatestOutput(box({ assist: 'power' }))).toEqual({ loads: USUAL_BOX_OUTPUT, assumed: true });
    // By hand: 300 N and 700 N on a rim of 0.19 m through 16 to 1, of which 0.7 comes through.
    const { loads, assumed } = greatestOutput(box({ assist: 'manual' }));
    expect(assumed).toBe(true);
    expect(loads[0]).toBeCloseTo(300 * 0.19 * 16 * 0.7, 9);
    expect(loads[1]).toBeCloseTo(700 * 0.19 * 16 * 0.7, 9);
  });

  test('the sector holds that and no more, and the drag link that over its lever', () => {
    const steering = { ...SIDE_STEER, box: { ...SIDE_STEER.box, greatestOutput: 900, sectorTravel: 0.1 } };
    const frontEnd = frontEndOf({ steering });
    const forces = forcesOf(frontEnd);
    const { heavy } = figure(forces, 'box', 'sector');
    expect(heavy.most.value).toBeCloseTo(900_000, 3);
    expect(heavy.least.value).toBeCloseTo(-900_000, 3);
    // How fast the pitman ball nears the steering arm's ball, held where it is, by differences of the box's turn alone.
    const state = createState();
    solveFrontEnd(frontEnd, 0, 0 as never, 0 as never, state);
    const ball = carriedTo(frontEnd, state, 'spindle-left', frontEnd.layout.steering.dragLinkBall);
    const apart = (handwheel: number) => {
      solveFrontEnd(frontEnd, 0, 0 as never, handwheel as never, state);
      const pitman: Point = carriedTo(frontEnd, state, 'pitman', frontEnd.layout.steering.box.pitmanBall);
      return Math.hypot(...pitman.map((each, i) => each - (ball[i] as number)));
    };
    const lever = Math.abs((apart(1e-4) - apart(-1e-4)) / (2e-4 / frontEnd.ratio));
    const drag = figure(forces, 'box', 'dragLink').heavy;
    expect(drag.most.value).toBeCloseTo(900_000 / lever, -1);
    expect(Math.abs(drag.most.value / (900_000 / lever) - 1)).toBeLessThan(1e-4);
  });
});

test('twice the box’s output is twice what it adds to every link, the bars of a Watt’s linkage too', () => {
  const at = (greatestOutput: number) => {
    const steering = { ...CROSS_STEER, box: { ...CROSS_STEER.box, greatestOutput } };
    const { figures } = forcesOf(frontEndOf({ lateral: LATERALS.watt, steering }))
      .cases[1] as LinkForces['cases'][number];
    return new Map(figures.map(({ figure: { id }, heavy }) => [id, heavy.most.value - heavy.least.value]));
  };
  const [once, twice] = [at(2000), at(4000)];
  let seen = 0;
  for (const [id, reach] of once) {
    // What it adds, not what stands already: the span from end to end is twice it.
    if (reach < 500 || /kingpin/.test(id)) continue;
    expect((twice.get(id) as number) / reach, id).toBeCloseTo(2, 1);
    seen += /^lateral/.test(id) ? 1 : 0;
  }
  expect(seen).toBe(2);
});

describe('braked', () => {
  // By hand: the left kingpin's moment is u · (r × F), r from the pin's foot to the contact, F the road's push of each of the
  // three ways to brake: both wheels by their grip, the left alone, the right alone (at half the load transfer).
  test('the kingpin holds what the road puts on it, both wheels braking or either alone', () => {
    const frontEnd = frontEndOf({ location: LOCATIONS['four-bar'], lateral: LATERALS.bar });
    const { layout } = frontEnd;
    const { kingpinTop, kingpinBottom, wheelCentre, camber } = layout.axle.left;
    const brakes = brakingCar(layout);
    if (!brakes.ok) throw new Error('no brakes');
    const u = kingpinTop.map((each, i) => each - (kingpinBottom[i] as number));
    const length = Math.hypot(...u);
    // Straight ahead the held drag link leaves the left wheel its drawn toe, 0.1° in, and its camber.
    const tilt = (camber * Math.PI) / 180;
    const toe = (0.1 * Math.PI) / 180;
    const heading = [Math.cos(toe), -Math.sin(toe)];
    // Down the wheel's plane to the ground, which the wheel's centre stands 330 mm above.
    const out = 330 * Math.tan(tilt);
    const contact = [
      wheelCentre[0] - out * Math.sin(toe),
      wheelCentre[1] - out * Math.cos(toe),
      wheelCentre[2] - 330,
    ];
    const [x, y, z] = contact.map((each, i) => each - (kingpinBottom[i] as number)) as [
      number,
      number,
      number,
    ];
    const about = (along: number, up: number) => {
      const [fx, fy] = [along * (heading[0] as number), along * (heading[1] as number)];
      const moment = [y * up - z * fy, z * fx - x * up, x * fy - y * fx];
      return moment.reduce((sum, each, i) => sum + (each * (u[i] as number)) / length, 0);
    };
    const { frontAxleLoad, wheelbase } = layout.car;
    const load = (grip: number) =>
      (frontAxleLoad +
        ((frontAxleLoad / brakes.value.frontShare) * grip * brakes.value.gravityHeight) / wheelbase) /
      2;
    const three = [
      about(-0.9 * load(0.9), load(0.9)),
      about(-0.9 * load(0.45), load(0.45)),
      about(0, load(0.45)),
    ];
    const { least, most } = figure(forcesOf(frontEnd), 'braking', 'kingpin.left').heavy;
    expect(most.value).toBeCloseTo(Math.max(0, ...three), 3);
    expect(least.value).toBeCloseTo(Math.min(0, ...three), 3);
  });
});

describe('what cannot be is said', () => {
  test('a linkage that does not reach has no figures of its turn, and never 0', () => {
    // A wishbone's ball on the axle's own line leaves the axle free to pitch.
    const frontEnd = frontEndOf({ location: { kind: 'wishbone', framePivot: [0, 0, 330] } });
    const { cases } = forcesOf(frontEnd);
    for (const { figures, arms, failure } of cases) {
      expect(failure?.failure).toBe('no-pose');
      expect(figures).toEqual([]);
      expect(arms).toEqual([]);
    }
  });

  test('masses that leave nothing for the springs are refused by path', () => {
    const found = linkForces(frontEndOf({ ride: { unsprungMass: 900 } }));
    expect(found.ok).toBe(false);
    if (!found.ok) expect(found.failure.path).toBe('ride.unsprungMass');
  });
});
