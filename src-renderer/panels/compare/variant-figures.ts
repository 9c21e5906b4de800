import type { Layout } from '../../../shared-math/layout/index.ts';
import type { FrontEnd } from '../../../shared-math/linkage/index.ts';
import { COMPARED_FIGURES, type FigureName, figureNames } from './compared-figures.ts';
import { type SweptAlready, sweptVariant } from './swept-variant.ts';

/** What a layout is held against others by: rad, mm, N; undefined if the linkage does not turn or reach. */
export type VariantFigures = Readonly<Record<FigureName, number | undefined>>;

/** Works the figures out: about a millisecond, or next to nothing of what has been swept already. */
export function variantFigures(layout: Layout, frontEnd: FrontEnd, swept: SweptAlready = {}): VariantFigures {
  const variant = sweptVariant(layout, frontEnd, swept);
  const figures = figureNames().map((name) => [name, COMPARED_FIGURES[name].of(variant)] as const);
  return Object.fromEntries(figures) as VariantFigures;
}
