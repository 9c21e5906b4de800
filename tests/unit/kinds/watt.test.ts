import { describe, expect, test } from 'vitest';
import { bodiesOf } from '../../../shared-math/clearance/index.ts';
import { drawLayout } from '../../../shared-math/drawing/index.ts';
import { solveStatics, springSeats } from '../../../shared-math/forces/index.ts';
import type { Point } from '../../../shared-math/geometry/points.ts';
import { ballJoints } from '../../../shared-math/joints/index.ts';
import { hardpoints, readLayout, resolveLayout } from '../../../shared-math/layout/index.ts';
import {
  carryPoint,
  createState,
  MOTION_SIZE,
  poseAxle,
  solveFrontEnd,
  writeMotion,
} from '../../../shared-math/linkage/index.ts';
import { rideParameters } from '../../../shared-math/ride/index.ts';
import { needsOf } from '../../../shared-math/shelf/index.ts';
import { lateralBarEffect } from '../../../shared-math/tune/index.ts';
import { DEGREE, expectClose } from '../../support/close.ts';
import {
  CROSS_STEER,
  documentOf,
  frontEndOf,
  LATERALS,
  LOCATIONS,
  layoutOf,
  rawLayout,
} from '../../support/layouts.ts';

const WATT = LATERALS.watt;
const ON_FRAME = { ...WATT, rockerOn: 'frame' };
const apart = (a: Point, b: Point) => Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);

describe.each([
  ['axle', WATT],
  ['frame', ON_FRAME],
] as const)('a Watt’s linkage with its rocker on the %s', (on, lateral) => {
  // A wishbone asks for no give beside it.
  const frontEnd = frontEndOf({ location: LOCATIONS.wishbone, lateral });
  const points = hardpoints(documentOf(rawLayout({ lateral }))).filter(({ id }) => id.startsWith('lateral.'));
  const drawn = new Map(points.map(({ id, at }) => [id, at]));

  test('has a rocker of its own, its bolt on the one and the bars’ far ends on the other', () => {
    expect(points.map(({ id, carrier }) => [id.replace('lateral.', ''), carrier])).toEqual([
      ['pivot', on === 'axle' ? 'axle-left' : 'frame'],
      ['upper.rocker', 'rocker'],
      ['upper.end', on === 'axle' ? 'frame' : 'axle-left'],
      ['lower.rocker', 'rocker'],
      ['lower.end', on === 'axle' ? 'frame' : 'axle-right'],
    ]);
  });

  test('carries its points so that bars and rocker keep their lengths in every pose', () => {
    for (const [heave, roll] of [
      [75, 0],
      [-75, 3],
      [30, -2],
    ] as const) {
      const state = createState();
      expect(poseAxle(frontEnd, heave, roll * DEGREE, state)).toBe(true);
      const now = new Map(
        points.map(({ id, carrier, at }) => {
          const out = new Float64Array(3);
          carryPoint(frontEnd, state, carrier, at, out);
          const motion = new Float64Array(MOTION_SIZE);
          writeMotion(frontEnd, state, carrier, motion, 0);
          for (let row = 0; row < 3; row += 1) {
            const by = [0, 1, 2].reduce((sum, k) => sum + motion[3 * row + k]! * at[k]!, motion[9 + row]!);
            expectClose(by, out[row]!, 1e-9, `${id} by its motion`);
          }
          return [id, [out[0], out[1], out[2]] as unknown as Point];
        }),
      );
      for (const [a, b] of [
        ['upper.rocker', 'upper.end'],
        ['lower.rocker', 'lower.end'],
        ['upper.rocker', 'pivot'],
        ['lower.rocker', 'pivot'],
        ['upper.rocker', 'lower.rocker'],
      ]) {
        const between = (map: Map<string, Point>) =>
          apart(map.get(`lateral.${a}`)!, map.get(`lateral.${b}`)!);
        expectClose(between(now), between(drawn), 1e-6, `${a} to ${b} at ${heave}, ${roll}`);
      }
    }
  });

  test('its bars pull as the levers of one another about the bolt', () => {
    const state = createState();
    expect(solveFrontEnd(frontEnd, 25, 1 * DEGREE, 0, state)).toBe('ok');
    const wheel = (y: number) => ({
      at: [0, y, 0] as Point,
      force: [0, 900, 2400] as Point,
      couple: [0, 0, 0] as Point,
    });
    const held = solveStatics(frontEnd, state, springSeats(frontEnd.layout, 700), {
      wheels: { left: wheel(710), right: wheel(-710) },
      axle: [0, 0, 0],
    });
    if (!held.ok) throw new Error(held.failure);
    const row = held.value.rows.find(({ bars }) => bars);
    const [upper, lower] = row!.bars!;
    const place = (id: string) => {
      const point = points.find((each) => each.id === `lateral.${id}`)!;
      const out = new Float64Array(3);
      carryPoint(frontEnd, state, point.carrier, point.at, out);
      return [out[0]!, out[1]!, out[2]!] as Point;
    };
    // Seen from ahead, about the bolt: moment of each pull on the rocker. The bolt runs fore and aft but for the pose's tilt.
    const moment = (bar: string, pull: number) => {
      const [tip, end, bolt] = [place(`${bar}.rocker`), place(`${bar}.end`), place('pivot')];
      const length = apart(tip, end);
      return (
        (pull / length) * ((tip[1] - bolt[1]) * (end[2] - tip[2]) - (tip[2] - bolt[2]) * (end[1] - tip[1]))
      );
    };
    const [a, b] = [moment('upper', upper), moment('lower', lower)];
    expect(Math.abs(a)).toBeGreaterThan(1000);
    expectClose(a + b, 0, 0.01 * Math.abs(a));
    // All of the push across but what the springs' lean and the drag link take: 1800 N.
    expectClose(row!.force[1], -1800, 250);
  });
});

