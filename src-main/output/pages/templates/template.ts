import type { Box, ViewPoint } from '../../../../shared-math/drawing/index.ts';
import { type Radians, toDegrees } from '../../../../shared-math/units/index.ts';
import { INK, SOFT, STEEL, WHITE } from '../../pens/colours.ts';
import type { Align, PrintPen, TextStyle } from '../../pens/print-pen.ts';
import { DIMENSION, SMALL } from '../../pens/styles.ts';
import type { TemplateCut } from './cut.ts';

/** Puts a place of a template's own plane (right and down, mm at full size) on the page at hand. */
export type OnPaper = (place: ViewPoint) => ViewPoint;

/** Something drawn at full size, over as many pages as it takes. */
export interface Template {
  readonly title: string;
  /** How it lies: "seen from the car's left". */
  readonly note: string;
  /** What it covers in its own plane, mm. */
  readonly bounds: Box;
  /** Which ways of the car lie which way on the paper: so that nobody lays it wrong way round. */
  readonly ways: readonly WaySign[];
  /** Sentences that belong to it, printed on its first page where there is room, or on the first page of all. */
  readonly words: readonly string[];
  /** The same for a cutting table. */
  readonly cut: TemplateCut;
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
  if (length > pen.widthOf(words, DIMENSION) + 8) alongside(pen, words, a, b);
  else tag(pen, words, [b[0] + 2, b[1] + 1]);
}

/** Words above a line and along it, readable from below or from the right (ISO 129-1). */
function alongside(pen: PrintPen, words: string, a: ViewPoint, b: ViewPoint): void {
  const [from, to] = a[0] < b[0] - 1e-6 || (Math.abs(a[0] - b[0]) <= 1e-6 && a[1] > b[1]) ? [a, b] : [b, a];
  const turn = Math.atan2(from[1] - to[1], to[0] - from[0]);
  const middle = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2] as const;
  // Off the line, to the left of the way along it.
  const [x, y] = [middle[0] - 1.2 * Math.sin(turn), middle[1] - 1.2 * Math.cos(turn)];
  pen.turnedText(words, x, y, DIMENSION, toDegrees(turn as Radians), 'centre');
}

/** Which way of the car a direction of the paper is: an arrow with its word, its tail at a place of the page. */
export interface WaySign {
  readonly words: string;
  /** Length 1, right and down. */
  readonly way: ViewPoint;
}

const WAY: TextStyle = { ...DIMENSION, size: 7.4 };

/** Draws the ways of the car side by side, arrows with their words, so that they end at a place of the page. mm. */
export function waySigns(pen: PrintPen, signs: readonly WaySign[], [end, y]: ViewPoint): void {
  const wide = signs.reduce((sum, { words }) => sum + 17 + pen.widthOf(words, WAY), -6);
  if (signs.length === 0) return;
  pen.rect(end - wide - 1, y - 6, wide + 2, 12, { width: 0.01, colour: WHITE }, WHITE);
  let at = end - wide;
  for (const { words, way } of signs) {
    const [right, down] = way;
    const middle: ViewPoint = [at + 5, y];
    const tail: ViewPoint = [middle[0] - 4.5 * right, middle[1] - 4.5 * down];
    const tip: ViewPoint = [middle[0] + 4.5 * right, middle[1] + 4.5 * down];
    const back: ViewPoint = [tip[0] - 2.6 * right, tip[1] - 2.6 * down];
    pen.line(tail[0], tail[1], back[0], back[1], { width: 0.35, colour: INK, cap: 'butt' });
    pen.fill([...tip, back[0] - down, back[1] + right, back[0] + down, back[1] - right], INK);
    pen.text(words, at + 11, y + 1, WAY);
    at += 17 + pen.widthOf(words, WAY);
  }
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
