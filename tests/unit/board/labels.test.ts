import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  crosses,
  type LabelWish,
  type Obstacles,
  placeLabels,
  type Rect,
} from '../../../src-renderer/board/labels.ts';
import { NotePlacing } from '../../../src-renderer/board/note-placing.ts';
import type { Note } from '../../../src-renderer/board/overlay-picture.ts';

const BOUNDS: Rect = { x: 0, y: 0, width: 900, height: 600 };
const clear: Obstacles = { bounds: BOUNDS, rects: [], words: [], segments: [] };
const wish = (x: number, y: number, over: Partial<LabelWish> = {}): LabelWish => ({
  x,
  y,
  width: 120,
  height: 18,
  clear: 10,
  toward: -40,
  ...over,
});
const overlap = (a: Rect, b: Rect) =>
  a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height;

describe('a label', () => {
  test('stands near its spot, in the wished direction, and does not cover it', () => {
    const [label] = placeLabels([wish(400, 300)], clear);
    expect(label?.x).toBeGreaterThan(400);
    expect(label && label.y + label.height).toBeLessThanOrEqual(300);
    expect(label && overlap(label, { x: 390, y: 290, width: 20, height: 20 })).toBe(false);
  });

  test('stays on the board, wherever its spot is on it', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 900 }), fc.integer({ min: 0, max: 600 }), (x, y) => {
        const [label] = placeLabels([wish(x, y)], clear);
        expect(label?.x).toBeGreaterThanOrEqual(0);
        expect(label?.y).toBeGreaterThanOrEqual(0);
        expect(label && label.x + label.width).toBeLessThanOrEqual(900);
        expect(label && label.y + label.height).toBeLessThanOrEqual(600);
      }),
    );
  });

  test('keeps off the labels before it and off handles', () => {
    const rects = [{ x: 410, y: 270, width: 130, height: 20 }];
    const labels = placeLabels([wish(400, 300), wish(404, 302), wish(398, 305)], { ...clear, rects });
    const all = [...labels, ...rects];
    for (const a of all) for (const b of all) if (a !== b) expect(overlap(a, b)).toBe(false);
  });

  test('keeps off drawn lines where it can', () => {
    // A rod that runs just where the label would rather stand.
    const segments = [400, 300, 700, 270, 400, 306, 700, 276];
    const [label] = placeLabels([wish(400, 300, { toward: -6 })], { ...clear, segments });
    expect(label && crosses(label, 400, 300, 700, 270)).toBe(false);
    expect(label && crosses(label, 400, 306, 700, 276)).toBe(false);
  });

  test('lies over a handle and across lines rather than over other words', () => {
    // Words all around but for a strip to the right, in which a handle lies and rods run.
    const words = [
      { x: 0, y: 0, width: 900, height: 280 },
      { x: 0, y: 320, width: 900, height: 280 },
      { x: 0, y: 0, width: 390, height: 600 },
    ];
    const rects = [{ x: 420, y: 290, width: 14, height: 14 }];
    const segments = Array.from({ length: 20 }, (_, i) => [420 + 5 * i, 250, 420 + 5 * i, 350]).flat();
    const [label] = placeLabels([wish(400, 300)], { ...clear, words, rects, segments });
    for (const each of words) expect(label && overlap(label, each)).toBe(false);
  });
});

describe('a segment and a rectangle', () => {
  const rect = { x: 10, y: 10, width: 20, height: 10 };
  test.each([
    ['through it', [0, 15, 50, 15], true],
    ['inside it', [12, 12, 14, 14], true],
    ['into it', [0, 0, 12, 12], true],
    ['beside it', [0, 0, 50, 5], false],
    ['toward it but ending before', [0, 15, 9, 15], false],
    ['past its corner', [0, 22, 12, 40], false],
  ] as const)('%s', (_, [x1, y1, x2, y2], meets) => {
    expect(crosses(rect, x1, y1, x2, y2)).toBe(meets);
  });
});

describe('notes', () => {
  const note = (id: string, x: number, y: number, text = 'pitman ball'): Note => ({
    id,
    view: 'side',
    x,
    y,
    clear: 10,
    toward: -40,
    lines: [{ text, ink: 'steel', strong: true }],
  });
  const measure = (text: string) => ({ width: 7 * text.length, height: 16 });

  test('go along with their spot while the drawing moves, and look for room again once asked to', () => {
    const notes = new NotePlacing();
    const before = notes.place(0, [note('a', 400, 300)], measure, () => clear).texts[0];
    const blocked: Obstacles = { ...clear, rects: [{ x: 380, y: 200, width: 400, height: 100 }] };
    const moved = notes.place(0, [note('a', 420, 290)], measure, () => blocked).texts[0];
    expect(moved && before && [moved.x - before.x, moved.y - before.y]).toEqual([20, -10]);
    const settled = notes.place(1, [note('a', 420, 290)], measure, () => blocked).texts[0];
    expect(settled && moved && [settled.x, settled.y]).not.toEqual([moved?.x, moved?.y]);
  });

  test('that are new keep off those that stand', () => {
    const notes = new NotePlacing();
    notes.place(0, [note('a', 400, 300)], measure, () => clear);
    const { texts } = notes.place(0, [note('a', 400, 300), note('b', 402, 300)], measure, () => clear);
    const [a, b] = texts as [(typeof texts)[0], (typeof texts)[0]];
    const rect = (text: typeof a) => ({
      x: text.align === 'right' ? text.x - 77 : text.x,
      y: text.y - 8,
      width: 77,
      height: 16,
    });
    expect(overlap(rect(a), rect(b))).toBe(false);
  });
});
