import {
  decimalBeside,
  degreesBeside,
  formatForce,
  formatSpan,
  formatToeLength,
  type LengthStyle,
  lengthBeside,
  MM_PER_INCH,
  toDegrees,
} from '../../../shared-math/units/index.ts';
import type { VariantFigures } from './variant-figures.ts';

/** One figure that variants are held against each other by. */
export interface ComparedFigure {
  readonly what: string;
  /** What it is reported for or in, where the figure alone does not say. */
  readonly aside?: (style: LengthStyle) => string;
  readonly of: (figures: VariantFigures) => number | undefined;
  readonly words: (value: number, style: LengthStyle) => string;
}

const degrees =
  (decimals: number) =>
  (radians: number): string =>
    degreesBeside(toDegrees(radians), [0], decimals);

/** Sixteenths are too coarse to tell lengths apart by. */
const fine = (style: LengthStyle): LengthStyle =>
  style.fraction === 16 ? { ...style, fraction: 32 } : style;
const length = (mm: number, style: LengthStyle) => lengthBeside(mm, [0], fine(style));

/** mm that a slope is reported over. */
const slopePer = ({ unit }: LengthStyle) => (unit === 'in' ? MM_PER_INCH : 25);

/** The figures of the comparison in the order of their weight. */
export const COMPARED_FIGURES: readonly ComparedFigure[] = [
  { what: 'Worst bump steer', of: (figures) => figures.worstBumpSteer, words: degrees(2) },
  { what: 'One wheel over a bump', of: (figures) => figures.oneWheel, words: degrees(2) },
  {
    what: 'Bump steer slope',
    aside: ({ unit }) => (unit === 'in' ? 'per inch' : 'per 25 mm'),
    of: (figures) => figures.slope,
    words: (slope, style) => degreesBeside(toDegrees(slope) * slopePer(style), [0], 2),
  },
  {
    what: 'Roll steer',
    aside: () => 'per degree of roll',
    of: (figures) => figures.rollSteer,
    words: (slope) => degreesBeside(slope, [0], 3),
  },
  {
    what: 'Overall ratio',
    of: (figures) => figures.ratio,
    words: (ratio) => `${decimalBeside(ratio, [0], 1)} : 1`,
  },
  {
    what: 'Lock to lock',
    of: (figures) => figures.turns,
    words: (turns) => `${decimalBeside(turns, [0], 2)} turns`,
  },
  { what: 'Inner wheel, left lock', of: (figures) => figures.leftLock, words: degrees(1) },
  { what: 'Inner wheel, right lock', of: (figures) => figures.rightLock, words: degrees(1) },
  {
    what: 'Circle between kerbs',
    of: (figures) => figures.circle,
    words: (mm, { unit }) => formatSpan(mm, unit),
  },
  {
    what: 'Parking at the rim',
    aside: () => 'manual, straight ahead',
    of: (figures) => figures.rimForce,
    words: (newtons, { unit }) => formatForce(newtons, unit),
  },
  {
    what: 'Parking, most on the way to lock',
    aside: () => 'manual',
    of: (figures) => figures.rimForceMost,
    words: (newtons, { unit }) => formatForce(newtons, unit),
  },
  {
    what: 'Total toe-in',
    aside: () => 'front to rear of the tyres',
    of: (figures) => figures.toe,
    words: (mm, { unit }) => formatToeLength(mm, unit),
  },
  { what: 'Drag link', of: ({ links }) => links.dragLink, words: length },
  { what: 'Pitman arm', of: ({ links }) => links.pitmanArm, words: length },
  { what: 'Steering arm', of: ({ links }) => links.steeringArm, words: length },
  { what: 'Tie rod', of: ({ links }) => links.tieRod, words: length },
];

/** A figure of one variant: "0.36°", or that there is none. */
export function figureWords(figure: ComparedFigure, figures: VariantFigures, style: LengthStyle): string {
  const value = figure.of(figures);
  return value === undefined ? 'none' : figure.words(value, style).replace(/^-/, '−');
}

/** What a variant has more or less of a figure than another: "+1.85°", "−0.2 : 1", "same". Empty where one has none. */
export function differenceWords(
  figure: ComparedFigure,
  than: VariantFigures,
  figures: VariantFigures,
  style: LengthStyle,
): string {
  const value = figure.of(figures);
  const base = figure.of(than);
  if (value === undefined || base === undefined) return '';
  const words = figure.words(Math.abs(value - base), style);
  if (words === figure.words(0, style)) return 'same';
  return `${value > base ? '+' : '−'}${words.replace(/ : 1$/, '')}`;
}
