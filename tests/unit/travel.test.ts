import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { createState, solveFrontEnd } from '../../shared-math/linkage/index.ts';
import {
  ROW_NO_POSE,
  ROW_OK,
  ROW_OUT_OF_REACH,
  summariseTravel,
  sweepTravel,
  sweepTurn,
  type TravelSweep,
} from '../../shared-math/sweep/index.ts';
import { DEGREE, expectClose } from '../support/close.ts';
import { CROSS_STEER, frontEndOf, LATERALS, SIDE_STEER } from '../support/layouts.ts';

/** A sweep made of a mean steer and a bump steer at given places; `gone` rows are out of reach. */
function madeOf(at: number[], steer: (x: number) => number, gone: readonly number[] = []): TravelSweep {
  const zeros = () => new Float64Array(at.length);
  return {
    along: 'heave',
    count: at.length,
    at: Float64Array.from(at),
    status: Uint8Array.from(at, (_, i) => (gone.includes(i) ? ROW_OUT_OF_REACH : ROW_OK)),
    leftSteer: zeros(),
    rightSteer: zeros(),
    meanSteer: Float64Array.from(at, (x, i) => (gone.includes(i) ? 0 : steer(x))),
    bumpSteer: Float64Array.from(at, (x, i) => (gone.includes(i) ? 0 : steer(x) - steer(0))),
    totalToeIn: zeros(),
    leftCaster: zeros(),
    rightCaster: zeros(),
    bind: zeros(),
  };
}

const parabola = fc.record({
  a: fc.double({ min: -0.1, max: 0.1, noNaN: true }),
  b: fc.double({ min: -1e-3, max: 1e-3, noNaN: true }),
  c: fc.double({ min: -1e-5, max: 1e-5, noNaN: true }),
});
const places = fc
  .uniqueArray(fc.integer({ min: -90, max: 90 }), { minLength: 3, maxLength: 9 })
  .map((list) => list.sort((p, q) => p - q));

describe('the slope at ride height', () => {
  test('of a parabola is its linear term, wherever the rows lie', () => {
    fc.assert(
      fc.property(parabola, places, ({ a, b, c }, at) => {
        const { slopeAtRide } = summariseTravel(madeOf(at, (x) => a + b * x + c * x * x));
        expectClose(slopeAtRide, b, 1e-9);
      }),
      { seed: 7, numRuns: 200 },
    );
  });

  test('leans on the reachable rows nearest to ride height: what bends far out does not count', () => {
    const steer = (x: number) => (Math.abs(x) > 35 ? 7 : 2e-3 * x + 1e-6 * x * x);
    expectClose(summariseTravel(madeOf([-80, -60, -30, 10, 30, 60], steer)).slopeAtRide, 2e-3, 1e-12);
    expectClose(summariseTravel(madeOf([-30, -20, 0, 10, 30], steer, [2])).slopeAtRide, 2e-3, 1e-12);
  });

  test('of two rows is that of their line; of one there is none', () => {
    expectClose(summariseTravel(madeOf([-20, 40], (x) => 0.3 + 2e-3 * x)).slopeAtRide, 2e-3, 1e-12);
    expect(summariseTravel(madeOf([0], () => 0.3)).slopeAtRide).toBe(0);
    expect(summariseTravel(madeOf([-20, 40], (x) => x, [1])).slopeAtRide).toBe(0);
  });

  test('is what two poses close to ride height differ by', () => {
    for (const steering of [SIDE_STEER, CROSS_STEER])
      for (const [along, far, near] of [
        ['heave', 75, 0.5],
        ['roll', 3 * DEGREE, 0.02 * DEGREE],
      ] as const) {
        const frontEnd = frontEndOf({ steering, lateral: LATERALS.bar });
        const state = createState();
        const mean = (value: number) => {
          solveFrontEnd(frontEnd, along === 'heave' ? value : 0, along === 'roll' ? value : 0, 0, state);
          return state.meanSteer;
        };
        const slope = (mean(near) - mean(-near)) / (2 * near);
        // Rows that miss ride height by a third of a step.
        const sweep = sweepTravel(frontEnd, along, (-far * 32) / 31, far, 22, 0);
        expectClose(summariseTravel(sweep).slopeAtRide, slope, 2e-3 * Math.abs(slope) + 1e-8, along);
      }
  });
});

