import {
  type Dimension,
  INSTRUMENT_WORDS,
  type ListRow,
  type ListView,
  type Taken,
} from '../../../../shared-math/adjust/list/index.ts';
import { type Box, type Drawing, project } from '../../../../shared-math/drawing/index.ts';
import type { Point } from '../../../../shared-math/geometry/points.ts';
import type { LengthUnit } from '../../../../shared-math/units/index.ts';
import { type CarView, centredView, frameOf, paintCar, pointOnPage } from '../../pens/car-view.ts';
import { FAINT, INK, STEEL, WHITE } from '../../pens/colours.ts';
import type { Area } from '../../pens/papers.ts';
import type { PrintPen, TextStyle } from '../../pens/print-pen.ts';
import { BODY_BOLD, CELL, HAIR, LABEL, SMALL, SMALL_INK } from '../../pens/styles.ts';
import { brokenInto, shortened, writeLines } from '../../pens/text-lines.ts';

/** mm that a row takes, the gap to the next one among them. */
export const ROW_TALL = 21.9;
const GAP = 1.6;
const PICTURE = { width: 31, height: ROW_TALL - GAP };
/** mm of the car that a picture shows at the least across, and beside what is measured. */
const SHOWN_LEAST = 760;
const SHOWN_BESIDE = 130;
/** How pale the car stands behind its dimension. */
const PALE = 0.45;
/** Below this many mm on paper a dimension is a spot, with a ring about it. */
const SPOT = 1.6;

/** The car that every row's picture shows. */
export interface RowPicture {
  readonly drawing: Drawing;
  readonly placed: Float64Array;
}

interface RowFacts {
  readonly number: number;
  readonly picture: RowPicture;
  readonly unit: LengthUnit;
  /** How it was measured before, if it was. */
  readonly taken: Taken | undefined;
}

function endsOf(dimension: Dimension): readonly [Point, Point] {
  return dimension.kind === 'length' ? [dimension.from, dimension.to] : [dimension.at, dimension.along];
}

/** What a picture shows, in its view's plane: the dimension with what is about it, in the picture's own shape. */
function shownBox(view: ListView, dimension: Dimension): Box {
  const [[ax, ay], [bx, by]] = endsOf(dimension).map((end) => project(view, end)) as [
    readonly [number, number],
    readonly [number, number],
  ];
  const shape = PICTURE.width / PICTURE.height;
  const wide = Math.abs(ax - bx) + 2 * SHOWN_BESIDE;
  const high = Math.abs(ay - by) + 2 * SHOWN_BESIDE;
  const width = Math.max(SHOWN_LEAST, wide, high * shape);
  const height = width / shape;
  const [x, y] = [(ax + bx) / 2, (ay + by) / 2];
  return { left: x - width / 2, right: x + width / 2, top: y - height / 2, bottom: y + height / 2 };
}

/** A filled head at a dimension's end, pointing there from where the line comes. */
function arrowHead(pen: PrintPen, [x, y]: readonly [number, number], from: readonly [number, number]): void {
  const long = Math.hypot(x - from[0], y - from[1]);
  const [ux, uy] = [(x - from[0]) / long, (y - from[1]) / long];
  const [back, half] = [1.7, 0.55];
  const at = (along: number, across: number): [number, number] => [
    x - ux * along - uy * across,
    y - uy * along + ux * across,
  ];
  pen.fill([x, y, ...at(back, half), ...at(back, -half)], STEEL);
}

/** Whether a row is counted from a line or from the floor, which its picture then shows. */
function countedFromLine({ observes }: ListRow): boolean {
  return !observes || observes.kind === 'back' || observes.kind === 'out' || observes.kind === 'up';
}

/** What a dimension begins at, the floor, the centre line or the hubs' line: a thin line square to it. */
function extensionLine(
  pen: PrintPen,
  [x, y]: readonly [number, number],
  to: readonly [number, number],
  long: number,
): void {
  const [ux, uy] = [(to[0] - x) / long, (to[1] - y) / long];
  const half = 5;
  pen.line(x + uy * half, y - ux * half, x - uy * half, y + ux * half, {
    width: 0.2,
    colour: STEEL,
    dash: [2, 0.6, 0.4, 0.6],
  });
}

function paintDimension(pen: PrintPen, view: CarView, row: ListRow): void {
  const { dimension } = row;
  const [from, to] = endsOf(dimension).map((end) => pointOnPage(view, end)) as [
    readonly [number, number],
    readonly [number, number],
  ];
  const long = Math.hypot(to[0] - from[0], to[1] - from[1]);
  const line = { width: 0.45, colour: STEEL };
  if (dimension.kind === 'angle') {
    // The plumb line that the lean is counted from, as long as the part itself.
    const [x, y] = from;
    const up = to[1] < y ? -1 : 1;
    pen.line(x, y - up * 2, x, y + up * (long + 2.5), { ...line, width: 0.2, dash: [1.4, 0.5, 0.3, 0.5] });
    const beyond = long === 0 ? 0 : 1 + 3 / long;
    pen.line(x, y, x + (to[0] - x) * beyond, y + (to[1] - y) * beyond, line);
    return;
  }
  if (long < SPOT) {
    pen.circle(from[0], from[1], 1.5, line);
    return;
  }
  if (countedFromLine(row)) extensionLine(pen, from, to, long);
  pen.line(from[0], from[1], to[0], to[1], { ...line, width: 1.1, colour: WHITE });
  pen.line(from[0], from[1], to[0], to[1], line);
  if (long > 4) {
    arrowHead(pen, to, from);
    arrowHead(pen, from, to);
  } else for (const [x, y] of [from, to]) pen.circle(x, y, 0.55, undefined, STEEL);
}

