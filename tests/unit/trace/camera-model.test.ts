import { expect, test } from 'vitest';
import type { Point } from '../../../shared-math/geometry/points.ts';
import { CAMERA_UNKNOWNS, SEEN_SIZE, see, turnOf } from '../../../shared-math/trace/camera-model.ts';
import { axesOf, type Pinhole, photographed } from '../../support/pinhole.ts';

// The same camera as yaw, pitch and roll (the tests' own), and as the model's unknowns from another start of its turn.
const shot: Pinhole = {
  at: [-700, 4900, 900],
  lookAt: [-300, 700, 480],
  up: [0, 0, 1],
  roll: 0.2,
  focal: 2400,
  size: [3000, 2000],
  bend: 0.07,
};
const POINTS: readonly Point[] = [
  [-400, 700, 450],
  [300, 650, 900],
  [-1300, 1500, 50],
  [-200, 300, 1100],
];

test('a point is seen where an independent camera shows it', () => {
  const unknowns = new Float64Array(CAMERA_UNKNOWNS);
  unknowns[0] = Math.log(shot.focal);
  unknowns.set(shot.at, 4);
  unknowns[7] = shot.bend;
  const frame = { turn: Float64Array.from(axesOf(shot).flat()), size: shot.size };
  const seen = new Float64Array(SEEN_SIZE);
  for (const point of POINTS) {
    expect(see(unknowns, 0, frame, Float64Array.from(point), 0, seen)).toBe(true);
    const [right, down] = photographed(shot, point);
    expect(seen[0]).toBeCloseTo(right, 8);
    expect(seen[1]).toBeCloseTo(down, 8);
  }
  expect(see(unknowns, 0, frame, Float64Array.of(-700, 9000, 900), 0, seen)).toBe(false);
});

test('its derivatives are those of central differences, by every unknown and by the point’s place', () => {
  const unknowns = Float64Array.of(Math.log(2400), 0.3, -0.5, 0.2, -700, 4900, 900, 0.07, -0.02);
  const frame = {
    turn: Float64Array.from(axesOf({ ...shot, lookAt: [-900, 700, 0] }).flat()),
    size: shot.size,
  };
  unknowns.set([0.03, 0.12, -0.25], 1);
  const seen = new Float64Array(SEEN_SIZE);
  const [plus, minus] = [new Float64Array(SEEN_SIZE), new Float64Array(SEEN_SIZE)];
  for (const point of POINTS) {
    const place = Float64Array.from(point);
    expect(see(unknowns, 0, frame, place, 0, seen)).toBe(true);
    for (let j = 0; j < CAMERA_UNKNOWNS + 3; j += 1) {
      const [list, at] = j < CAMERA_UNKNOWNS ? [unknowns, j] : [place, j - CAMERA_UNKNOWNS];
      const step = (j >= 4 && j < 7) || j >= CAMERA_UNKNOWNS ? 1e-2 : 1e-6;
      const was = list[at] as number;
      list[at] = was + step;
      see(unknowns, 0, frame, place, 0, plus);
      list[at] = was - step;
      see(unknowns, 0, frame, place, 0, minus);
      list[at] = was;
      for (const axis of [0, 1]) {
        const slope = ((plus[axis] as number) - (minus[axis] as number)) / (2 * step);
        const given = seen[2 + axis * (CAMERA_UNKNOWNS + 3) + j] as number;
        expect(Math.abs(given - slope), `${j} ${axis}`).toBeLessThan(1e-5 * (1 + Math.abs(slope)));
      }
    }
  }
});

test('the turn is a rotation', () => {
  const unknowns = Float64Array.of(0, 0.9, -1.4, 0.6, 0, 0, 0, 0, 0);
  const turn = turnOf(unknowns, 0, { turn: Float64Array.from(axesOf(shot).flat()), size: shot.size });
  for (let i = 0; i < 3; i += 1)
    for (let j = 0; j < 3; j += 1) {
      let sum = 0;
      for (let k = 0; k < 3; k += 1) sum += (turn[3 * i + k] as number) * (turn[3 * j + k] as number);
      expect(sum).toBeCloseTo(i === j ? 1 : 0, 12);
    }
});
