import { describe, expect, test } from 'vitest';
import { analyse, type Finding, findings } from '../../../shared-math/findings/index.ts';
import { type LayoutDocument, readLayout, resolveLayout } from '../../../shared-math/layout/index.ts';
import { groundsOf, poseWords, tallyWords } from '../../../shared-math/words/index.ts';
import { remedied, remedyLabel, remedyWords } from '../../../src-renderer/panels/findings/remedies.ts';
import { listed } from '../../../src-renderer/panels/findings/verdict-list.ts';
import { documentOf, PLAIN_HALF, rawLayout, SIDE_STEER } from '../../support/layouts.ts';
import { rawShaft } from '../../support/shafts.ts';

const INCHES = { unit: 'in', fraction: 16 } as const;
const box = (over: object) => ({ steering: { ...SIDE_STEER, box: { ...SIDE_STEER.box, ...over } } });
const judged = (document: LayoutDocument) => findings(analyse(resolveLayout(document)), INCHES);

/** Layouts whose findings between them offer every kind of remedy. */
const BAD = [
  box({ pitmanBall: [-800, 500, 280] }),
  box({ sectorAxis: [0, 1, 0] }),
  box({ sectorTravel: 45, pitmanBall: [-800, 500, 340] }),
  { axle: { beam: 'tube', left: PLAIN_HALF, right: 'mirror' } },
  { shaft: rawShaft({ shafts: [{ clock: 45 }] }) },
].map((over) => documentOf(rawLayout(over)));

const offered = BAD.flatMap((document) =>
  judged(document)
    .filter(({ remedy }) => remedy)
    .map((finding) => ({ document, finding })),
);

describe('a remedy', () => {
  test('is taken as a document that can be read, and changes it', () => {
    const kinds = new Set(offered.map(({ finding }) => finding.remedy?.kind));
    expect(kinds).toEqual(new Set(['move', 'set']));
    for (const { document, finding } of offered) {
      if (!finding.remedy) continue;
      const next = remedied(document, finding.remedy);
      expect(next).not.toEqual(document);
      expect(readLayout(next).ok, finding.sentence).toBe(true);
    }
  });

  test('of a move says what is done, and the history leaves out what it promised', () => {
    const bump = offered.find(({ finding }) => finding.rule === 'bump-steer-worst')!.finding;
    expect(remedyWords(bump)).toMatch(/^Raise the pitman ball .* in: bump steer \d\.\d\d°$/);
    expect(remedyLabel(bump)).toMatch(/^Raise the pitman ball [\d/ ]+ in$/);
  });

  test('of a value says that value, not all the ways out that the advice names', () => {
    const words = offered
      .filter(({ finding }) => finding.remedy?.kind === 'set')
      .map(({ finding }) => remedyWords(finding));
    expect(words).toContain('Use a box that turns the other way');
    expect(words).toContain('Use an I-beam');
    expect(words.some((each) => /^Set stops at \d+° of either wheel$/.test(each))).toBe(true);
    for (const each of words) expect(each).not.toMatch(/undefined|\[object|\.$/);
  });

  test('no finding without one has words for a button', () => {
    const bare = judged(BAD[0]!).filter(({ remedy }) => !remedy);
    expect(bare.length).toBeGreaterThan(5);
    for (const finding of bare) expect(remedyWords(finding)).toBe('');
  });
});

describe('the list', () => {
  test('has every finding once, what is to be mended apart from what is in order, under names of their own', () => {
    for (const document of BAD) {
      const all = judged(document);
      const { toMend, inOrder, counts } = listed(all);
      expect([...toMend, ...inOrder].map(({ finding }) => finding)).toEqual(all);
      expect(inOrder.every(({ finding }) => finding.severity === 'info')).toBe(true);
      expect(new Set([...toMend, ...inOrder].map(({ key }) => key)).size).toBe(all.length);
      expect(counts.stop + counts.attention).toBe(toMend.length);
    }
  });

  test('keeps the name of a finding when the others change', () => {
    const [before, after] = [listed(judged(BAD[0]!)), listed(judged(BAD[3]!))];
    const keyOf = (list: typeof before) =>
      [...list.toMend, ...list.inOrder].find(({ finding }) => finding.rule === 'bump-steer-worst')?.key;
    expect(keyOf(before)).toBeDefined();
    expect(keyOf(before)).toBe(keyOf(after));
  });

  test('is told in one line', () => {
    expect(tallyWords({ stop: 1, attention: 2, info: 9 })).toBe('1 to fix · 2 to check');
    expect(tallyWords({ stop: 0, attention: 1, info: 0 })).toBe('1 to check');
    expect(tallyWords({ stop: 2, attention: 0, info: 0 })).toBe('2 to fix');
    expect(tallyWords({ stop: 0, attention: 0, info: 19 })).toBe('Nothing past its limit');
  });
});

describe('what a finding rests on', () => {
  const finding = (limit: string, source: string) => ({ limit, source }) as Finding;

  test('is its limit and source, the shop’s own set apart', () => {
    expect(groundsOf(finding('limit 9°', 'this shop’s own limit; the rest'))).toEqual([
      { text: 'limit 9° · ', own: false },
      { text: 'this shop’s own limit', own: true },
      { text: '; the rest', own: false },
    ]);
    expect(groundsOf(finding('', 'geometry of the layout'))).toEqual([
      { text: 'geometry of the layout', own: false },
    ]);
  });

  test('can be told in short', () => {
    const practice = finding('limit 0.5°', 'common practice, no published source');
    expect(groundsOf(practice, true)).toEqual([{ text: 'limit 0.5° · common practice', own: false }]);
  });

  test('in which pose it was measured is said in words', () => {
    const length = (mm: number) => `${Math.round(mm / 25.4)} in`;
    expect(poseWords({ heave: -76.2, roll: 0, handwheel: 0 }, length)).toBe('3 in of droop');
    expect(poseWords({ heave: 76.2, roll: -3, handwheel: -544.2 }, length)).toBe(
      '3 in of bump, 3° of roll, right wheel up, 544° of handwheel to the right',
    );
    expect(poseWords({ heave: 0, roll: 0, handwheel: 0 }, length)).toBe('ride height');
  });
});
