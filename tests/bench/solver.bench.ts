import { levenbergMarquardt } from 'ml-levenberg-marquardt';
import { expect, test } from 'vitest';
import {
  ballCircle,
  closeLink,
  createState,
  prepareFrontEnd,
  solveFrontEnd,
} from '../../shared-math/linkage/index.ts';
import { sweepTravel } from '../../shared-math/sweep/index.ts';
import { expectClose } from '../support/close.ts';
import { COMBINATIONS, frontEndOf, layoutOf } from '../support/layouts.ts';
import { preparePeer } from './peer.ts';
import { microseconds, tellRatio } from './report.ts';

const HEAVES = Array.from({ length: 31 }, (_, i) => -75 + 5 * i);

test('one pose with both spindles and all outputs, and the full travel', async ({ bench }) => {
  const layout = layoutOf();
  const frontEnd = prepareFrontEnd(layout);
  const state = createState();
  const peer = preparePeer(layout);
  const unknowns = [0, 0, 0, 0, 0, 0, 0];

  // Both give the same pose, or the comparison would compare nothing.
  for (const heave of [5, 20, 45, 70]) {
    solveFrontEnd(frontEnd, heave, 0.02, 0, state);
    for (const step of [0.25, 0.5, 0.75, 1]) peer.solve(heave * step, 0.02 * step, unknowns);
    expectClose(unknowns[0]!, state.axle.x, 1e-4, 'x');
    expectClose(unknowns[2]! / 1000, state.axle.yaw, 1e-6, 'yaw');
    expectClose(unknowns[5]! / 1000, Math.atan2(state.work.turns[1]!, state.work.turns[0]!), 1e-6, 'spindle');
  }

  const ours = await bench('31 poses, this program', () => {
    for (const heave of HEAVES) solveFrontEnd(frontEnd, heave, 0, 0, state);
  }).run();
  const theirs = await bench('31 poses, ml-levenberg-marquardt', () => {
    unknowns.fill(0);
    for (const heave of HEAVES) peer.solve(heave, 0, unknowns);
  }).run();
  const ratio = tellRatio(
    'one pose with both spindles and all outputs',
    microseconds(ours, 31),
    'ml-levenberg-marquardt, same equations, no outputs',
    microseconds(theirs, 31),
  );
  expect(ratio).toBeGreaterThan(1);

  const sweep = await bench('full travel sweep as columns', () => {
    sweepTravel(frontEnd, 'heave', -75, 75, 31, 0);
  }).run();
  tellRatio(
    'full travel sweep of 31 poses, with its columns',
    microseconds(sweep, 1),
    'ml-levenberg-marquardt, 31 poses',
    microseconds(theirs, 1),
  );
});

test('one pose in each of the sixteen ways to hold an axle', async ({ bench }) => {
  for (const { label, over } of COMBINATIONS) {
    const frontEnd = frontEndOf(over);
    const state = createState();
    const result = await bench(label, () => {
      for (const heave of HEAVES) solveFrontEnd(frontEnd, heave, 0, 0, state);
    }).run({ time: 200 });
    process.stdout.write(`one pose, ${label}: ${microseconds(result, 31).toFixed(3)} µs\n`);
  }
});

test('one closed-form link', async ({ bench }) => {
  const circle = ballCircle([0, 0, 0], [0.05, -0.13, Math.sqrt(1 - 0.05 ** 2 - 0.13 ** 2)], [10, -140, 60]);
  const out = new Float64Array(3);
  const turns = Float64Array.from({ length: 64 }, (_, i) => (i - 32) * 0.01);
  let kept = 0;
  const closed = await bench('64 closures', () => {
    for (const turn of turns) {
      closeLink(circle, -800 - circle.base[0], -130 + 300 * turn, 40, 800, 1, out, 0);
      kept += out[1]!;
    }
  }).run();
  const trigonometry = await bench('64 pairs of atan2 and acos', () => {
    for (const turn of turns) kept += Math.atan2(turn, 0.7) + Math.acos(turn);
  }).run();

  // The peer has the one unknown and the bare length equation, and starts a tenth of a radian from the answer.
  const [ux, uy, uz] = [0.05, -0.13, Math.sqrt(1 - 0.05 ** 2 - 0.13 ** 2)];
  const [bx, by, bz] = [10, -140, 60];
  const along = ux * bx + uy * by + uz * bz;
  let gap = 0;
  const readGap = () => gap;
  const solveGap = (target: number, start: number) =>
    levenbergMarquardt(
      { x: [0, 1], y: [0, 0] },
      ([turn]: number[]) => {
        const [c, s] = [Math.cos(turn!), Math.sin(turn!)];
        const x = bx * c + (uy * bz - uz * by) * s + ux * along * (1 - c);
        const y = by * c + (uz * bx - ux * bz) * s + uy * along * (1 - c);
        const z = bz * c + (ux * by - uy * bx) * s + uz * along * (1 - c);
        gap = Math.sqrt((x + 800) ** 2 + (y + 130 - 300 * target) ** 2 + (z - 40 - along * uz) ** 2) - 800;
        return readGap;
      },
      {
        initialValues: [start],
        damping: 1e-7,
        gradientDifference: 1e-6,
        maxIterations: 20,
        errorTolerance: 1e-14,
      },
    ).parameterValues[0]!;
  const theirs = await bench('64 links by ml-levenberg-marquardt', () => {
    let start = 0.1;
    for (const turn of turns) {
      start = solveGap(turn, start);
      kept += start;
    }
  }).run();
  tellRatio(
    'one closed-form link',
    microseconds(closed, 64),
    'ml-levenberg-marquardt on the same equation, from its neighbour',
    microseconds(theirs, 64),
  );
  const pair = microseconds(trigonometry, 64);
  tellRatio('one Math.atan2 and one Math.acos', pair, 'one closed-form link', microseconds(closed, 64));
  expect(Number.isFinite(kept)).toBe(true);
});
