import { describe, expect, test } from 'vitest';
import { findings } from '../../../../shared-math/findings/index.ts';
import { type PrintKind, printPdf } from '../../../../src-main/output/pages/index.ts';
import { sheetModelOf } from '../../../../src-main/output/pages/sheet-model.ts';
import { toeboard } from '../../../support/command-line.ts';
import { documentOf, rawLayout } from '../../../support/layouts.ts';
import { DEMONSTRATIONS, demonstration, jobOf, printed } from '../../../support/printed.ts';
import { readPdf } from '../../../support/read-pdf.ts';

const KINDS = ['sheet', 'templates', 'customer'] as const satisfies PrintKind[];
const plain = (text: string) => text.replaceAll(/\s+/g, ' ');

interface Row {
  readonly bumpSteer: number;
  readonly totalToeIn: number;
  readonly left: { readonly caster: number };
}

/** The command line's own sweep of a demonstration, at the poses of the sheet's table. */
async function sweepOf(name: string): Promise<Row[]> {
  const { travel } = demonstration(name);
  const step = (travel.bump + travel.rebound) / 10;
  const { out } = await toeboard(
    'sweep',
    `projects/${name}`,
    `--heave=${-travel.rebound}:${travel.bump}:${step}`,
  );
  return (JSON.parse(out) as { rows: Row[] }).rows;
}

const degrees = (value: number, decimals: number) => {
  const text = value.toFixed(decimals);
  return `${Number(text) === 0 ? (0).toFixed(decimals) : text}°`;
};

/** A demonstration's sheet. */
const sheetOf = async (name: string) => (await printed(jobOf({ document: demonstration(name) }))).bytes;

describe.each(DEMONSTRATIONS)('%s', (name) => {
  test('the sheet holds the figures of the command line’s sweep, row by row', async () => {
    const bytes = await sheetOf(name);
    const rows = await sweepOf(name);
    await readPdf(bytes, (pages) => {
      const page = pages.find(({ text }) => text.includes('Over the travel'));
      const told = [
        ...(page?.text ?? '').matchAll(/(-?\d+\.\d{3}°) (-?\d+\.\d{3}°) -?\d+\.\d{3} in (-?\d+\.\d{2}°)/g),
      ];
      expect(told.map(([, bump, toe, caster]) => [bump, toe, caster])).toEqual(
        rows.map((row) => [
          degrees(row.bumpSteer, 3),
          degrees(row.totalToeIn, 3),
          degrees(row.left.caster, 2),
        ]),
      );
    });
  });

  test('the sheet holds the figures of the command line’s braking, or says that links hold the axle', async () => {
    const { out } = await toeboard('brake', `projects/${name}`, '--grip', '0.3:0.9:0.2');
    const { rows, windUp } = JSON.parse(out);
    await readPdf(await sheetOf(name), (pages) => {
      const text = plain(pages.find((page) => page.text.includes('Under braking'))?.text ?? '');
      if (windUp.by === 'links') {
        expect(text).toContain('Links hold the axle: it does not wind up');
        return;
      }
      const shown = [
        ...text.matchAll(/0\.(\d) g \d+ lb (\d+) lb·ft (\d+\.\d°) (-?\d+\.\d°) -?\d+\.\d° (-?\d+\.\d\d°)/g),
      ];
      expect(shown.map(([, ...cells]) => cells)).toEqual(
        (
          rows as {
            moment: number;
            windUp: { left: number };
            left: { caster: number };
            brakeSteer: number;
            grip: number;
          }[]
        ).map(({ grip, moment, windUp: { left }, left: { caster }, brakeSteer }) => [
          String(Math.round(10 * grip)),
          // N·m in a pound-foot: 4.4482216152605 N by 0.3048 m.
          (moment / 4.4482216152605 / 0.3048).toFixed(0),
          degrees(left, 1),
          degrees(caster, 1),
          degrees(brakeSteer, 2),
        ]),
      );
      expect(text).toContain('Assumed, because not given: 50 per cent of the weight in front');
      expect(text).toMatch(/A radius rod each side, .* 5\.2° of caster, steers 0\.00°/);
    });
  });

  test('every finding stands on the sheet with its limit and its source', async () => {
    const document = demonstration(name);
    const job = jobOf({ document });
    const { analysis, style } = sheetModelOf(job);
    const bytes = await sheetOf(name);
    await readPdf(bytes, (pages) => {
      const text = pages.map((page) => page.text).join(' ');
      for (const { sentence, limit, source } of findings(analysis, style)) {
        expect(text).toContain(plain(sentence));
        if (limit) expect(text).toContain(plain(limit));
        expect(text.replaceAll(' ', '')).toContain(source.replaceAll(' ', ''));
      }
    });
  });
});

