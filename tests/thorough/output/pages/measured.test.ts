import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { SIZES } from '../../../../shared-math/drawing/parts/sizes.ts';
import { distance } from '../../../../shared-math/geometry/points.ts';
import { type LayoutDocument, parseLayout, resolveLayout } from '../../../../shared-math/layout/index.ts';
import { ROOT } from '../../../support/host-process.ts';
import { DEMONSTRATIONS, demonstration, jobOf, printed } from '../../../support/printed.ts';
import { darkness, type Pixels, readPdf } from '../../../support/read-pdf.ts';

// The printed pages as an independent reader draws them, measured pixel by pixel.

/** Pixels to a millimetre. */
const FINE = 10;
const DARK = 0.35;

/** Middles of the dark stretches along a row (or, turned, a column) between two places, px. */
function marksAlong(pixels: Pixels, at: number, from: number, to: number, turned = false): number[] {
  const found: number[] = [];
  let start = -1;
  for (let i = from; i <= to; i += 1) {
    const dark = i < to && (turned ? darkness(pixels, at, i) : darkness(pixels, i, at)) > DARK;
    if (dark && start < 0) start = i;
    if (!dark && start >= 0) {
      found.push((start + i - 1) / 2);
      start = -1;
    }
  }
  return found;
}

/** The longest dark stretch along a row or column, px. */
function longestRun(pixels: Pixels, at: number, from: number, to: number, turned = false) {
  let best = { start: 0, length: 0 };
  let start = -1;
  for (let i = from; i <= to; i += 1) {
    const dark = i < to && (turned ? darkness(pixels, at, i) : darkness(pixels, i, at)) > DARK;
    if (dark && start < 0) start = i;
    if (!dark && start >= 0) {
      if (i - start > best.length) best = { start, length: i - start };
      start = -1;
    }
  }
  return best;
}

/** mm that a printed rule may be off. */
const RULE_OFF = 0.2;

/** A layout that is kept as it was written. */
function keptLayout(name: string): LayoutDocument {
  const read = parseLayout(readFileSync(join(ROOT, 'tests/durability', name), 'utf8'));
  if (!read.ok) throw new Error(read.failure.reason);
  return read.value;
}

describe.each(['letter', 'a4'] as const)('templates on %s', (paper) => {
  test('on every page the rules are 100 mm and 4 in long, along the foot and up the edge', async () => {
    const document = demonstration('four-bar-cross-steer.json');
    const { bytes } = await printed(jobOf({ document, kind: 'templates', paper }));
    await readPdf(bytes, async (pages) => {
      expect(pages.length).toBeGreaterThan(6);
      for (const page of pages.slice(1)) {
        const pixels = await page.render(FINE);
        const { width, height, perMm } = pixels;
        const [across, down] = perMm;
        // The rule is the dark line of its length in the lower part of the page; the border and its rules are longer.
        const rows = Array.from({ length: Math.round(height * 0.35) }, (_, i) => height - 1 - i);
        const row = rows.find((y) => {
          const { length } = longestRun(pixels, y, 0, width);
          return length > 990 && length < 1040;
        }) as number;
        const { start, length } = longestRun(pixels, row, 0, width);
        const [from, to] = [start - 15, start + length + 15];
        // 3 mm above it only the marks at 0, 50 and 100 mm still stand; 2.4 mm below it only those of whole inches.
        const tens = marksAlong(pixels, row - 3 * FINE, from, to);
        expect(tens).toHaveLength(3);
        expect(Math.abs(((tens[2] as number) - (tens[0] as number)) / across - 100)).toBeLessThan(RULE_OFF);
        expect(Math.abs(((tens[1] as number) - (tens[0] as number)) / across - 50)).toBeLessThan(RULE_OFF);
        const inches = marksAlong(pixels, row + 24, from, to).slice(0, 5);
        expect(Math.abs(((inches[4] as number) - (inches[0] as number)) / across - 101.6)).toBeLessThan(
          RULE_OFF,
        );

        const columns = Array.from({ length: Math.round(width * 0.12) }, (_, i) => width - 1 - i);
        const column = columns.find((x) => {
          const run = longestRun(pixels, x, 0, height, true);
          return run.length > 990 && run.length < 1020;
        }) as number;
        const edge = longestRun(pixels, column, 0, height, true);
        const up = marksAlong(
          pixels,
          column - 3 * FINE,
          edge.start - 10,
          edge.start + edge.length + 10,
          true,
        );
        expect(up).toHaveLength(3);
        expect(Math.abs(((up[2] as number) - (up[0] as number)) / down - 100)).toBeLessThan(RULE_OFF);
      }
    });
  });

  test('neighbouring pages of one template show the same marks and lines where they are laid over one another', async () => {
    // A box whose arm hangs has a bracket higher than a page.
    const document = keptLayout('layout-version-2.json');
    const { bytes } = await printed(jobOf({ document, kind: 'templates', paper }));
    await readPdf(bytes, async (pages) => {
      const first = pages.findIndex(({ text }) => text.includes('Steering box bracket, page A1'));
      expect(first).toBeGreaterThan(0);
      expect(pages[first + 1]?.text).toContain('Steering box bracket, page A2');
      expect(pages[0]?.text).toContain(`${first + 1} to ${first + 2}`);
      const above = (await pages[first]?.render(FINE)) as Pixels;
      const below = (await pages[first + 1]?.render(FINE)) as Pixels;
      // A mark is a cross of 8 mm: the rows and columns whose stretches of 7.4 to 8.4 mm are dark cross in its middle.
      const marks = (pixels: Pixels) => {
        const found: [number, number][] = [];
        for (let y = 0; y < pixels.height; y += 1) {
          const run = longestRun(pixels, y, 0, Math.round(pixels.width * 0.3));
          const x = Math.round(run.start + run.length / 2);
          if (run.length < 74 || run.length > 84) continue;
          const up = longestRun(pixels, x, Math.max(0, y - 60), Math.min(pixels.height, y + 60), true);
          if (up.length >= 74 && up.length <= 84 && !found.some(([, other]) => Math.abs(other - y) < 20))
            found.push([x, y]);
        }
        return found;
      };
      const [upper, lower] = [marks(above), marks(below)];
      expect(upper).toHaveLength(2);
      expect(lower).toHaveLength(2);
      const [[, lastRow], [nextColumn]] = [upper[1], lower[0]] as [[number, number], [number, number]];
      expect(Math.abs((upper[1] as [number, number])[0] - nextColumn)).toBeLessThan(3);
      // The long centre line crosses both pages: laid mark on mark it runs on at the same column.
      const column = (pixels: Pixels, row: number) =>
        marksAlong(pixels, row, Math.round(pixels.width * 0.15), Math.round(pixels.width * 0.85));
      const shift = lastRow - (lower[0] as [number, number])[1];
      let same = 0;
      for (let row = 20; row < 50; row += 1) {
        const [a, b] = [column(above, lastRow - 60 + row), column(below, lastRow - 60 + row - shift)];
        if (a.length > 0 && a.some((x) => b.some((other) => Math.abs(other - x) < 3))) same += 1;
      }
      expect(same).toBeGreaterThan(10);
    });
  });
});