describe('a Watt’s linkage', () => {
  test('has four balls, a rocker that is drawn and judged for room, and its roll centre at the bolt', () => {
    const layout = layoutOf({ lateral: WATT });
    const balls = ballJoints(layout).filter(({ id }) => id.startsWith('lateral.'));
    expect(balls.map(({ name }) => name)).toEqual([
      'Upper Watt bar, rocker end',
      'Upper Watt bar, far end',
      'Lower Watt bar, rocker end',
      'Lower Watt bar, far end',
    ]);
    expect(drawLayout(layout).parts.map(({ id }) => id)).toEqual(
      expect.arrayContaining(['watt-rocker', 'watt-upper', 'watt-lower', 'rocker-bracket']),
    );
    expect(bodiesOf(layout).map(({ id }) => id)).toEqual(
      expect.arrayContaining(['watt-rocker', 'watt-upper', 'watt-lower']),
    );
    const ride = rideParameters(layout);
    // Every pull of the bars goes through the bolt: the roll centre is at its height (any text on suspension; from memory).
    expect(ride.ok && ride.value.parameters.rollCentre).toBe(345);
  });

  test('is bought and cut as two bars with their ends, a rocker and its bolt', () => {
    const words = needsOf(layoutOf({ lateral: WATT }), { unit: 'mm', fraction: 16 }).map(
      (need) => need.words,
    );
    // Rocker arms √(4² + 6² + 67²) and √(7² + 60²), the bolt at (-70, 12, 345).
    expect(words.find((each) => each.startsWith('Rocker, '))).toMatch(/67\.4.* to the upper bar and 60\.4/);
    expect(words).toContain('Rocker bolt with bushing');
    for (const bar of ['Upper', 'Lower'])
      expect(words.filter((each) => each.startsWith(`${bar} Watt bar`)).length).toBeGreaterThanOrEqual(2);
  });

  test('is refused with a bar of no length, or a rocker of none', () => {
    const refused = (over: object) => {
      const read = readLayout(rawLayout({ lateral: { ...WATT, ...over } }));
      return read.ok ? '' : read.failure.path;
    };
    expect(refused({ upper: { rocker: [-74, 18, 412], end: [-74, 18, 412] } })).toBe('lateral.upper.end');
    expect(refused({ lower: { rocker: [-20, 12, 345], end: [-72, -365, 278] } })).toBe(
      'lateral.lower.rocker',
    );
    expect(refused({})).toBe('');
  });

  test('lets half of a bar’s error at the axle, its rocker’s arms alike: the lever between the other bar and the bolt', () => {
    const level: Record<string, Point> = { rocker: [-70, 0, 405], end: [-70, 360, 405] };
    const alike = {
      kind: 'watt',
      rockerOn: 'axle',
      pivot: [-70, 0, 345],
      upper: level,
      lower: { rocker: [-70, 0, 285], end: [-70, -360, 285] },
    };
    const bar = { kind: 'bar', axle: level['rocker'], frame: level['end'] };
    const of = (each: object) =>
      lateralBarEffect(frontEndOf({ steering: CROSS_STEER, lateral: each }), 1)?.steer;
    expectClose(of(alike)! / of(bar)!, 0.5, 1e-3);
  });

  test('that holds nothing, both bars in line with its rocker, is called free', () => {
    const state = createState();
    const upright = {
      kind: 'watt',
      rockerOn: 'axle',
      pivot: [-70, 0, 345],
      upper: { rocker: [-70, 0, 405], end: [-70, 0, 700] },
      lower: { rocker: [-70, 0, 285], end: [-70, 0, 40] },
    };
    expect(solveFrontEnd(frontEndOf({ lateral: upright }), 0, 0, 0, state)).toBe('no-pose');
    expect(state.failure).toBe('axle-free');
    expect(resolveLayout(documentOf(rawLayout({ lateral: upright }))).lateral.kind).toBe('watt');
  });
});
