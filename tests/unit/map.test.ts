import { describe, expect, test } from 'vitest';
import {
  aimAtPlane,
  type BumpSteerMap,
  contourLines,
  createMap,
  fillMap,
  findAim,
  findBestSpot,
  holdTravel,
  leastNode,
  type MapWindow,
  mapOver,
  mapWindow,
  PLACE_DRAG_LINK,
  PLACE_HIT_FROM,
  PLACE_OK,
  PLACE_TIE_ROD,
  placeOf,
  prepareMapKernel,
  usualWindow,
  valleyRidge,
  worstAt,
} from '../../shared-math/aim/index.ts';
import { leastClearances, markHits, withBoxAt } from '../../shared-math/clearance/index.ts';
import type { Point } from '../../shared-math/geometry/points.ts';
import {
  createState,
  type FrontEnd,
  prepareFrontEnd,
  solveFrontEnd,
} from '../../shared-math/linkage/index.ts';
import { summariseTravel, sweepTravel, sweepTurn } from '../../shared-math/sweep/index.ts';
import { DEGREE, expectClose } from '../support/close.ts';
import { CROSS_STEER, frontEndOf, LOCATIONS, layoutOf, SIDE_STEER, STEERED } from '../support/layouts.ts';

function windowOf(frontEnd: FrontEnd, across: [number, number], up: [number, number]): MapWindow {
  const window = mapWindow(frontEnd, across, up);
  if (!window.ok) throw new Error(window.failure);
  return window.value;
}

function mapOf(frontEnd: FrontEnd, window: MapWindow, columns: number, rows: number): BumpSteerMap {
  const map = fillMap(holdTravel(frontEnd), createMap(window, columns, rows));
  if (!map.ok) throw new Error(map.failure);
  return map.value;
}

/** The front end with its box moved so that the pitman ball stands at a point: what a map's place is short for. */
function movedTo(frontEnd: FrontEnd, ball: Point): FrontEnd {
  return prepareFrontEnd(withBoxAt(frontEnd.layout, ball));
}

/** Why the first pose that is out of reach is so, by the ordinary solver pose by pose; undefined if all are ok. */
function failureOver(frontEnd: FrontEnd): string | undefined {
  const state = createState();
  for (const heave of holdTravel(frontEnd).heave)
    if (solveFrontEnd(frontEnd, heave, 0, 0, state) !== 'ok') return state.failure;
  return undefined;
}

