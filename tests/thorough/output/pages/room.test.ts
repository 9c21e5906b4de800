import { describe, expect, test } from 'vitest';
import { CAUTION } from '../../../../shared-math/words/index.ts';
import { PRINT_KINDS } from '../../../../src-main/output/pages/job.ts';
import { pageSize } from '../../../../src-main/output/pens/papers.ts';
import { documentOf, LOCATIONS, rawLayout, STEERED } from '../../../support/layouts.ts';
import { DEMONSTRATIONS, demonstration, jobOf, type PutText, printed } from '../../../support/printed.ts';
import { type ReadPage, readPdf } from '../../../support/read-pdf.ts';

/** mm by which two lines' boxes of capitals and figures may run into one another: the room beside a letter. */
const SLACK = 0.25;

function touching(texts: readonly PutText[]): string[] {
  return texts.flatMap((a, i) =>
    texts
      .slice(i + 1)
      .filter(
        (b) =>
          a.page === b.page &&
          Math.min(a.right, b.right) - Math.max(a.left, b.left) > SLACK &&
          Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top) > SLACK,
      )
      .map((b) => `page ${a.page + 1}: "${a.text}" and "${b.text}"`),
  );
}

const plain = (text: string) => text.replaceAll(/\s+/g, ' ');

describe.each(DEMONSTRATIONS)('%s', (name) => {
  test.each([
    ['letter', 'in'],
    ['a4', 'mm'],
  ] as const)(
    'on %s in %s: every line has its room, and cautions and facts stand on every page',
    async (paper, unit) => {
      const document = demonstration(name);
      for (const kind of PRINT_KINDS) {
        const job = jobOf({ document, kind, paper, unit, fraction: unit === 'in' ? 16 : 0 });
        const { texts, bytes } = await printed(job);
        expect(touching(texts), kind).toEqual([]);
        await readPdf(bytes, (pages) => {
          for (const { page, text, left, right, top, bottom } of texts) {
            const { width, height } = pages[page] as ReadPage;
            const inside = left > 8 && top > 8 && right < width - 8 && bottom < height - 8;
            expect(inside, `${kind}, page ${page + 1}: "${text}"`).toBe(true);
          }
          pages.forEach(({ text, width, height }, i) => {
            const size = pageSize(paper, width > height);
            expect(Math.abs(size.width - width) + Math.abs(size.height - height)).toBeLessThan(0.1);
            for (const words of [
              CAUTION,
              document.name,
              'Odile Farrowby',
              'Open two-seater on hairpins',
              '2026-03-14',
            ])
              expect(text).toContain(plain(words));
            expect(text).toContain(`${i + 1} of ${pages.length}`);
          });
          if (kind === 'customer') expect(pages).toHaveLength(1);
        });
      }
    },
  );
});

const LONG = 'Straßenlage mit Überlänge und Nachlauf, '.repeat(5);

test.each(['letter', 'a4'] as const)(
  'names longer than their fields stay inside them, on %s',
  async (paper) => {
    const document = {
      ...demonstration('hairpins-side-steer.json'),
      name: LONG.slice(0, 199),
      notes: LONG.repeat(12),
    };
    for (const kind of PRINT_KINDS) {
      const { texts, bytes } = await printed(
        jobOf({ document, kind, paper, customer: LONG, car: 'W'.repeat(150) }),
      );
      expect(touching(texts), kind).toEqual([]);
      await readPdf(bytes, (pages) => {
        for (const page of pages) expect(page.text).toMatch(/Straßenlage.*…/);
      });
    }
  },
);

test('what a layout may leave out is told, and nothing runs into anything: no rails, no shaft, no bar, no stops', async () => {
  const document = documentOf(rawLayout());
  for (const kind of PRINT_KINDS) {
    const { texts } = await printed(jobOf({ document, kind, customer: '', car: '' }));
    expect(touching(texts), kind).toEqual([]);
    expect(
      texts.some(({ text }) => /NaN|undefined|Infinity/.test(text)),
      kind,
    ).toBe(false);
  }
});

/** Each location, lateral, beam and way of steering, in a few of their combinations. */
const SOME = STEERED.filter((_, i) => [0, 7, 10, 13, 16, 23, 26, 29].includes(i));

test.each(SOME)('$label: nothing runs into anything and every figure is one', async ({ over }) => {
  const document = documentOf(rawLayout(over));
  for (const kind of ['sheet', 'templates'] as const) {
    const { texts } = await printed(jobOf({ document, kind, paper: 'a4', unit: 'mm', fraction: 0 }));
    expect(touching(texts), kind).toEqual([]);
    expect(texts.filter(({ text }) => /NaN|undefined|Infinity/.test(text))).toEqual([]);
  }
});

test('a layout whose links leave the axle free is printed all the same, and says so', async () => {
  // The bar sits at the ball's x: the wishbone's axle may turn about it.
  const document = documentOf(
    rawLayout({
      location: LOCATIONS.wishbone,
      lateral: { kind: 'bar', axle: [-1010, -300, 340], frame: [-1010, 316, 350] },
    }),
  );
  for (const kind of PRINT_KINDS) {
    const { texts } = await printed(jobOf({ document, kind }));
    expect(touching(texts), kind).toEqual([]);
    expect(texts.filter(({ text }) => /NaN|undefined|Infinity/.test(text))).toEqual([]);
    if (kind === 'sheet') expect(texts.some(({ text }) => text.includes('does not reach'))).toBe(true);
  }
});
