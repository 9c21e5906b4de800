import { describe, expect, test } from 'vitest';
import { createMap, type MapWindow, PLACE_HIT_FROM } from '../../../../shared-math/aim/index.ts';
import { bandOf, mapImage, NOWHERE } from '../../../../src-renderer/places/layout/map/map-image.ts';
import { hatchRuns, labelSpots } from '../../../../src-renderer/places/layout/map/map-marks.ts';
import { drawnTo, nearestOnRidge, reasonAt } from '../../../../src-renderer/places/layout/map/map-spots.ts';
import { chosenWindow } from '../../../../src-renderer/places/layout/map/map-window-choice.ts';
import { expectClose } from '../../../support/close.ts';

const WINDOW: MapWindow = { axes: [0, 2], kept: 500, from: [-1000, 200], to: [-600, 500] };

describe('the window', () => {
  const wanted: MapWindow = { ...WINDOW, kept: 480, from: [-950, 150], to: [-550, 450] };

  test('stays while the ball is well inside it, in the plane of the ball', () => {
    expect(chosenWindow(WINDOW, wanted, [-800, 350])).toEqual({ ...WINDOW, kept: 480 });
  });

  test.each([
    ['there is none before', undefined, [-800, 350]],
    ['the ball comes near an edge', WINDOW, [-630, 350]],
    ['the ball is above it', WINDOW, [-800, 520]],
    ['it is of another view', { ...WINDOW, axes: [1, 2] as const }, [-800, 350]],
  ] as const)('is another where %s', (_, before, ball) => {
    expect(chosenWindow(before, wanted, ball)).toBe(wanted);
  });
});

describe('the picture', () => {
  /** A map whose value is the height above its lower edge, in hundreds of mm. */
  function slope() {
    const map = createMap(WINDOW, 5, 4);
    for (let row = 0; row < 4; row += 1)
      for (let column = 0; column < 5; column += 1)
        map.worst[row * 5 + column] = ((map.up[row] as number) - 200) / 100 + column * 1e-6;
    return map;
  }

  test('has the highest row at the top and each pixel in its step of the scale', () => {
    const image = mapImage(slope(), [0.5, 1.5, 2.5], 4, true);
    expect([image.width, image.height]).toEqual([16, 12]);
    const column = Array.from({ length: 12 }, (_, row) => image.bands[row * 16]);
    expect(column).toEqual([3, 3, 2, 2, 2, 2, 1, 1, 1, 1, 0, 0]);
  });

  test('runs leftward where the view does', () => {
    const map = createMap(WINDOW, 5, 4);
    map.worst.fill(1);
    // Ahead, where x is largest.
    for (let row = 0; row < 4; row += 1) map.worst[row * 5 + 4] = 9;
    const side = mapImage(map, [5], 2, true);
    const front = mapImage(map, [5], 2, false);
    expect([side.bands[0], side.bands.at(side.width - 1)]).toEqual([1, 0]);
    expect([front.bands[0], front.bands.at(front.width - 1)]).toEqual([0, 1]);
  });

  test('is empty wherever a corner is out of reach', () => {
    const map = slope();
    map.worst[0] = Number.POSITIVE_INFINITY;
    const image = mapImage(map, [1], 2, false);
    // The lowest cell at the left, and only that.
    expect(image.bands.filter((band) => band === NOWHERE)).toHaveLength(4);
    expect(image.bands[(image.height - 1) * image.width]).toBe(NOWHERE);
  });

  test('a value on a level belongs to the step above it', () => {
    expect([0.4, 0.5, 3].map((value) => bandOf(value, [0.5, 1, 2]))).toEqual([0, 1, 3]);
  });
});

describe('spots', () => {
  const ridge = Float64Array.of(-900, 330, 0.001, -800, 340, 0.004, -700, 350, 0.008);
  const best = { across: -890, up: 331, worst: 0 };

  test('the ridge is followed between its points and not beyond its ends', () => {
    expect(nearestOnRidge(ridge, -850)).toEqual({ across: -850, up: 335 });
    expect(nearestOnRidge(ridge, -950)).toBeUndefined();
    expect(nearestOnRidge(ridge, -699)).toBeUndefined();
  });

  test('a pointer is drawn to the best spot before the ridge, and to neither from afar', () => {
    expect(drawnTo({ best, ridge }, -888, 335, 6)).toMatchObject({ on: 'best', across: -890, up: 331 });
    expect(drawnTo({ best, ridge }, -750, 349, 6)).toEqual({ on: 'ridge', across: -750, up: 345 });
    expect(drawnTo({ best, ridge }, -750, 360, 6)).toBeUndefined();
  });

  test('a hatch is told for the node next to a place and drawn about it', () => {
    const reason = new Uint8Array(12);
    reason[5] = PLACE_HIT_FROM;
    reason[6] = PLACE_HIT_FROM;
    const hits = {
      window: { ...WINDOW, to: [-700, 400] as const },
      columns: 4,
      rows: 3,
      reason,
      hits: [],
      asDrawn: [],
    };
    expect(reasonAt(hits, -895, 310)).toBe(PLACE_HIT_FROM);
    expect(reasonAt(hits, -990, 310)).toBe(0);
    expect(reasonAt(hits, -500, 310)).toBe(0);
    expect(hatchRuns(hits)).toEqual([{ from: [-950, 250], to: [-750, 350] }]);
  });
});

describe('figures on the lines', () => {
  const box = { left: 0, top: 0, right: 400, bottom: 200 };
  const line = (y: number, slope = 0) => ({
    text: `${y}`,
    points: [0, y, 200, y + slope, 400, y + 2 * slope],
  });

  test('stand on their line, turned with it, each in the box and clear of the others', () => {
    const spots = labelSpots([line(40), line(46), line(120, 20)], () => 24, 11, box);
    expect(spots).toHaveLength(3);
    for (const [i, a] of spots.entries())
      for (const b of spots.slice(i + 1))
        expect(Math.abs(a.x - b.x) > 24 || Math.abs(a.y - b.y) > 11, `${a.text} and ${b.text}`).toBe(true);
    const slanted = spots.find(({ text }) => text === '120');
    expectClose(slanted?.turn ?? 0, Math.atan2(20, 200), 1e-12, 'turn');
  });

  test('keep off a mark, and a line too short has none', () => {
    const [spot] = labelSpots([line(100)], () => 24, 11, box, [[200, 100]]);
    expect(Math.abs((spot?.x ?? 200) - 200)).toBeGreaterThan(60);
    expect(labelSpots([{ text: '1', points: [10, 50, 40, 50] }], () => 24, 11, box)).toEqual([]);
  });
});
