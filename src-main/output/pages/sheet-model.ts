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
  /** What the views show, in their own planes, mm. */
  readonly shown: Record<View, Box>;
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

/** mm shown around what is drawn, and how far up, ahead and behind what is drawn is followed before it is broken off. */
const AROUND = 30;
const HIGHEST = 1250;
const FARTHEST = { ahead: 1100, behind: 2600 } as const;

/**
 * What the views show, in their own planes: all that is drawn, obstacles and column with it. What is farther off than a
 * front end reaches is broken off there; a hardpoint never is. mm.
 */
function shownOf(points: readonly Hardpoint[], drawing: Drawing, placed: Float64Array): Record<View, Box> {
  const boxes = viewBoxes(drawing, placed);
  const places = points.map(({ at }) => at);
  const ahead = Math.min(-boxes.side.left, Math.max(FARTHEST.ahead, ...places.map(([x]) => x))) + AROUND;
  const behind = Math.min(boxes.side.right, Math.max(FARTHEST.behind, ...places.map(([x]) => -x))) + AROUND;
  const up = Math.min(-boxes.side.top, Math.max(HIGHEST, ...places.map((at) => at[2]))) + AROUND;
  const out = Math.max(-boxes.top.top, boxes.top.bottom) + AROUND;
  return {
    side: { left: -ahead, right: behind, top: -up, bottom: AROUND },
    top: { left: -ahead, right: behind, top: -out, bottom: out },
    front: { left: -out, right: out, top: -up, bottom: AROUND },
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
    shown: shownOf(numberedPoints(document), drawing, placed),
    points,
    datum: railDatum(layout),
    style,
    length,
    other,
    both: (mm) => `${length(mm)} (${other(mm)})`,
  };
}
