import {
  type Box,
  type Drawing,
  drawLayout,
  placeAtRide,
  roomFor,
  type View,
  viewBoxes,
} from '../../../shared-math/drawing/index.ts';
import {
  type Analysis,
  analyse,
  type Finding,
  findings,
  withClearances,
} from '../../../shared-math/findings/index.ts';
import {
  type Hardpoint,
  type Layout,
  type NumberedPoint,
  numberedPoints,
  resolveLayout,
} from '../../../shared-math/layout/index.ts';
import { type FrontEnd, prepareFrontEnd } from '../../../shared-math/linkage/index.ts';
import { formatLength, type LengthStyle } from '../../../shared-math/units/index.ts';
import type { PrintJob } from './job.ts';
import { type RailDatum, railDatum } from './rail-datum.ts';

/** What the sheet is made of, worked out once. mm and rad; words in the job's unit. */
export interface SheetModel {
  readonly job: PrintJob;
  readonly layout: Layout;
  readonly frontEnd: FrontEnd;
  readonly analysis: Analysis;
  readonly findings: readonly Finding[];
  readonly drawing: Drawing;
  /** Where the drawing's points are at ride height. */
  readonly placed: Float64Array;
  /** What the measured views show, in their own planes, mm: the front end, and what of the shaft lies beside it. */
  readonly shown: Record<View, Box>;
  /** What the general arrangement shows: the shaft with all of its column's end too. */
  readonly whole: Record<View, Box>;
  readonly points: readonly NumberedPoint[];
  readonly datum: RailDatum;
  readonly style: LengthStyle;
  /** A length in the customer's unit. */
  readonly length: (mm: number) => string;
  /** The same in the other unit. */
  readonly other: (mm: number) => string;
  /** Both: "3 1/4 in (82.6 mm)". */
  readonly both: (mm: number) => string;
}

/** mm shown beyond the last thing that matters, and above and ahead at the most. */
const AROUND = 60;
const HIGHEST = 900;
const AHEAD_OF_TYRE = 110;

/** What the views show: the whole front end, its shaft and box; rails and engine only as far as they lie beside them. */
function shownOf(
  layout: Layout,
  points: readonly Hardpoint[],
  drawing: Drawing,
  placed: Float64Array,
  whole: boolean,
) {
  const boxes = viewBoxes(drawing, placed);
  const { shaft, car, axle } = layout;
  const places = [
    ...points.map(({ at }) => at),
    ...(shaft ? [shaft.column.end, shaft.box.end, ...shaft.joints.map(({ centre }) => centre)] : []),
  ];
  const front = axle.left.wheelCentre[0] + car.tyreRadius;
  const ahead = Math.min(
    Math.max(front, ...places.map(([x]) => x)) + AHEAD_OF_TYRE,
    -boxes.side.left + AROUND / 2,
  );
  const behind = whole
    ? Math.min(...places.map(([x]) => x), -front) - 1.6 * AROUND
    : Math.max(Math.min(...places.map(([x]) => x), -front) - 1.6 * AROUND, -boxes.side.right - AROUND / 2);
  const up = Math.min(
    Math.max(
      2 * car.tyreRadius,
      ...places.map((at) => at[2]),
      ...layout.rails.flatMap(({ path }) => path.map((at) => at[2])),
    ) +
      1.5 * AROUND,
    // The column may rise out of the picture; a point that is measured never does.
    Math.max(HIGHEST, 2 * car.tyreRadius + AROUND, ...points.map(({ at }) => at[2] + AROUND)),
  );
  const out = Math.max(-boxes.top.top, boxes.top.bottom) + AROUND / 2;
  const down = AROUND / 2;
  return {
    side: { left: -ahead, right: -behind, top: -up, bottom: down },
    top: { left: -ahead, right: -behind, top: -out, bottom: out },
    front: { left: -out, right: out, top: -up, bottom: down },
  };
}

/** Works out everything that a page may show. Pure. */
export function sheetModelOf(job: PrintJob): SheetModel {
  const { document } = job;
  const layout = resolveLayout(document);
  const frontEnd = prepareFrontEnd(layout);
  const analysis = withClearances(analyse(layout, frontEnd));
  const style: LengthStyle = { unit: job.unit, fraction: job.fraction };
  const otherStyle: LengthStyle =
    job.unit === 'in' ? { unit: 'mm', fraction: 0 } : { unit: 'in', fraction: job.fraction || 32 };
  const drawing = drawLayout(layout);
  const placed = roomFor(drawing);
  placeAtRide(drawing, placed);
  // The shaft's own points stand in its route's table, by its joints' names.
  const points = numberedPoints(document).filter(({ id }) => !id.startsWith('shaft.'));
  const length = (mm: number) => formatLength(mm, style);
  const other = (mm: number) => formatLength(mm, otherStyle);
  return {
    job,
    layout,
    frontEnd,
    analysis,
    findings: findings(analysis, style, job.limits),
    drawing,
    placed,
    shown: shownOf(layout, points, drawing, placed, false),
    whole: shownOf(layout, points, drawing, placed, true),
    points,
    datum: railDatum(layout),
    style,
    length,
    other,
    both: (mm) => `${length(mm)} (${other(mm)})`,
  };
}
