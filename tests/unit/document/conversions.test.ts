import { describe, expect, test } from 'vitest';
import { PLAIN_LAYOUT, readLayout, resolveLayout, withValue } from '../../../shared-math/layout/index.ts';
import { linkLengths, prepareFrontEnd } from '../../../shared-math/linkage/index.ts';
import {
  isMirrored,
  swingOf,
  withDragLinkTo,
  withLateralKind,
  withLocationKind,
  withMirror,
  withSwing,
} from '../../../src-renderer/document/conversions.ts';
import { RIDE_HEIGHT, solvePose } from '../../../src-renderer/document/reach.ts';
import { expectClose } from '../../support/close.ts';
import { COMBINATIONS, documentOf, LATERALS, LOCATIONS, rawLayout, STEERED } from '../../support/layouts.ts';

const LOCATION_KINDS = Object.keys(LOCATIONS) as (keyof typeof LOCATIONS)[];
const LATERAL_KINDS = Object.keys(LATERALS) as (keyof typeof LATERALS)[];

function steerAt(document: Parameters<typeof resolveLayout>[0], handwheel: number): number {
  const state = solvePose(prepareFrontEnd(resolveLayout(document)), { ...RIDE_HEIGHT, handwheel });
  expect(state.status).toBe('ok');
  return state.meanSteer;
}

describe('another kind of axle location or centring', () => {
  for (const { label, over } of COMBINATIONS)
    test(`from ${label}: every other kind is a layout that moves through its travel`, () => {
      const from = documentOf(rawLayout(over));
      for (const location of LOCATION_KINDS)
        for (const lateral of LATERAL_KINDS) {
          const to = withLateralKind(withLocationKind(from, location), lateral);
          const read = readLayout(to);
          expect(read.ok ? '' : read.failure.reason).toBe('');
          expect([to.location.kind, to.lateral.kind]).toEqual([location, lateral]);
          const frontEnd = prepareFrontEnd(resolveLayout(to));
          for (const heave of [-75, 0, 75])
            expect(
              solvePose(frontEnd, { heave, roll: 0, handwheel: 0 }).status,
              `${location}, ${lateral}`,
            ).toBe('ok');
        }
    });

  test('the frame end stays where it was from hairpins to four bars and back', () => {
    const from = documentOf(rawLayout());
    const there = withLocationKind(from, 'four-bar');
    expect(withLocationKind(there, 'hairpins').location).toEqual(from.location);
  });

  test('the frame end stays where it was from hairpins to split rods, to quarter-elliptic springs, and back', () => {
    const from = documentOf(rawLayout());
    for (const kind of ['split-rods', 'quarter-elliptic'] as const)
      expect(withLocationKind(withLocationKind(from, kind), 'hairpins').location).toEqual(from.location);
  });

  test('the same kind changes nothing', () => {
    const from = documentOf(rawLayout());
    expect(withLocationKind(from, 'hairpins')).toBe(from);
    expect(withLateralKind(from, 'spring')).toBe(from);
    expect(withDragLinkTo(from, 'left')).toBe(from);
    expect(withSwing(from, 'fore-and-aft')).toBe(from);
  });
});

describe('mirroring', () => {
  test('off spells the right side out where it stood, on makes it follow the left again', () => {
    const mirrored = documentOf(rawLayout());
    const apart = withMirror(mirrored, 'axle', false);
    expect(isMirrored(apart, 'axle')).toBe(false);
    expect(isMirrored(apart, 'location')).toBe(true);
    expect(resolveLayout(apart)).toEqual(resolveLayout(mirrored));
    const uneven = withValue(apart, 'axle.right.camber', -1);
    expect(withMirror(uneven, 'axle', true)).toEqual(mirrored);
  });

  test('a location without sides is left alone', () => {
    const wishbone = documentOf(rawLayout({ location: LOCATIONS.wishbone }));
    expect(withMirror(wishbone, 'location', false)).toBe(wishbone);
  });
});

describe('the steering', () => {
  for (const { label, over } of STEERED)
    test(`${label}: with the link to the other wheel, the handwheel to the left steers left`, () => {
      const from = documentOf(rawLayout(over));
      const side = from.steering.dragLinkTo === 'left' ? 'right' : 'left';
      const to = withDragLinkTo(from, side);
      expect(readLayout(to).ok).toBe(true);
      expect(steerAt(to, 5)).toBeGreaterThan(steerAt(to, 0));
    });

  test('turning the box keeps the length of the arm, hangs it down, and steers the right way', () => {
    const from = documentOf(rawLayout());
    const across = withSwing(from, 'across');
    expect(swingOf(across.steering.box.sectorAxis)).toBe('across');
    const arm = (document: typeof from) => linkLengths(prepareFrontEnd(resolveLayout(document))).pitmanArm;
    expectClose(arm(across), arm(from), 1e-9, 'pitman arm');
    const { pitmanBall, sectorCentre } = across.steering.box;
    expectClose(pitmanBall[2], sectorCentre[2] - arm(from), 1e-9, 'height of the ball');
    const flat = withSwing(from, 'flat');
    expect(swingOf(flat.steering.box.sectorAxis)).toBe('flat');
    expectClose(arm(flat), arm(from), 1e-9, 'flat pitman arm');
    expect(readLayout(flat).ok).toBe(true);
  });

  test('a tilted shaft counts as the nearest of the three', () => {
    expect(swingOf([0.3, -0.9, 0.1])).toBe('fore-and-aft');
    expect(swingOf([-0.9, 0.2, 0.3])).toBe('across');
    expect(swingOf([0.1, 0.2, -0.8])).toBe('flat');
  });
});

test('the plain car to begin from is a sound layout: all of its travel, little bump steer, the right way round', () => {
  expect(readLayout(PLAIN_LAYOUT)).toEqual({ ok: true, value: PLAIN_LAYOUT });
  const frontEnd = prepareFrontEnd(resolveLayout(PLAIN_LAYOUT));
  const ride = solvePose(frontEnd, RIDE_HEIGHT);
  for (const heave of [-75, -40, 40, 75]) {
    const state = solvePose(frontEnd, { heave, roll: 0, handwheel: 0 });
    expect(state.status).toBe('ok');
    expectClose(((state.meanSteer - ride.meanSteer) * 180) / Math.PI, 0, 1, `bump steer at ${heave}`);
  }
  expect(steerAt(PLAIN_LAYOUT, 90)).toBeGreaterThan(0.05);
});
