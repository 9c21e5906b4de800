import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, test } from 'vitest';
import { resolveLayout } from '../../../shared-math/layout/index.ts';
import { prepareFrontEnd } from '../../../shared-math/linkage/index.ts';
import type { ComparedFigure, FigureName } from '../../../src-renderer/panels/compare/compared-figures.ts';
import { useFreshModules } from '../../support/fresh-modules.ts';
import { documentOf, rawLayout } from '../../support/layouts.ts';

// A figure that variants are compared by is one entry: a dummy is worked out for every variant and stands in the table.

/** Degrees of the sector each way: of the box alone, so that it is known without any solving. */
const dummy: ComparedFigure = {
  what: 'Sector travel',
  aside: () => 'each way',
  of: ({ layout }) => (layout.steering.box.assist === 'power' ? undefined : layout.steering.box.sectorTravel),
  words: (degrees) => `${degrees}°`,
};
const NAME = 'sectorTravel' as FigureName;

type Modules = {
  figures: typeof import('../../../src-renderer/panels/compare/compared-figures.ts');
  variant: typeof import('../../../src-renderer/panels/compare/variant-figures.ts');
  words: typeof import('../../../src-renderer/panels/compare/comparison-words.ts');
};
let the: Modules;

useFreshModules();
beforeAll(async () => {
  const figures = await import('../../../src-renderer/panels/compare/compared-figures.ts');
  (figures.COMPARED_FIGURES as Record<string, ComparedFigure>)[NAME] = dummy;
  the = {
    figures,
    variant: await import('../../../src-renderer/panels/compare/variant-figures.ts'),
    words: await import('../../../src-renderer/panels/compare/comparison-words.ts'),
  };
});

const STYLE = { unit: 'in', fraction: 16 } as const;

function figuresOf(box: Record<string, unknown>) {
  const raw = rawLayout() as { steering: { box: Record<string, unknown> } };
  const steering = { ...raw.steering, box: { ...raw.steering.box, ...box } };
  const layout = resolveLayout(documentOf(rawLayout({ steering })));
  return the.variant.variantFigures(layout, prepareFrontEnd(layout));
}

describe('a compared figure added in one place', () => {
  test('is worked out for every variant, and none is missing', () => {
    const figures = figuresOf({ sectorTravel: 35 });
    expect(Object.keys(figures)).toEqual([...the.figures.figureNames()]);
    expect(the.figures.figureNames().at(-1)).toBe(NAME);
    expect(figures[NAME]).toBe(35);
  });

  test('is reported with its words and its difference; none where a variant has none', () => {
    const [less, more] = [figuresOf({ sectorTravel: 35 }), figuresOf({ sectorTravel: 38 })];
    expect(the.words.figureWords(NAME, less, STYLE)).toBe('35°');
    expect(the.words.differenceWords(NAME, less, more, STYLE)).toBe('+3°');
    const none = figuresOf({ assist: 'power' });
    expect(the.words.figureWords(NAME, none, STYLE)).toBe('none');
    expect(the.words.differenceWords(NAME, less, none, STYLE)).toBe('');
  });

  test('the table goes through all names and knows no figure by its own', () => {
    const table = readFileSync('src-renderer/panels/compare/CompareTable.svelte', 'utf8');
    expect(table).toContain('{#each figureNames() as name');
    for (const name of the.figures.figureNames()) expect(table).not.toMatch(new RegExp(`['"]${name}['"]`));
  });
});
