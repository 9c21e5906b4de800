import { describe, expect, test } from 'vitest';
import { findAim, holdTravel } from '../../../../shared-math/aim/index.ts';
import { moveHardpoint, resolveLayout } from '../../../../shared-math/layout/index.ts';
import { prepareFrontEnd } from '../../../../shared-math/linkage/index.ts';
import { summariseTravel, sweepTravel } from '../../../../shared-math/sweep/index.ts';
import { endsOf } from '../../../../src-renderer/curves/curve-column.ts';
import { toeWords } from '../../../../src-renderer/curves/toe-words.ts';
import {
  bumpSteerLength,
  slopeWords,
  worstAtAim,
  worstBind,
} from '../../../../src-renderer/places/layout/travel/figures.ts';
import {
  atRide,
  hasGaps,
  toeOf,
  travelData,
} from '../../../../src-renderer/places/layout/travel/travel-data.ts';
import {
  curveSentence,
  endWords,
  placeWords,
} from '../../../../src-renderer/places/layout/travel/travel-words.ts';
import { documentOf, frontEndOf, rawLayout } from '../../../support/layouts.ts';

const STYLE = { unit: 'in', fraction: 16 } as const;

describe('curves', () => {
  const frontEnd = frontEndOf();
  const sweep = sweepTravel(frontEnd, 'heave', -75, 75, 31, 0);

  test('are degrees over mm of heave, and over degrees of roll', () => {
    const data = travelData(sweep, 330, 'in');
    expect(data.at[0]).toBe(-75);
    expect(data.meanSteer[30]).toBeCloseTo(((sweep.meanSteer[30] as number) * 180) / Math.PI, 12);
    const roll = travelData(sweepTravel(frontEnd, 'roll', -0.05, 0.05, 11, 0), 330, 'in');
    expect(roll.at[0]).toBeCloseTo((-0.05 * 180) / Math.PI, 12);
  });

  test('of toe are lengths over the tyre’s diameter: both wheels, positive in', () => {
    const tenth = Math.PI / 1800;
    // 0.1 degrees in on each wheel of 330 mm radius: 2 · 660 mm · sin 0.1°.
    expect(toeOf(-tenth, tenth, 330, 'mm')).toBeCloseTo(2 * 660 * Math.sin(tenth), 12);
    expect(toeOf(-tenth, tenth, 330, 'in')).toBeCloseTo((2 * 660 * Math.sin(tenth)) / 25.4, 12);
    const data = travelData(sweep, 330, 'mm');
    expect(atRide(data, data.toe)).toBeCloseTo(2 * 660 * Math.sin(tenth), 6);
  });

  test('have gaps where the linkage does not reach, and only there', () => {
    const short = documentOf(rawLayout());
    const far = moveHardpoint(short, 'steering.dragLinkBall', [0, 600, 395]);
    const wide = sweepTravel(prepareFrontEnd(resolveLayout(far)), 'heave', -600, 600, 61, 0);
    const data = travelData(wide, 330, 'in');
    expect(hasGaps(data)).toBe(true);
    expect(data.meanSteer.map((value) => value === null)).toEqual(
      Array.from(wide.status, (status) => status !== 0),
    );
    const ends = endsOf(data.meanSteer);
    expect(ends && data.meanSteer[ends.first]).not.toBeNull();
    expect(hasGaps(travelData(sweep, 330, 'in'))).toBe(false);
  });

  test('are told in a sentence with places and units', () => {
    const data = travelData(sweep, 330, 'in');
    const sentence = curveSentence(
      'Mean steer',
      data,
      [...data.at.map((at) => at / 100)],
      (v) => `${v}°`,
      STYLE,
    );
    expect(sentence).toBe('Mean steer: from -0.75° at 2 15/16 in of droop to 0.75° at 2 15/16 in of bump.');
    expect(
      curveSentence(
        'Mean steer',
        data,
        data.at.map(() => null),
        String,
        STYLE,
      ),
    ).toBe('Mean steer: nowhere in reach.');
    expect(endWords('heave', -76.2, STYLE)).toBe('droop 3 in');
    expect(endWords('roll', 3, STYLE)).toBe('left wheel up 3°');
    expect(placeWords('heave', 0, STYLE)).toBe('at ride height');
    expect(placeWords('roll', -2.5, STYLE)).toBe('at 2.5° of roll, right wheel up');
    expect(toeWords(0.12345, 'in')).toBe('0.123 in');
    expect(toeWords(-0.0001, 'in')).toBe('0.000 in');
    expect(toeWords(2.34, 'mm')).toBe('2.3 mm');
  });
});

describe('figures', () => {
  test('of slope are degrees per inch or per 25 mm, and per degree of roll', () => {
    const summary = {
      worstBumpSteer: 0,
      worstAt: 0,
      worstSteer: 0,
      slopeAtRide: Math.PI / 180 / 25.4,
      okCount: 31,
    };
    expect(slopeWords(summary, 'heave', 'in')).toBe('1.00° per inch');
    expect(slopeWords(summary, 'heave', 'mm')).toBe('0.98° per 25 mm');
    expect(slopeWords({ ...summary, slopeAtRide: 0.05 }, 'roll', 'in')).toBe('0.050° per degree of roll');
  });

  test('of bump steer as a length are over the tyre’s diameter', () => {
    const summary = {
      worstBumpSteer: Math.PI / 180,
      worstAt: 75,
      worstSteer: Math.PI / 180,
      slopeAtRide: 0,
      okCount: 31,
    };
    expect(bumpSteerLength(summary, 330)).toBeCloseTo(660 * Math.sin(Math.PI / 180), 12);
  });

  test('tell bind where a link must give more than slack, and where that is', () => {
    const tube = frontEndOf({ axle: { ...(rawLayout()['axle'] as object), beam: 'tube' } });
    const inRoll = worstBind(sweepTravel(tube, 'roll', -0.05, 0.05, 21, 0));
    expect(inRoll?.size).toBeGreaterThan(1);
    expect(Math.abs(inRoll?.at ?? 0)).toBeCloseTo(0.05, 6);
    expect(worstBind(sweepTravel(frontEndOf(), 'heave', -75, 75, 31, 0))).toBeUndefined();
  });

  test('at the aim point beat those of a ball that hangs too low', () => {
    const low = moveHardpoint(documentOf(rawLayout()), 'steering.box.pitmanBall', [-800, 500, 260]);
    const frontEnd = prepareFrontEnd(resolveLayout(low));
    const worst = summariseTravel(sweepTravel(frontEnd, 'heave', -75, 75, 31, 0)).worstBumpSteer;
    const aimed = worstAtAim(holdTravel(frontEnd), findAim(frontEnd));
    expect(aimed).toBeDefined();
    expect(aimed as number).toBeLessThan(worst / 20);
  });
});