describe('the worst over the travel', () => {
  test('is the largest size, at its own place, of the rows that are reached', () => {
    fc.assert(
      fc.property(
        places,
        fc.array(fc.double({ min: -1, max: 1, noNaN: true }), { minLength: 9, maxLength: 9 }),
        fc.nat(8),
        (at, values, gone) => {
          const sweep = { ...madeOf(at, () => 0, [gone]), bumpSteer: Float64Array.from(values) };
          const { worstBumpSteer, worstAt, worstSteer, okCount } = summariseTravel(sweep);
          const rows = at.map((_, i) => i).filter((i) => i !== gone);
          expect(okCount).toBe(rows.length);
          expect(worstBumpSteer).toBe(Math.max(...rows.map((i) => Math.abs(values[i]!))));
          const row = at.indexOf(worstAt);
          expect(Math.abs(values[row]!)).toBe(worstBumpSteer);
          expect(worstSteer).toBe(values[row]!);
          expect(row).not.toBe(gone);
        },
      ),
      { seed: 8, numRuns: 100 },
    );
  });
});

describe('a sweep along the travel', () => {
  test('holds in each row what that pose has by itself, at a held handwheel', () => {
    const frontEnd = frontEndOf({ lateral: LATERALS.bar });
    const state = createState();
    for (const [along, to, handwheel] of [
      ['heave', 70, 2],
      ['roll', 3 * DEGREE, -3],
    ] as const) {
      const sweep = sweepTravel(frontEnd, along, -0.8 * to, to, 9, handwheel);
      expect(sweep).toMatchObject({ along, count: 9 });
      expect([sweep.at[0], sweep.at[8]]).toEqual([-0.8 * to, to]);
      solveFrontEnd(frontEnd, 0, 0, handwheel, state);
      const ride = state.meanSteer;
      for (let row = 0; row < 9; row += 1) {
        const value = sweep.at[row]!;
        solveFrontEnd(
          frontEnd,
          along === 'heave' ? value : 0,
          along === 'roll' ? value : 0,
          handwheel,
          state,
        );
        expect(sweep.status[row]).toBe(ROW_OK);
        expectClose(sweep.leftSteer[row]!, state.left.steer, 1e-9, 'left steer');
        expectClose(sweep.rightSteer[row]!, state.right.steer, 1e-9, 'right steer');
        expectClose(sweep.meanSteer[row]!, state.meanSteer, 1e-9, 'mean steer');
        expectClose(sweep.bumpSteer[row]!, state.meanSteer - ride, 1e-9, 'bump steer');
        expectClose(sweep.totalToeIn[row]!, state.totalToeIn, 1e-9, 'toe');
        expectClose(sweep.leftCaster[row]!, state.left.caster, 1e-9, 'left caster');
        expectClose(sweep.rightCaster[row]!, state.right.caster, 1e-9, 'right caster');
        expectClose(sweep.bind[row]!, state.bind, 1e-6, 'bind');
      }
    }
  });

  test('says of each row why it has no figures: no reach, or no pose', () => {
    const far = sweepTravel(frontEndOf(), 'heave', -75, 75, 5, 60);
    expect([...far.status]).toEqual(Array(5).fill(ROW_OUT_OF_REACH));
    const free = { location: { kind: 'hairpins', left: { framePivot: [0, 415, 330] }, right: 'mirror' } };
    const none = sweepTravel(frontEndOf(free), 'heave', -75, 75, 5, 0);
    expect([...none.status]).toEqual(Array(5).fill(ROW_NO_POSE));
    expect(summariseTravel(none)).toEqual({
      worstBumpSteer: 0,
      worstAt: 0,
      worstSteer: 0,
      slopeAtRide: 0,
      okCount: 0,
    });
    // A travel that leaves the drag link's reach on the way: what lies within keeps its figures.
    const box = { ...SIDE_STEER.box, sectorCentre: [-800, 500, 600], sectorTravel: 85 };
    const frontEnd = frontEndOf({ steering: { ...SIDE_STEER, box } });
    const nearlyThere = 0.999 * sweepTurn(frontEnd, 0, 0).left.handwheel;
    const part = sweepTravel(frontEnd, 'heave', -75, 75, 11, nearlyThere);
    const [ok, gone] = [ROW_OK, ROW_OUT_OF_REACH];
    expect([...part.status]).toEqual([...Array(6).fill(ok), ...Array(5).fill(gone)]);
    expect(summariseTravel(part).okCount).toBe(6);
    for (let row = 6; row < 11; row += 1) expect([part.meanSteer[row], part.bumpSteer[row]]).toEqual([0, 0]);
  });
});
