import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, test } from 'vitest';
import type { LimitName, Rule } from '../../../shared-math/findings/index.ts';
import type { LimitKind } from '../../../shared-math/findings/limits.ts';
import { useFreshModules } from '../../support/fresh-modules.ts';
import { demonstration, jobOf } from '../../support/printed.ts';

// A finding is one rule and one line, its limit one entry. A dummy of both is judged, printed, listed and set by a shop.

const LIMIT = 'sectorMost' as LimitName;
const limit: LimitKind = {
  words: 'Travel of the sector each way, at most',
  group: 'Turn',
  hint: 'Type the figure of the maker of the dummy.',
  usual: 30,
  range: [10, 90],
  unit: 'degrees',
  source: 'invented for this test',
};

const rule: Rule = {
  name: 'sector-travel',
  measures: 'Travel of the sector',
  judge: ({ layout }, speak) => {
    const { sectorTravel } = layout.steering.box;
    const { value, source } = speak.limit(LIMIT);
    const over = sectorTravel > value;
    return [
      {
        rule: 'sector-travel',
        severity: over ? 'attention' : 'info',
        sentence: `The dummy’s sector turns ${speak.figure(sectorTravel)}° each way`,
        limit: `limit ${speak.figure(value)}°`,
        source,
        part: 'steering.box.sectorCentre',
        advice: over ? 'Take a shorter travel, or another box.' : '',
        ...(over
          ? {
              remedy: {
                kind: 'set' as const,
                path: 'steering.box.sectorTravel',
                value,
                words: 'Shorten the travel of the dummy',
              },
            }
          : {}),
      },
    ];
  },
};

type Modules = {
  findings: typeof import('../../../shared-math/findings/index.ts');
  layout: typeof import('../../../shared-math/layout/index.ts');
  contract: typeof import('../../../src-main/api/contract.ts');
  pages: typeof import('../../../src-main/output/pages/index.ts');
  svg: typeof import('../../../src-main/output/pens/svg-pen.ts');
  remedies: typeof import('../../../src-renderer/panels/findings/remedies.ts');
  list: typeof import('../../../src-renderer/panels/findings/verdict-list.ts');
  fields: typeof import('../../../src-renderer/panels/findings/limit-fields.ts');
};
let the: Modules;

useFreshModules();
beforeAll(async () => {
  const findings = await import('../../../shared-math/findings/index.ts');
  (findings.RULES as Rule[]).push(rule);
  (findings.LIMITS as Record<LimitName, LimitKind>)[LIMIT] = limit;
  // The names were read off the table as it was loaded.
  (findings.LIMIT_NAMES as LimitName[]).push(LIMIT);
  the = {
    findings,
    layout: await import('../../../shared-math/layout/index.ts'),
    contract: await import('../../../src-main/api/contract.ts'),
    pages: await import('../../../src-main/output/pages/index.ts'),
    svg: await import('../../../src-main/output/pens/svg-pen.ts'),
    remedies: await import('../../../src-renderer/panels/findings/remedies.ts'),
    list: await import('../../../src-renderer/panels/findings/verdict-list.ts'),
    fields: await import('../../../src-renderer/panels/findings/limit-fields.ts'),
  };
});

const INCHES = { unit: 'in', fraction: 16 } as const;
const document = demonstration('hairpins-side-steer.json');
const travel = document.steering.box.sectorTravel;

function judged(own: Partial<Record<LimitName, number>> = {}) {
  const { analyse, findings } = the.findings;
  const list = findings(analyse(the.layout.resolveLayout(document)), INCHES, own);
  return { list, dummy: list.find((each) => each.rule === 'sector-travel') };
}

describe('a finding added', () => {
  test('is judged with the others, by the usual limit or the shop’s own', () => {
    expect(travel).toBeGreaterThan(30);
    expect(judged().dummy).toMatchObject({ severity: 'attention', source: 'invented for this test' });
    const own = judged({ [LIMIT]: 60 }).dummy;
    expect(own).toMatchObject({ severity: 'info', limit: 'limit 60°', source: the.findings.OWN_LIMIT });
  });

  test('stands in the verdict’s list, its button has its own words, and taking it mends it', () => {
    const { list, dummy } = judged();
    expect(the.list.listed(list).toMend.map(({ finding }) => finding)).toContain(dummy);
    if (!dummy?.remedy) throw new Error('no remedy');
    expect(the.remedies.remedyWords(dummy)).toBe('Shorten the travel of the dummy');
    const mended = the.remedies.remedied(document, dummy.remedy);
    expect(mended.steering.box.sectorTravel).toBe(30);
    expect(the.layout.readLayout(mended).ok).toBe(true);
  });

  test('is printed on the sheet', async () => {
    const pen = new the.svg.SvgPen('text');
    await the.pages.drawPages(jobOf({ document }), pen);
    const pages = Array.from({ length: pen.pageCount }, (_, page) => pen.document(page, 'sheet')).join('');
    expect(pages).toContain('The dummy’s sector turns');
  });

  test('its limit is one that a shop sets: typed, shown, stored, sent and read', () => {
    const set = the.fields.withTypedLimit({}, LIMIT, '45', INCHES);
    expect(set).toEqual({ ok: true, value: { [LIMIT]: 45 } });
    expect(the.fields.withTypedLimit({}, LIMIT, '95', INCHES).ok).toBe(false);
    expect(the.fields.limitWords(LIMIT, 45, INCHES)).toBe('45°');
    const { input } = the.contract.contract['settings.set'];
    expect(input.parse({ limits: { [LIMIT]: 45 } })).toEqual({ limits: { [LIMIT]: 45 } });
    expect(input.safeParse({ limits: { [LIMIT]: 95 } }).success).toBe(false);
    expect(the.findings.readShopLimits({ [LIMIT]: 45 })).toEqual({ [LIMIT]: 45 });
  });

  test('the page of limits goes through all names of a group and has words for none', () => {
    const page = readFileSync('src-renderer/panels/findings/LimitsPage.svelte', 'utf8');
    expect(page).toContain('LIMIT_NAMES.filter((each) => LIMITS[each].group === group)');
    for (const name of the.findings.LIMIT_NAMES) expect(page).not.toContain(name);
    expect(the.findings.LIMIT_GROUPS).toContain(the.findings.LIMITS[LIMIT].group);
  });
});
