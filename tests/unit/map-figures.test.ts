import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Aim, aimAtPlane, findAim, findBestSpot, judgedPlane } from '../../shared-math/aim/aim.ts';
import { ballPath, linkArc, pathGap } from '../../shared-math/aim/arcs.ts';
import { holdTravel, holdWheels, worstBumpSteerAt } from '../../shared-math/aim/held-travel.ts';
import { createMap, fillMap, leastNode, mapOver, valleyRidge } from '../../shared-math/aim/map.ts';
import { contourLines } from '../../shared-math/aim/map-contours.ts';
import {
  PLACE_DRAG_LINK,
  PLACE_OK,
  PLACE_TIE_ROD,
  prepareMapKernel,
  worstAt,
} from '../../shared-math/aim/map-kernel.ts';
import { type MapWindow, mapWindow, placeOf, usualWindow } from '../../shared-math/aim/map-window.ts';
import type { Point } from '../../shared-math/geometry/points.ts';
import { createState, poseAxle, solveFrontEnd } from '../../shared-math/linkage/index.ts';
import { wheelPoses, wheelTravel } from '../../shared-math/sweep/one-wheel.ts';
import { DEGREE, expectClose } from '../support/close.ts';
import { CROSS_STEER, frontEndOf, PLAIN_HALF, SIDE_STEER } from '../support/layouts.ts';

const FREE = { location: { kind: 'hairpins', left: { framePivot: [0, 415, 330] }, right: 'mirror' } };
const WINDOW: MapWindow = { axes: [0, 2], kept: 7, from: [0, 100], to: [40, 130] };

/** A map of given figures, row by row from the lowest; columns 10 mm and rows 30 mm apart if 2 by 2. */
function painted(columns: number, rows: number, values: readonly number[], window = WINDOW) {
  const map = createMap(window, columns, rows);
  map.worst.set(values);
  return map;
}

describe('the contours of one cell', () => {
  const cell = (values: readonly number[]) =>
    contourLines(painted(2, 2, values, { ...WINDOW, to: [10, 130] }), [5]).map(
      ({ points, closed, level }) => {
        expect([closed, level]).toEqual([false, 5]);
        const [x0, z0, x1, z1] = points;
        return [`${x0},${z0}`, `${x1},${z1}`].sort().join(' to ');
      },
    );
  // Corners: low left, low right, high left, high right. Figures 1 and 9 are crossed by 5 in the middle of an edge.
  const [BOTTOM, TOP, LEFT, RIGHT] = ['5,100', '5,130', '0,115', '10,115'];
  const line = (a: string, b: string) => [a, b].sort().join(' to ');
  test.each<[number[], string[]]>([
    [[1, 9, 9, 9], [line(LEFT, BOTTOM)]],
    [[9, 1, 9, 9], [line(BOTTOM, RIGHT)]],
    [[9, 9, 9, 1], [line(RIGHT, TOP)]],
    [[9, 9, 1, 9], [line(LEFT, TOP)]],
    [[1, 1, 9, 9], [line(LEFT, RIGHT)]],
    [[1, 9, 1, 9], [line(BOTTOM, TOP)]],
    [[1, 1, 1, 1], []],
    [[9, 9, 9, 9], []],
    [[1, 9, 9, Number.POSITIVE_INFINITY], []],
  ])('%s, and what is above and below changed over', (values, lines) => {
    expect(cell(values)).toEqual(lines);
    if (values.every(Number.isFinite)) expect(cell(values.map((value) => 10 - value))).toEqual(lines);
  });
  test('on a saddle the middle says which corners hang together', () => {
    // Low left and high right below; the mean of the four is 4.5 below, 5.5 above.
    const apart = (lines: string[]) => lines.map((one) => one.replace(/(\d)\.\d+/g, '$1')).sort();
    const below = cell([1, 9, 7, 1]);
    expect(below).toHaveLength(2);
    // Then the lines cut off the corners above: low right, high left.
    expect(below.filter((one) => one.includes('5,100') && one.includes('10,115'))).toHaveLength(1);
    const above = cell([1, 9, 11, 1]);
    expect(above.filter((one) => one.includes('0,') && one.includes('5,100'))).toHaveLength(1);
    expect(above.filter((one) => one.includes('10,115') && one.includes(',130'))).toHaveLength(1);
    expect(apart(above)).not.toEqual(apart(below));
    // The other two corners below.
    const other = cell([9, 1, 1, 7]);
    expect(other.filter((one) => one.includes('5,100') && one.includes('0,115'))).toHaveLength(1);
    const raised = cell([11, 1, 1, 9]);
    expect(raised.filter((one) => one.includes('10,115') && one.includes(',100'))).toHaveLength(1);
  });
  test('where it crosses an edge is in proportion', () => {
    expect(cell([4, 8, 4, 8])).toEqual(['2.5,100 to 2.5,130']);
    expect(cell([2, 2, 7, 7])).toEqual(['0,118 to 10,118']);
  });
});

