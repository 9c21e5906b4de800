import { expect, test, vi } from 'vitest';
import type { Point } from '../../../../shared-math/geometry/points.ts';
import type { LayoutDocument } from '../../../../shared-math/layout/index.ts';
import { DEMONSTRATIONS, demonstration, jobOf, type PutText, printed } from '../../../support/printed.ts';

// Nothing that is asked for is dropped for want of room: it goes on to the next page.

vi.setConfig({ testTimeout: 120_000 });

const MM = { unit: 'mm', fraction: 0 } as const;

/** The texts of a page row by row, from the left: what stands level. */
function rowsOf(texts: readonly PutText[]): string[] {
  const rows = new Map<string, PutText[]>();
  for (const text of texts) {
    const key = `${text.page} ${text.bottom.toFixed(1)}`;
    rows.set(key, [...(rows.get(key) ?? []), text]);
  }
  return [...rows.values()].map((row) =>
    row
      .sort((a, b) => a.left - b.left)
      .map(({ text }) => text)
      .join(' '),
  );
}

/** A demonstration with its axle drawn 40 mm ahead of the origin, five rails of seven points, long notes and names. */
function crowded(): LayoutDocument {
  const document = demonstration('four-bar-cross-steer.json');
  const rail = document.rails[0] as LayoutDocument['rails'][number];
  const path = (n: number) =>
    Array.from({ length: 7 }, (_, i): Point => [430 - 371 * i - n, 341 + 11 * i + n, 503 + 7 * n + i]);
  return {
    ...document,
    notes: Array.from({ length: 900 }, (_, i) => `word${i}`).join(' '),
    rails: Array.from({ length: 5 }, (_, n) => ({ ...rail, name: `Rail ${n + 1}`, path: path(n) })),
  };
}

test.each(['a4', 'letter'] as const)(
  'every rail with every point, and every word of the notes, stand on the sheet, on %s',
  async (paper) => {
    const document = crowded();
    const { texts } = await printed(jobOf({ document, paper, ...MM }));
    const rows = rowsOf(texts);
    const [left] = [document.axle.left.wheelCentre[0]];
    for (const { path } of document.rails)
      for (const [x, y, z] of path) {
        const back = left - x;
        const words = `${Math.abs(back).toFixed(1)} mm${back < 0 ? ' ahead' : ''} ${y.toFixed(1)} mm ${z.toFixed(1)} mm`;
        expect(rows.filter((row) => row.includes(words)).length, words).toBe(1);
      }
    const told = new Set(texts.flatMap(({ text }) => text.split(' ')));
    for (let i = 0; i < 900; i += 1) expect(told.has(`word${i}`), `word${i}`).toBe(true);
    expect(texts.some(({ text }) => text === 'Lateral bar' || text.startsWith('Lateral bar'))).toBe(true);
  },
);

test('rails count from the axle centre line where the axle does not stand at the origin', async () => {
  const document = demonstration('hairpins-side-steer.json');
  const ahead = ([x, y, z]: Point): Point => [x + 40, y, z];
  const { left } = document.axle;
  const moved: LayoutDocument = {
    ...document,
    axle: {
      ...document.axle,
      left: {
        ...left,
        kingpinTop: ahead(left.kingpinTop),
        kingpinBottom: ahead(left.kingpinBottom),
        wheelCentre: ahead(left.wheelCentre),
        tieRodBall: ahead(left.tieRodBall),
      },
    },
  };
  const { texts } = await printed(jobOf({ document: moved, ...MM }));
  const rows = rowsOf(texts);
  const line = moved.axle.left.wheelCentre[0];
  for (const [x, y, z] of document.rails[0]?.path ?? []) {
    const back = line - x;
    const words = `${Math.abs(back).toFixed(1)} mm${back < 0 ? ' ahead' : ''} ${Math.abs(y).toFixed(1)} mm ${z.toFixed(1)} mm`;
    expect(
      rows.some((row) => row.includes(words)),
      words,
    ).toBe(true);
  }
});

test('a name that its field has no room for stands in full on a page of its own; a short one asks for none', async () => {
  const document = demonstration('hairpins-side-steer.json');
  const name = Array.from({ length: 30 }, (_, i) => `part${i}`).join(' ');
  const long = await printed(jobOf({ document: { ...document, name }, kind: 'customer' }));
  const last = Math.max(...long.texts.map(({ page }) => page));
  const told = long.texts.filter(({ page }) => page === last).map(({ text }) => text);
  expect(told).toContain('Names in full');
  expect(told.join(' ')).toContain(name);
  const short = await printed(jobOf({ document, kind: 'customer' }));
  expect(short.texts.some(({ text }) => text === 'Names in full')).toBe(false);
});

test('a point higher than the usual picture is still drawn and measured', async () => {
  const document = demonstration('hairpins-side-steer.json');
  const { box } = document.steering;
  const [x, y] = box.sectorCentre;
  const high: LayoutDocument = {
    ...document,
    steering: { ...document.steering, box: { ...box, sectorCentre: [x, y, 1234.5] } },
  };
  const { texts } = await printed(jobOf({ document: high, ...MM }));
  const page = texts.find(({ text }) => text === 'Side view')?.page;
  const figure = texts.find((put) => put.page === page && put.text === '1234.5 mm');
  const title = texts.find((put) => put.page === page && put.text === 'Side view');
  expect(figure?.top).toBeGreaterThan(title?.bottom ?? Number.POSITIVE_INFINITY);
  // The balloon of the box is within the picture, below the page's title.
  const balloons = texts.filter((put) => put.page === page && put.text === '8');
  expect(Math.min(...balloons.map(({ top }) => top))).toBeGreaterThan(title?.bottom ?? 0);
});

test.each(DEMONSTRATIONS)('no page is continued for little: %s', async (file) => {
  const { texts } = await printed(jobOf({ document: demonstration(file) }));
  const letters = (page: number) =>
    texts.filter((each) => each.page === page).reduce((sum, { text }) => sum + text.length, 0);
  for (const { page, text } of texts.filter((each) => each.text.endsWith(', continued')))
    expect(letters(page) / letters(page - 1), text).toBeGreaterThan(0.6);
});
