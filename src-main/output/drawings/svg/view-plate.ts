import { holdTravel } from '../../../../shared-math/aim/index.ts';
import { arcsDetail } from '../../../../shared-math/detail/index.ts';
import {
  arrangeSheet,
  joined,
  moved,
  VIEWS,
  type View,
  viewBoxes,
} from '../../../../shared-math/drawing/index.ts';
import { MM_PER_INCH } from '../../../../shared-math/units/index.ts';
import { onePerNumber, pointName } from '../../pages/points.ts';
import { outlinesOf, roomsOf, roomsWords, shownWith } from '../../pages/rooms.ts';
import { paintView } from '../../pages/sheet/arrangement-page.ts';
import { measure, measuredHeight, measuredView } from '../../pages/sheet/measured-views.ts';
import { type SheetModel, sheetModelOf } from '../../pages/sheet-model.ts';
import { balloons } from '../../pens/balloons.ts';
import { type CarView, centredView, pointOnPage } from '../../pens/car-view.ts';
import { INK } from '../../pens/colours.ts';
import { lineHeight } from '../../pens/print-pen.ts';
import { scaleFor } from '../../pens/scales.ts';
import { BODY, BODY_BOLD, COLUMN, SMALL } from '../../pens/styles.ts';
import type { SvgPen } from '../../pens/svg-pen.ts';
import { brokenInto, writeLines } from '../../pens/text-lines.ts';
import { type DrawingJob, isAtRide } from '../job.ts';
import { sceneOf } from '../scene.ts';
import { arcsBeside, arcsInView, BESIDE_ARCS } from './arcs-beside.ts';
import { drawRooms } from './drawn-rooms.ts';
import { openPlate, scaleRule } from './plate.ts';

/** mm of paper that three views may take, and what stands between them. */
const ROOM_OF_THREE = { width: 400, height: 260 };
const BETWEEN = 12;
/** mm of paper that a view's car may take, and what its figures take beside it. */
const ROOM = { width: 320, height: 190 };
const FIGURES = 80;
const RULE = 9;
const STEP = lineHeight(BODY.size) + 0.5;
/** Columns of the table of points, mm from the left of its half. */
const COLUMNS = { number: 5, name: 8, x: 88, y: 112, z: 136 };

/** The sheet's model with its car in the drawing's pose. */
function matterInPose(job: DrawingJob): SheetModel {
  const model = sheetModelOf({ ...job, kind: 'sheet', paper: 'a4', date: new Date(0) });
  const { placed, points } = sceneOf(job);
  return {
    ...model,
    placed,
    points: model.points.map((point) => ({
      ...point,
      at: points.find(({ id }) => id === point.id)?.at ?? point.at,
    })),
  };
}

/** A dot at each hardpoint that a view shows, in a group of its own with its id: `side-steering.box.pitmanBall`. */
function hardpointMarks(pen: SvgPen, job: DrawingJob, view: CarView): void {
  pen.named(`${view.view}-hardpoints`, () => {
    for (const { id, at } of sceneOf(job).points) {
      const [x, y] = pointOnPage(view, at);
      pen.named(`${view.view}-${id}`, () => pen.circle(x, y, 0.35, undefined, INK));
    }
  });
}

/** The points in the car's own frame, in two columns: mirrored ones once at ride height, where they mirror. */
function table(pen: SvgPen, model: SheetModel, job: DrawingJob, x: number, y: number, width: number): void {
  const rows = tableRows(model, job);
  const half = Math.ceil(rows.length / 2);
  const per = job.unit === 'in' ? MM_PER_INCH : 1;
  const figure = (mm: number) => (mm / per).toFixed(job.unit === 'in' ? 3 : 1).replace(/^-(0\.0+)$/, '$1');
  for (const column of rows.length > 1 ? [0, 1] : [0]) {
    const left = x + (column * width) / 2;
    for (const axis of ['x', 'y', 'z'] as const)
      pen.text(`${axis}, ${job.unit}`, left + COLUMNS[axis], y + 3, COLUMN, 'right');
  }
  rows.forEach((point, i) => {
    const left = x + (i < half ? 0 : width / 2);
    const base = y + 3 + ((i % half) + 1.1) * STEP;
    pen.text(String(point.number), left + COLUMNS.number, base, BODY_BOLD, 'right');
    pen.text(isAtRide(job) ? pointName(point) : point.name, left + COLUMNS.name, base, BODY);
    (['x', 'y', 'z'] as const).forEach((axis, at) => {
      pen.text(figure(point.at[at] as number), left + COLUMNS[axis], base, BODY, 'right');
    });
  });
}

const tableRows = (model: SheetModel, job: DrawingJob) =>
  isAtRide(job) ? onePerNumber(model) : model.points;

/** A view with its points numbered; gives where the numbers stand. */
function numberedView(pen: SvgPen, model: SheetModel, view: CarView) {
  paintView(pen, model, view);
  return balloons(pen, view, model.points);
}

