import { describe, expect, test } from 'vitest';
import { hardpoints } from '../../../shared-math/layout/index.ts';
import { parseForce, parsePlain } from '../../../src-renderer/controls/plain-numbers.ts';
import { timeWords } from '../../../src-renderer/controls/times.ts';
import { directionOf, parseDirected } from '../../../src-renderer/document/directions.ts';
import { nudged, nudgeStep } from '../../../src-renderer/document/nudge.ts';
import { stopSentence } from '../../../src-renderer/document/pose-sentences.ts';
import { refusalSentence } from '../../../src-renderer/document/refusal-sentences.ts';
import { pointGroups } from '../../../src-renderer/panels/points/point-groups.ts';
import { expectClose } from '../../support/close.ts';
import { documentOf, LATERALS, LOCATIONS, rawLayout } from '../../support/layouts.ts';

describe('coordinates as distances with a direction', () => {
  const back = directionOf(0, -890);
  const left = directionOf(1, 415);
  const right = directionOf(1, -415);

  test('the label tells which way, so that the distance is never negative but below ground', () => {
    expect(back).toMatchObject({ label: 'back from axle', sign: -1 });
    expect(directionOf(0, 20)).toMatchObject({ label: 'ahead of axle', sign: 1 });
    expect(left.label).toBe('left of centre');
    expect(right).toMatchObject({ label: 'right of centre', sign: -1 });
    expect(directionOf(2, -3)).toMatchObject({ label: 'above ground', sign: 1 });
  });

  const mm = (text: string, direction = back, unit: 'in' | 'mm' = 'in') => {
    const outcome = parseDirected(text, direction, unit);
    if (!outcome.ok) throw new Error(outcome.failure);
    return outcome.value;
  };

  test('a plain length goes the way of the label, a negative one the other way', () => {
    expectClose(mm('10'), -254, 1e-9);
    expectClose(mm('-10'), 254, 1e-9);
    expectClose(mm('3 1/4"', right), -82.55, 1e-9);
    expectClose(mm('82.5 mm', left), 82.5, 1e-9);
    expect(Object.is(mm('0'), 0)).toBe(true);
  });

  test('a length may say its own way', () => {
    expectClose(mm('2 in ahead'), 50.8, 1e-9);
    expectClose(mm('2 ahead of axle'), 50.8, 1e-9);
    expectClose(mm('left 100 mm', right, 'mm'), 100, 1e-9);
    expectClose(mm('100 right of centre', left, 'mm'), -100, 1e-9);
  });

  test('another axis, or no length, is told with what was typed', () => {
    expect(parseDirected('3 in up', back, 'in')).toEqual({
      ok: false,
      failure: 'this field is back from axle; it takes no other direction',
    });
    const wrong = parseDirected('three ahead', back, 'in');
    expect(wrong.ok ? '' : wrong.failure).toContain('"three ahead"');
  });
});

describe('other typed figures', () => {
  test('a ratio', () => {
    expect(parsePlain(' 16:1 ')).toEqual({ ok: true, value: 16 });
    expect(parsePlain('16,5')).toEqual({ ok: true, value: 16.5 });
    expect(parsePlain('20 to 1')).toEqual({ ok: true, value: 20 });
    for (const text of ['', 'x', '1e5', '16:2', 'NaN', 'Infinity'])
      expect(parsePlain(text).ok, text).toBe(false);
  });

  test('a load in the unit of the scale it was read from', () => {
    expect(parseForce('4900', 'n')).toEqual({ ok: true, value: 4900 });
    expect(parseForce('4.9 kN', 'lb')).toEqual({ ok: true, value: 4900 });
    const pounds = parseForce('1000 lb', 'kg');
    expectClose(pounds.ok ? pounds.value : 0, 4448.2216, 1e-4);
    const kilograms = parseForce('500kg', 'lb');
    expectClose(kilograms.ok ? kilograms.value : 0, 4903.325, 1e-9);
    for (const text of ['', 'heavy', '12 stone', 'NaN N']) expect(parseForce(text, 'n').ok, text).toBe(false);
  });
});

