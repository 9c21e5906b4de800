import { describe, expect, test } from 'vitest';
import { findAim, holdTravel, pathGap } from '../../../../shared-math/aim/index.ts';
import { moveHardpoint, resolveLayout } from '../../../../shared-math/layout/index.ts';
import { prepareFrontEnd } from '../../../../shared-math/linkage/index.ts';
import { arcsOf, gapOf } from '../../../../src-renderer/places/layout/travel/arcs.ts';
import { CROSS_STEER, documentOf, LATERALS, LOCATIONS, rawLayout } from '../../../support/layouts.ts';

function arcsFor(over: Record<string, unknown>, pitmanHeight?: number) {
  const plain = documentOf(rawLayout(over));
  const { pitmanBall } = plain.steering.box;
  const document =
    pitmanHeight === undefined
      ? plain
      : moveHardpoint(plain, 'steering.box.pitmanBall', [pitmanBall[0], pitmanBall[1], pitmanHeight]);
  const frontEnd = prepareFrontEnd(resolveLayout(document));
  return { document, frontEnd, arcs: arcsOf(holdTravel(frontEnd), findAim(frontEnd)) };
}

describe('the arcs', () => {
  test('of side steer are judged from the side, of cross steer from ahead', () => {
    expect(arcsFor({}).arcs.view).toBe('side');
    const cross = { location: LOCATIONS['four-bar'], lateral: LATERALS.bar, steering: CROSS_STEER };
    expect(arcsFor(cross).arcs.view).toBe('front');
  });

  test('meet at ride height, in the ball as drawn, and part over the travel', () => {
    const { arcs, document } = arcsFor({}, 260);
    const ride = arcs.heave.indexOf(0);
    const [x, , z] = document.steering.dragLinkBall;
    for (const arc of [arcs.asked, arcs.allowed]) {
      expect(arc).toHaveLength(arcs.heave.length);
      expect(arc[ride]?.[0]).toBeCloseTo(-x, 6);
      expect(arc[ride]?.[1]).toBeCloseTo(-z, 6);
    }
    const apart = (row: number) =>
      Math.hypot(
        (arcs.asked[row]?.[0] ?? 0) - (arcs.allowed[row]?.[0] ?? 0),
        (arcs.asked[row]?.[1] ?? 0) - (arcs.allowed[row]?.[1] ?? 0),
      );
    expect(apart(0)).toBeGreaterThan(1);
    expect(apart(arcs.heave.length - 1)).toBeGreaterThan(1);
  });

  test('come with the aim in the pitman ball’s plane: from the hairpin pivot’s height, near the pivot', () => {
    const { arcs } = arcsFor({});
    expect(arcs.aim?.at[0]).toBeCloseTo(890, -1);
    expect(arcs.aim?.at[1]).toBeCloseTo(-335, -1);
  });
});

describe('the gap', () => {
  test('is told at the heave where the car stands, as the size that the link is off', () => {
    const { arcs, frontEnd } = arcsFor({}, 260);
    const gap = gapOf(frontEnd, arcs, 40);
    expect(gap?.elsewhere).toBe(false);
    expect(gap?.size).toBeCloseTo(Math.abs(pathGap(frontEnd, 40) ?? Number.NaN), 9);
    expect(gap?.size).toBeGreaterThan(1);
  });

  test('at ride height is told for the end of the travel where it is wider', () => {
    const { arcs, frontEnd } = arcsFor({}, 260);
    const gap = gapOf(frontEnd, arcs, 0);
    expect(gap?.elsewhere).toBe(true);
    const ends = [-75, 75].map((heave) => Math.abs(pathGap(frontEnd, heave) ?? 0));
    expect(gap?.size).toBeCloseTo(Math.max(...ends), 9);
  });
});
