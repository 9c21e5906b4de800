import type { View } from '../../../../shared-math/drawing/index.ts';
import type { Point } from '../../../../shared-math/geometry/points.ts';
import { balloons, type Standing } from '../../pens/balloons.ts';
import { type CarView, frameOf, pointOnPage } from '../../pens/car-view.ts';
import { INK, WHITE } from '../../pens/colours.ts';
import { type Ordinate, originSign, stripBelow, stripBeside } from '../../pens/ordinates.ts';
import type { Area } from '../../pens/papers.ts';
import type { PrintPen } from '../../pens/print-pen.ts';
import { scaleFor } from '../../pens/scales.ts';
import { DIMENSION, LABEL } from '../../pens/styles.ts';
import { viewSigns } from '../../pens/view-signs.ts';
import { axleLine, isGuessed, usually } from '../points.ts';
import type { SheetModel } from '../sheet-model.ts';
import { paintView } from './arrangement-page.ts';

// A view with its points numbered and measured from what a builder can lay a rule to.

/** mm beside and below a view for its figures. */
const BESIDE = 31;
const BELOW = 34;
const ABOVE = 10;
/** mm from a view's frame up to its name, above the names of its datum lines. */
const SIGNS = 5.4;

const DATUM = { width: 0.2, colour: INK, dash: [5, 1.2, 1, 1.2] };

/** How large a view can be drawn in an area with its strips, as the number that the car is divided by. */
export function measuredScale(model: SheetModel, view: View, area: Area, right: boolean): number {
  const { left, top, right: end, bottom } = model.shown[view];
  return scaleFor(model.style.unit, end - left, bottom - top, {
    width: area.width - BESIDE * (right ? 2 : 1),
    height: area.height - BELOW - ABOVE,
  });
}

/** Where the view lies in its area: at the top, with room for its strips. */
export function measuredView(
  model: SheetModel,
  view: View,
  scale: number,
  area: Area,
  right: boolean,
): CarView {
  const shown = model.shown[view];
  const room = area.width - BESIDE * (right ? 2 : 1);
  const spare = Math.max(0, room - (shown.right - shown.left) / scale) / 2;
  return {
    view,
    shown,
    scale,
    x: area.x + BESIDE + spare - shown.left / scale,
    y: area.y + ABOVE - shown.top / scale,
  };
}

/** mm that a measured view takes from its area's top, strips included. */
export function measuredHeight(view: CarView): number {
  return (view.shown.bottom - view.shown.top) / view.scale + ABOVE + BELOW;
}

function datumLine(pen: PrintPen, view: CarView, along: 0 | 1, at: Point, words: string): void {
  const [left, top, right, bottom] = frameOf(view);
  const [x, y] = pointOnPage(view, at);
  const style = { ...DIMENSION, size: 7.4 };
  const label = (at: number, base: number) => {
    pen.rect(at - 0.4, base - 2.2, pen.widthOf(words, style) + 0.8, 3, { width: 0.01, colour: WHITE }, WHITE);
    pen.text(words, at, base, style);
  };
  if (along === 1) {
    pen.line(x, top - 0.6, x, bottom + 3, DATUM);
    pen.text(words, x, top - 1.2, style, 'centre');
  } else {
    pen.line(left - 3, y, right + 3, y, DATUM);
    label(left + 1, y - 1.1);
  }
}

/** Draws a view with numbered points and its distances: below, at the left and at the right; gives where the numbers stand. */
export function measure(pen: PrintPen, model: SheetModel, view: CarView): Standing[] {
  const { points, length, datum } = model;
  const line = axleLine(model);
  paintView(pen, model, view);
  const ordinates = (words: (at: Point) => string): Ordinate[] =>
    points.map(({ at, number }) => ({ at: pointOnPage(view, at), words: words(at), number }));
  const fromAxle = (at: Point) => usually(length, line - at[0], 'ahead');
  const fromMiddle = (at: Point) => length(Math.abs(at[1]));
  const aboveGround = (at: Point) => length(at[2]);

  const fromAbove = view.view === 'top';
  const side = view.view === 'side';
  const along = view.view === 'front' ? fromMiddle : fromAxle;
  const below = view.view === 'front' ? 'FROM THE CAR’S CENTRE LINE' : 'BEHIND THE AXLE CENTRE LINE';
  const foot = stripBelow(pen, view, ordinates(along), below);
  datumLine(pen, view, 1, [line, 0, 0], view.view === 'front' ? 'car’s centre line' : 'axle centre line');
  if (fromAbove) {
    stripBeside(pen, view, ordinates(fromMiddle), 'FROM THE CENTRE LINE', 'left');
    datumLine(pen, view, 0, [0, 0, 0], 'car’s centre line');
  } else {
    stripBeside(pen, view, ordinates(aboveGround), 'ABOVE GROUND', 'left');
    const top = datum.top;
    if (top !== undefined) {
      const fromTop = (at: Point) => usually(length, top - at[2], 'above');
      stripBeside(pen, view, ordinates(fromTop), 'BELOW FRAME TOP', 'right');
      datumLine(pen, view, 0, [line, 0, top], 'frame top');
      originSign(pen, pointOnPage(view, [side ? line : 0, 0, top]));
    }
  }
  originSign(pen, pointOnPage(view, [view.view === 'front' ? 0 : line, 0, 0]));
  viewSigns(pen, view, model.style.unit, {
    above: SIGNS,
    barAt: foot,
    barFrom: frameOf(view)[0] + pen.widthOf(below, LABEL) + 4,
  });
  return balloons(
    pen,
    view,
    points.map((point) => ({ ...point, guessed: isGuessed(model, point) })),
  );
}
