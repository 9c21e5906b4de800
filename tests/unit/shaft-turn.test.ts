import { describe, expect, test } from 'vitest';
import { resolveLayout } from '../../shared-math/layout/index.ts';
import {
  createState,
  type FrontEnd,
  prepareFrontEnd,
  solveFrontEnd,
} from '../../shared-math/linkage/index.ts';
import { boxHandwheel, evenColumnYoke, routeOf, turningOf } from '../../shared-math/shaft/index.ts';
import { sweepTurn, type TurnSweep, turnThroughShaft, worstOffEven } from '../../shared-math/sweep/index.ts';
import { DEGREE, expectClose } from '../support/close.ts';
import { documentOf, frontEndOf, rawLayout, SIDE_STEER } from '../support/layouts.ts';
import { shaftOf } from '../support/shafts.ts';

const frontEnd = prepareFrontEnd(resolveLayout(documentOf(rawLayout())));
const sweep = sweepTurn(frontEnd, 0, 0);
const motionFor = (over: Record<string, unknown> = {}) => {
  const shaft = shaftOf(over);
  const turning = turningOf(shaft, routeOf(shaft));
  if (!turning.ok) throw new Error('locked');
  return turning.value.motion;
};

describe('the turn through the steering shaft', () => {
  test('a shaft that runs evenly changes nothing', () => {
    // Two joints of one angle in one plane, in phase.
    const even = motionFor({
      column: { end: [-1396, 330, 768], axis: [2, 0, -1] },
      box: { end: [-960, 452, 560], axis: [2, 0, -1] },
      joints: [
        { kind: 'single', centre: [-1380, 330, 760] },
        { kind: 'single', centre: [-976, 452, 568] },
      ],
    });
    expect(even.swing).toBeLessThan(1e-9);
    const turn = turnThroughShaft(frontEnd, sweep, 0, 0, even);
    for (let row = 0; row < sweep.count; row += 1) {
      expectClose(turn.off[row]!, 0, 1e-9);
      expectClose(turn.ratio[row]! / sweep.ratio[row]!, 1, 1e-9);
    }
  });

  test('wheels stand where the linkage puts them at what the box sees, and the ratio is their difference quotient', () => {
    const motion = motionFor({ shafts: [{ clock: 40 }] });
    expect(motion.swing).toBeGreaterThan(3 * DEGREE);
    const state = createState();
    for (const yoke of [undefined, 0.7]) {
      const turn = turnThroughShaft(frontEnd, sweep, 0, 0, motion, yoke);
      const at = yoke ?? evenColumnYoke(motion, 'slowest');
      const mean = (rim: number) => {
        expect(solveFrontEnd(frontEnd, 0, 0, boxHandwheel(motion, at, rim), state)).toBe('ok');
        return state.meanSteer;
      };
      // The rows at the very ends are held by the locks.
      for (let row = 2; row < sweep.count - 2; row += 1) {
        const rim = turn.handwheel[row]!;
        expectClose(turn.meanSteer[row]!, mean(rim), 1e-9);
        const step = 1e-4;
        const ratio = (2 * step) / (mean(rim + step) - mean(rim - step));
        expectClose(turn.ratio[row]! / ratio, 1, 1e-5);
      }
    }
  });

  test('with the yoke set evenly left and right are alike at the box, and no wheel goes past its lock', () => {
    const motion = motionFor({ shafts: [{ clock: 40 }] });
    const { boxHandwheel: box, handwheel } = turnThroughShaft(frontEnd, sweep, 0, 0, motion);
    const yoke = evenColumnYoke(motion, 'slowest');
    for (const rim of [0.4, 1.9, 5])
      expectClose(boxHandwheel(motion, yoke, rim), -boxHandwheel(motion, yoke, -rim), 1e-9);
    expect(Math.max(...box)).toBeLessThanOrEqual(sweep.left.handwheel);
    expect(Math.min(...box)).toBeGreaterThanOrEqual(sweep.right.handwheel);
    expect(box.length).toBe(handwheel.length);
  });
});

