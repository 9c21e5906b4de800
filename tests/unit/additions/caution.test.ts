import { beforeAll, describe, expect, test } from 'vitest';
import type { Caution } from '../../../shared-math/words/index.ts';
import { useFreshModules } from '../../support/fresh-modules.ts';
import { demonstration, jobOf } from '../../support/printed.ts';

// A caution is one entry: a dummy stands beside the points that it names and on the build sheet of the layouts that it names.

const dummy: Caution = {
  id: 'grease',
  line: 'A dry ball wears without a sound.',
  notes: [{ words: 'Grease every ball of the dummy.', source: 'invented for this test' }],
  standsAt: (point, layout) => point === 'steering.dragLinkBall' && layout.steering.dragLinkTo === 'left',
  onSheet: (layout) => layout.steering.dragLinkTo === 'left',
};

type Modules = {
  words: typeof import('../../../shared-math/words/index.ts');
  layout: typeof import('../../../shared-math/layout/index.ts');
  pages: typeof import('../../../src-main/output/pages/index.ts');
  svg: typeof import('../../../src-main/output/pens/svg-pen.ts');
};
let the: Modules;

useFreshModules();
beforeAll(async () => {
  const words = await import('../../../shared-math/words/index.ts');
  (words.CAUTIONS as Caution[]).push(dummy);
  the = {
    words,
    layout: await import('../../../shared-math/layout/index.ts'),
    pages: await import('../../../src-main/output/pages/index.ts'),
    svg: await import('../../../src-main/output/pens/svg-pen.ts'),
  };
});

const SIDE = demonstration('hairpins-side-steer.json');
const CROSS = demonstration('four-bar-cross-steer.json');

async function sheetText(document: typeof SIDE): Promise<string> {
  const pen = new the.svg.SvgPen('text');
  await the.pages.drawPages(jobOf({ document }), pen);
  return Array.from({ length: pen.pageCount }, (_, page) => pen.document(page, 'sheet')).join('\n');
}

describe('a caution added in one place', () => {
  test('stands beside the points that it names, and no others', () => {
    const at = (document: typeof SIDE, point: string) =>
      the.words.cautionsAt(the.layout.resolveLayout(document), point).includes(dummy);
    expect(at(SIDE, 'steering.dragLinkBall')).toBe(true);
    expect(at(SIDE, 'steering.box.pitmanBall')).toBe(false);
    expect(at(CROSS, 'steering.dragLinkBall')).toBe(false);
  });

  test('stands on the sheet of the layouts that it names, line, words and source', async () => {
    const sheet = await sheetText(SIDE);
    for (const words of [dummy.line, 'Grease every ball of the dummy.', 'invented for this test'])
      expect(sheet).toContain(words);
    expect(await sheetText(CROSS)).not.toContain(dummy.line);
  });
});
