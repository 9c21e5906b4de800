import { ROW_OK, sweepTravel, toeLength, turningCircle } from '../../../../shared-math/sweep/index.ts';
import { BIND_SHOWN_FROM } from '../../../../shared-math/tolerances.ts';
import {
  formatDecimal,
  formatDegrees,
  formatSpan,
  formatToeLength,
  lengthBeside,
  MM_PER_INCH,
  toDegrees,
} from '../../../../shared-math/units/index.ts';
import { lockWords } from '../../../../shared-math/words/index.ts';
import { type Block, heading, paragraph } from '../../flow/block.ts';
import { Flow, heightOf } from '../../flow/flow.ts';
import type { PageFrame } from '../../flow/page-frame.ts';
import { facts, table } from '../../flow/table.ts';
import { INK, SOFT, STEEL } from '../../pens/colours.ts';
import type { Area } from '../../pens/papers.ts';
import { plot } from '../../pens/plot.ts';
import type { PrintPen, StrokeStyle } from '../../pens/print-pen.ts';
import { SMALL } from '../../pens/styles.ts';
import {
  angle,
  bumpSteer,
  lockWheels,
  NONE,
  NOT_KNOWN,
  overallRatio,
  parkingWords,
  returnWords,
  spanBoth,
  steers,
  turnsWords,
} from '../figures.ts';
import type { SheetModel } from '../sheet-model.ts';
import { brakingBlocks } from './braking-blocks.ts';

// Steer and toe over the travel, and the whole turn of the handwheel, as curves and as figures.

const LEFT_LINE: StrokeStyle = { width: 0.5, colour: STEEL };
const RIGHT_LINE: StrokeStyle = { width: 0.5, colour: INK, dash: [2.2, 1.2] };
const THIN_LINE: StrokeStyle = { width: 0.35, colour: SOFT, dash: [0.5, 1] };

const POSES_PRINTED = 11;
/** mm that a curve takes at the least. */
const LEAST_CURVE = 36;

const degreesOf = (column: Float64Array, status?: Uint8Array) =>
  [...column].map((value, i) => (status && status[i] !== ROW_OK ? Number.NaN : toDegrees(value)));

/** "3 in droop", "ride height", "3 in bump". */
export function heaveWords({ length }: SheetModel, heave: number): string {
  const size = length(Math.abs(heave));
  return size === length(0) ? 'ride height' : `${size} ${heave > 0 ? 'bump' : 'droop'}`;
}

/** The travel as an axis: its poses, and the words at its ends and at ride height. */
function travelAxis(model: SheetModel) {
  const at = [...model.analysis.heave.at];
  const marks = [
    at[0] as number,
    ...((at[0] as number) < 0 && (at[at.length - 1] as number) > 0 ? [0] : []),
    at[at.length - 1] as number,
  ];
  return { at, marks: [...new Set(marks)].map((value) => [value, heaveWords(model, value)] as const) };
}

/** What the wheels do beside their place at ride height, and both together. */
export function steerPlot(pen: PrintPen, model: SheetModel, area: Area): void {
  const { heave } = model.analysis;
  const ride = heave.at.findIndex((value) => Math.abs(value) < 1e-9);
  const less = (column: Float64Array) => {
    const from = ride >= 0 ? (column[ride] as number) : 0;
    return [...column].map((value, i) => (heave.status[i] === ROW_OK ? toDegrees(value - from) : Number.NaN));
  };
  plot(pen, area, {
    title: 'Bump steer',
    unit: 'degrees from ride height, left positive',
    ...travelAxis(model),
    least: 0.4,
    curves: [
      { name: 'left wheel', values: less(heave.leftSteer), line: LEFT_LINE },
      { name: 'right wheel', values: less(heave.rightSteer), line: RIGHT_LINE },
      { name: 'mean', values: degreesOf(heave.bumpSteer, heave.status), line: THIN_LINE },
    ],
  });
}

/** Total toe-in as a length over the tyre. */
export function toePlot(pen: PrintPen, model: SheetModel, area: Area): void {
  const { heave } = model.analysis;
  const { unit } = model.style;
  const per = unit === 'in' ? MM_PER_INCH : 1;
  const wheel = model.layout.car.tyreRadius;
  plot(pen, area, {
    title: 'Total toe-in',
    unit: `${unit === 'in' ? 'inches' : 'mm'} over the tyre’s diameter`,
    ...travelAxis(model),
    least: unit === 'in' ? 0.1 : 2,
    curves: [
      {
        name: 'both wheels together',
        values: [...heave.totalToeIn].map((toe, i) =>
          heave.status[i] === ROW_OK ? (2 * toeLength(toe / 2, wheel)) / per : Number.NaN,
        ),
        line: LEFT_LINE,
      },
    ],
  });
}