const VIEW_WORDS: Record<ListView, string> = {
  side: 'FROM THE LEFT',
  top: 'FROM ABOVE',
  front: 'FROM AHEAD',
};

function paintPicture(
  pen: PrintPen,
  x: number,
  y: number,
  row: ListRow,
  { drawing, placed }: RowPicture,
): void {
  const shown = shownBox(row.view, row.dimension);
  const scale = (shown.right - shown.left) / PICTURE.width;
  const view = centredView(row.view, shown, scale, { x, y, ...PICTURE });
  pen.within(undefined, PALE, () => paintCar(pen, view, drawing, placed));
  const [left, top, right, bottom] = frameOf(view);
  pen.within([left, top, right, top, right, bottom, left, bottom], 1, () => paintDimension(pen, view, row));
  pen.rect(x, y, PICTURE.width, PICTURE.height, { ...HAIR, colour: FAINT });
  const words = VIEW_WORDS[row.view];
  const style = { ...LABEL, size: 5.2 };
  pen.rect(x + 0.4, y + 0.4, pen.widthOf(words, style) + 1, 2.4, { width: 0.01, colour: WHITE }, WHITE);
  pen.text(words, x + 0.9, y + 2.2, style);
}

/** The unit that a blank is to be filled in. */
function unitOf(row: ListRow, taken: Taken | undefined, unit: LengthUnit): string {
  const way = row.ways.find(({ id }) => id === taken?.way) ?? row.ways[0];
  return way?.unit === 'angle' ? '°' : unit;
}

/** Where a figure can be counted from, each with a box to tick. */
function waysToTick(
  pen: PrintPen,
  x: number,
  y: number,
  width: number,
  row: ListRow,
  taken: Taken | undefined,
): void {
  const style = { ...SMALL_INK, size: 6.4 };
  const side = 1.9;
  const whole = row.ways.reduce((sum, { name }) => sum + pen.widthOf(name, style) + side + 0.9, 0);
  const gap = Math.min(3, Math.max(0.8, (width - whole) / (row.ways.length - 1)));
  let at = x;
  for (const { id, name } of row.ways) {
    pen.rect(at, y - side, side, side, { width: 0.2, colour: INK });
    if (taken?.way === id)
      pen.line(at + 0.3, y - 0.3, at + side - 0.3, y - side + 0.3, { width: 0.4, colour: INK });
    at += side + 0.9;
    pen.text(name, at, y - 0.15, style);
    at += pen.widthOf(name, style) + gap;
  }
}

const NAME_SIZES = [8.4, 7.8, 7.2, 6.6, 6];
const HOW_SIZES = [6.6, 6.2, 5.8, 5.4];

/** A style in the largest of some sizes at which a text takes no more than so many lines. */
function fitting(
  pen: PrintPen,
  text: string,
  style: TextStyle,
  sizes: readonly number[],
  width: number,
  lines: number,
): TextStyle {
  const size = sizes.find((each) => brokenInto(pen, text, { ...style, size: each }, width).length <= lines);
  return { ...style, size: size ?? (sizes.at(-1) as number) };
}

/** A row of the measuring sheet: its picture, what it is, how it is measured, a blank and the instrument. */
export function rowCard(pen: PrintPen, area: Area, row: ListRow, facts: RowFacts): void {
  const { x, y } = area;
  paintPicture(pen, x, y, row, facts.picture);
  const left = x + PICTURE.width + 2.4;
  const right = x + area.width;
  const wide = right - left;
  const number = `${facts.number}  `;
  pen.text(number, left, y + 2.6, { ...BODY_BOLD, colour: STEEL });
  const from = left + pen.widthOf(number, BODY_BOLD);
  const name = fitting(pen, row.name, BODY_BOLD, NAME_SIZES, right - from, 1);
  pen.text(row.name, from, y + 2.6, name);
  const foot = y + PICTURE.height;
  // Where the ways to tick stand below it, it has a line less.
  const how = fitting(pen, row.how, SMALL, HOW_SIZES, wide, row.ways.length > 1 ? 3 : 4);
  writeLines(pen, brokenInto(pen, row.how, how, wide), left, y + 3.6, how);

  const unit = unitOf(row, facts.taken, facts.unit);
  const blank = 25;
  pen.line(left, foot, left + blank, foot, { ...CELL, width: 0.3, colour: INK });
  if (facts.taken) {
    const before = { ...SMALL_INK, size: 8.4 };
    pen.text(shortened(pen, facts.taken.typed, before, blank), left + 0.6, foot - 0.9, before);
  }
  pen.text(unit, left + blank + 1, foot, SMALL_INK);
  const tool = INSTRUMENT_WORDS[facts.taken?.instrument ?? row.instrument];
  pen.text(tool, right, foot, SMALL, 'right');
  if (row.ways.length > 1) waysToTick(pen, left, foot - 4.6, wide, row, facts.taken);
}
