import { describe, expect, test } from 'vitest';
import type { Point } from '../../shared-math/geometry/points.ts';
import { createState, poseAxle } from '../../shared-math/linkage/index.ts';
import { cantileverCentre } from '../../shared-math/pose/index.ts';
import { expectClose } from '../support/close.ts';
import { frontEndOf } from '../support/layouts.ts';

/**
 * The end of half a leaf spring under a load at its end, by the beam's own equation: curvature is moment over stiffness, the
 * moment is the load times what is left to the end level, stepped along the bent leaf (midpoint rule) until the end that the
 * moments were taken for is the one that comes out. `even` is the share of leaves that run full length: 0 for leaves
 * cut to a triangle, 1 for one leaf of even section. mm from the clamp: out, and down. No closed form, nothing linear.
 */
function bentHalf(length: number, load: number, even: number): { out: number; down: number } {
  const steps = 2000;
  const ds = length / steps;
  let end = length;
  let [x, z] = [0, 0];
  for (let again = 0; again < 60; again += 1) {
    let slope = 0;
    [x, z] = [0, 0];
    for (let i = 0; i < steps; i += 1) {
      const s = (i + 0.5) / steps;
      const width = even + (1 - even) * (1 - s);
      const bend = (load * (end - x)) / (length * length * width);
      const middle = slope + (bend * ds) / 2;
      x += Math.cos(middle) * ds;
      z += Math.sin(middle) * ds;
      slope += bend * ds;
    }
    if (Math.abs(x - end) < 1e-10) break;
    end = x;
  }
  return { out: x, down: z };
}

/** A car held fore and aft by bars so long that the axle goes straight up, seen from ahead. */
const STRAIGHT = {
  kind: 'four-bar',
  left: {
    upper: { axle: [0, 430, 400], frame: [-9000, 430, 400] },
    lower: { axle: [0, 430, 260], frame: [-9000, 430, 260] },
  },
  right: 'mirror',
};

describe('the arc of a half spring that is clamped at one end', () => {
  // Loads that bend a half of 420 mm as far as springs across are arched, from flat to a good quarter of their length.
  test.each([0.1, 0.3, 0.5, 0.7])('leaves cut to a triangle, load %d: the eye keeps its distance', (load) => {
    const length = 420;
    const drawn = bentHalf(length, load, 0);
    const eye: Point = [0, -drawn.out, 480 - drawn.down];
    const centre = cantileverCentre([0, 0, 480], [0, -1, 0], eye);
    expectClose(centre[1], -length / 4, 0.004 * length, 'a quarter of the leaf out');
    expectClose(centre[2], 480, 1e-9, 'on the line of the clamp');
    const radius = Math.hypot(eye[1] - centre[1], eye[2] - centre[2]);
    for (const other of [load - 0.25, load - 0.1, load + 0.1]) {
      const { out, down } = bentHalf(length, other, 0);
      expectClose(Math.hypot(out + centre[1], down), radius, 0.002 * length, `the eye at load ${other}`);
    }
  });

  test('a chord in the place of the line of the clamp would be wrong by a third in how far the axle is carried', () => {
    // What it means for an arched spring: the slope of the eye's path, across for each mm up.
    const here = bentHalf(420, 0.5, 0);
    const near = bentHalf(420, 0.499, 0);
    const slope = (near.out - here.out) / (here.down - near.down);
    const eye: Point = [0, -here.out, 480 - here.down];
    const centre = cantileverCentre([0, 0, 480], [0, -1, 0], eye);
    expectClose((480 - eye[2]) / (here.out + centre[1]), slope, 0.015 * slope, 'on the clamp’s line');
    expect(here.down / here.out).toBeLessThan(0.8 * slope);
  });

  test('one leaf of even section runs a wider arc: 5/6 of its length, the bound on what 3/4 leaves out', () => {
    const length = 420;
    const { out, down } = bentHalf(length, 0.05, 1);
    expectClose((down * down) / (2 * (length - out)), (5 / 6) * length, 0.002 * length);
    // The sideways movement of such a leaf is a tenth less for the same rise.
    expectClose(0.75 / (5 / 6), 0.9, 1e-12);
  });
});

describe('a spring across with one eye fixed', () => {
  test.each([-60, -30, 30, 60])('carries the axle as the bent leaf does, %d mm of travel', (heave) => {
    const length = 430;
    const drawn = bentHalf(length, 0.5, 0);
    const eye: Point = [0, -50 - drawn.out, 480 - drawn.down];
    const frontEnd = frontEndOf({
      location: STRAIGHT,
      lateral: { kind: 'fixed-spring', clamp: [0, -50, 480], eye },
    });
    const state = createState();
    expect(poseAxle(frontEnd, heave, 0, state)).toBe(true);
    // The load at which the leaf's end stands as high, by halving.
    let [low, high] = [-1, 2];
    for (let i = 0; i < 50; i += 1) {
      const middle = (low + high) / 2;
      if (bentHalf(length, middle, 0).down < drawn.down - heave) low = middle;
      else high = middle;
    }
    const moved = bentHalf(length, low, 0).out - drawn.out;
    // Toward the fixed eye's side as it rises: the arched half flattens.
    expect(Math.sign(state.axle.y)).toBe(-Math.sign(heave));
    expectClose(-state.axle.y, moved, 0.02 * Math.abs(moved), `at ${heave}`);
    expectClose(state.axle.yaw, 0, 1e-4, 'and leaves it square');
  });
});
