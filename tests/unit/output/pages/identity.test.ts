import { createHash } from 'node:crypto';
import { describe, expect, test } from 'vitest';
import { contentMark } from '../../../../src-main/output/pages/content-mark.ts';
import { documentOf, rawLayout } from '../../../support/layouts.ts';
import { jobOf, printed } from '../../../support/printed.ts';
import { readPdf } from '../../../support/read-pdf.ts';

const document = documentOf(rawLayout({ name: 'Arm down' }));

/** All keys of a value and of what it holds. */
function keysOf(value: unknown): string[] {
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, held]) => [
    ...(Array.isArray(value) ? [] : [key]),
    ...keysOf(held),
  ]);
}

describe('the mark of a layout', () => {
  test('is the beginning of the SHA-256 of its document as JSON with sorted keys', () => {
    // The language's own way: a list of keys as replacer puts them in its order, at every depth.
    const text = JSON.stringify(document, [...new Set(keysOf(document))].sort());
    expect(contentMark(document)).toBe(createHash('sha256').update(text).digest('hex').slice(0, 8));
  });

  test('does not change with the order of keys, and does with anything else', () => {
    const { name, ...rest } = document;
    expect(contentMark({ ...rest, name })).toBe(contentMark(document));
    expect(contentMark({ ...document, notes: '.' })).not.toBe(contentMark(document));
    expect(contentMark({ ...document, travel: { ...document.travel, bump: 76 } })).not.toBe(
      contentMark(document),
    );
  });
});

describe('the title block', () => {
  test.each(['sheet', 'templates', 'customer'] as const)(
    'of the %s says on every page which sheet it is',
    async (kind) => {
      const job = jobOf({ document, kind, revision: 7, drawnBy: 'Thessaly Marrow' });
      const { bytes } = await printed(job);
      await readPdf(bytes, (pages) => {
        pages.forEach(({ text }, i) => {
          for (const words of [
            'REVISION 7',
            `CONTENT ${contentMark(document)}`,
            'DATE 2026-03-14 12:00',
            'DRAWN BY Thessaly Marrow',
            'VARIANT Arm down',
            `PAGE ${i + 1} of ${pages.length}`,
          ])
            for (const word of words.split(' ')) expect(text, `page ${i + 1}`).toContain(word);
        });
      });
    },
  );

  test('leaves blank who drew it where nobody said, and calls a sheet that nothing counts that', async () => {
    const { texts } = await printed(jobOf({ document, kind: 'customer', dayOnly: true }));
    const label = texts.find(({ text }) => text === 'DRAWN BY');
    expect(label).toBeDefined();
    const below = texts.filter(({ left, top }) => left >= (label?.left ?? 0) && top > (label?.bottom ?? 0));
    expect(below.filter(({ top }) => top < (label?.bottom ?? 0) + 5)).toEqual([]);
    const words = texts.map(({ text }) => text);
    expect(words).toContain('not counted');
    // A day that was given as a day has no time of its own.
    expect(words).toContain('2026-03-14');
  });
});
