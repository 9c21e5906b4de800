import { describe, expect, test } from 'vitest';
import { forecastStations, gaugeStations } from '../../../../shared-math/adjust/gauge/index.ts';
import { originCounts, resolveLayout } from '../../../../shared-math/layout/index.ts';
import { carLinks, cutLength, linkMaking } from '../../../../shared-math/links/index.ts';
import { shaftTorques } from '../../../../shared-math/shaft/index.ts';
import { needsOf } from '../../../../shared-math/shelf/index.ts';
import { formatLength } from '../../../../shared-math/units/index.ts';
import { DEMONSTRATIONS, demonstration, jobOf, type PutText, printed } from '../../../support/printed.ts';

// What the bench asks of a sheet: could it be cut, placed and checked from the paper alone?

const INCHES = { unit: 'in', fraction: 16 } as const;

/** All that stands on the pages of a title, lines of one text joined. */
async function wordsOf(name: string, title: string): Promise<{ texts: PutText[]; words: string }> {
  const { texts } = await printed(jobOf({ document: demonstration(name) }));
  const pages = new Set(
    texts.filter(({ text }) => text === title || text === `${title}, continued`).map(({ page }) => page),
  );
  const found = texts.filter(({ page }) => pages.has(page));
  return { texts: found, words: found.map(({ text }) => text).join(' ') };
}

describe.each(DEMONSTRATIONS)('%s', (name) => {
  const layout = resolveLayout(demonstration(name));

  test('each link has its cut length, and what of it is assumed says so', async () => {
    const { words } = await wordsOf(name, 'Links and arms');
    for (const { key, name: link, centres } of carLinks(layout)) {
      const cut = cutLength(linkMaking(layout, key), centres);
      if (!cut.ok) throw new Error(cut.failure);
      expect(words, link).toContain(link);
      expect(words, link).toContain(formatLength(centres, INCHES));
      expect(words, link).toContain(formatLength(cut.value.cut, INCHES));
    }
    // No demonstration says how its ends are made.
    expect(words).toContain('by assumed ends');
    expect(words).toMatch(/both ends 5\/8-18 \(assumed\)/);
    // Beside each length what a sixteenth there does.
    expect(words).toContain('1/16 in there does');
    expect(words).toMatch(/wheels steer \d\.\d\d°/);
    expect(words).toMatch(/toe \d\.\d{3} in/);
  });

  test('the parts are those of the shelf’s own list, all of them', async () => {
    const { words } = await wordsOf(name, 'Parts');
    const plain = words.replaceAll(/, ball tilts up to \d+°/g, '');
    for (const need of needsOf(layout, INCHES)) expect(plain).toContain(`${need.count} × ${need.words}`);
  });

  test('the three places where a sixteenth does most are named, by number and way', async () => {
    const { words } = await wordsOf(name, 'Box, tolerances and alignment');
    const named = words.match(
      /\d\. [A-Z][^.]*? \(\d+\), (fore and aft|across|up and down): 1\/16 in off adds \d\.\d\d°/g,
    );
    expect(named?.map((line) => line[0])).toEqual(['1', '2', '3']);
  });

  test('it says of how many points it was made, and how each is known', async () => {
    const { measured, planned, guessed, all } = originCounts(demonstration(name));
    const { words } = await wordsOf(name, 'General arrangement');
    expect(words).toContain(`Made from ${all} points`);
    const table = await wordsOf(name, 'Top view, and where every point lies');
    const rest = await wordsOf(name, 'Where every point lies');
    const count = (pattern: RegExp) =>
      [...table.texts, ...rest.texts].filter(({ text }) => pattern.test(text)).length;
    expect(count(/taped$|from a photo$/)).toBe(measured);
    expect(count(/planned$/)).toBe(planned);
    expect(count(/guessed, not measured$/)).toBe(guessed);
  });

  test('the shaft’s bolts and screws have a usual torque, and a blank for the maker’s', async () => {
    const { shaft } = layout;
    if (!shaft) return;
    const { words } = await wordsOf(name, 'Steering shaft, making');
    expect(words).toContain('Maker’s figure');
    for (const { part, fastener, usual } of shaftTorques(shaft, INCHES))
      expect(words).toContain(`${part} ${fastener} ${usual ?? 'not known'}`);
  });

  test('the gauge’s stations have what two dials read: the slope of the wheel over their spacing', async () => {
    const { words } = await wordsOf(name, 'Read with a gauge');
    for (const { left } of forecastStations(layout, gaugeStations(layout.travel, 'in')))
      if (left !== null) expect(words).toContain(`${Math.abs(10 * Math.tan(left)).toFixed(3)} in`);
    expect(words.match(/as built/g)?.length).toBeGreaterThanOrEqual(2);
  });
});

test('what has no room on the first page says on which page it stands', async () => {
  const name = 'hairpins-box-too-low.json';
  const { words } = await wordsOf(name, 'General arrangement');
  const [, more, page] = /(\d+) more: page (\d+)\./.exec(words) ?? [];
  expect(Number(more)).toBeGreaterThan(0);
  const { texts } = await printed(jobOf({ document: demonstration(name) }));
  expect(texts.find(({ text, top }) => text === 'Findings' && top < 30)?.page).toBe(Number(page) - 1);
});

test('a template says which way the front lies, and its crosses from where they are measured', async () => {
  for (const name of DEMONSTRATIONS) {
    const { texts } = await printed(jobOf({ document: demonstration(name), kind: 'templates' }));
    const pages = new Map<number, string[]>();
    for (const { page, text } of texts) pages.set(page, [...(pages.get(page) ?? []), text]);
    const first = [...pages.values()].filter(
      (lines) =>
        !lines.includes('Read this first') && lines.some((line) => /^Seen from|, seen from/.test(line)),
    );
    expect(first.length).toBeGreaterThan(3);
    for (const lines of first.filter((each) => !each.some((line) => /page (?!A1)[A-Z]\d/.test(line)))) {
      const ways = lines.filter((line) => ['FRONT', 'UP', 'LEFT SIDE', 'CAR’S CENTRE'].includes(line));
      expect(ways.length, lines[0]).toBeGreaterThanOrEqual(2);
    }
    expect(
      texts.some(({ text }) => /^(axle|car’s) centre line .* (ahead|behind|to the (left|right))$/.test(text)),
    ).toBe(true);
  }
});
