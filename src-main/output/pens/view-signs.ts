import type { View } from '../../../shared-math/drawing/index.ts';
import { type LengthUnit, MM_PER_INCH } from '../../../shared-math/units/index.ts';
import { type CarView, frameOf } from './car-view.ts';
import { INK, SOFT } from './colours.ts';
import { capHeight, type PrintPen, type TextStyle } from './print-pen.ts';
import { LABEL, SMALL_INK } from './styles.ts';

// What every view says of itself: which view it is, which way the front of the car lies, which side is which, and a bar
// to check its scale by.

const WORD: TextStyle = { ...LABEL, colour: INK };
const SIDE_WORD: TextStyle = { face: 'headingBold', size: 7.4, colour: SOFT };

const VIEW_WORDS: Record<View, string> = {
  side: 'SIDE VIEW, FROM THE LEFT',
  top: 'TOP VIEW, FROM ABOVE',
  front: 'FRONT VIEW, FROM AHEAD',
};

/** mm of the arrow that points to the front of the car: its shaft and its head. */
const ARROW = { long: 9, head: 2.6, half: 1 } as const;

/** An arrow to the left, where the front of the car lies in side and top view, with its word; answers where it ends, mm. */
export function frontArrow(pen: PrintPen, x: number, y: number): number {
  const middle = y - capHeight(WORD.size) / 2;
  pen.line(x + ARROW.head, middle, x + ARROW.long, middle, { width: 0.35, colour: INK, cap: 'butt' });
  pen.fill([x, middle, x + ARROW.head, middle - ARROW.half, x + ARROW.head, middle + ARROW.half], INK);
  pen.text('FRONT', x + ARROW.long + 1, y, WORD);
  return x + ARROW.long + 1 + pen.widthOf('FRONT', WORD);
}

/** Lengths that a scale bar may have, mm of the car, longest first. */
const BARS: Record<LengthUnit, readonly number[]> = {
  in: [48, 24, 12, 6, 4, 2, 1].map((inches) => inches * MM_PER_INCH),
  mm: [1000, 500, 250, 200, 100, 50, 20],
};
/** mm of paper that a bar takes at the most. */
const BAR_MOST = 32;

/**
 * A bar of round length, so that a print can be checked by a rule: "12 in of the car". Its right end at x, or farther to
 * the right where it would begin before `least`; its line at y. mm.
 */
export function scaleBar(
  pen: PrintPen,
  x: number,
  y: number,
  scale: number,
  unit: LengthUnit,
  least = Number.NEGATIVE_INFINITY,
): void {
  const bars = BARS[unit];
  const long = bars.find((length) => length / scale <= BAR_MOST) ?? (bars.at(-1) as number);
  const words = unit === 'in' ? `${Math.round(long / MM_PER_INCH)} in of the car` : `${long} mm of the car`;
  const start = Math.max(x - pen.widthOf(words, SMALL_INK) - 1.6 - long / scale, least);
  const end = start + long / scale;
  const ink = { width: 0.3, colour: INK, cap: 'butt' } as const;
  pen.line(start, y, end, y, ink);
  for (const share of [0, 0.5, 1]) {
    const at = start + (share * long) / scale;
    pen.line(at, y - (share === 0.5 ? 0.9 : 1.5), at, y, ink);
  }
  pen.text(words, end + 1.6, y, SMALL_INK);
}

/** Which side of the car is which, in the corners of a view in which both show. */
function sideWords(pen: PrintPen, view: CarView): void {
  const [left, top, right, bottom] = frameOf(view);
  const cap = capHeight(SIDE_WORD.size);
  if (view.view === 'top') {
    pen.text('RIGHT SIDE', right - 0.8, top + cap + 0.8, SIDE_WORD, 'right');
    pen.text('LEFT SIDE', right - 0.8, bottom - 0.8, SIDE_WORD, 'right');
  } else if (view.view === 'front') {
    pen.text('RIGHT SIDE', left + 0.8, top + cap + 0.8, SIDE_WORD);
    pen.text('LEFT SIDE', right - 0.8, top + cap + 0.8, SIDE_WORD, 'right');
  }
}

/** Where a view's signs stand. */
interface SignPlaces {
  /** mm from the frame's top up to the base of the view's name. */
  readonly above?: number;
  /** The line of the scale bar on the page, mm; below the frame where not given. */
  readonly barAt?: number;
  /** The scale bar begins no farther left on the page than this, mm. */
  readonly barFrom?: number;
  /** The view shows a piece of the car: which side is which stands in its name. */
  readonly piece?: boolean;
}

/** The name of a view with the way to the front above its upper left corner, the sides, and the scale bar below it. */
export function viewSigns(
  pen: PrintPen,
  view: CarView,
  unit: LengthUnit,
  { above = 1.4, barAt, barFrom, piece = false }: SignPlaces = {},
): void {
  const [left, top, right, bottom] = frameOf(view);
  const base = top - above;
  const from = view.view === 'front' ? left : frontArrow(pen, left, base) + 3;
  const below = piece && view.view === 'top' ? ', LEFT SIDE BELOW' : '';
  pen.text(`${VIEW_WORDS[view.view]}${below}`, from, base, { ...LABEL, colour: SOFT });
  if (!piece) sideWords(pen, view);
  scaleBar(pen, right, barAt ?? bottom + (piece ? 4 : 2.6), view.scale, unit, barFrom);
}
