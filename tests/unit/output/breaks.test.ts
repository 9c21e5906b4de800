import { describe, expect, test } from 'vitest';
import { sheetModelOf } from '../../../src-main/output/pages/sheet-model.ts';
import { Breaks, stretchesInside } from '../../../src-main/output/pens/breaks.ts';
import type { PrintPen } from '../../../src-main/output/pens/print-pen.ts';
import { documentOf, rawLayout } from '../../support/layouts.ts';
import { jobOf, printed } from '../../support/printed.ts';
import { readPdf } from '../../support/read-pdf.ts';

/** The lines that a set of breaks draws. */
function drawnBy(breaks: Breaks): number[][] {
  const lines: number[][] = [];
  breaks.draw({ stroke: (points: number[]) => void lines.push([...points]) } as unknown as PrintPen);
  return lines;
}

const FRAME = [0, 0, 100, 60] as const;
const square = (left: number, top: number, right: number, bottom: number) => [
  left,
  top,
  right,
  top,
  right,
  bottom,
  left,
  bottom,
];

describe('what a frame cuts off ends in a break line', () => {
  test('at the edge that cuts it, across the whole of the part and a little beyond', () => {
    const breaks = new Breaks(FRAME);
    breaks.note(square(20, -30, 50, 40));
    const [line, ...others] = drawnBy(breaks);
    expect(others).toEqual([]);
    const xs = (line ?? []).filter((_, i) => i % 2 === 0);
    const ys = (line ?? []).filter((_, i) => i % 2 === 1);
    expect(Math.min(...xs)).toBeLessThan(20);
    expect(Math.max(...xs)).toBeGreaterThan(50);
    // On the edge but for the zigzag, which swings to both sides of it.
    expect(ys[0]).toBe(0);
    expect(ys.at(-1)).toBe(0);
    expect(Math.min(...ys)).toBeLessThan(0);
    expect(Math.max(...ys)).toBeGreaterThan(0);
  });

  test('not where it ends inside, nor where it ends on the edge, nor where it lies beside the frame', () => {
    const breaks = new Breaks(FRAME);
    breaks.note(square(20, 10, 50, 40));
    breaks.note(square(20, 0, 50, 40));
    breaks.note(square(120, -30, 150, 40));
    expect(breaks.any).toBe(false);
    expect(drawnBy(breaks)).toEqual([]);
  });

  test('parts that overlap at an edge share one line, parts apart have one each', () => {
    const breaks = new Breaks(FRAME);
    breaks.note(square(10, 30, 30, 90));
    breaks.note(square(25, 30, 45, 90));
    breaks.note(square(70, 30, 80, 90));
    expect(drawnBy(breaks)).toHaveLength(2);
  });

  test('an outline that goes in and out twice is crossed twice', () => {
    const comb = [0, 0, 40, 0, 40, 30, 30, 30, 30, 10, 10, 10, 10, 30, 0, 30];
    expect(stretchesInside(comb, 1, 20)).toEqual([
      [0, 10],
      [30, 40],
    ]);
  });
});

describe('the views show what is drawn, to its height', () => {
  const tall = (high: number) =>
    documentOf(
      rawLayout({
        obstacles: [
          {
            kind: 'box',
            role: 'engine',
            name: 'Engine',
            centre: [-500, 0, high / 2],
            mirrored: false,
            size: [400, 300, high],
          },
        ],
      }),
    );

  test('an engine of a metre stands in them whole', () => {
    const { shown } = sheetModelOf(jobOf({ document: tall(1000) }));
    expect(-shown.side.top).toBeGreaterThan(1000);
    expect(-shown.front.top).toBeGreaterThan(1000);
  });

  test('a hardpoint is never cut off, however high it stands', () => {
    const document = documentOf(
      rawLayout({ lateral: { kind: 'bar', axle: [-72, -520, 352], frame: [-72, 316, 1600] } }),
    );
    expect(-sheetModelOf(jobOf({ document })).shown.side.top).toBeGreaterThan(1600);
  });
});

test('every drawn page of the sheet says which way the front lies or from where it is seen, and has a bar to check its scale', async () => {
  const { bytes } = await printed(jobOf({ document: documentOf(rawLayout()) }));
  await readPdf(bytes, (pages) => {
    const drawn = pages.filter(({ text }) => /SIDE VIEW|TOP VIEW|FRONT VIEW/.test(text));
    expect(drawn.length).toBeGreaterThanOrEqual(4);
    for (const { text } of drawn) {
      const views = text.match(/(SIDE|TOP|FRONT) VIEW, FROM/g) ?? [];
      expect(text.match(/in of the car/g)).toHaveLength(views.length);
      const arrows = text.match(/FRONT(?! VIEW)/g) ?? [];
      const pictorials = text.match(/PICTORIAL/g) ?? [];
      expect(arrows).toHaveLength(
        views.filter((view) => !view.startsWith('FRONT')).length + pictorials.length,
      );
      if (/TOP VIEW|FRONT VIEW/.test(text))
        expect(text).toMatch(/LEFT SIDE.*RIGHT SIDE|RIGHT SIDE.*LEFT SIDE/);
    }
  });
});