test('contours of any map: each crossed edge once, neighbours in one cell, closed ones end where they began', () => {
  fc.assert(
    fc.property(
      fc.array(fc.constantFrom(0, 1, 2, 3, Number.POSITIVE_INFINITY), { minLength: 30, maxLength: 30 }),
      (values) => {
        const map = painted(6, 5, values, { ...WINDOW, from: [0, 0], to: [5, 4] });
        const wanted = new Set<string>();
        for (let row = 0; row < 4; row += 1)
          for (let column = 0; column < 5; column += 1) {
            const corners = [
              [column, row],
              [column + 1, row],
              [column + 1, row + 1],
              [column, row + 1],
            ] as const;
            const figures = corners.map(([c, r]) => values[6 * r + c]!);
            if (!figures.every(Number.isFinite)) continue;
            for (const [i, figure] of figures.entries()) {
              const next = figures[(i + 1) % 4]!;
              if (figure < 1.5 === next < 1.5) continue;
              const share = (1.5 - figure) / (next - figure);
              const [a, b] = [corners[i]!, corners[(i + 1) % 4]!];
              const at = [0, 1].map((k) => (a[k]! + share * (b[k]! - a[k]!)).toFixed(9));
              wanted.add(at.join(' '));
            }
          }
        const seen: string[] = [];
        for (const { points, closed } of contourLines(map, [1.5])) {
          const own: string[] = [];
          for (let i = 0; i < points.length; i += 2) {
            own.push(`${points[i]!.toFixed(9)} ${points[i + 1]!.toFixed(9)}`);
            if (i > 0)
              for (const k of [0, 1]) {
                const [was, is] = [points[i - 2 + k]!, points[i + k]!];
                expect(
                  Math.floor(Math.max(was, is) - 1e-9) - Math.floor(Math.min(was, is) + 1e-9),
                ).toBeLessThan(1);
              }
          }
          expect(own.length).toBeGreaterThan(1);
          expect(own[0] === own.at(-1)).toBe(closed);
          seen.push(...(closed ? own.slice(1) : own));
        }
        expect(seen.sort()).toEqual([...wanted].sort());
      },
    ),
    { seed: 41, numRuns: 150 },
  );
});

