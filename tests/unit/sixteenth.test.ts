import { describe, expect, test } from 'vitest';
import type { Point } from '../../shared-math/geometry/points.ts';
import { cross, dot, subtract, unit } from '../../shared-math/geometry/vectors.ts';
import {
  hardpoints,
  type Layout,
  moveHardpoint,
  resolveLayout,
  type Side,
} from '../../shared-math/layout/index.ts';
import { prepareFrontEnd } from '../../shared-math/linkage/index.ts';
import { summariseTravel, sweepTravel } from '../../shared-math/sweep/index.ts';
import {
  dragLinkEffect,
  fourBarEffect,
  lateralBarEffect,
  oneSideEffect,
  placeEffects,
  tieRodEffect,
} from '../../shared-math/tune/index.ts';
import { DEMONSTRATIONS } from '../support/demonstration-files.ts';
import { layoutOf } from '../support/layouts.ts';

/** 1/16 in. */
const STEP = 1.5875;

/** How far a force along a line acts from a kingpin's axis, mm: by the principle of virtual work a link longer by d turns the wheel by d over it. */
function lever({ axle }: Layout, side: Side, ball: Point, other: Point): number {
  const { kingpinTop, kingpinBottom } = axle[side];
  const axis = unit(subtract(kingpinTop, kingpinBottom));
  return Math.abs(dot(cross(subtract(ball, kingpinBottom), unit(subtract(ball, other))), axis));
}

describe('a length that is off by a sixteenth', () => {
  test.each(DEMONSTRATIONS)(
    '%s: a drag link steers both wheels, a tie rod turns the one that it drives',
    (_, document) => {
      const layout = resolveLayout(document);
      const { steering, axle } = layout;
      const driven = steering.dragLinkTo;
      const follower = driven === 'left' ? 'right' : 'left';
      const byDragLink = STEP / lever(layout, driven, steering.dragLinkBall, steering.box.pitmanBall);
      const byTieRod = STEP / lever(layout, follower, axle[follower].tieRodBall, axle[driven].tieRodBall);
      const link = dragLinkEffect(prepareFrontEnd(layout), STEP);
      const rod = tieRodEffect(prepareFrontEnd(layout), STEP);
      // The virtual work is of a small step; a sixteenth on an arm of six inches is small to a hundredth or two.
      expect((link?.steer as number) / byDragLink).toBeCloseTo(1, 1);
      expect(link?.toe as number).toBeLessThan(0.1 * byDragLink);
      expect((rod?.toe as number) / byTieRod).toBeCloseTo(1, 1);
    },
  );

  test('a lateral bar of a cross-steer car shifts the axle along its drag link', () => {
    const [, document] = DEMONSTRATIONS.find(([file]) => file === 'four-bar-cross-steer.json') ?? [];
    const layout = resolveLayout(document as NonNullable<typeof document>);
    const frontEnd = prepareFrontEnd(layout);
    const bar = lateralBarEffect(frontEnd, STEP)?.steer as number;
    // Bar and drag link lie within a tenth of a degree of parallel, so an error of one is an error of the other.
    expect(bar / (dragLinkEffect(frontEnd, STEP)?.steer as number)).toBeCloseTo(1, 2);
    expect(
      lateralBarEffect(prepareFrontEnd(layoutOf({ lateral: { kind: 'spring', height: 480 } })), STEP),
    ).toBeUndefined();
  });

  test('a bar of four turns its half of the axle, a rod of one side sets the axle out of square', () => {
    const four = layoutOf({
      location: {
        kind: 'four-bar',
        left: {
          upper: { axle: [-45, 430, 400], frame: [-645, 430, 400] },
          lower: { axle: [-45, 430, 250], frame: [-645, 430, 250] },
        },
        right: 'mirror',
      },
    });
    expect(fourBarEffect(four, STEP)?.caster).toBeCloseTo(Math.atan(STEP / 150), 12);
    expect(oneSideEffect(four, STEP)?.square).toBeCloseTo(Math.atan(STEP / 860), 12);
    const hairpins = layoutOf({
      location: { kind: 'hairpins', left: { framePivot: [-890, 415, 335] }, right: 'mirror' },
    });
    expect(oneSideEffect(hairpins, STEP)?.square).toBeCloseTo(Math.atan(STEP / 830), 12);
    expect(fourBarEffect(hairpins, STEP)).toBeUndefined();
  });
});

describe('a point that is off by a sixteenth', () => {
  test.each(DEMONSTRATIONS.filter(([file]) => file.includes('steer')))(
    '%s: adds what the moved layout itself has more',
    (_, document) => {
      const places = placeEffects(document, STEP);
      if (!places.ok) throw new Error(places.failure);
      const worst = (moved: typeof document) => {
        const layout = resolveLayout(moved);
        const { bump, rebound } = layout.travel;
        return summariseTravel(sweepTravel(prepareFrontEnd(layout), 'heave', -rebound, bump, 15, 0))
          .worstBumpSteer;
      };
      const drawn = worst(document);
      const id = 'steering.box.pitmanBall';
      const at = hardpoints(document).find((point) => point.id === id)?.at as Point;
      for (const axis of [0, 1, 2] as const) {
        const [up, down] = [STEP, -STEP].map((by) => {
          const to = [...at] as [number, number, number];
          to[axis] += by;
          return worst(moveHardpoint(document, id, to));
        }) as [number, number];
        const effect = places.value.find((one) => one.id === id && one.axis === axis);
        expect(effect?.adds).toBeCloseTo(Math.max(0, up - drawn, down - drawn), 12);
      }
    },
  );

  test('every point but the shaft’s and the other of each pair is asked along three axes, and none takes away', () => {
    for (const [, document] of DEMONSTRATIONS) {
      const places = placeEffects(document, STEP);
      if (!places.ok) continue;
      const asked = hardpoints(document).filter(
        ({ id, twin }) => !id.startsWith('shaft.') && !(twin && id.includes('.right.')),
      );
      expect(places.value.map(({ id, axis }) => `${id} ${axis}`)).toEqual(
        asked.flatMap(({ id }) => [0, 1, 2].map((axis) => `${id} ${axis}`)),
      );
      for (const { adds } of places.value) expect(adds ?? 0).toBeGreaterThanOrEqual(0);
    }
  });

  test('a layout that does not reach over its travel has none', () => {
    const [, document] = DEMONSTRATIONS[0] as (typeof DEMONSTRATIONS)[number];
    expect(placeEffects({ ...document, travel: { ...document.travel, bump: 1500 } }, STEP)).toEqual({
      ok: false,
      failure: 'no-travel',
    });
  });
});
