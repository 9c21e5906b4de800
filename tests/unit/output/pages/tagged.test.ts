import { inflateSync } from 'node:zlib';
import { describe, expect, test } from 'vitest';
import { documentOf, rawLayout } from '../../../support/layouts.ts';
import { jobOf, printed } from '../../../support/printed.ts';
import { readPdf } from '../../../support/read-pdf.ts';

// Tagged PDF as ISO 32000-1, 14.7 and 14.8 have it: read here from the file's own bytes.

/** The file's text outside its streams, and its streams as they are once unpacked. */
function partsOf(bytes: Uint8Array): { objects: string; streams: string[] } {
  const whole = Buffer.from(bytes).toString('latin1');
  const streams: string[] = [];
  const objects = whole.replaceAll(/stream\r?\n([\s\S]*?)\r?\nendstream/g, (_, packed: string) => {
    try {
      streams.push(inflateSync(Buffer.from(packed, 'latin1')).toString('latin1'));
    } catch {
      // Not packed: a font, or a picture.
    }
    return '';
  });
  return { objects, streams };
}

const count = (text: string, pattern: RegExp) => text.match(pattern)?.length ?? 0;

describe.each(['sheet', 'templates', 'customer', 'measuring'] as const)('the %s', (kind) => {
  const print = () => printed(jobOf({ document: documentOf(rawLayout({ name: 'Arm down' })), kind }));

  test('is tagged, has a title that viewers show, and its language', async () => {
    const { objects } = partsOf((await print()).bytes);
    expect(objects).toMatch(/\/MarkInfo \d+ 0 R/);
    expect(objects).toMatch(/\/Marked true/);
    expect(objects).toMatch(/\/StructTreeRoot \d+ 0 R/);
    expect(objects).toMatch(/\/DisplayDocTitle true/);
    expect(objects).toMatch(/\/Lang \(en\)/);
    expect(objects).toMatch(/\/Title/);
  });

  test('has a section with its heading for each page', async () => {
    const { bytes } = await print();
    const { objects } = partsOf(bytes);
    const pages = await readPdf(Uint8Array.from(bytes), (all) => all.length);
    expect(count(objects, /\/S \/Sect\b/g)).toBe(pages);
    expect(count(objects, /\/S \/H1\b/g)).toBeGreaterThanOrEqual(pages);
    expect(count(objects, /\/S \/P\b/g)).toBeGreaterThan(10 * pages);
  });

  test('every mark that is opened is closed, none within another, and nothing is drawn outside one', async () => {
    const { streams } = partsOf((await print()).bytes);
    const pages = streams.filter((stream) => /\bBDC\b/.test(stream));
    expect(pages.length).toBeGreaterThan(0);
    for (const page of pages) {
      let open = 0;
      for (const line of page.split('\n')) {
        if (/\bBDC$/.test(line)) open += 1;
        else if (/^EMC$/.test(line)) open -= 1;
        else if (/(^| )(S|f|B|TJ|Tj)$/.test(line)) expect(open, line).toBe(1);
        expect(open).toBeGreaterThanOrEqual(0);
        expect(open).toBeLessThanOrEqual(1);
      }
      expect(open).toBe(0);
    }
  });
});

test('a view is a figure with words in its place', async () => {
  const { objects } = partsOf((await printed(jobOf({ document: documentOf(rawLayout()) }))).bytes);
  expect(count(objects, /\/S \/Figure\b/g)).toBeGreaterThanOrEqual(6);
  expect(objects).toMatch(/\/Alt \(The front of the car from its left side[^)]*scale 1 : \d+\)/);
});