test('a shaft that is drawn is told with its angles and cuts; one that is not is told to be missing', async () => {
  const drawn = await sheetOf('hairpins-side-steer.json');
  await readPdf(drawn, (pages) => {
    const text = pages.map((page) => page.text).join(' ');
    for (const words of [
      'Steering shaft, route',
      'Clocking',
      'Cut list',
      'Ends and splines',
      'spline of 36 teeth',
      'Steps',
    ])
      expect(text).toContain(words);
  });
  const document = documentOf(rawLayout({ shaft: null }));
  const { bytes: missing } = await printed(jobOf({ document }));
  await readPdf(missing, (pages) => {
    const text = pages.map((page) => page.text).join(' ');
    expect(text).toContain('No steering shaft is drawn in this layout');
    expect(text).not.toContain('Steering shaft, route');
  });
  await readPdf((await printed(jobOf({ document, kind: 'templates' }))).bytes, (pages) => {
    expect(pages[0]?.text).toContain('No steering shaft end with a notch or a dimple');
  });
});

test('the customer’s unit comes first, the other beside it', async () => {
  const document = demonstration('four-bar-cross-steer.json');
  const { bytes: inches } = await printed(jobOf({ document }));
  await readPdf(inches, (pages) => {
    expect(pages.some(({ text }) => text.includes('23 5/8 in'))).toBe(true);
    expect(pages.some(({ text }) => /Wheelbase \d+ \d+\/16 in \(2640\.0 mm\)/.test(text))).toBe(true);
  });
  const { bytes: millimetres } = await printed(jobOf({ document, unit: 'mm', fraction: 0, paper: 'a4' }));
  await readPdf(millimetres, (pages) => {
    expect(pages.some(({ text }) => /Wheelbase 2640\.0 mm \(103 15\/16 in\)/.test(text))).toBe(true);
  });
});

test('the shop’s own limits rule, and are called its own', async () => {
  const document = demonstration('hairpins-side-steer.json');
  const { bytes } = await printed(jobOf({ document, limits: { bumpSteerWorst: 0.05 } }));
  await readPdf(bytes, (pages) => {
    const text = pages.map((page) => page.text).join(' ');
    expect(text).toMatch(/limit 0\.05° · this shop’s own limit/);
    expect(text).toMatch(/Verdict: [1-9]\d* to fix/);
  });
});

test('names in other letters than the sheet’s own type has are set in the type that comes along', async () => {
  const names = ['Łódź, Straße, Ñandú', 'Ελένη Ξ', 'Дмитрий Ёлкин', 'Անի', 'ნინო', 'สมชาย', 'मदन'];
  const document = { ...demonstration('hairpins-side-steer.json'), name: names.slice(0, 3).join(' / ') };
  const customer = names.slice(3).join(' / ');
  const { bytes } = await printed(jobOf({ document, kind: 'customer', customer, car: 'Θεσσαλία' }));
  await readPdf(bytes, (pages) => {
    const text = pages
      .map((page) => page.text)
      .join(' ')
      .normalize('NFC');
    for (const name of [...names, 'Θεσσαλία'])
      expect(text.replaceAll(' ', '')).toContain(name.replaceAll(' ', ''));
    expect(text).not.toContain('??');
  });
});

test('letters that no type has are refused in one line, by what they name; nothing is printed in their place', async () => {
  // Egyptian hieroglyphs: in no type of the program's, nor in a system's of many scripts.
  const document = demonstration('hairpins-side-steer.json');
  const glyphs = '\u{13080}\u{13153}';
  await expect(printPdf(jobOf({ document, kind: 'customer', customer: `Ana ${glyphs}` }))).rejects.toThrow(
    /^The customer’s name “Ana .*”: no type at hand has \u{13080} \u{13153}; Latin, Greek, .* can be set$/u,
  );
  await expect(
    printPdf(jobOf({ document: { ...document, notes: `see ${glyphs}` }, kind: 'sheet' })),
  ).rejects.toThrow(/^The layout’s notes “see /);
});

test('the same day gives the same bytes, another day others', async () => {
  const document = demonstration('parallel-leaf-cross-steer.json');
  for (const kind of KINDS) {
    const [a, b, later] = [
      await printPdf(jobOf({ document, kind })),
      await printPdf(jobOf({ document, kind })),
      await printPdf(jobOf({ document, kind, date: new Date(2026, 2, 15, 12) })),
    ];
    expect(Buffer.compare(a, b)).toBe(0);
    expect(Buffer.compare(a, later)).not.toBe(0);
  }
});

test('progress is told part by part, and work that is called off ends with the reason', async () => {
  const document = demonstration('hairpins-side-steer.json');
  const told: [number, number, string][] = [];
  await printPdf(jobOf({ document, progress: (...args) => told.push(args) }));
  expect(told.length).toBeGreaterThan(5);
  expect(told.map(([done]) => done)).toEqual(told.map((_, i) => i + 1));
  expect(new Set(told.map(([, of]) => of))).toEqual(new Set([told.length]));

  const off = new AbortController();
  let parts = 0;
  const work = printPdf(
    jobOf({
      document,
      signal: off.signal,
      progress: (done) => {
        parts = done;
        if (done === 2) off.abort(new Error('called off by hand'));
      },
    }),
  );
  await expect(work).rejects.toThrow('called off by hand');
  expect(parts).toBe(2);
  await expect(
    printPdf(jobOf({ document, signal: AbortSignal.abort(new Error('before it began')) })),
  ).rejects.toThrow('before it began');
});