/** The wheels through the whole turn of the handwheel, and where the outer one would be after Ackermann. */
export function turnPlot(pen: PrintPen, model: SheetModel, area: Area): void {
  const { turn } = model.analysis;
  if (!steers(turn)) {
    pen.text(
      'The linkage cannot be steered at ride height: there is no sweep of the turn.',
      area.x,
      area.y + 6,
      SMALL,
    );
    return;
  }
  const at = degreesOf(turn.handwheel);
  const [from, to] = [at[0] as number, at[at.length - 1] as number];
  const lock = (value: number) =>
    `${formatDecimal(Math.abs(value) / 360, 2)} turns ${value > 0 ? 'left' : 'right'}`;
  plot(pen, area, {
    title: 'Steering sweep',
    unit: 'wheels in degrees, left positive',
    at,
    mirrored: true,
    marks: [
      [Math.min(from, to), lock(Math.min(from, to))],
      [0, 'straight ahead'],
      [Math.max(from, to), lock(Math.max(from, to))],
    ],
    least: 10,
    curves: [
      { name: 'left wheel', values: degreesOf(turn.leftSteer), line: LEFT_LINE },
      { name: 'right wheel', values: degreesOf(turn.rightSteer), line: RIGHT_LINE },
      {
        name: 'outer after Ackermann',
        values: at.map((_, i) => {
          const left = turn.leftSteer[i] as number;
          const right = turn.rightSteer[i] as number;
          const side = Math.sign(left + right);
          return toDegrees((side > 0 ? right : left) - side * (turn.ackermannError[i] as number));
        }),
        line: THIN_LINE,
      },
    ],
  });
}

/** The travel in a sentence: worst, slope, roll, and what has to give. */
function travelWords(model: SheetModel): string {
  const { heaveSummary, rollSummary, heave } = model.analysis;
  const bump = bumpSteer(model);
  if (!bump) return 'The linkage does not reach at ride height.';
  const slope =
    model.style.unit === 'in'
      ? `${angle(heaveSummary.slopeAtRide * MM_PER_INCH, 3)} per inch`
      : `${angle(heaveSummary.slopeAtRide * 25, 3)} per 25 mm`;
  const bind = Math.max(...heave.bind);
  return [
    `Worst bump steer ${bump.angle}${bump.way && ` ${bump.way}`}, ${bump.atTyre}, at ${heaveWords(model, heaveSummary.worstAt)}; slope at ride height ${slope}.`,
    `With one wheel over a bump, at the worst ${bump.oneWheel}: ${bump.wheels}.`,
    `Roll steer ${formatDegrees(rollSummary.slopeAtRide, 3)} for each degree of roll.`,
    bind >= BIND_SHOWN_FROM
      ? `Bushings and brackets give ${lengthBeside(bind, [0], model.style)} at the most.`
      : 'No link binds in bump and droop.',
  ].join(' ');
}

/** Poses over the travel with their angles: every figure as the command line's `sweep` gives it. */
function travelTable(model: SheetModel): Block {
  const { frontEnd, layout, style } = model;
  const { bump, rebound: droop } = layout.travel;
  const sweep = sweepTravel(frontEnd, 'heave', -droop, bump, POSES_PRINTED, 0);
  const rows = [...sweep.at].map((heave, i) => {
    if (sweep.status[i] !== ROW_OK) return [heaveWords(model, heave), 'not reached', '', '', '', ''];
    const toe = sweep.totalToeIn[i] as number;
    return [
      heaveWords(model, heave),
      angle(sweep.bumpSteer[i] as number, 3),
      angle(toe, 3),
      formatToeLength(2 * toeLength(toe / 2, layout.car.tyreRadius), style.unit),
      angle(sweep.leftCaster[i] as number, 2),
      angle(sweep.rightCaster[i] as number, 2),
    ];
  });
  return table(
    [
      { head: 'Travel', width: 1.7 },
      { head: 'Bump steer', width: 1.1, align: 'right' },
      { head: 'Total toe-in', width: 1.1, align: 'right' },
      { head: 'front to rear', width: 1, align: 'right' },
      { head: 'Caster left', width: 1, align: 'right' },
      { head: 'Caster right', width: 1, align: 'right' },
    ],
    rows,
  );
}

/** What the circle between kerbs assumes. */
const CIRCLE_WORDS =
  'by the mean of both wheels’ cotangents: where Ackermann is not met, the tyres scrub between the circles of each wheel alone';

