import { describe, expect, test } from 'vitest';
import type { Point } from '../../../../shared-math/geometry/points.ts';
import { readLayout, usualObstacle, usualRail } from '../../../../shared-math/layout/index.ts';
import { planeOf } from '../../../../shared-math/trace/index.ts';
import {
  bodyDepth,
  bodyToTrace,
  depthAlong,
  placedSpots,
  tracedObstacle,
  tracedRail,
  withOutlined,
} from '../../../../src-renderer/places/measure/photos/trace-bodies.ts';
import { photographedCar, SHOTS } from '../../../support/photo-scene.ts';
import { photographed } from '../../../support/pinhole.ts';

// The spots come from a pinhole camera that turns, shifts, projects and bends by its own formulas (tests/support/pinhole.ts).

const car = photographedCar();

/** What a photo of the car, as it was put to scale, makes of points that its camera saw. */
function tracedFrom(
  index: 0 | 1,
  points: readonly Point[],
  depth: number,
  own?: (place: Point) => number,
): Point[] {
  const [photo, shot] = [car.photos[index], SHOTS[index]];
  const plane = photo && planeOf(photo);
  if (!photo || !shot || !plane?.ok) throw new Error('the demonstration carries its photos');
  const spots = points.map((point) => photographed(shot.camera, point));
  const traced = placedSpots(photo, plane.value, spots, depth, own);
  if (!traced) throw new Error('beyond the horizon');
  return traced;
}

const apart = (a: Point, b: Point) => Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);

describe('a rail', () => {
  const truth: Point[] = [
    [400, 345, 500],
    [-250, 345, 500],
    [-520, 380, 430],
    [-900, 395, 430],
  ];

  test('is traced from the side at a depth, and takes its y from above, within 2 mm', () => {
    // From the side at a usual depth, as nobody knows better yet; from above at the heights found; once more from the side.
    const first = tracedRail(usualRail(car), tracedFrom(0, [...truth].reverse(), 360), 'side', true);
    expect(first.path.map(([x]) => x)).toEqual([...first.path.map(([x]) => x)].sort((a, b) => b - a));
    const again = (rail: typeof first, index: 0 | 1, view: 'side' | 'top') =>
      tracedRail(rail, tracedFrom(index, truth, bodyDepth(rail, view), depthAlong(rail, view)), view, false);
    const both = again(again(first, 1, 'top'), 0, 'side');
    expect(both.path).toHaveLength(truth.length);
    for (const [i, point] of both.path.entries()) expect(apart(point, truth[i] as Point)).toBeLessThan(2);
  });

  test('keeps a kink that only the other side shows', () => {
    const side = tracedRail(
      usualRail(car),
      [
        [400, 345, 500],
        [-300, 345, 500],
        [-900, 345, 430],
      ],
      'side',
      true,
    );
    const both = tracedRail(
      side,
      [
        [400, 330, 0],
        [-900, 395, 0],
      ],
      'top',
      false,
    );
    expect(both.path).toEqual([
      [400, 330, 500],
      [-300, 365, 500],
      [-900, 395, 430],
    ]);
  });
});

describe('what is in the way', () => {
  test('an engine is a box about what is clicked around, its width a usual one until it is traced from above', () => {
    const corners: Point[] = [
      [-260, 230, 430],
      [-840, 230, 430],
      [-840, 230, 860],
      [-260, 230, 860],
    ];
    const usual = usualObstacle(car, 'engine');
    const side = tracedObstacle(usual, tracedFrom(0, corners, 230), 'side', true);
    if (side.kind !== 'box' || usual.kind !== 'box') throw new Error('an engine is a box');
    expect(Math.abs(side.size[0] - 580)).toBeLessThan(2);
    expect(Math.abs(side.size[2] - 430)).toBeLessThan(2);
    expect(side.size[1]).toBe(usual.size[1]);
    const top = tracedObstacle(
      side,
      tracedFrom(
        1,
        [
          [-260, 230, 430],
          [-840, -230, 430],
        ],
        430,
      ),
      'top',
      false,
    );
    if (top.kind !== 'box') throw new Error('an engine is a box');
    expect(Math.abs(top.size[1] - 460)).toBeLessThan(2);
    expect(top.size[2]).toBe(side.size[2]);
    expect(Math.abs(top.centre[0] + 550)).toBeLessThan(2);
  });

  test('a tube runs from the first spot to the last and keeps its radius; two spots on one are refused by name', () => {
    const ends: Point[] = [
      [-480, 300, 560],
      [-1000, 300, 420],
    ];
    const depth = 300;
    const taken = withOutlined(car, 'header', undefined, tracedFrom(0, ends, depth), 'side');
    const read = readLayout(taken.document);
    expect(read.ok).toBe(true);
    const tube = taken.document.obstacles.at(-1);
    if (!tube || tube.kind === 'box') throw new Error('a header is a tube');
    expect(apart(tube.from, ends[0] as Point)).toBeLessThan(2);
    expect(apart(tube.to, ends[1] as Point)).toBeLessThan(2);
    expect(bodyDepth(tube, 'side')).toBe(depth);
    const spot = tracedFrom(0, [ends[0] as Point, ends[0] as Point], depth);
    const nothing = readLayout(withOutlined(car, 'engine', undefined, spot, 'side').document);
    expect(nothing.ok ? '' : nothing.failure.path).toMatch(/^obstacles\.?\[?\d/);
  });

  test('one that is there is what is traced again', () => {
    expect(bodyToTrace(car, 'rail', 0)).toBe(car.rails[0]);
    expect(bodyToTrace(car, 'engine', undefined)).toMatchObject({ role: 'engine' });
  });
});
