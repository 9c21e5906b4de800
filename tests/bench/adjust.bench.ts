import { expect, test } from 'vitest';
import { adjust, findMisfits } from '../../shared-math/adjust/index.ts';
import { expectClose } from '../support/close.ts';
import { documentOf, rawLayout } from '../support/layouts.ts';
import { peerSolution } from '../support/survey-peer.ts';
import { fullyCheckedRows, measured, peerTask, pointsOf, seededNormal } from '../support/surveys.ts';
import { microseconds, tellRatio } from './report.ts';

test('a survey of 60 rows adjusted, as under typing', async ({ bench }) => {
  const document = documentOf(rawLayout());
  const drawn = pointsOf(document);
  const truth = Object.fromEntries(
    Object.entries(drawn).map(([id, [x, y, z]]) => [id, [x + 7, y * 1.01, z - 5] as const]),
  );
  const rows = measured(fullyCheckedRows().slice(0, 60), truth, drawn, seededNormal(3));
  expect(rows).toHaveLength(60);
  const task = peerTask(document, rows);

  // Both come to the same points, or the comparison would compare nothing.
  const outcome = adjust(document, rows, { pointsOnly: true });
  if (!outcome.ok) throw new Error(outcome.failure.kind);
  const peer = peerSolution(task);
  for (const [j, { id, axis }] of task.unknowns.entries())
    expectClose(peer[j]!, outcome.value.points.get(id)!.at[axis]!, 0.01, `${id} ${axis}`);

  const ours = await bench('adjusted, this program', () => {
    adjust(document, rows, { pointsOnly: true });
  }).run();
  const theirs = await bench('adjusted, ml-levenberg-marquardt', () => {
    peerSolution(task);
  }).run({ time: 2000 });
  const ratio = tellRatio(
    `60 rows and ${task.unknowns.length} coordinates adjusted, with covariance and redundancies`,
    microseconds(ours, 1),
    'ml-levenberg-marquardt, same least squares, points alone',
    microseconds(theirs, 1),
  );
  expect(ratio).toBeGreaterThan(1);
  const typed = await bench('a keystroke: misfits looked for, and the bump steer with its doubt', () => {
    findMisfits(document, rows);
  }).run();
  process.stdout.write(`a row typed, all of it: ${(microseconds(typed, 1) / 1000).toFixed(2)} ms\n`);
});
