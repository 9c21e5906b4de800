import { type Box, project } from '../../../../shared-math/drawing/index.ts';
import { limitInForce } from '../../../../shared-math/findings/index.ts';
import type { ShaftDocument } from '../../../../shared-math/layout/index.ts';
import { type Route, routeOf } from '../../../../shared-math/shaft/index.ts';
import { toRadians } from '../../../../shared-math/units/index.ts';
import { Flow, flowEvenly } from '../../flow/flow.ts';
import type { PageFrame } from '../../flow/page-frame.ts';
import { type CarView, frameOf, pointOnPage } from '../../pens/car-view.ts';
import { WHITE } from '../../pens/colours.ts';
import type { PrintPen } from '../../pens/print-pen.ts';
import { scaleFor, scaleWords } from '../../pens/scales.ts';
import { DIMENSION, HAIR } from '../../pens/styles.ts';
import { viewSigns } from '../../pens/view-signs.ts';
import { angle } from '../figures.ts';
import type { SheetModel } from '../sheet-model.ts';
import { paintView } from './arrangement-page.ts';
import { clockBlocks, cutBlocks, fitBlocks, routeBlocks, stepBlocks, torqueBlocks } from './shaft-blocks.ts';

/** mm of the car shown around the shaft. */
const ABOUT = 95;

/** What a view shows of the shaft: all its points and some of the car around them. */
function shownOf(view: 'side' | 'top', shaft: ShaftDocument): Box {
  const places = [shaft.column.end, shaft.box.end, ...shaft.joints.map(({ centre }) => centre)].map((at) =>
    project(view, at),
  );
  const rights = places.map(([right]) => right);
  const downs = places.map(([, down]) => down);
  return {
    left: Math.min(...rights) - ABOUT,
    right: Math.max(...rights) + ABOUT,
    top: Math.min(...downs) - ABOUT,
    bottom: Math.max(...downs) + ABOUT,
  };
}

/** A joint's name and true angle beside it, off the shaft's line. */
function jointLabels(pen: PrintPen, view: CarView, route: Route): void {
  route.joints.forEach(({ centre, angle: true_ }, i) => {
    const [x, y] = pointOnPage(view, centre);
    const words = `joint ${i + 1}, ${angle(true_)}`;
    const wide = pen.widthOf(words, DIMENSION);
    const [left, top, right, bottom] = frameOf(view);
    // Above and below by turns, where there is room.
    const up = y - 12 < top ? 1 : y + 12 > bottom ? -1 : i % 2 === 0 ? -1 : 1;
    const at = Math.max(left + 1, Math.min(right - wide - 1, x - wide / 2));
    const base = y + up * 9 + (up > 0 ? 2 : 0);
    pen.line(x, y + up * 2.4, x, base + (up > 0 ? -2.6 : 0.8), HAIR);
    pen.rect(at - 0.6, base - 2.4, wide + 1.2, 3.2, { width: 0.01, colour: WHITE }, WHITE);
    pen.text(words, at, base, DIMENSION);
  });
}

/** The shaft drawn from above and from the side, the top view above, with its route and clocking beside it. */
function drawnPage(pageFrame: PageFrame, model: SheetModel, shaft: ShaftDocument, route: Route): void {
  const { pen } = pageFrame;
  const views = { top: shownOf('top', shaft), side: shownOf('side', shaft) };
  const room = pageFrame.roomBelowTitle(true);
  const wide = room.width * 0.52;
  const gap = 14;
  const tall = views.top.bottom - views.top.top + views.side.bottom - views.side.top;
  const scale = scaleFor(model.style.unit, views.side.right - views.side.left, tall, {
    width: wide,
    height: room.height - gap - 5,
  });
  const area = pageFrame.open(
    { title: 'Steering shaft, route', scale: scaleWords(scale), lying: true, projection: true },
    'From the column to the box; angles are those in space',
  );
  const height = ({ top, bottom }: Box) => (bottom - top) / scale;
  const spare = (area.height - height(views.top) - height(views.side) - gap) / 2;
  const x = area.x + (wide - (views.side.right - views.side.left) / scale) / 2 - views.side.left / scale;
  const top = area.y + Math.max(3, spare);
  const placed: CarView[] = [
    { view: 'top', shown: views.top, scale, x, y: top - views.top.top / scale },
    { view: 'side', shown: views.side, scale, x, y: top + height(views.top) + gap - views.side.top / scale },
  ];
  for (const view of placed) {
    paintView(pen, model, view);
    viewSigns(pen, view, model.style.unit, { above: 3, piece: true });
    jointLabels(pen, view, route);
  }
  const beside = { ...area, x: area.x + wide + 9, width: area.width - wide - 9 };
  new Flow(pageFrame, { title: 'Steering shaft, route', lying: true }, 2, '', { first: [beside] }).put(
    ...routeBlocks(model, shaft, route),
    ...clockBlocks(shaft, route),
  );
}

/** The steering shaft: its route drawn and described, then how it is made. Undefined if the layout has none. */
export function shaftPages(pageFrame: PageFrame, model: SheetModel): void {
  const { shaft } = model.layout;
  if (!shaft) return;
  const limit = (name: 'jointSingle' | 'jointDouble') =>
    toRadians(limitInForce(name, model.job.limits ?? {}).value);
  const route = routeOf(shaft, { single: limit('jointSingle'), double: limit('jointDouble') });
  drawnPage(pageFrame, model, shaft, route);
  flowEvenly(
    pageFrame,
    { title: 'Steering shaft, making', lying: true },
    2,
    'In this order; what is missing is asked for, never guessed',
    [
      ...cutBlocks(model, shaft, route),
      ...fitBlocks(model, shaft, route),
      ...stepBlocks(model, shaft, route),
      ...torqueBlocks(model, shaft),
    ],
  );
}