describe('the places of a map', () => {
  test.each(STEERED)('are those of the ordinary sweep of the moved layout: $label', ({ over }) => {
    const frontEnd = frontEndOf(over);
    const { pitmanBall } = frontEnd.layout.steering.box;
    const side = frontEnd.driven === 'left';
    const middle = pitmanBall[side ? 0 : 1];
    const window = windowOf(frontEnd, [middle - 140, middle + 110], [pitmanBall[2] - 60, pitmanBall[2] + 90]);
    const map = mapOf(frontEnd, window, 4, 3);
    for (let row = 0; row < 3; row += 1)
      for (let column = 0; column < 4; column += 1) {
        const place = placeOf(window, map.across[column]!, map.up[row]!);
        expect(place[side ? 1 : 0]).toBe(pitmanBall[side ? 1 : 0]);
        const swept = summariseTravel(sweepTravel(movedTo(frontEnd, place), 'heave', -75, 75, 31, 0));
        expect(swept.okCount).toBe(31);
        expect(map.reason[row * 4 + column]).toBe(PLACE_OK);
        expectClose(map.worst[row * 4 + column]!, swept.worstBumpSteer, 1e-10, `${place}`);
      }
  });

  test('out of reach: the link is named that the ordinary solver names, and there is no figure', () => {
    // A short tie rod arm on one side runs out of reach before the drag link does; near the arm's ball the link does.
    const seen = new Set<number>();
    const uneven = {
      axle: {
        beam: 'i-beam',
        left: { ...layoutOf().axle.left, tieRodBall: [-60, 630, 292] },
        right: { ...layoutOf().axle.right, tieRodBall: [-180, -560, 292] },
      },
    };
    for (const over of [{}, uneven]) {
      const frontEnd = frontEndOf({ ...over, travel: { bump: 220, rebound: 220, roll: 0 } });
      const window = windowOf(frontEnd, [-420, -60], [120, 700]);
      const map = mapOf(frontEnd, window, 12, 16);
      for (let i = 0; i < map.worst.length; i += 1) {
        const place = placeOf(window, map.across[i % 12]!, map.up[Math.floor(i / 12)]!);
        const failure = failureOver(movedTo(frontEnd, place));
        const reason = map.reason[i]!;
        seen.add(reason);
        expect(reason, `${place}`).toBe(
          failure === undefined ? PLACE_OK : failure === 'drag-link' ? PLACE_DRAG_LINK : PLACE_TIE_ROD,
        );
        expect(Number.isFinite(map.worst[i]), `${place}`).toBe(reason === PLACE_OK);
        expect(Number.isNaN(map.worst[i]!)).toBe(false);
      }
    }
    expect([...seen].sort()).toEqual([PLACE_OK, PLACE_DRAG_LINK, PLACE_TIE_ROD]);
  });

  test('bump steer beyond a right angle is still told as it is', () => {
    const frontEnd = frontEndOf({ travel: { bump: 200, rebound: 200, roll: 0 } });
    const window = windowOf(frontEnd, [-330, -130], [100, 640]);
    const map = mapOf(frontEnd, window, 8, 12);
    let largest = 0;
    for (let i = 0; i < map.worst.length; i += 1) {
      if (map.reason[i] !== PLACE_OK) continue;
      largest = Math.max(largest, map.worst[i]!);
      const place = placeOf(window, map.across[i % 8]!, map.up[Math.floor(i / 8)]!);
      const swept = summariseTravel(sweepTravel(movedTo(frontEnd, place), 'heave', -200, 200, 31, 0));
      expectClose(map.worst[i]!, swept.worstBumpSteer, 1e-9, `${place}`);
    }
    expect(largest / DEGREE).toBeGreaterThan(46);
  });

  test('an axle without a pose has no map, and says so', () => {
    const free = frontEndOf({
      location: { kind: 'hairpins', left: { framePivot: [0, 415, 330] }, right: 'mirror' },
    });
    const map = createMap(windowOf(free, [-900, -700], [250, 450]), 3, 3);
    expect(fillMap(holdTravel(free), map)).toEqual({ ok: false, failure: 'no-pose' });
  });

  test('its arrays are used again for another window', () => {
    const frontEnd = frontEndOf();
    const first = createMap(windowOf(frontEnd, [-900, -700], [250, 450]), 6, 5);
    const other = windowOf(frontEnd, [-800, -600], [300, 400]);
    const second = mapOver(first, other);
    fillMap(holdTravel(frontEnd), second);
    expect(second.worst).toBe(first.worst);
    expect([...second.worst]).toEqual([...mapOf(frontEnd, other, 6, 5).worst]);
  });
});

describe('the least of a map', () => {
  const onCircles = {
    hairpins: { location: LOCATIONS.hairpins },
    wishbone: { location: LOCATIONS.wishbone },
  };

  test.each(Object.entries(onCircles))('is at the aim point: %s', (_, over) => {
    const frontEnd = frontEndOf(over);
    const aim = findAim(frontEnd);
    if (!aim.ok) throw new Error(aim.failure);
    const at = aimAtPlane(aim.value, 1, frontEnd.layout.steering.box.pitmanBall[1]) as Point;
    const window = windowOf(frontEnd, [at[0] - 97, at[0] + 103], [at[2] - 51, at[2] + 49]);
    const map = mapOf(frontEnd, window, 101, 101);
    const least = leastNode(map)!;
    // The valley is shallow fore and aft: the least node is within a node of the aim's height, and near along.
    expectClose(map.up[least.row]!, at[2], 1.01, 'height');
    expectClose(map.across[least.column]!, at[0], 4.1, 'along');
    expect(worstAt(prepareMapKernel(holdTravel(frontEnd)), at) / DEGREE).toBeLessThan(1e-6);
    expect(least.worst).toBeLessThan(0.02 * DEGREE);
  });

  test.each(STEERED.filter(({ label }) => label.includes('tube')))(
    'is no better than the best spot in the same window: $label',
    ({ over }) => {
      const frontEnd = frontEndOf(over);
      const travel = holdTravel(frontEnd);
      const aim = findAim(frontEnd, travel);
      if (!aim.ok) throw new Error(aim.failure);
      const best = findBestSpot(frontEnd, aim.value, travel)!;
      const map = mapOf(frontEnd, usualWindow(frontEnd, aim.value), 61, 41);
      expect(best.worstBumpSteer).toBeLessThanOrEqual(leastNode(map)!.worst + 1e-9);
    },
  );
});