describe('the window', () => {
  const frontEnd = frontEndOf();
  // The pitman ball stands at x -800, y 500, z 350.
  const aimed = (point: Aim['point'], axis: Aim['axis'] = [0, 1, 0]): Aim => ({
    point,
    axis,
    radius: 800,
    ball: [0, 484, 395],
    flatness: 0,
  });
  test.each<[string, Aim | undefined, readonly number[], readonly number[]]>([
    // 160 beside and 110 above and below, out to whole 50s.
    ['no aim', undefined, [-1000, 200], [-600, 500]],
    ['an aim ahead and above', aimed([-900, 480, 420]), [-1100, 200], [-600, 550]],
    ['an aim behind and below', aimed([-700, 480, 300]), [-1000, 150], [-500, 500]],
    ['an aim further than anyone builds', aimed([-3000, 480, 2000]), [-1500, 200], [-600, 750]],
    ['one as far the other way', aimed([3000, 480, -2000]), [-1000, -50], [-100, 500]],
    // Its axis crosses y = 500 at 20 mm on: 10 further back, 40 up.
    [
      'an axis askew',
      aimed([-900, 480, 420], [-0.5, 1, 2].map((v) => v / Math.sqrt(5.25)) as never),
      [-1100, 200],
      [-600, 600],
    ],
    ['an axis along the plane', aimed([-900, 480, 420], [1, 0, 0]), [-1100, 200], [-600, 550]],
  ])('that is usual, with %s', (_, aim, from, to) => {
    expect(usualWindow(frontEnd, aim)).toEqual({ axes: [0, 2], kept: 500, from, to });
  });
  test('from the front it is y and z at the ball’s own x', () => {
    const cross = frontEndOf({ steering: CROSS_STEER });
    expect(judgedPlane(cross)).toEqual({ free: [1, 2], kept: 0 });
    expect(judgedPlane(frontEnd)).toEqual({ free: [0, 2], kept: 1 });
    const window = usualWindow(cross, undefined);
    // The ball at y 258, z 362.
    expect(window).toEqual({ axes: [1, 2], kept: -150, from: [50, 250], to: [450, 500] });
    expect(placeOf(window, 300, 400)).toEqual([-150, 300, 400]);
    expect(placeOf(WINDOW, 3, 4)).toEqual([3, 7, 4]);
  });
  test('in the words that refuse it', () => {
    const refusal = (across: [number, number], up: [number, number]) => {
      const window = mapWindow(frontEnd, across, up);
      return window.ok ? 'taken' : window.failure;
    };
    expect(refusal([0, 1], [5, 6])).toBe('taken');
    expect(refusal([1, 0], [6, 5])).toBe('taken');
    expect(refusal([0, 0.99], [5, 6])).toBe('the window has no size in x: it runs from 0 to 0.99 mm');
    expect(refusal([0, 1], [6, 5.5])).toBe('the window has no size in z: it runs from 6 to 5.5 mm');
    expect(refusal([-20000, 20000], [0, 1])).toBe('taken');
    for (const far of [20001, -20001]) {
      expect(refusal([far, 0], [0, 1])).toBe("the window's x goes beyond 20 metres");
      expect(refusal([0, far], [0, 1])).toBe("the window's x goes beyond 20 metres");
      expect(refusal([0, 1], [0, far])).toBe("the window's z goes beyond 20 metres");
    }
    expect(refusal([Number.NaN, 1], [0, 1])).toBe("the window's x is not two numbers");
    expect(refusal([0, 1], [0, Number.NaN])).toBe("the window's z is not two numbers");
    expect(mapWindow(frontEnd, [9, 2], [50, 30])).toEqual({
      ok: true,
      value: { axes: [0, 2], kept: 500, from: [2, 30], to: [9, 50] },
    });
  });
});

