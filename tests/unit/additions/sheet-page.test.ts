import { beforeAll, describe, expect, test } from 'vitest';
import type { SheetPage } from '../../../src-main/output/pages/sheet/build-sheet.ts';
import type { SheetModel } from '../../../src-main/output/pages/sheet-model.ts';
import type { Template } from '../../../src-main/output/pages/templates/template.ts';
import { useFreshModules } from '../../support/fresh-modules.ts';
import { demonstration, jobOf } from '../../support/printed.ts';

// A page of the sheet is one line, a template one entry: dummies are drawn, counted, listed and reported with the others.

const page: SheetPage = {
  what: 'dummy page',
  draw: (pageFrame, { layout }) => {
    const { x, y } = pageFrame.open({ title: 'A page of the dummy', lying: false });
    const style = { face: 'regular', size: 9, colour: '#000000' } as const;
    pageFrame.pen.text(`Drawn for ${layout.name}`, x, y + 5, style);
  },
};

const template = ({ layout }: SheetModel): readonly Template[] => [
  {
    title: 'Dummy gusset',
    note: `of ${layout.name}`,
    ways: [{ words: 'DUMMY WAY', way: [1, 0] }],
    bounds: { left: 0, right: 40, top: 0, bottom: 30 },
    cut: { outlines: [], centres: [], openings: [], bends: [], marks: [] },
    words: ['Cut the dummy along its line.'],
    draw: (pen, at) => {
      const [x1, y1] = at([0, 0]);
      const [x2, y2] = at([40, 30]);
      pen.line(x1, y1, x2, y2, { width: 0.2, colour: '#000000' });
    },
  },
];

type Modules = {
  pages: typeof import('../../../src-main/output/pages/index.ts');
  svg: typeof import('../../../src-main/output/pens/svg-pen.ts');
};
let the: Modules;

useFreshModules();
beforeAll(async () => {
  const sheet = await import('../../../src-main/output/pages/sheet/build-sheet.ts');
  const templates = await import('../../../src-main/output/pages/templates/templates.ts');
  (sheet.SHEET_PAGES as SheetPage[]).push(page);
  (templates.TEMPLATES as (typeof template)[]).push(template);
  the = {
    pages: await import('../../../src-main/output/pages/index.ts'),
    svg: await import('../../../src-main/output/pens/svg-pen.ts'),
  };
});

const document = demonstration('hairpins-side-steer.json');

/** The pages of a print as text, and what was reported on the way. */
async function drawn(kind: 'sheet' | 'templates') {
  const pen = new the.svg.SvgPen('text');
  const reported: [number, number, string][] = [];
  const progress = (...report: [number, number, string]) => void reported.push(report);
  await the.pages.drawPages(jobOf({ document, kind, progress }), pen);
  const pages = Array.from({ length: pen.pageCount }, (_, at) => pen.document(at, kind));
  return { pages, reported };
}

describe('a page of the sheet added in one place', () => {
  test('is drawn with title block and number, and reported as it is made', async () => {
    const { pages, reported } = await drawn('sheet');
    const last = pages.at(-1) as string;
    for (const words of ['A page of the dummy', `Drawn for ${document.name}`, 'Odile Farrowby'])
      expect(last).toContain(words);
    expect(last).toContain(`${pages.length} of ${pages.length}`);
    expect(reported.at(-1)).toEqual([reported.length, reported.length, 'dummy page']);
  });
});

describe('a template added in one place', () => {
  test('has its page, stands in the contents with its words, and is reported', async () => {
    const { pages, reported } = await drawn('templates');
    const contents = pages[0] as string;
    for (const words of ['Dummy gusset', `of ${document.name}`, 'one page'])
      expect(contents).toContain(words);
    expect(pages.at(-1)).toContain('Dummy gusset');
    expect(pages.at(-1)).toContain('Cut the dummy along its line.');
    expect(reported.at(-1)?.[2]).toBe('dummy gusset');
  });
});