describe('the ridge of the valley', () => {
  test('runs along the zero-slope line where the path is a circle, and is the least of its column', () => {
    const frontEnd = frontEndOf();
    const aim = findAim(frontEnd);
    if (!aim.ok) throw new Error(aim.failure);
    const { ball, point } = aim.value;
    const window = windowOf(frontEnd, [-1080, -560], [250, 450]);
    const map = mapOf(frontEnd, window, 27, 31);
    const kernel = prepareMapKernel(holdTravel(frontEnd));
    const ridge = valleyRidge(kernel, map);
    expect(ridge.length).toBe(3 * 27);
    for (let i = 0; i < 27; i += 1) {
      const [x, z, worst] = [ridge[3 * i]!, ridge[3 * i + 1]!, ridge[3 * i + 2]!];
      expect(x).toBe(map.across[i]);
      const onLine = ball[2] + ((x - ball[0]) / (point[0] - ball[0])) * (point[2] - ball[2]);
      expectClose(z, onLine, 0.5, `height at ${x}`);
      for (let row = 0; row < 31; row += 1)
        expect(worst).toBeLessThanOrEqual(map.worst[row * 27 + i]! + 1e-9);
      for (const off of [-0.5, 0.5]) expect(worst).toBeLessThan(worstAt(kernel, placeOf(window, x, z + off)));
    }
  });

  test('columns whose valley lies outside the window have none', () => {
    const frontEnd = frontEndOf();
    const map = mapOf(frontEnd, windowOf(frontEnd, [-900, -700], [420, 500]), 5, 9);
    expect(valleyRidge(prepareMapKernel(holdTravel(frontEnd)), map)).toHaveLength(0);
  });

  test('from the front it lies beside a lateral bar of the same slope and length', () => {
    const frontEnd = frontEndOf({
      location: LOCATIONS['four-bar'],
      lateral: { kind: 'bar', axle: [-72, -570, 352], frame: [-72, 316, 362] },
      steering: CROSS_STEER,
    });
    const map = mapOf(frontEnd, windowOf(frontEnd, [150, 400], [300, 420]), 11, 25);
    const ridge = valleyRidge(prepareMapKernel(holdTravel(frontEnd)), map);
    expect(ridge.length).toBe(33);
    const [armBall, slope] = [CROSS_STEER.dragLinkBall, (362 - 352) / (316 + 570)];
    for (let i = 0; i < 11; i += 1)
      expectClose(ridge[3 * i + 1]!, armBall[2]! + slope * (ridge[3 * i]! - armBall[1]!), 6, 'height');
  });
});

