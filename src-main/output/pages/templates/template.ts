import type { Box, ViewPoint } from '../../../../shared-math/drawing/index.ts';
import { INK, SOFT, STEEL, WHITE } from '../../pens/colours.ts';
import type { Align, PrintPen } from '../../pens/print-pen.ts';
import { DIMENSION, SMALL } from '../../pens/styles.ts';

/** Puts a place of a template's own plane (right and down, mm at full size) on the page at hand. */
export type OnPaper = (place: ViewPoint) => ViewPoint;

/** Something drawn at full size, over as many pages as it takes. */
export interface Template {
  readonly title: string;
  /** How it lies: "seen from the car's left". */
  readonly note: string;
  /** What it covers in its own plane, mm. */
  readonly bounds: Box;
  /** Sentences that belong to it, printed on its first page where there is room, or on the first page of all. */
  readonly words: readonly string[];
  draw(pen: PrintPen, at: OnPaper): void;
}

const CENTRE_DASH = [6, 1.4, 1.4, 1.4];

/** A cross on a centre, with a small circle about it. mm of its arms. */
export function centreMark(pen: PrintPen, [x, y]: ViewPoint, reach = 9): void {
  const line = { width: 0.18, colour: INK, dash: [4, 0.8, 0.8, 0.8] };
  pen.line(x - reach, y, x + reach, y, line);
  pen.line(x, y - reach, x, y + reach, line);
  pen.circle(x, y, 1.2, { width: 0.25, colour: INK });
}

/** A ball's centre, in the colour of what moves. */
export function ballMark(pen: PrintPen, [x, y]: ViewPoint): void {
  centreMark(pen, [x, y]);
  pen.circle(x, y, 4, { width: 0.4, colour: STEEL });
}

export function centreLine(pen: PrintPen, [x1, y1]: ViewPoint, [x2, y2]: ViewPoint): void {
  pen.line(x1, y1, x2, y2, { width: 0.2, colour: INK, dash: CENTRE_DASH });
}

/** Words beside a place, on white so that lines do not run through them. */
export function tag(
  pen: PrintPen,
  words: string,
  [x, y]: ViewPoint,
  align: Align = 'left',
  soft = false,
): void {
  const style = soft ? { ...SMALL, colour: SOFT } : DIMENSION;
  const wide = pen.widthOf(words, style);
  const left = align === 'left' ? x : align === 'right' ? x - wide : x - wide / 2;
  pen.rect(left - 0.5, y - 2.5, wide + 1, 3.3, { width: 0.01, colour: WHITE }, WHITE);
  pen.text(words, left, y, style);
}

/** A dimension between two places: a line with arrows, `off` mm beside the straight one, its figure in the middle. */
export function dimension(pen: PrintPen, from: ViewPoint, to: ViewPoint, off: number, words: string): void {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
  if (length < 1) return;
  const along = [(to[0] - from[0]) / length, (to[1] - from[1]) / length] as const;
  const aside = [-along[1], along[0]] as const;
  const at = ([x, y]: ViewPoint, by: number): ViewPoint => [x + aside[0] * by, y + aside[1] * by];
  const line = { width: 0.15, colour: INK };
  const [a, b] = [at(from, off), at(to, off)];
  for (const place of [from, to]) {
    const near = at(place, Math.sign(off) * 2);
    const far = at(place, off + Math.sign(off) * 1.5);
    pen.line(near[0], near[1], far[0], far[1], line);
  }
  pen.line(a[0], a[1], b[0], b[1], line);
  for (const [tip, way] of [
    [a, 1],
    [b, -1],
  ] as const) {
    const back: ViewPoint = [tip[0] + way * along[0] * 2.6, tip[1] + way * along[1] * 2.6];
    pen.fill([tip[0], tip[1], ...at(back, 0.5), ...at(back, -0.5)], INK);
  }
  if (length > pen.widthOf(words, DIMENSION) + 8)
    tag(pen, words, [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2 + 1], 'centre');
  else tag(pen, words, [b[0] + 2, b[1] + 1]);
}

/** The bounds of some places, with mm around them. */
export function around(places: readonly ViewPoint[], by: number): Box {
  return {
    left: Math.min(...places.map(([right]) => right)) - by,
    right: Math.max(...places.map(([right]) => right)) + by,
    top: Math.min(...places.map(([, down]) => down)) - by,
    bottom: Math.max(...places.map(([, down]) => down)) + by,
  };
}