function turnBlocks(model: SheetModel): Block[] {
  const { layout, analysis } = model;
  const { turn } = analysis;
  if (!steers(turn)) return [paragraph('No turn: the linkage does not reach.')];
  const ends = [turn.left, turn.right].map((lock) => {
    const { inner, outer, idealOuter } = lockWheels(layout, lock);
    const circle = turningCircle(layout, lock);
    return {
      cause: lockWords(lock.cause, layout.steering.stopAngle),
      turns: `${formatDecimal(Math.abs(lock.handwheel) / (2 * Math.PI), 2)} turns`,
      inner: angle(inner),
      outer: angle(outer),
      ideal: angle(idealOuter),
      kerbs: circle ? spanBoth(model, circle.betweenKerbs) : NONE,
      alone: circle
        ? `${formatSpan(circle.byInner, model.style.unit)}, ${formatSpan(circle.byOuter, model.style.unit)}`
        : NONE,
      walls: circle?.betweenWalls === undefined ? NOT_KNOWN : spanBoth(model, circle.betweenWalls),
    };
  });
  const row = (what: string, key: keyof (typeof ends)[number]) => [
    what,
    ends[0]?.[key] ?? NONE,
    ends[1]?.[key] ?? NONE,
  ];
  return [
    table(
      [
        { head: 'At full lock', width: 1.15 },
        { head: 'to the left', width: 1.1, align: 'right' },
        { head: 'to the right', width: 1.1, align: 'right' },
      ],
      [
        row('Turn ends at', 'cause'),
        row('Handwheel', 'turns'),
        row('Inner wheel', 'inner'),
        row('Outer wheel', 'outer'),
        row('Outer wheel, Ackermann', 'ideal'),
        row('Circle between kerbs', 'kerbs'),
        row('by inner, by outer wheel alone', 'alone'),
        row('Circle between walls', 'walls'),
      ],
    ),
    facts(
      [
        ['Lock to lock', `${turnsWords(turn)} turns`],
        ['Overall ratio, straight ahead', overallRatio(turn)],
        ['Circles', CIRCLE_WORDS],
        ['Parking by hand, rough to a third', parkingWords(model)],
        ['Returns to straight by itself', returnWords(model)],
      ],
      0.3,
    ),
  ];
}

/** What the page is called; where it takes two, what follows says of which each is. */
const TITLE = 'Steer and toe';
/** mm between curves, and between columns. */
const GAP = 8;
const GUTTER = 10;

/** Curves in a row above columns of blocks, each beginning a column. The curves take what height the columns leave. */
function curvesAbove(
  pageFrame: PageFrame,
  model: SheetModel,
  title: string,
  plots: readonly (typeof steerPlot)[],
  columns: readonly { readonly width: number; readonly blocks: readonly Block[] }[],
): void {
  const { pen } = pageFrame;
  const facts = { title, lying: true };
  const area = pageFrame.open(facts, 'Whole travel and whole turn, each pose solved');
  const tables = Math.max(...columns.map(({ width, blocks }) => heightOf(pen, width, blocks))) + 4;
  const height = Math.max(LEAST_CURVE, area.height - tables);
  const width = (area.width - (plots.length - 1) * GAP) / plots.length;
  plots.forEach((draw, i) => {
    draw(pen, model, { x: area.x + i * (width + GAP), y: area.y, width, height });
  });
  let { x } = area;
  const first = columns.map((column) => {
    const place = { x, y: area.y + height + 4, width: column.width, height: area.height - height - 4 };
    x += column.width + GUTTER;
    return place;
  });
  const flow = new Flow(pageFrame, facts, 2, '', { first });
  for (const { blocks } of columns) {
    flow.nextColumn();
    flow.put(...blocks);
  }
}

/** The turn of the handwheel on a page of its own: its curve, and what it comes to beside it. */
function turnPage(pageFrame: PageFrame, model: SheetModel, turn: readonly Block[]): void {
  const facts = { title: `${TITLE} over the turn`, lying: true };
  const area = pageFrame.open(facts, 'Whole turn, each pose solved');
  const width = (area.width - GUTTER) / 2;
  turnPlot(pageFrame.pen, model, { ...area, width });
  const first = [{ ...area, x: area.x + width + GUTTER, width }];
  new Flow(pageFrame, facts, 2, '', { first }).put(...turn);
}

/** All on one page where it has room; else the turn on one of its own, so that neither is there for a few lines. */
export function curvesPage(pageFrame: PageFrame, model: SheetModel): void {
  const { pen } = pageFrame;
  const { width, height } = pageFrame.roomBelowTitle(true);
  const left = (width - GUTTER) * 0.52;
  const right = width - left - GUTTER;
  const travel = [heading('Over the travel'), travelTable(model), paragraph(travelWords(model))];
  const braking = brakingBlocks(model);
  const turn = [heading('Over the turn'), ...turnBlocks(model)];
  const tallest = Math.max(heightOf(pen, left, [...travel, ...braking]), heightOf(pen, right, turn)) + 4;
  if (tallest <= height - LEAST_CURVE) {
    const columns = [
      { width: left, blocks: [...travel, ...braking] },
      { width: right, blocks: turn },
    ];
    curvesAbove(pageFrame, model, TITLE, [steerPlot, toePlot, turnPlot], columns);
    return;
  }
  const columns = [
    { width: left, blocks: travel },
    { width: right, blocks: braking },
  ];
  curvesAbove(pageFrame, model, `${TITLE} over the travel`, [steerPlot, toePlot], columns);
  turnPage(pageFrame, model, turn);
}