describe('the arrays of a map', () => {
  test('stand on both edges of the window', () => {
    const map = createMap(WINDOW, 5, 4);
    expect([...map.across]).toEqual([0, 10, 20, 30, 40]);
    expect([...map.up]).toEqual([100, 110, 120, 130]);
    expect([map.columns, map.rows, map.worst.length, map.reason.length]).toEqual([5, 4, 20, 20]);
    expect([createMap(WINDOW).columns, createMap(WINDOW).rows]).toEqual([96, 96]);
    const other = mapOver(map, { ...WINDOW, from: [8, 0], to: [4, 3] });
    expect([...other.across]).toEqual([8, 7, 6, 5, 4]);
    expect([...other.up]).toEqual([0, 1, 2, 3]);
    expect(other.window.from).toEqual([8, 0]);
  });
  test('the least node, in its column and row; the first of equals; none where none is in reach', () => {
    expect(leastNode(painted(3, 2, [5, 4, 9, 7, 3, 8]))).toEqual({ column: 1, row: 1, worst: 3 });
    expect(leastNode(painted(3, 2, [2, 4, 9, 7, 2, 8]))).toEqual({ column: 0, row: 0, worst: 2 });
    expect(leastNode(painted(3, 2, [5, 4, 1, 7, 3, 8]))).toEqual({ column: 2, row: 0, worst: 1 });
    expect(leastNode(painted(2, 2, Array(4).fill(Number.POSITIVE_INFINITY)))).toBeUndefined();
  });
});

describe('the held travel', () => {
  const uneven = {
    axle: {
      beam: 'i-beam',
      left: { ...PLAIN_HALF, toeIn: 0.6 },
      right: {
        ...Object.fromEntries(
          Object.entries(PLAIN_HALF).map(([key, value]) => [
            key,
            Array.isArray(value) ? [value[0], -value[1]!, value[2]] : value,
          ]),
        ),
        toeIn: -0.2,
      },
    },
  };
  test('runs from rebound to bump; an inch each way where the layout gives none', () => {
    const held = holdTravel(frontEndOf({ travel: { bump: 60, rebound: 30, roll: 0 } }), 4);
    expect([...held.heave]).toEqual([-30, 0, 30, 60]);
    expect(held.frames).toHaveLength(4);
    expect(held.ballPath).toHaveLength(12);
    expect(held).toMatchObject({ status: 'ok', ball: [0, 484, 395], drawnSteer: 0 });
    const bare = holdTravel(frontEndOf({ travel: { bump: 0, rebound: 0, roll: 0 } }), 3);
    expect([...bare.heave]).toEqual([-25.4, 0, 25.4]);
    expect([
      ...holdTravel(frontEndOf({ travel: { bump: 50, rebound: 0, roll: 0 } }), 3).heave.slice(1),
    ]).toEqual([25, 50]);
    expect(holdTravel(frontEndOf()).heave).toHaveLength(31);
  });
  test('the mean of uneven toe is where bump steer is counted from', () => {
    // Toe-in turns the left wheel right and the right wheel left: (-0.2 - 0.6) / 2 is 0.4 degrees to the right.
    const frontEnd = frontEndOf(uneven);
    const held = holdTravel(frontEnd, 7);
    expectClose(held.drawnSteer / DEGREE, -0.4, 1e-12);
    const kernel = prepareMapKernel(held);
    const state = createState();
    for (const up of [-40, 0, 25]) {
      const ball = [-790, 500, 350 + up] as const;
      const moved = frontEndOf({
        ...uneven,
        steering: {
          ...SIDE_STEER,
          box: { ...SIDE_STEER.box, pitmanBall: ball, sectorCentre: [-790, 500, 490 + up] },
        },
      });
      const steers = [...held.heave].map((heave) => {
        expect(solveFrontEnd(moved, heave, 0, 0, state)).toBe('ok');
        return state.meanSteer;
      });
      const worst = Math.max(...steers.map((steer) => Math.abs(steer - steers[3]!)));
      expectClose(worstBumpSteerAt(held, [...ball]), worst, 1e-9, 'pose by pose');
      expectClose(worstAt(kernel, [...ball]), worst, 1e-9, 'by the table');
    }
  });
  test('out of reach in any pose is no figure', () => {
    const held = holdTravel(frontEndOf({ travel: { bump: 250, rebound: 250, roll: 0 } }));
    for (const point of [
      [-60, 500, 395],
      [-30, 484, 500],
    ] as const) {
      expect(worstBumpSteerAt(held, [...point])).toBe(Number.POSITIVE_INFINITY);
      expect(worstAt(prepareMapKernel(held), [...point])).toBe(Number.POSITIVE_INFINITY);
    }
  });
  test('each wheel’s own poses come after those of the heave; the path stays the heave’s', () => {
    const frontEnd = frontEndOf({ travel: { bump: 60, rebound: 40, roll: 2 } });
    const held = holdTravel(frontEnd, 3);
    const wheels = holdWheels(held, 5, 1);
    expect(wheels.frames).toHaveLength(3 + 15);
    expect(wheels.heave).toHaveLength(3 + 15);
    expect([...wheels.heave.slice(0, 3)]).toEqual([-40, 10, 60]);
    expect(wheels.ballPath).toBe(held.ballPath);
    // The level row in the middle, backward: 60, 35, 10, -15, -40.
    expect([...wheels.heave.slice(8, 13)]).toEqual([60, 35, 10, -15, -40]);
    const state = createState();
    for (const [i, { heave, roll }] of wheelPoses(wheelTravel(frontEnd.layout), 5, 1).entries()) {
      expect(poseAxle(frontEnd, heave, roll, state)).toBe(true);
      for (const [k, value] of wheels.frames[3 + i]!.entries())
        expectClose(value, state.work.frame[k]!, 1e-6);
    }
    expect(holdWheels(held).frames).toHaveLength(3 + 17 * 13);
  });
  test('without a pose there is no travel, no aim, no map and no arc', () => {
    const free = frontEndOf(FREE);
    const held = holdTravel(free, 5);
    expect(held.status).toBe('no-pose');
    expect(held.frames.length).toBeLessThan(5);
    expect(holdWheels(held)).toBe(held);
    expect(findAim(free, held)).toEqual({ ok: false, failure: 'no-pose' });
    expect(pathGap(free, 0)).toBeUndefined();
    expect(ballPath(free).status).toBe('no-pose');
    expect(linkArc(free).status).toBe('no-pose');
    expect(fillMap(held, createMap(WINDOW, 2, 2))).toEqual({ ok: false, failure: 'no-pose' });
  });
});

