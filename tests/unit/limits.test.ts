import { describe, expect, test } from 'vitest';
import {
  analyse,
  findings,
  LIMIT_NAMES,
  LIMITS,
  limitInForce,
  limitProblem,
  OWN_LIMIT,
  readShopLimits,
} from '../../shared-math/findings/index.ts';
import { createState, prepareFrontEnd, solveFrontEnd } from '../../shared-math/linkage/index.ts';
import { layoutOf, PLAIN_HALF } from '../support/layouts.ts';

const INCHES = { unit: 'in', fraction: 16 } as const;

describe('limits', () => {
  test('every usual figure is one that a shop could set', () => {
    for (const name of LIMIT_NAMES) expect(limitProblem(name, LIMITS[name].usual, {}), name).toBeUndefined();
  });

  test('a figure out of range is refused with the range, and so is what is no figure', () => {
    expect(limitProblem('ballTilt', 61, {})).toEqual({ kind: 'range', least: 1, most: 60 });
    for (const wrong of [0, -3, Number.NaN, Number.POSITIVE_INFINITY])
      expect(limitProblem('ballTilt', wrong, {})?.kind).toBe('range');
  });

  test('the two ends of one thing cannot pass each other, whichever of them the shop has set', () => {
    expect(limitProblem('casterLeast', 8.5, {})).toEqual({ kind: 'crossed', other: 'casterMost', value: 8 });
    expect(limitProblem('casterLeast', 8.5, { casterMost: 9 })).toBeUndefined();
    expect(limitProblem('casterMost', 3, {})).toEqual({ kind: 'crossed', other: 'casterLeast', value: 4 });
    // One end only: nothing to pass.
    expect(limitProblem('transmissionLeast', 80, {})).toBeUndefined();
  });

  test('out of what was stored, what means something is taken', () => {
    expect(readShopLimits(undefined)).toEqual({});
    expect(readShopLimits('limits')).toEqual({});
    expect(readShopLimits({ ballTilt: 12, rimForce: null, bind: 1e9, somethingElse: 4 })).toEqual({
      ballTilt: 12,
    });
    expect(readShopLimits({ toeLeast: 3, toeMost: 2, bind: 2 })).toEqual({ bind: 2 });
    expect(readShopLimits({ casterLeast: 9, casterMost: 10 })).toEqual({ casterLeast: 9, casterMost: 10 });
  });

  test('a shop’s figure that is the usual one is the usual one', () => {
    expect(limitInForce('ballTilt', { ballTilt: LIMITS.ballTilt.usual }).source).toBe(LIMITS.ballTilt.source);
    expect(limitInForce('ballTilt', { ballTilt: 18 })).toEqual({ value: 18, source: OWN_LIMIT });
  });

  test('either end of a range marks the finding as held to the shop’s own', () => {
    const analysis = analyse(layoutOf());
    for (const own of [{ casterLeast: 5 }, { casterMost: 7 }]) {
      const caster = findings(analysis, INCHES, own).find(({ rule }) => rule === 'caster-static');
      expect(caster?.source).toContain(OWN_LIMIT);
    }
  });

  test('a limit is told with the decimals it was set with', () => {
    const analysis = analyse(layoutOf());
    const limits = findings(analysis, INCHES, { ballTilt: 12.5, bumpSteerWorst: 0.25 }).map(
      ({ limit }) => limit,
    );
    expect(limits).toContain('limit 12.5°');
    expect(limits).toContain('limit 0.25°');
  });
});

describe('the pose of a finding', () => {
  test('is inside the travel and can be shown', () => {
    const layout = layoutOf();
    const frontEnd = prepareFrontEnd(layout);
    const posed = findings(analyse(layout, frontEnd), INCHES).filter(({ at }) => at);
    expect(new Set(posed.map(({ rule }) => rule))).toEqual(
      new Set([
        'bump-steer-worst',
        'beam-twist',
        'dead-centre',
        'ball-tilt',
        'lock',
        'turns-unequal',
        'ackermann',
        'caster-change',
        'effort',
        'one-wheel',
      ]),
    );
    const { bump, rebound, roll } = layout.travel;
    for (const { at, rule } of posed) {
      if (!at) continue;
      expect(at.heave, rule).toBeGreaterThanOrEqual(-rebound);
      expect(at.heave, rule).toBeLessThanOrEqual(bump);
      expect(Math.abs(at.roll), rule).toBeLessThanOrEqual((roll * Math.PI) / 180 + 1e-12);
      expect(solveFrontEnd(frontEnd, at.heave, at.roll, at.handwheel, createState()), rule).toBe('ok');
    }
  });

  test('of a rigid tube on hairpins is the full roll that binds it', () => {
    const tube = layoutOf({ axle: { beam: 'tube', left: PLAIN_HALF, right: 'mirror' } });
    const bind = findings(analyse(tube), INCHES).find(({ rule }) => rule === 'bind-in-roll');
    expect(Math.abs(bind?.at?.roll ?? 0)).toBeCloseTo((tube.travel.roll * Math.PI) / 180, 9);
    expect(bind?.at?.heave).toBe(0);
  });
});