/**
 * A view to a stated scale: at ride height with the distances that a builder measures, in another pose with the
 * points numbered; below it the points in the car's own frame. Beside the view in which they are judged, the detail of the arcs.
 */
export function viewPlate(pen: SvgPen, job: DrawingJob, view: View): void {
  const matter = matterInPose(job);
  const rooms = roomsOf(matter);
  const outlines = rooms ? outlinesOf(rooms, view) : [];
  const shown = shownWith(matter.shown[view], outlines);
  const model: SheetModel = { ...matter, shown: { ...matter.shown, [view]: shown } };
  const arcs = arcsDetail(holdTravel(model.frontEnd), job.unit);
  const judged = arcs.view === view;
  const scale = scaleFor(job.unit, shown.right - shown.left, shown.bottom - shown.top, ROOM);
  const across = (shown.right - shown.left) / scale;
  const width = Math.max(across + FIGURES, 2 * COLUMNS.z + 12);
  const probe = measuredView(model, view, scale, { x: 0, y: 0, width, height: 0 }, true);
  const high = isAtRide(job) ? measuredHeight(probe) : (shown.bottom - shown.top) / scale + RULE;
  const below = belowViews(pen, model, job, roomsWords(model, rooms), width);
  const height = high + below.height;
  const room = { width: judged ? width + BESIDE_ARCS : width, height };
  const area = { ...openPlate(pen, room, job, scale), width };
  const drawn = isAtRide(job)
    ? measuredView(model, view, scale, area, true)
    : centredView(view, shown, scale, { ...area, height: high });
  const numbers = isAtRide(job) ? measure(pen, model, drawn) : numberedView(pen, model, drawn);
  hardpointMarks(pen, job, drawn);
  drawRooms(pen, drawn, outlines);
  if (judged) arcsInView(pen, drawn, arcs, numbers);
  below.draw(area.x, area.y + high, scale);
  if (judged) arcsBeside(pen, model, arcs, { x: area.x + width, y: area.y, height });
}

/** The three views as they stand on a sheet in third-angle projection, with the points numbered and their table below. */
export function viewsPlate(pen: SvgPen, job: DrawingJob): void {
  const model = matterInPose(job);
  const rooms = roomsOf(model);
  const boxes = viewBoxes(model.drawing, model.placed);
  const views = VIEWS.map((view) => {
    const outlines = rooms ? outlinesOf(rooms, view) : [];
    return { view, outlines, shown: shownWith(boxes[view], outlines) };
  });
  const whole = Object.fromEntries(views.map(({ view, shown }) => [view, shown])) as typeof boxes;
  const wide = whole.front.right - whole.front.left + whole.side.right - whole.side.left;
  const tall = whole.top.bottom - whole.top.top + whole.side.bottom - whole.side.top;
  const arcs = arcsDetail(holdTravel(model.frontEnd), job.unit);
  const scale = scaleFor(job.unit, wide, tall, ROOM_OF_THREE);
  const { origin } = arrangeSheet(whole, BETWEEN * scale);
  const all = VIEWS.map((view) => moved(whole[view], origin[view])).reduce(joined);
  const width = Math.max((all.right - all.left) / scale, 2 * COLUMNS.z + 12);
  const high = (all.bottom - all.top) / scale;
  const below = belowViews(pen, model, job, roomsWords(model, rooms), width);
  const height = high + below.height;
  const area = openPlate(pen, { width: width + BESIDE_ARCS, height }, job, scale);
  for (const { view, outlines, shown } of views) {
    const [right, down] = origin[view];
    const drawn = {
      view,
      shown,
      scale,
      x: area.x + (right - all.left) / scale,
      y: area.y + (down - all.top) / scale,
    };
    const numbers = numberedView(pen, model, drawn);
    hardpointMarks(pen, job, drawn);
    drawRooms(pen, drawn, outlines);
    if (arcs.view === view) arcsInView(pen, drawn, arcs, numbers);
  }
  below.draw(area.x, area.y + high, scale);
  arcsBeside(pen, model, arcs, { x: area.x + width, y: area.y, height });
}

/** What stands below the views: the rule, what the rooms are, and the table of points. */
function belowViews(pen: SvgPen, model: SheetModel, job: DrawingJob, rooms: string, width: number) {
  const lines = rooms ? brokenInto(pen, `${rooms}.`, SMALL, width) : [];
  const said = lines.length > 0 ? lines.length * lineHeight(SMALL.size) + 2 : 0;
  const rows = Math.ceil(tableRows(model, job).length / 2);
  return {
    height: RULE + 4 + said + (rows + 1.5) * STEP,
    draw: (x: number, y: number, scale: number) => {
      scaleRule(pen, x, y + 4, job, scale);
      writeLines(pen, lines, x, y + RULE, SMALL);
      table(pen, model, job, x, y + RULE + 2 + said, width);
    },
  };
}