describe('contour lines', () => {
  /** A map of any function, so that its contours are known. */
  function painted(f: (x: number, z: number) => number, columns = 61, rows = 41): BumpSteerMap {
    const window: MapWindow = { axes: [0, 2], kept: 0, from: [-30, -20], to: [30, 20] };
    const map = createMap(window, columns, rows);
    for (let row = 0; row < rows; row += 1)
      for (let column = 0; column < columns; column += 1)
        map.worst[row * columns + column] = f(map.across[column]!, map.up[row]!);
    return map;
  }

  test('of a cone are circles: one closed line each, or open ones where the window cuts them', () => {
    const map = painted(Math.hypot);
    const lines = contourLines(map, [7.3, 15, 25]);
    const at = (level: number) => lines.filter((line) => line.level === level);
    expect(at(7.3).map(({ closed }) => closed)).toEqual([true]);
    expect(at(15).map(({ closed }) => closed)).toEqual([true]);
    expect(at(25).map(({ closed }) => closed)).toEqual([false, false]);
    for (const { points, level, closed } of lines) {
      for (let i = 0; i < points.length; i += 2)
        expectClose(Math.hypot(points[i]!, points[i + 1]!), level, 0.02, 'radius');
      if (closed) expect([points[0], points[1]]).toEqual([...points.slice(-2)]);
      // A line goes from cell to cell: no two neighbours are further apart than a cell's diagonal.
      for (let i = 2; i < points.length; i += 2)
        expect(Math.hypot(points[i]! - points[i - 2]!, points[i + 1]! - points[i - 1]!)).toBeLessThan(1.42);
    }
    // The closed ones are as long as their circles.
    const length = (points: Float64Array) => {
      let sum = 0;
      for (let i = 2; i < points.length; i += 2)
        sum += Math.hypot(points[i]! - points[i - 2]!, points[i + 1]! - points[i - 1]!);
      return sum;
    };
    expectClose(length(at(15)[0]!.points), 2 * Math.PI * 15, 0.3, 'length');
  });

  test('a saddle is parted one way, and no line is lost or crosses', () => {
    const lines = contourLines(
      painted((x, z) => 100 + (x + 0.4) * (z + 0.3)),
      [100.5, 99.5],
    );
    expect(lines).toHaveLength(4);
    for (const { closed } of lines) expect(closed).toBe(false);
  });

  test('where there is no figure there is no line, and never a number that is none', () => {
    const map = painted((x, z) => (x > 2 ? Number.POSITIVE_INFINITY : Math.hypot(x, z)));
    const [line, ...others] = contourLines(map, [10]);
    expect(others).toEqual([]);
    expect(line!.closed).toBe(false);
    for (const value of line!.points) expect(Number.isFinite(value)).toBe(true);
    expect(Math.max(...line!.points.filter((_, i) => i % 2 === 0))).toBeLessThanOrEqual(2);
    expect(contourLines(map, [1e6])).toEqual([]);
  });
});

describe('the window', () => {
  test('of no size, or of no numbers, is refused plainly', () => {
    const frontEnd = frontEndOf();
    const refusal = (across: [number, number], up: [number, number]) => {
      const window = mapWindow(frontEnd, across, up);
      return window.ok ? '' : window.failure;
    };
    expect(refusal([-700, -700], [200, 400])).toBe(
      'the window has no size in x: it runs from -700 to -700 mm',
    );
    expect(refusal([-900, -700], [300, 300.5])).toMatch(/^the window has no size in z/);
    expect(refusal([Number.NaN, 3], [200, 400])).toBe("the window's x is not two numbers");
    expect(refusal([-900, -700], [200, Number.POSITIVE_INFINITY])).toMatch(/z is not two numbers/);
    expect(refusal([-1e6, 0], [0, 1])).toMatch(/goes beyond 20 metres/);
    const cross = mapWindow(frontEndOf({ steering: CROSS_STEER }), [3, 3], [0, 100]);
    expect(cross.ok ? '' : cross.failure).toMatch(/^the window has no size in y/);
    // Turned round it is the same window.
    expect(mapWindow(frontEnd, [-700, -900], [400, 200])).toEqual(
      mapWindow(frontEnd, [-900, -700], [200, 400]),
    );
  });

  test.each(STEERED)(
    'that is usual holds the pitman ball, and the aim where it is near: $label',
    ({ over }) => {
      const frontEnd = frontEndOf(over);
      const aim = findAim(frontEnd);
      if (!aim.ok) throw new Error(aim.failure);
      const { axes, kept, from, to } = usualWindow(frontEnd, aim.value);
      const { pitmanBall } = frontEnd.layout.steering.box;
      const holds = (point: Point) =>
        axes.every((axis, i) => point[axis] >= from[i]! + 100 && point[axis] <= to[i]! - 100);
      expect(holds(pitmanBall)).toBe(true);
      const other = axes[0] === 0 ? 1 : 0;
      expect(kept).toBe(pitmanBall[other]);
      const at = aimAtPlane(aim.value, other, kept);
      const near =
        at && Math.abs(at[axes[0]] - pitmanBall[axes[0]]) < 500 && Math.abs(at[2] - pitmanBall[2]) < 250;
      if (near) expect(holds(at)).toBe(true);
      expect(to[0] - from[0]).toBeLessThanOrEqual(1000);
      expect(to[1] - from[1]).toBeLessThanOrEqual(700);
    },
  );
});