describe('nudges', () => {
  test('arrows go where they point on the sheet', () => {
    expect(nudged([1, 2, 3], 'side', 'ArrowLeft', 1)).toEqual([2, 2, 3]);
    expect(nudged([1, 2, 3], 'side', 'ArrowUp', 1)).toEqual([1, 2, 4]);
    // Third angle: the top view stands above the side view, so the car's left lies at its foot.
    expect(nudged([1, 2, 3], 'top', 'ArrowDown', 1)).toEqual([1, 3, 3]);
    expect(nudged([1, 2, 3], 'top', 'ArrowRight', 1)).toEqual([0, 2, 3]);
    // Seen from ahead, the car's left is at the reader's right.
    expect(nudged([1, 2, 3], 'front', 'ArrowRight', 1)).toEqual([1, 3, 3]);
    expect(nudged([1, 2, 3], 'front', 'ArrowDown', 1)).toEqual([1, 2, 2]);
  });

  test('steps are those of the unit', () => {
    expectClose(nudgeStep('in', false), 1.5875, 1e-12);
    expectClose(nudgeStep('in', true), 12.7, 1e-12);
    expect([nudgeStep('mm', false), nudgeStep('mm', true)]).toEqual([1, 10]);
  });
});

describe('the list of points', () => {
  for (const [location, value] of Object.entries(LOCATIONS))
    for (const [lateral, bar] of Object.entries(LATERALS))
      test(`${location}, ${lateral}: every point stands in it exactly once`, () => {
        const points = hardpoints(documentOf(rawLayout({ location: value, lateral: bar })));
        const listed = pointGroups(points).flatMap((group) =>
          group.rows.flatMap((row) =>
            [row.alone, row.left, row.right].filter((point) => point !== undefined),
          ),
        );
        expect(listed.map((point) => point.id).sort()).toEqual(points.map((point) => point.id).sort());
      });

  test('both sides of a point share a line under its name', () => {
    const axle = pointGroups(hardpoints(documentOf(rawLayout()))).find(
      ({ title }) => title === 'Axle and wheels',
    );
    expect(axle?.rows.map((row) => row.name)).toEqual([
      'Kingpin, top',
      'Kingpin, bottom',
      'Wheel centre',
      'Tie rod ball',
    ]);
    expect(axle?.rows[0]?.right?.id).toBe('axle.right.kingpinTop');
  });
});

describe('sentences', () => {
  const points = hardpoints(documentOf(rawLayout()));

  test('a refusal names the point as the board does', () => {
    expect(
      refusalSentence({ path: 'axle.left.kingpinTop[2]', reason: 'must be above kingpinBottom' }, points),
    ).toBe("Left kingpin, top: must be above the kingpin's bottom");
    expect(refusalSentence({ path: 'car.wheelbase', reason: 'must be more than 0, found 0' }, points)).toBe(
      'Wheelbase: must be more than 0, found 0',
    );
    expect(refusalSentence({ path: 'rails[0].path', reason: 'too short' }, points)).toBe(
      'rails[0].path: too short',
    );
  });

  test('a stop names the part, the figure and the direction', () => {
    expect(stopSentence('drag-link', { along: 'heave', figure: '2 1/4 in', positive: true })).toBe(
      'The drag link does not reach beyond 2 1/4 in of bump.',
    );
    expect(stopSentence('tie-rod', { along: 'handwheel', figure: '310°', positive: false })).toBe(
      'The tie rod does not reach beyond 310° of handwheel to the right.',
    );
  });

  test('times are told from where one stands', () => {
    const at = (text: string) => new Date(text).getTime();
    const now = at('2024-03-05T09:00:00');
    expect(timeWords(at('2024-03-05T08:07:00'), now)).toBe('today 08:07');
    expect(timeWords(at('2024-03-04T23:59:00'), now)).toBe('yesterday 23:59');
    expect(timeWords(at('2024-02-28T12:00:00'), now)).toBe('28 Feb 12:00');
    expect(timeWords(at('2023-02-28T12:00:00'), now)).toBe('28 Feb 2023');
  });
});
