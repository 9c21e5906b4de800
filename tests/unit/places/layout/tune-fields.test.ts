import { describe, expect, test } from 'vitest';
import type { LayoutDocument } from '../../../../shared-math/layout/index.ts';
import { formatLength } from '../../../../shared-math/units/index.ts';
import { betterSteps, changeWords, stepWay } from '../../../../src-renderer/panels/points/effect-words.ts';
import { shiftWords, withBallAt } from '../../../../src-renderer/places/layout/map/box-move.ts';
import {
  holdsFrom,
  parseReach,
  reachWords,
  usualFree,
  usualHoldFields,
  withTypedHold,
} from '../../../../src-renderer/places/layout/tune/tune-fields.ts';
import { figureRows, moveWords } from '../../../../src-renderer/places/layout/tune/tune-words.ts';
import { expectClose } from '../../../support/close.ts';
import { sampleLayout } from '../../../support/host-sample.ts';

const inches = (mm: number) => formatLength(mm, { unit: 'in', fraction: 16 });
const document: LayoutDocument = sampleLayout('Tuned');

describe('how far something may move', () => {
  test.each([
    ['3', -76.2, 76.2],
    ['3 in either way', -76.2, 76.2],
    ['40 mm', -40, 40],
    ['-1 to 2 1/2', -25.4, 63.5],
    ['10 mm to 1 in', 10, 25.4],
    ['0', -0, 0],
  ])('"%s" is read', (text, from, to) => {
    const reach = parseReach(text, 'in');
    if (!reach.ok) throw new Error(reach.failure);
    expectClose(reach.value.from, from, 1e-9, 'from');
    expectClose(reach.value.to, to, 1e-9, 'to');
    // As it is written it is read again.
    expect(parseReach(reachWords(reach.value, inches), 'in').ok).toBe(true);
  });

  test.each([
    ['-3', /not less than nothing/],
    ['3 to 1', /more than the second/],
    ['2 m', /"2 m"|metre|length/],
    ['1200 mm', /more than a metre/],
    ['1 to 2 to 3', /one length, or two/],
    ['as it likes', /./],
  ])('"%s" is refused and says why', (text, why) => {
    const reach = parseReach(text, 'in');
    expect(reach.ok ? '' : reach.failure).toMatch(why);
  });

  test('begins with the box in the plane that is judged, by a round length of the reader’s', () => {
    const on = (side: boolean) => usualFree(document, side, 'in').filter((field) => field.on);
    expect(
      on(true)
        .map(({ name }) => name)
        .sort(),
    ).toEqual(['box-along', 'box-up']);
    expect(
      on(false)
        .map(({ name }) => name)
        .sort(),
    ).toEqual(['box-across', 'box-up']);
    expect(reachWords(on(true)[0] as never, inches)).toBe('3 in');
    expect(usualFree(document, true, 'mm')[0]?.to).toBe(75);
  });
});

describe('what must hold', () => {
  test('is what is within the limits as drawn, and clearances; what is off is not asked', () => {
    const fields = usualHoldFields({}, { tilt: { most: 25 } });
    expect([fields.ratio.on, fields.lock.on, fields.tilt.on, fields.clearance.on]).toEqual([
      false,
      false,
      true,
      true,
    ]);
    expect(Object.keys(holdsFrom(fields, {})).sort()).toEqual(['clearance', 'tilt']);
    expect(usualHoldFields({ ballTilt: 18 }, {}).tilt.most).toBe(18);
  });

  test('a typed figure is taken and switched on; one past its other end is refused', () => {
    const fields = usualHoldFields({}, {});
    const lock = withTypedHold(fields, 'lock', '33', 'in');
    expect(lock.ok && lock.value.lock).toEqual({ on: true, least: 33 });
    const circle = withTypedHold(fields, 'circle', "36'", 'in');
    expectClose(circle.ok ? circle.value.circle.most : 0, 36 * 304.8, 1e-6, 'circle');
    const ratio = withTypedHold(fields, 'ratioLeast', String(fields.ratio.most + 1), 'in');
    expect(ratio.ok ? '' : ratio.failure).toMatch(/more than the most/);
    expect(withTypedHold(fields, 'tilt', '0', 'in').ok).toBe(false);
  });
});

