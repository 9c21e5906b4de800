import { expect, test } from 'vitest';
import { resolveLayout } from '../../../../shared-math/layout/index.ts';
import { demonstration, jobOf, printed } from '../../../support/printed.ts';
import { rawPlace, solveByRegistry } from '../../../support/raw-equations.ts';

/** The words of the page that has some of these. */
async function wordsWith(job: Parameters<typeof printed>[0], words: string): Promise<readonly string[]> {
  const { texts } = await printed(job);
  const page = texts.find(({ text }) => text.includes(words))?.page;
  return texts.filter((each) => each.page === page).map(({ text }) => text);
}

test.each([
  ['hairpins-box-too-low.json', 'in', '1 : 1'],
  ['four-bar-cross-steer.json', 'mm', '1 : 1'],
] as const)(
  'the sheet of %s has the detail of the arcs, its scale, and the gap at every tick',
  async (name, unit, scale) => {
    const document = demonstration(name);
    const texts = await wordsWith(jobOf({ document, unit }), 'DETAIL A');
    // Full size is the largest scale of ISO 5455 at which six inches of travel fit a page of letter paper.
    expect(texts).toContain(`DETAIL A (${scale})`);
    expect(texts).toContain('A');
    // Outside check: ml-levenberg-marquardt on the links' equations written anew, and the plain distance.
    const layout = resolveLayout(document);
    const { dragLinkBall, dragLinkTo, box } = layout.steering;
    const apart = ([x, y, z]: readonly [number, number, number]) =>
      Math.hypot(x - box.pitmanBall[0], y - box.pitmanBall[1], z - box.pitmanBall[2]);
    for (const heave of [layout.travel.bump, -layout.travel.rebound]) {
      const pose = solveByRegistry(layout, heave, 0);
      const gap = apart(rawPlace(layout, heave, 0, pose, dragLinkTo, dragLinkBall)) - apart(dragLinkBall);
      const sign = gap > 0 ? '+' : '−';
      const mm = `${Math.abs(gap).toFixed(1)} mm`;
      const words = texts.filter((text) => text.startsWith(sign) && text.includes(mm));
      expect(words, `${sign}${mm} among ${texts.join('; ')}`).not.toEqual([]);
      // And the other unit beside it, never rounded to nothing.
      for (const text of words) expect(text).not.toMatch(/\b0 in\b/);
    }
    expect(texts.some((text) => text.startsWith(unit === 'in' ? '3 in bump' : '76.2 mm bump'))).toBe(true);
  },
);

test('the first page names the room that was asked for, and nothing of it where none was', async () => {
  const document = demonstration('hairpins-side-steer.json');
  const plain = await wordsWith(jobOf({ document }), 'Third-angle projection');
  expect(plain.join(' ')).not.toMatch(/room needed/);
  const asked = await wordsWith(jobOf({ document, rooms: ['tyre', 'tie-rod'] }), 'Third-angle projection');
  expect(asked.join(' ')).toMatch(
    /Double-dotted: the room needed by tyres, tie rod, 3 in bump to 3 in droop.*lock to lock/,
  );
});