describe('the arcs', () => {
  const frontEnd = frontEndOf();
  test('what the link allows is at its length from the pitman ball, toward where the axle asks', () => {
    const [asked, allowed] = [ballPath(frontEnd, 7), linkArc(frontEnd, 7)];
    expect([...asked.heave]).toEqual([-75, -50, -25, 0, 25, 50, 75]);
    expect([...allowed.heave]).toEqual([...asked.heave]);
    expect([asked.status, allowed.status]).toEqual(['ok', 'ok']);
    const { pitmanBall } = frontEnd.layout.steering.box;
    const length = Math.hypot(800, 16, 45);
    for (let i = 0; i < 7; i += 1) {
      const off = (path: Float64Array) => [0, 1, 2].map((k) => path[3 * i + k]! - pitmanBall[k]!);
      const [to, at] = [off(asked.points), off(allowed.points)];
      expectClose(Math.hypot(...at), length, 1e-9, 'length');
      const far = Math.hypot(...to);
      for (const k of [0, 1, 2]) expectClose(at[k]! / length, to[k]! / far, 1e-12, 'direction');
      // Positive where the link is too short.
      expectClose(pathGap(frontEnd, asked.heave[i]!)!, far - length, 1e-7, 'gap');
    }
    expect(ballPath(frontEnd).heave).toHaveLength(31);
    expect(linkArc(frontEnd).heave).toHaveLength(31);
  });
});

