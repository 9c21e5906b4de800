import { readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, test } from 'vitest';
import { judgedPlane, zeroSlopeHeight, zeroSlopeLine } from '../../shared-math/aim/index.ts';
import type { Point } from '../../shared-math/geometry/points.ts';
import { type Layout, parseLayout, resolveLayout } from '../../shared-math/layout/index.ts';
import {
  createState,
  type FrontEnd,
  prepareFrontEnd,
  solveFrontEnd,
} from '../../shared-math/linkage/index.ts';
import { expectClose } from '../support/close.ts';
import { frontEndOf, STEERED } from '../support/layouts.ts';

const projects = resolve(import.meta.dirname, '../../projects');

/** The layout with its pitman ball at a place, the box beside it as drawn. */
function withBall(layout: Layout, at: Point): FrontEnd {
  const { box } = layout.steering;
  const sectorCentre = box.sectorCentre.map(
    (value, i) => value + (at[i] as number) - (box.pitmanBall[i] as number),
  ) as unknown as Point;
  return prepareFrontEnd({
    ...layout,
    steering: { ...layout.steering, box: { ...box, pitmanBall: at, sectorCentre } },
  });
}

/** Mean steer for each mm of heave at ride height, by the difference of two solved poses. */
function slope(frontEnd: FrontEnd): number {
  const state = createState();
  const steer = (heave: number) => {
    expect(solveFrontEnd(frontEnd, heave, 0, 0, state)).toBe('ok');
    return state.meanSteer;
  };
  return (steer(0.25) - steer(-0.25)) / 0.5;
}

/** How far above the line the frame end without slope is at a place along, by the secant of two solved layouts; mm. */
function offLine(frontEnd: FrontEnd, along: number): number {
  const { layout } = frontEnd;
  const line = zeroSlopeLine(frontEnd);
  if (!line) throw new Error('no line');
  const { free } = judgedPlane(frontEnd);
  const z = zeroSlopeHeight(line, along);
  const at = (height: number): Point => {
    const [x, y, z] = layout.steering.box.pitmanBall;
    const point: [number, number, number] = [x, y, z];
    point[free[0]] = along;
    point[2] = height;
    return point;
  };
  const [low, high] = [slope(withBall(layout, at(z - 2))), slope(withBall(layout, at(z + 2)))];
  return -2 + (4 * low) / (low - high);
}

describe('the zero-slope line in the judged plane', () => {
  test.each(STEERED)('$label: frame ends on it give no slope, to a tenth of a millimetre', ({ over }) => {
    const frontEnd = frontEndOf(over);
    const { free } = judgedPlane(frontEnd);
    const { dragLinkBall, box } = frontEnd.layout.steering;
    const [from, to] = [dragLinkBall[free[0]], box.pitmanBall[free[0]]];
    for (const share of [0.5, 1, 1.4])
      expectClose(offLine(frontEnd, from + share * (to - from)), 0, 0.1, `share ${share}`);
  });

  test.each([
    'wishbone-side-steer',
    'parallel-leaf-cross-steer',
    'four-bar-cross-steer',
    'hairpins-side-steer',
  ])('%s: with the axle’s own yaw in it', (name) => {
    const outcome = parseLayout(readFileSync(join(projects, `${name}.json`), 'utf8'));
    if (!outcome.ok) throw new Error(outcome.failure.reason);
    const frontEnd = prepareFrontEnd(resolveLayout(outcome.value));
    const { free } = judgedPlane(frontEnd);
    expectClose(offLine(frontEnd, frontEnd.layout.steering.box.pitmanBall[free[0]]), 0, 0.1);
  });

  test('stands in the plane that it names, runs toward the pitman ball, and does not ask where the ball’s height is', () => {
    for (const { over, label } of STEERED) {
      const frontEnd = frontEndOf(over);
      const { kept, free } = judgedPlane(frontEnd);
      const { box, dragLinkBall } = frontEnd.layout.steering;
      const line = zeroSlopeLine(frontEnd)!;
      expect(line.plane, label).toEqual({ axis: kept, at: box.pitmanBall[kept] });
      expect(line.through[kept], label).toBe(box.pitmanBall[kept]);
      expect(line.direction[kept], label).toBe(0);
      expectClose(Math.hypot(...line.direction), 1, 1e-12);
      expect((box.pitmanBall[free[0]] - dragLinkBall[free[0]]) * line.direction[free[0]]).toBeGreaterThan(0);
      const [x, y, z] = box.pitmanBall;
      const raised = zeroSlopeLine(withBall(frontEnd.layout, [x, y, z + 60]))!;
      for (const i of [0, 1, 2]) expectClose(raised.through[i]!, line.through[i]!, 1e-6, label);
    }
  });

  test('an axle that its links leave free has none', () => {
    const location = { kind: 'hairpins', left: { framePivot: [0, 415, 330] }, right: 'mirror' };
    expect(zeroSlopeLine(frontEndOf({ location }))).toBeUndefined();
  });
});