describe('the most that the wheels are off an even shaft', () => {
  const uneven = motionFor({ shafts: [{ clock: 40 }] });
  const alike = evenColumnYoke(uneven, 'slowest');

  /** Every half degree of the rim from lock to lock, both turns solved. */
  const sought = (end: FrontEnd, turn: TurnSweep, heave: number, yoke: number) => {
    const state = createState();
    const [from, to] = [turn.right.handwheel, turn.left.handwheel];
    let most = 0;
    const steps = Math.round(Math.abs(to - from) / (0.5 * DEGREE));
    for (let i = 0; i <= steps; i += 1) {
      const rim = from + ((to - from) * i) / steps;
      const box = boxHandwheel(uneven, yoke, rim);
      if (box < Math.min(from, to) || box > Math.max(from, to)) continue;
      const [even, through] = [rim, box].map((handwheel) =>
        solveFrontEnd(end, heave, 0, handwheel, state) === 'ok' ? state.meanSteer : Number.NaN,
      );
      most = Math.max(most, Math.abs(through! - even!) || 0);
    }
    return most;
  };

  test.each([
    ['set evenly', alike, 0],
    ['set anyhow', 0.7, 0],
    ['set quickest straight ahead', alike + Math.PI / 2, 0],
    ['with the axle risen', 0.7, 50],
  ])('as a fine search finds it: %s', (_, yoke, heave) => {
    const turn = sweepTurn(frontEnd, heave, 0);
    const most = sought(frontEnd, turn, heave, yoke);
    const told = worstOffEven(frontEnd, turn, heave, 0, uneven, yoke)!;
    expect(most).toBeGreaterThan(0.1 * DEGREE);
    expectClose(told / most, 1, 0.01);
  });

  test('is that of the yoke that makes left and right alike where none is given', () => {
    expect(worstOffEven(frontEnd, sweep, 0, 0, uneven)).toBe(
      worstOffEven(frontEnd, sweep, 0, 0, uneven, alike),
    );
    expect(worstOffEven(frontEnd, sweep, 0, 0, uneven)).not.toBe(
      worstOffEven(frontEnd, sweep, 0, 0, uneven, alike + 1),
    );
  });

  test('is the same with the rim turned the other way round, from left lock to right', () => {
    // A turn handed over with its locks exchanged has the same angles in it.
    const back = { ...sweep, left: sweep.right, right: sweep.left };
    expectClose(
      worstOffEven(frontEnd, back, 0, 0, uneven, 0.7)!,
      worstOffEven(frontEnd, sweep, 0, 0, uneven, 0.7)!,
      1e-12,
    );
  });

  test('counts no turn that the linkage cannot make', () => {
    // The lock is a link's reach: past it there is no pose, and no figure may come of one.
    const box = { ...SIDE_STEER.box, sectorCentre: [-800, 500, 600], sectorTravel: 85 };
    const short = frontEndOf({ steering: { ...SIDE_STEER, box } });
    const turn = sweepTurn(short, 0, 0);
    const told = worstOffEven(short, turn, 0, 0, uneven, 0.7)!;
    expectClose(told / sought(short, turn, 0, 0.7), 1, 0.05);
    // And none beyond a stop, where the linkage would go on.
    const stopped = frontEndOf({ steering: { ...SIDE_STEER, stopAngle: 6 } });
    const small = sweepTurn(stopped, 0, 0);
    expect(small.left.cause).toBe('stop');
    for (let yoke = 0; yoke < 3.1; yoke += 0.3) {
      const most = sought(stopped, small, 0, yoke);
      expectClose(worstOffEven(stopped, small, 0, 0, uneven, yoke)! / most, 1, 0.01, `yoke ${yoke}`);
    }
  });

  test('nothing where there is no turn, or no pose', () => {
    expect(worstOffEven(frontEnd, { ...sweep, count: 1 }, 0, 0, uneven)).toBeUndefined();
    expect(worstOffEven(frontEnd, { ...sweep, count: 2 }, 0, 0, uneven)).toBeDefined();
    const free = frontEndOf({
      location: { kind: 'hairpins', left: { framePivot: [0, 415, 330] }, right: 'mirror' },
    });
    expect(worstOffEven(free, sweep, 0, 0, uneven)).toBeUndefined();
    expect(turnThroughShaft(free, sweep, 0, 0, uneven).handwheel).toHaveLength(0);
    // Nothing of the turn but straight ahead.
    const still = {
      ...sweep,
      left: { ...sweep.left, handwheel: 0 },
      right: { ...sweep.right, handwheel: 0 },
    };
    expect(worstOffEven(frontEnd, still, 0, 0, uneven)).toBeUndefined();
  });
});

test('every column of the turn through the shaft is of the solved linkage, row by row', () => {
  const motion = motionFor({ shafts: [{ clock: 40 }] });
  const turn = turnThroughShaft(frontEnd, sweep, 0, 0, motion, 0.7);
  expect(turn.columnYoke).toBe(0.7);
  const state = createState();
  const [least, most] = [sweep.right.handwheel, sweep.left.handwheel];
  for (let row = 0; row < sweep.count; row += 1) {
    expect(turn.handwheel[row]).toBe(sweep.handwheel[row]);
    const box = boxHandwheel(motion, 0.7, sweep.handwheel[row]!);
    expectClose(turn.boxHandwheel[row]!, Math.min(most, Math.max(least, box)), 1e-12, 'held at the locks');
    solveFrontEnd(frontEnd, 0, 0, turn.boxHandwheel[row]!, state);
    expectClose(turn.leftSteer[row]!, state.left.steer, 1e-9, 'left');
    expectClose(turn.rightSteer[row]!, state.right.steer, 1e-9, 'right');
    expectClose(turn.meanSteer[row]!, state.meanSteer, 1e-9, 'mean');
    expectClose(turn.off[row]!, state.meanSteer - sweep.meanSteer[row]!, 1e-9, 'off');
  }
});