describe('the aim axis and the best spot', () => {
  const aim: Aim = {
    point: [-900, 480, 330],
    axis: [0.6, 0.8, 0],
    radius: 900,
    ball: [0, 484, 395],
    flatness: 0,
  };
  test('crosses a plane where it does, and none that it runs along', () => {
    expect(aimAtPlane(aim, 1, 560)).toEqual([-840, 560, 330]);
    expect(aimAtPlane(aim, 0, -960)).toEqual([-960, 400, 330]);
    expect(aimAtPlane(aim, 2, 400)).toBeUndefined();
    const nearly = aimAtPlane({ ...aim, axis: [0.6, 0.8, 1e-5] }, 2, 331)!;
    expectClose(nearly[2], 331, 1e-6);
  });
  test('is no further than 300 mm from where the search begins, and keeps the ball’s plane', () => {
    const frontEnd = frontEndOf();
    const travel = holdTravel(frontEnd, 7);
    // Searched from an aim that is nowhere near: the spot is within the window of that start or of the drawn ball.
    const [x, , z] = [-1700, 0, 900];
    const best = findBestSpot(frontEnd, { ...aim, point: [x, 480, z], axis: [0, 1, 0] }, travel)!;
    const { pitmanBall } = frontEnd.layout.steering.box;
    expect(best.point[1]).toBe(pitmanBall[1]);
    const within = (from: readonly [number, number]) =>
      Math.abs(best.point[0] - from[0]) <= 300 && Math.abs(best.point[2] - from[1]) <= 300;
    expect(within([x, z]) || within([pitmanBall[0], pitmanBall[2]])).toBe(true);
    expectClose(best.worstBumpSteer, worstBumpSteerAt(travel, best.point), 1e-9);
    // Hairpins: on the pivot's line in side view the wheels are not turned at all.
    const found = findAim(frontEnd, travel);
    if (!found.ok) throw new Error(found.failure);
    expect(findBestSpot(frontEnd, found.value, travel)!.worstBumpSteer).toBeLessThan(1e-5 * DEGREE);
    // It is found from the drawn ball too, where the axis does not cross the plane.
    const level = findBestSpot(frontEnd, { ...aim, axis: [1, 0, 0] }, travel)!;
    expect(level.worstBumpSteer).toBeLessThan(0.2 * worstBumpSteerAt(travel, pitmanBall));
  });
  test('is none where no place tried is within reach', () => {
    const frontEnd = frontEndOf();
    const travel = holdTravel(frontEnd, 3);
    const far = {
      ...travel,
      frames: travel.frames.map((frame, i) =>
        i === 1 ? frame : frame.map((v, k) => (k < 3 ? v + 9000 : v)),
      ),
    };
    expect(findBestSpot(frontEnd, { ...aim, axis: [0, 1, 0] }, far)).toBeUndefined();
  });
});

