import { expect, test } from 'vitest';
import type { Point } from '../../shared-math/geometry/points.ts';
import type { Layout } from '../../shared-math/layout/index.ts';
import { rideParameters } from '../../shared-math/ride/index.ts';
import { expectClose } from '../support/close.ts';
import { layoutOf } from '../support/layouts.ts';

const heightOf = (layout: Layout) => {
  const set = rideParameters(layout);
  if (!set.ok) throw new Error(set.failure.reason);
  return set.value.parameters.rollCentre;
};
const withBar = (axle: Point, frame: Point) => layoutOf({ lateral: { kind: 'bar', axle, frame } });

// A lateral rod holds frame and axle along its own line: the roll centre is where that line crosses the car's centre
// plane (Milliken & Milliken, Race Car Vehicle Dynamics, ch. 17; Dixon, Suspension Geometry and Computation; from memory).
test.each([
  // A quarter of the way from the axle's end to the frame's: 300 + 100/4.
  ['tilted, nearer to the axle’s end', [-70, -150, 300], [-70, 450, 400], 325],
  ['tilted the other way', [-70, -150, 400], [-70, 450, 300], 375],
  ['from the left', [-70, 500, 320], [-70, -300, 400], 370],
  ['level', [-70, -520, 350], [-70, 316, 350], 350],
] as const)(
  'the roll centre of a lateral bar is where it crosses the centre plane: %s',
  (_, axle, frame, height) => {
    expectClose(heightOf(withBar(axle, frame)), height, 1e-9);
  },
);

test('of a spring that holds the axle sideways it is the spring’s height, else the wheel centres’', () => {
  expect(heightOf(layoutOf({ lateral: { kind: 'spring', height: 480 } }))).toBe(480);
  expect(heightOf(layoutOf({ lateral: { kind: 'spring' } }))).toBe(330);
});

test('of a spring across with one eye fixed it is where the line from the eye to its arc’s centre crosses the centre plane', () => {
  // A flat half of 400 mm from a clamp at y -50: its arc's centre lies 100 mm out. Level, so at the eye's own height.
  const flat = layoutOf({ lateral: { kind: 'fixed-spring', clamp: [0, -50, 420], eye: [0, -450, 420] } });
  expectClose(heightOf(flat), 420, 1e-9);
  // Arched by a quarter turn of its chord's double: bend φ = π/3, chord at π/6. L = chord · (π/6)/sin(π/6), by hand.
  const chord = 400;
  const eye = [0, -50 - chord * Math.cos(Math.PI / 6), 420 - chord / 2] as const;
  const leaf = (chord * Math.PI) / 6 / 0.5;
  const out = 50 + leaf / 4;
  const arched = layoutOf({ lateral: { kind: 'fixed-spring', clamp: [0, -50, 420], eye } });
  const slope = (420 - eye[2]) / (-eye[1] - out);
  expectClose(heightOf(arched), 420 + slope * out, 1e-9);
});
