import type { View } from '../../../../shared-math/drawing/index.ts';
import type { Underlay } from '../../../../shared-math/layout/index.ts';
import type { ReadDrawing } from '../../../../shared-math/underlay/index.ts';
import { countWords } from './counted.ts';

export const UNDER_WORDS: Readonly<Record<View, string>> = {
  side: 'under the side view',
  top: 'under the top view',
  front: 'under the front view',
};

/** Where a drawing's unit comes from, as a sentence without its full stop; assumed ones look different. */
export const UNIT_FROM: Readonly<Record<Underlay['unitFrom'], string>> = {
  file: 'its unit is the one that the file names',
  assumed: 'the file names no unit: this one is assumed',
  typed: 'its unit was typed',
  points: 'its scale comes from two known points',
};

/** The units that drawings are made in, mm of each. */
export const DRAWING_UNITS: readonly (readonly [mm: number, words: string])[] = [
  [1, 'millimetres'],
  [10, 'centimetres'],
  [1000, 'metres'],
  [25.4, 'inches'],
  [304.8, 'feet'],
];

/** "240 lines on 5 layers". */
export function contentWords({ layers }: ReadDrawing): string {
  const lines = layers.reduce((sum, layer) => sum + layer.lines.length, 0);
  return `${countWords(lines, 'line')} on ${countWords(layers.length, 'layer')}`;
}

/** "12 texts and 3 hatches are not taken"; empty where everything was. */
export function leftWords({ left }: ReadDrawing): string {
  if (left.length === 0) return '';
  const words = left.map(([what, count]) => `${count} ${count === 1 ? what.replace(/e?s$/, '') : what}`);
  return `${words.join(', ')} left out: only lines are taken`;
}
