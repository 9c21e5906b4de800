import type { LengthStyle } from '../../../shared-math/units/index.ts';
import { COMPARED_FIGURES, type FigureName } from './compared-figures.ts';
import type { VariantFigures } from './variant-figures.ts';

/** A figure of one variant: "0.36°", or that there is none. */
export function figureWords(name: FigureName, figures: VariantFigures, style: LengthStyle): string {
  const value = figures[name];
  return value === undefined ? 'none' : COMPARED_FIGURES[name].words(value, style).replace(/^-/, '−');
}

/** What a variant has more or less of a figure than another: "+1.85°", "−0.2 : 1", "same". Empty where one has none. */
export function differenceWords(
  name: FigureName,
  than: VariantFigures,
  figures: VariantFigures,
  style: LengthStyle,
): string {
  const { words: wordsOf } = COMPARED_FIGURES[name];
  const [value, base] = [figures[name], than[name]];
  if (value === undefined || base === undefined) return '';
  const words = wordsOf(Math.abs(value - base), style);
  if (words === wordsOf(0, style)) return 'same';
  return `${value > base ? '+' : '−'}${words.replace(/ : 1$/, '')}`;
}
