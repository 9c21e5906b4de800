import { expect, test } from 'vitest';
import { linkForces, linkMargins } from '../../../../shared-math/forces/index.ts';
import { resolveLayout } from '../../../../shared-math/layout/index.ts';
import { prepareFrontEnd } from '../../../../shared-math/linkage/index.ts';
import { demonstration, jobOf, printed } from '../../../support/printed.ts';
import { readPdf } from '../../../support/read-pdf.ts';

const POUND = 4.4482216152605;

test.each(['parallel-leaf-cross-steer.json', 'four-bar-cross-steer.json', 'hairpins-side-steer.json'])(
  'the sheet of %s has every figure of the three cases, what a link bears, and the cautions beside it',
  async (name) => {
    const document = demonstration(name);
    const { bytes } = await printed(jobOf({ document }));
    const forces = linkForces(prepareFrontEnd(resolveLayout(document)));
    if (!forces.ok) throw new Error(forces.failure.reason);
    await readPdf(bytes, async (pages) => {
      const page = pages.find(({ text }) => text.includes('no strength is certified'));
      if (!page) throw new Error('no page of forces');
      for (const { figures } of forces.value.cases)
        for (const { figure } of figures) expect(page.text).toContain(figure.name);
      // Two figures by hand: the drag link's push and what the tie rod bears, in whole pounds.
      const drag = forces.value.cases[0]?.figures[0]?.heavy.least.value ?? Number.NaN;
      expect(page.text).toContain(`${Math.round(-drag / POUND)} lb`);
      const tie = linkMargins(resolveLayout(document), forces.value)[1];
      expect(page.text).toContain(`push ${Math.round((tie?.bears.push ?? Number.NaN) / POUND)} lb`);
      expect(page.text).toContain('size assumed');
    });
  },
);