describe('what is hit', () => {
  test('is marked where the clearances of the moved layout say so, and nowhere else', () => {
    const layout = layoutOf({
      location: LOCATIONS['four-bar'],
      steering: { ...SIDE_STEER, dragLinkBall: [0, 490, 395] },
      travel: { bump: 60, rebound: 60, roll: 0 },
      rails: [
        {
          name: 'Rail',
          path: [
            [400, 330, 470],
            [-1500, 420, 400],
          ],
          height: 100,
          width: 50,
          mirrored: true,
        },
      ],
      obstacles: [
        {
          name: 'Header',
          role: 'header',
          kind: 'capsule',
          from: [-640, 500, 330],
          to: [-660, 520, 520],
          radius: 20,
          mirrored: false,
        },
        {
          name: 'Tank',
          role: 'other',
          kind: 'box',
          centre: [-700, 470, 210],
          size: [120, 90, 60],
          turn: 20,
          mirrored: false,
        },
      ],
    });
    const frontEnd = prepareFrontEnd(layout);
    const turn = sweepTurn(frontEnd, 0, 0, 2);
    const locks = { right: turn.right.handwheel / 8, left: turn.left.handwheel / 8 };
    const window = windowOf(frontEnd, [-900, -450], [200, 480]);
    const map = mapOf(frontEnd, window, 9, 8);
    const hits = markHits(frontEnd, map, locks, { every: 1 });
    const going = ['drag-link', 'pitman-arm', 'box'];
    let marked = 0;
    for (let i = 0; i < map.reason.length; i += 1) {
      const moved = movedTo(frontEnd, placeOf(window, map.across[i % 9]!, map.up[Math.floor(i / 9)]!));
      const struck = leastClearances(moved, locks, { heaves: 3, turns: 5 })
        .pairs.filter(({ a, b, distance }) => distance <= 0 && (going.includes(a) || going.includes(b)))
        .map(({ a, b }) => `${a} ${b}`);
      const hit = hits[map.reason[i]! - PLACE_HIT_FROM];
      if (hit) marked += 1;
      if (hit) expect(struck).toContain(`${hit.a} ${hit.b}`);
      else expect(struck).toEqual([]);
    }
    expect(marked).toBeGreaterThan(15);
    expect(marked).toBeLessThan(57);
  });

  test('every second node answers for its neighbours, and places out of reach keep their reason', () => {
    const frontEnd = frontEndOf({
      obstacles: [
        {
          name: 'Block',
          role: 'engine',
          kind: 'box',
          centre: [-500, 480, 380],
          size: [300, 200, 900],
          mirrored: false,
        },
      ],
      travel: { bump: 220, rebound: 220, roll: 0 },
    });
    const map = mapOf(frontEnd, windowOf(frontEnd, [-420, -60], [120, 700]), 12, 16);
    const before = [...map.reason];
    markHits(frontEnd, map, { right: -2, left: 2 }, { every: 2 });
    for (let i = 0; i < before.length; i += 1) {
      if (before[i] !== PLACE_OK) expect(map.reason[i]).toBe(before[i]);
      const first = 2 * Math.floor((i % 12) / 2) + 12 * 2 * Math.floor(Math.floor(i / 12) / 2);
      if (before[i] === PLACE_OK && before[first] === PLACE_OK) expect(map.reason[i]).toBe(map.reason[first]);
    }
    expect([...map.reason].some((reason) => reason >= PLACE_HIT_FROM)).toBe(true);
  });
});