/** Whether a pixel is the steering's blue, thinned by the page's white at its edges or not. */
function isBlue({ rgba, width }: Pixels, x: number, y: number): boolean {
  const at = 4 * (y * width + x);
  const [red, green, blue] = [rgba[at], rgba[at + 1], rgba[at + 2]] as [number, number, number];
  return blue - red > 60 && blue > green && red < 170;
}

describe.each(DEMONSTRATIONS)('the front view of %s', (name) => {
  test.each(['letter', 'a4'] as const)(
    'on %s: the tie rod’s drawn length times the scale is its length',
    async (paper) => {
      const document = demonstration(name);
      const { axle } = resolveLayout(document);
      const { bytes } = await printed(jobOf({ document, paper }));
      await readPdf(bytes, async (pages) => {
        const page = pages.find(({ text }) => text.includes('Front view'));
        const scale = Number(
          /SCALE[^:]*?1 : (\d+)/.exec(page?.text ?? '')?.[1] ?? /1 : (\d+)/.exec(page?.text ?? '')?.[1],
        );
        expect(scale).toBeGreaterThan(4);
        const pixels = (await page?.render(FINE)) as Pixels;
        const { width, height } = pixels;
        const rowExtent = (y: number): [number, number] | undefined => {
          let left = -1;
          let right = -1;
          for (let x = 0; x < width; x += 1)
            if (isBlue(pixels, x, y)) {
              if (left < 0) left = x;
              right = x;
            }
          return left < 0 ? undefined : [left, right + 1];
        };
        // The tie rod is the lowest of what is blue: its balls' lower edges come first from below.
        let lowest = height - 1;
        while (lowest > 0 && !rowExtent(lowest)) lowest -= 1;
        const stroke = 0.45;
        const radius = SIZES.ball / scale + stroke / 2;
        const middle = Math.round(lowest - radius * FINE);
        // Below the middle: through it runs a measuring line, and above it the arms join.
        const below = 8;
        const half = Math.sqrt(radius ** 2 - (below / pixels.perMm[1]) ** 2);
        const [left, right] = rowExtent(middle + below) as [number, number];
        const drawn = (right - left) / pixels.perMm[0] - 2 * half;
        const length = distance(axle.left.tieRodBall, axle.right.tieRodBall);
        // A pixel each end, and half of one for the row that was hit.
        expect(Math.abs(drawn * scale - length)).toBeLessThan(0.25 * scale);
        expect(Math.abs(drawn * scale - length) / length).toBeLessThan(0.003);
      });
    },
  );
});
