import { describe, expect, test } from 'vitest';
import { createState, solveFrontEnd } from '../../../../shared-math/linkage/index.ts';
import { lockAngles, returnToStraight, sweepTurn } from '../../../../shared-math/sweep/index.ts';
import {
  handwheelWords,
  lockWords,
  placeInTurn,
  ratioWords,
  turnsWords,
} from '../../../../shared-math/words/index.ts';
import { lockFigures } from '../../../../src-renderer/document/turn-figures.ts';
import { turnData, turnNow } from '../../../../src-renderer/places/turn/turn-data.ts';
import { DEGREE, expectClose } from '../../../support/close.ts';
import { frontEndOf, SIDE_STEER } from '../../../support/layouts.ts';

describe('the turn as curves', () => {
  const frontEnd = frontEndOf();
  const sweep = sweepTurn(frontEnd, 0, 0);
  const back = returnToStraight(frontEnd, sweep, 0, 0);
  const { at, columns: data } = turnData(frontEnd.layout, sweep, back);

  test('runs in degrees of handwheel from the right lock to the left', () => {
    expect(at).toHaveLength(41);
    expectClose(at[0]!, sweep.right.handwheel / DEGREE, 1e-9);
    expectClose(at[40]!, sweep.left.handwheel / DEGREE, 1e-9);
    expectClose(data.leftSteer[40] as number, sweep.left.leftSteer / DEGREE, 1e-9);
    expectClose(data.error[40] as number, sweep.ackermannError[40]! / DEGREE, 1e-9);
  });

  test('shows the ideal of the outer wheel, which the error is counted from', () => {
    // At left lock the right wheel is the outer one, and steers to the left: its angle is positive.
    const outer = data.rightSteer[40] as number;
    expectClose(outer - (data.idealOuter[40] as number), data.error[40] as number, 1e-9);
    const { idealOuter } = lockAngles(frontEnd.layout, sweep.right);
    expectClose(data.idealOuter[0] as number, -idealOuter / DEGREE, 1e-9);
  });

  test('has no per cent of Ackermann where the wheels are nearly straight, and says so by a gap', () => {
    expect(data.percent[20]).toBeNull();
    expect(typeof data.percent[40]).toBe('number');
  });

  test('has no ratio where the handwheel no longer turns the wheels', () => {
    const ratio = Float64Array.from(sweep.ratio);
    ratio[3] = Number.POSITIVE_INFINITY;
    ratio[4] = 1e6;
    ratio[5] = -18;
    const { ratio: shown } = turnData(frontEnd.layout, { ...sweep, ratio }, back).columns;
    expect(shown.slice(3, 6)).toEqual([null, null, 18]);
  });

  test('has what brings the wheels back in N·m, both parts together, and gaps where nothing is known of it', () => {
    expectClose(data.bySideForce[40] as number, (back?.bySideForce[40] as number) / 1000, 1e-12);
    expectClose(
      data.both[40] as number,
      (data.bySideForce[40] as number) + (data.byWeight[40] as number),
      1e-12,
    );
    expect(turnData(frontEnd.layout, sweep, undefined).columns.both[40]).toBeNull();
  });

  test('agrees with the pose that the car is put into', () => {
    const state = createState();
    for (const row of [0, 11, 27, 40]) {
      expect(solveFrontEnd(frontEnd, 0, 0, sweep.handwheel[row]!, state)).toBe('ok');
      const now = turnNow(frontEnd, state, sweep.straightRatio)!;
      for (const name of [
        'leftSteer',
        'rightSteer',
        'meanSteer',
        'idealOuter',
        'ratio',
        'error',
        'bySideForce',
        'byWeight',
        'both',
      ] as const)
        expectClose(now[name]!, data[name][row] as number, 1e-6, name);
    }
    expect(turnNow(frontEnd, { ...state, status: 'out-of-reach' }, sweep.straightRatio)).toBeUndefined();
  });
});

describe('figures of the turn', () => {
  const stopped = frontEndOf({ steering: { ...SIDE_STEER, stopAngle: 30 } });
  const turn = sweepTurn(stopped, 0, 0);

  test('at a lock are the inner and outer wheel and the circle', () => {
    const { inner, outer, circle } = lockFigures(stopped.layout, turn.left);
    expectClose(inner / DEGREE, 30, 1e-6);
    expect(outer).toBeLessThan(inner);
    expect(circle!.betweenKerbs).toBeGreaterThan(4 * stopped.layout.car.wheelbase);
    expect(circle!.betweenWalls).toBeUndefined();
  });
});

describe('the turn in words', () => {
  test('says what sets a lock', () => {
    expect(lockWords('stop', 33)).toBe('the stop at 33°');
    expect(lockWords('stop', 32.5)).toBe('the stop at 32.5°');
    expect(lockWords('sector-travel', undefined)).toBe('the box’s own end');
    expect(lockWords('drag-link', 33)).toBe('the drag link’s reach');
    expect(lockWords('tie-rod', 33)).toBe('the tie rod’s reach');
    expect(lockWords('dead-centre', 33)).toBe('an arm’s dead centre');
  });

  test('says where the handwheel stands', () => {
    expect(handwheelWords(0.2)).toBe('straight ahead');
    expect(handwheelWords(270)).toBe('at 270° of handwheel to the left');
    expect(handwheelWords(-89.6)).toBe('at 90° of handwheel to the right');
    expect(turnsWords(-540)).toBe('1.50 turns');
    expect(ratioWords(15.84)).toBe('15.8 to 1');
    const turn = sweepTurn(frontEndOf(), 0, 0);
    expect(placeInTurn(turn.left.handwheel, turn)).toBe('left lock');
    expect(placeInTurn(turn.right.handwheel, turn)).toBe('right lock');
    expect(placeInTurn(0, turn)).toBe('straight ahead');
    expect(placeInTurn(-90 * DEGREE, turn)).toBe('90° right');
  });
});
