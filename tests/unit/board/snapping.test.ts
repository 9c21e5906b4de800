import { describe, expect, test } from 'vitest';
import type { Point } from '../../../shared-math/geometry/points.ts';
import { type Hardpoint, hardpoints } from '../../../shared-math/layout/index.ts';
import { heldAxis, neighboursOf, snapped, unsnapped } from '../../../src-renderer/board/snapping.ts';
import { documentOf, rawLayout } from '../../support/layouts.ts';

const points = hardpoints(documentOf(rawLayout()));
const named = (id: string): Hardpoint => {
  const found = points.find((point) => point.id === id);
  if (!found) throw new Error(`no point ${id}`);
  return found;
};
const INCH = 25.4;

describe('a dragged point', () => {
  test('is rounded to the grid in the two axes its view shows, and only in them', () => {
    const { at, guides } = snapped([-803.2, 500.7, 351.1], 'side', { step: 10, reach: 5, neighbours: [] });
    expect(at).toEqual([-800, 500.7, 350]);
    expect(guides).toEqual([]);
    expect(snapped([-803.2, 500.7, 351.1], 'top', { step: 10, reach: 5, neighbours: [] }).at).toEqual([
      -800, 500, 351.1,
    ]);
    expect(snapped([-803.2, 500.7, 351.1], 'front', { step: 10, reach: 5, neighbours: [] }).at).toEqual([
      -803.2, 500, 350,
    ]);
  });

  test('takes over a near neighbour’s coordinate instead, and says whose', () => {
    const neighbours = neighboursOf(points, named('steering.box.pitmanBall'));
    const { at, guides } = snapped([-802, 500, 333], 'side', { step: INCH / 4, reach: 4, neighbours });
    expect(at[2]).toBe(335);
    expect(guides).toContainEqual({ axis: 2, from: named('location.left.framePivot') });
    expect(at[0]).toBe(named('steering.box.sectorCentre').at[0]);
  });

  test('prefers the nearest of several neighbours', () => {
    const neighbour = (id: string, z: number): Hardpoint => ({
      id,
      name: id,
      carrier: 'frame',
      at: [0, 0, z],
    });
    const { at } = snapped([50, 0, 103], 'side', {
      step: 1,
      reach: 10,
      neighbours: [neighbour('a', 96), neighbour('b', 105), neighbour('c', 110)],
    });
    expect(at).toEqual([50, 0, 105]);
  });

  test('stays free of both with Alt, but for digits that nobody can measure', () => {
    expect(unsnapped([-803.23456, 500.7, 351.1], 'side').at).toEqual([-803.23, 500.7, 351.1]);
  });

  test('keeps the axis that Shift holds exactly as it was', () => {
    const from: Point = [-800.123, 500, 350.456];
    const { at } = snapped([-790, 500, 350.456], 'side', { step: 10, reach: 0, neighbours: [] }, [2]);
    expect(at).toEqual([-790, 500, from[2]]);
    expect(heldAxis('side', 12, 3)).toBe(2);
    expect(heldAxis('side', 2, 9)).toBe(0);
    expect(heldAxis('top', 12, 3)).toBe(1);
    expect(heldAxis('front', 2, -9)).toBe(1);
  });

  test('comes out in plain numbers on a grid of sixteenths', () => {
    const step = INCH / 16;
    for (let i = -700; i < 700; i += 37) {
      const { at } = snapped([i + 0.3, 0, i / 3], 'side', { step, reach: -1, neighbours: [] });
      expect(at[0] / step).toBeCloseTo(Math.round(at[0] / step), 4);
      expect(String(at[0]).length).toBeLessThan(12);
      expect(Object.is(at[0], -0)).toBe(false);
    }
  });
});

describe('neighbours', () => {
  test('do not include the point itself or its mirror image', () => {
    const ids = neighboursOf(points, named('axle.left.kingpinTop')).map(({ id }) => id);
    expect(ids).not.toContain('axle.left.kingpinTop');
    expect(ids).not.toContain('axle.right.kingpinTop');
    expect(ids).toContain('axle.left.kingpinBottom');
  });

  test('of the box do not include the pitman ball that it takes along', () => {
    const ids = neighboursOf(points, named('steering.box.sectorCentre')).map(({ id }) => id);
    expect(ids).not.toContain('steering.box.pitmanBall');
  });
});
