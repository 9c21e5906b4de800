import { describe, expect, test } from 'vitest';
import { VIEWS, type View, type ViewPoint } from '../../../../shared-math/drawing/index.ts';
import { transmissionAngles } from '../../../../shared-math/joints/index.ts';
import { createState, type FrontEnd, solveFrontEnd } from '../../../../shared-math/linkage/index.ts';
import { ackermannCar, ackermannOf, sweepTurn } from '../../../../shared-math/sweep/index.ts';
import { turnPicture } from '../../../../src-renderer/places/turn/turn-marks.ts';
import { DEGREE, expectClose } from '../../../support/close.ts';
import { CROSS_STEER, frontEndOf } from '../../../support/layouts.ts';

function picture(frontEnd: FrontEnd, handwheel: number, shown: readonly View[] = VIEWS, least = 40) {
  const state = createState();
  expect(solveFrontEnd(frontEnd, 0, 0, handwheel, state)).toBe('ok');
  const onBoard = (_: View, [right, down]: ViewPoint) => [right, down] as const;
  return { state, ...turnPicture({ frontEnd, state, shown, transmissionLeast: least, onBoard }) };
}
const texts = (notes: readonly { lines: readonly { text: string }[] }[]) =>
  notes.flatMap(({ lines }) => lines.map(({ text }) => text));

/** Where a line of the top view, drawn on, meets the rear axle's line: mm left of the middle. */
function acrossAtRearAxle(points: readonly number[], wheelbase: number): number {
  const [x1, y1, x2, y2] = points as [number, number, number, number];
  return y1 + ((wheelbase - x1) / (x2 - x1)) * (y2 - y1);
}

describe('the turn on the board', () => {
  const frontEnd = frontEndOf();
  const turn = sweepTurn(frontEnd, 0, 0);
  const { wheelbase } = frontEnd.layout.car;

  test('says nothing of a turning centre while the wheels are straight', () => {
    expect(picture(frontEnd, 0).lines).toEqual([]);
  });

  test.each([
    ['left', turn.left.handwheel],
    ['right', turn.right.handwheel],
  ] as const)(
    'to the %s draws the normals toward that side, and the outer one as it should lie',
    (side, handwheel) => {
      const { state, lines, notes } = picture(frontEnd, handwheel);
      const sign = side === 'left' ? 1 : -1;
      expect(lines.map(({ ink }) => ink)).toEqual(['guide', 'guide', 'aim']);
      for (const { points } of lines) {
        // Down on the sheet is to the car's left; right is back.
        expect(sign * ((points[3] as number) - (points[1] as number))).toBeGreaterThan(0);
        expect(points[2]).toBeGreaterThan(points[0] as number);
      }
      // By Ackermann both kingpins' normals meet on the rear axle's line; the wheels stand a little outside of them.
      const [inner, , ideal] = lines.map(({ points }) => acrossAtRearAxle(points, wheelbase));
      expect(Math.abs((ideal as number) - (inner as number))).toBeLessThan(0.12 * Math.abs(inner as number));
      const { error } = ackermannOf(state.left.steer, state.right.steer, ackermannCar(frontEnd.layout));
      expect(texts(notes)).toContain(`outer wheel ${(Math.abs(error) / DEGREE).toFixed(1)}° beyond ideal`);
    },
  );

  test('tells the angle between link and arms where each is seen, and warns near a dead centre', () => {
    const { state, notes } = picture(frontEnd, 2);
    const { pitman, steeringArm } = transmissionAngles(frontEnd, state);
    const [atPitman, atArm] = notes;
    expect(atPitman?.view).toBe('side');
    expect(atArm?.view).toBe('top');
    expect(texts(notes).slice(0, 2)).toEqual([
      `${(pitman / DEGREE).toFixed(0)}° link to pitman arm`,
      `${(steeringArm / DEGREE).toFixed(0)}° link to steering arm`,
    ]);
    const warned = picture(frontEnd, 2, VIEWS, 89).notes;
    expect(texts(warned)[0]).toMatch(/dead centre near$/);
    expect(warned[0]?.lines[0]?.ink).toBe('allowed');
  });

  test('keeps to the views that are shown', () => {
    expect(picture(frontEnd, 3, ['front']).notes).toEqual([]);
    expect(picture(frontEnd, 3, ['front']).lines).toEqual([]);
    expect(texts(picture(frontEndOf({ steering: CROSS_STEER }), 1, ['front']).notes)[0]).toMatch(
      /pitman arm/,
    );
  });

  test('is silent in a pose that does not solve', () => {
    const state = { ...createState(), status: 'out-of-reach' as const };
    const onBoard = (_: View, [right, down]: ViewPoint) => [right, down] as const;
    expect(turnPicture({ frontEnd, state, shown: VIEWS, transmissionLeast: 40, onBoard })).toEqual({
      lines: [],
      notes: [],
    });
  });

  test('draws the outer wheel’s normal square to its heading', () => {
    const { state, lines } = picture(frontEnd, turn.left.handwheel);
    const [x1, y1, x2, y2] = lines[1]!.points as unknown as [number, number, number, number];
    expectClose(Math.atan2(x2 - x1, y2 - y1), state.right.steer, 1e-9);
  });
});