describe('a small map, place by place as the linkage is solved there', () => {
  /** Worst over the held heaves with the ball at a place, and which link is first out of reach, by the ordinary solver. */
  function solvedAt(over: object, steering: typeof SIDE_STEER, place: Point, heaves: ArrayLike<number>) {
    const { box } = steering;
    const centre = place.map((v, i) => v + box.sectorCentre[i]! - box.pitmanBall[i]!);
    const moved = frontEndOf({
      ...over,
      steering: { ...steering, box: { ...box, pitmanBall: place, sectorCentre: centre } },
    });
    const state = createState();
    if (solveFrontEnd(moved, 0, 0, 0, state) !== 'ok') return { failure: state.failure, worst: Number.NaN };
    const straight = state.meanSteer;
    let worst = 0;
    for (const heave of Array.from(heaves)) {
      if (solveFrontEnd(moved, heave, 0, 0, state) !== 'ok')
        return { failure: state.failure, worst: Number.NaN };
      worst = Math.max(worst, Math.abs(state.meanSteer - straight));
    }
    return { failure: undefined, worst };
  }
  const short = {
    axle: {
      beam: 'i-beam',
      left: { ...PLAIN_HALF, tieRodBall: [-60, 630, 292] },
      right: {
        ...Object.fromEntries(
          Object.entries(PLAIN_HALF).map(([key, value]) => [
            key,
            Array.isArray(value) ? [value[0], -value[1]!, value[2]] : value,
          ]),
        ),
        tieRodBall: [-180, -560, 292],
      },
    },
  };
  test.each<[string, object, typeof SIDE_STEER, number, [number, number], [number, number]]>([
    ['side steer', {}, SIDE_STEER, 75, [-900, -700], [300, 420]],
    ['cross steer', {}, CROSS_STEER, 75, [150, 420], [300, 420]],
    ['ahead of the arm', {}, SIDE_STEER, 60, [300, 700], [300, 420]],
    ['near the arm’s ball, where links do not reach', {}, SIDE_STEER, 220, [-420, -60], [120, 700]],
    ['where the tie rod does not reach first', short, SIDE_STEER, 220, [-420, -60], [120, 700]],
  ])('%s', (_, over, steering, travel, across, up) => {
    const frontEnd = frontEndOf({ ...over, steering, travel: { bump: travel, rebound: travel, roll: 0 } });
    const window = mapWindow(frontEnd, across, up);
    if (!window.ok) throw new Error(window.failure);
    const held = holdTravel(frontEnd, 5);
    const map = fillMap(held, createMap(window.value, 5, 5));
    if (!map.ok) throw new Error(map.failure);
    for (let i = 0; i < 25; i += 1) {
      const place = placeOf(window.value, map.value.across[i % 5]!, map.value.up[Math.floor(i / 5)]!);
      const { failure, worst } = solvedAt(over, steering, place, held.heave);
      const reason =
        failure === undefined ? PLACE_OK : failure === 'tie-rod' ? PLACE_TIE_ROD : PLACE_DRAG_LINK;
      expect(map.value.reason[i], `${place}`).toBe(reason);
      if (failure === undefined) expectClose(map.value.worst[i]!, worst, 1e-9, `${place}`);
      else expect(map.value.worst[i]).toBe(Number.POSITIVE_INFINITY);
    }
  });

  test('the ridge: the least of each column between its neighbours, to a hundredth of a millimetre', () => {
    const frontEnd = frontEndOf();
    const held = holdTravel(frontEnd, 5);
    const kernel = prepareMapKernel(held);
    const ridgeOver = (from: [number, number], to: [number, number], rows: number) => {
      const map = fillMap(held, createMap({ axes: [0, 2], kept: 500, from, to }, 3, rows), kernel);
      if (!map.ok) throw new Error(map.failure);
      return valleyRidge(kernel, map.value);
    };
    const ridge = ridgeOver([-950, 250], [-750, 430], 7);
    expect(ridge).toHaveLength(9);
    for (let i = 0; i < 3; i += 1) {
      const [x, z, worst] = [ridge[3 * i]!, ridge[3 * i + 1]!, ridge[3 * i + 2]!];
      expect(x).toBe([-950, -850, -750][i]);
      expectClose(worst, worstAt(kernel, [x, 500, z]), 1e-15);
      for (const off of [-0.02, 0.02]) expect(worst).toBeLessThan(worstAt(kernel, [x, 500, z + off]));
    }
    // A valley below or above the window has none in it.
    expect(ridgeOver([-950, 420], [-750, 500], 7)).toHaveLength(0);
    expect(ridgeOver([-950, 150], [-750, 250], 7)).toHaveLength(0);
  });

  test('on hairpins the aim is the pivot seen from the side, and its circle the rod’s', () => {
    const frontEnd = frontEndOf();
    const aim = findAim(frontEnd);
    if (!aim.ok) throw new Error(aim.failure);
    const { point, axis, radius, ball, flatness } = aim.value;
    expectClose(point[0], -890, 1e-6);
    expectClose(point[2], 335, 1e-6);
    expectClose(Math.abs(axis[1]), 1, 1e-9);
    expectClose(radius, Math.hypot(890, 395 - 335), 1e-6);
    expect(ball).toEqual([0, 484, 395]);
    expectClose(flatness, 0, 1e-6);
  });
});
