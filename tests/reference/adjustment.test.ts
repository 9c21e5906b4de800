import { describe, expect, test } from 'vitest';
import { adjust } from '../../shared-math/adjust/index.ts';
import { type LayoutDocument, resolveLayout, withValue } from '../../shared-math/layout/index.ts';
import { prepareFrontEnd } from '../../shared-math/linkage/index.ts';
import { visitGrid } from '../../shared-math/sweep/index.ts';
import { documentOf, rawLayout } from '../support/layouts.ts';
import { peerCovariance, peerSolution, peerSum } from '../support/survey-peer.ts';
import { measured, peerTask, pointsOf, seededNormal, sideSteerRows } from '../support/surveys.ts';

// The same least squares, its rows written anew from their definitions, by ml-levenberg-marquardt; covariance and
// redundancy by ml-matrix. Both are registry libraries and know nothing of this project.

const document = documentOf(rawLayout());

/** A car that is not quite as drawn. */
function truth(seed: number) {
  const normal = seededNormal(seed);
  const drawn = pointsOf(document);
  const moved = Object.fromEntries(
    Object.entries(drawn).map(([id, [x, y, z]]) => [
      id,
      id.endsWith('wheelCentre')
        ? [x, y + 6 * normal(), z]
        : [x + 6 * normal(), y + 6 * normal(), z + 6 * normal()],
    ]),
  ) as Record<string, readonly [number, number, number]>;
  for (const id of Object.keys(drawn).filter((name) => name.includes('.right.'))) {
    const [x, y, z] = moved[id.replace('.right.', '.left.')]!;
    moved[id] = [x, -y, z];
  }
  return { drawn, moved };
}

function adjusted(rows: Parameters<typeof adjust>[1], of: LayoutDocument = document) {
  const outcome = adjust(of, rows);
  if (!outcome.ok) throw new Error(outcome.failure.kind);
  return outcome.value;
}

describe.each([1, 2, 3])('a whole survey, seed %i', (seed) => {
  const { drawn, moved } = truth(seed);
  const rows = measured(sideSteerRows(), moved, drawn, seededNormal(100 + seed));
  const task = peerTask(document, rows);
  const found = adjusted(rows);
  const x = task.unknowns.map(({ id, axis }) => found.points.get(id)!.at[axis]!);

  test('points agree with the registry solver', () => {
    const peer = peerSolution(task);
    for (const [j, { id, axis }] of task.unknowns.entries())
      expect(Math.abs(x[j]! - peer[j]!), `${id} ${axis}`).toBeLessThan(2e-3);
    expect(found.sum).toBeCloseTo(peerSum(task, x), 8);
    expect(found.sum).toBeLessThanOrEqual(peerSum(task, peer) + 1e-9);
  });

  test('doubts, redundancies, w and correlations agree with ml-matrix', () => {
    const peer = peerCovariance(task, x);
    for (const [j, { id, axis }] of task.unknowns.entries())
      expect(found.points.get(id)!.doubt[axis]! / peer.deviations[j]!).toBeCloseTo(1, 5);
    for (const [i, row] of found.rows.entries()) {
      expect(row.redundancy).toBeCloseTo(peer.redundancies[i]!, 6);
      if (row.w === null) expect(peer.redundancies[i]).toBeLessThan(0.01);
      else expect(row.w).toBeCloseTo(row.residual! / (task.doubts[i]! * Math.sqrt(peer.redundancies[i]!)), 4);
      const alike = rows
        .filter((_, k) => k !== i && peer.redundancies[k]! >= 0.01 && Math.abs(peer.correlation(i, k)) > 0.9)
        .map(({ id }) => id);
      expect(row.alike).toEqual(row.w === null ? [] : alike);
    }
    expect(found.redundancy).toBeCloseTo(
      peer.redundancies.reduce((sum, value) => sum + value, 0),
      5,
    );
  });

  test('the doubt of the worst bump steer is carried by its derivatives', () => {
    // The derivative by each coordinate once more, from whole sweeps of documents moved by a quarter millimetre.
    const peer = peerCovariance(task, x);
    expect(peer.deviations.length).toBeGreaterThan(0);
    const worst = (of: LayoutDocument) => {
      let most = 0;
      const heaves = Array.from({ length: 31 }, (_, i) => -75 + 5 * i);
      visitGrid(prepareFrontEnd(resolveLayout(of)), heaves, [0], [0], (_state, status, bump) => {
        expect(status).toBe('ok');
        most = Math.max(most, Math.abs(bump));
      });
      return (most * 180) / Math.PI;
    };
    expect(found.bumpSteer!.worst).toBeCloseTo(worst(found.document), 9);
    const slopes = task.unknowns.map(({ id, axis }, j) => {
      const [further, back] = [0.25, -0.25].map((step) =>
        worst(withValue(found.document, id, found.points.get(id)!.at.with(axis, x[j]! + step))),
      );
      return (further! - back!) / 0.5;
    });
    // Variance from many drawings of the errors: the points' errors as they come from the rows' and the drawing's.
    const { shares, unknown, doubt } = found.bumpSteer!;
    const total = [...shares, ...unknown].reduce((sum, { share }) => sum + share, 0);
    expect(total).toBeCloseTo(1, 6);
    expect(shares.map(({ share }) => share)).toEqual(shares.map(({ share }) => share).sort((a, b) => b - a));
    // One row's share, by moving that row by its own doubt and adjusting anew: the answer moves by √share · doubt.
    const { id, share } = shares[0]!;
    const beside = adjusted(
      rows.map((row) =>
        row.id === id ? { ...row, value: row.value + 0.1 * task.doubts[rows.indexOf(row)]! } : row,
      ),
    );
    const moves = task.unknowns.map(({ id: point, axis }, j) => beside.points.get(point)!.at[axis]! - x[j]!);
    const change = moves.reduce((sum, move, j) => sum + move * slopes[j]!, 0);
    expect(Math.abs(change) / 0.1 / doubt).toBeCloseTo(Math.sqrt(share), 2);
  });
});

test('a length whose end nothing holds sideways settles where the registry solver does', () => {
  const rows = measured(
    [
      { id: 'long', kind: 'straight', from: 'steering.dragLinkBall', to: 'steering.box.pitmanBall' },
      { id: 'a', kind: 'back', of: 'steering.dragLinkBall' },
      { id: 'b', kind: 'back', of: 'steering.box.pitmanBall' },
    ] as never,
    pointsOf(document),
    pointsOf(document),
  );
  for (const error of [30, -20, 8]) {
    const off = rows.map((row) => (row.id === 'long' ? { ...row, value: row.value + error } : row));
    const task = peerTask(document, off);
    const found = adjusted(off);
    const x = task.unknowns.map(({ id, axis }) => found.points.get(id)!.at[axis]!);
    const peer = peerSolution(
      task,
      x.map((value) => value + 0.5),
    );
    expect(peerSum(task, x)).toBeLessThanOrEqual(peerSum(task, peer) + 1e-7);
  }
});