describe('words', () => {
  test('a shift of the box says which way, height first, and leaves out what nobody builds to', () => {
    expect(shiftWords([-50.8, 0.01, 77], inches)).toBe('3 1/16 in up and 2 in back');
    expect(shiftWords([0, -25.4, -25.4], inches)).toBe('1 in down and 1 in to the right');
    expect(shiftWords([0.2, 0, 0], inches)).toBe('');
  });

  test('the arm goes with the box', () => {
    const { box } = document.steering;
    const moved = withBallAt(document, [box.pitmanBall[0] - 10, box.pitmanBall[1], box.pitmanBall[2] + 20]);
    expect(moved.steering.box.pitmanBall).toEqual([
      box.pitmanBall[0] - 10,
      box.pitmanBall[1],
      box.pitmanBall[2] + 20,
    ]);
    for (const axis of [0, 1, 2] as const)
      expectClose(
        moved.steering.box.sectorCentre[axis] - moved.steering.box.pitmanBall[axis],
        box.sectorCentre[axis] - box.pitmanBall[axis],
        1e-9,
        `arm ${axis}`,
      );
  });

  test('moves of a proposal', () => {
    expect(moveWords('box-up', 76.2, inches)).toBe('the box 3 in up');
    expect(moveWords('bar-axle-across', -25.4, inches)).toBe('the bar’s axle end 1 in to the right');
    expect(moveWords('pitman-length', 6.35, inches)).toBe('the pitman arm 1/4 in longer');
  });

  test('steps say which way somebody would turn the part, and changes their sign', () => {
    const effect = { axis: 1, direction: 1, figures: undefined } as const;
    expect(stepWay(effect, [0, -500, 0], false)).toBe('further left');
    expect(stepWay(effect, [0, -500, 0], true)).toBe('further in');
    expect(stepWay({ ...effect, direction: -1 }, [0, -500, 0], true)).toBe('further out');
    const told = (value: number) => value.toFixed(1);
    expect([-0.91, 0.3, 0.01].map((change) => changeWords(change, told))).toEqual([
      '0.9 less',
      '0.3 more',
      'no change',
    ]);
  });

  test('the better step of each axis is told, the most telling first, and none that helps nothing', () => {
    const figures = (worstBumpSteer: number) => ({
      worstBumpSteer,
      slope: 0,
      toeChange: 0,
      ratio: 16,
      clearance: 20,
    });
    const effects = [
      [0, -1, 0.049],
      [0, 1, 0.051],
      [1, -1, 0.05],
      [1, 1, 0.05],
      [2, -1, 0.06],
      [2, 1, 0.04],
    ].map(([axis, direction, worst]) => ({ axis, direction, figures: figures(worst as number) }));
    const better = betterSteps({ id: 'x', step: 3, drawn: figures(0.05), effects } as never);
    expect(better.map(({ effect }) => [effect.axis, effect.direction])).toEqual([
      [2, 1],
      [0, -1],
    ]);
  });

  test('a proposal’s figures say what is better and what it costs', () => {
    const before = {
      worstHeave: 0.05,
      worstRoll: 0.01,
      worstOneWheel: 0.04,
      slope: 0,
      toeChange: 0.001,
      ratio: -18,
      turns: 3,
      innerLock: 0.5,
      circle: 11_000,
      tilt: 0.2,
      nearest: undefined,
      outOfReach: 0,
    };
    const rows = figureRows(
      { before, after: { ...before, worstHeave: 0.01, worstOneWheel: 0.06, innerLock: 0.45, ratio: -17 } },
      inches,
      inches,
    );
    const tones = Object.fromEntries(rows.map(({ words, tone }) => [words, tone]));
    expect(tones).toMatchObject({
      'Bump steer over heave': 'better',
      'Bump steer over roll': 'same',
      'Bump steer, one wheel up': 'worse',
      'Overall ratio': 'same',
      'Inner wheel at full lock': 'worse',
    });
    expect(rows.map(({ words }) => words)).not.toContain('Nearest gap');
  });
});
