import { holdTravel } from '../../../../shared-math/aim/index.ts';
import {
  type ArcsDetail,
  arcsDetail,
  detailScaleWords,
  type GapTick,
  paperScaleFor,
  reachBetween,
} from '../../../../shared-math/detail/index.ts';
import { type Box, boxOf, project, type ViewPoint } from '../../../../shared-math/drawing/index.ts';
import { type LengthStyle, lengthBeside } from '../../../../shared-math/units/index.ts';
import type { PageFrame } from '../../flow/page-frame.ts';
import { isClear, type Standing } from '../../pens/balloons.ts';
import { type CarView, centredView, onPage } from '../../pens/car-view.ts';
import { INK, SOFT, STOP, WHITE } from '../../pens/colours.ts';
import type { Area } from '../../pens/papers.ts';
import {
  capHeight,
  lineHeight,
  type PrintPen,
  type StrokeStyle,
  type TextStyle,
} from '../../pens/print-pen.ts';
import { scaleFor, scaleWords } from '../../pens/scales.ts';
import { BODY, DIMENSION, HEADING, SMALL } from '../../pens/styles.ts';
import { brokenInto, writeLines } from '../../pens/text-lines.ts';
import { viewSigns } from '../../pens/view-signs.ts';
import type { SheetModel } from '../sheet-model.ts';
import { paintView } from './arrangement-page.ts';
import { heaveWords } from './curves-page.ts';

// The detail of the arcs: what the axle asks of the steering-arm ball and what the drag link allows it, drawn large.

const LETTER = 'A';
export const NO_ARCS = 'The axle has no pose over the travel: there are no arcs.';
const ASKED: StrokeStyle = { width: 0.5, colour: INK };
const ALLOWED: StrokeStyle = { width: 0.5, colour: STOP, dash: [2, 1.2] };
const THIN: StrokeStyle = { width: 0.16, colour: INK };
const GAP: StrokeStyle = { width: 0.25, colour: STOP };
const DETAIL_NAME: TextStyle = { ...HEADING, size: 11 };

/** Share of the page's width that view and words have, and mm between them and the detail. */
const LEFT_SHARE = 0.42;
const BETWEEN = 6;
/** mm: the view at the most, what the detail's name takes, and what words at its ticks take to each side. */
const VIEW_HIGH = 84;
const NAME_HIGH = 12;
const BESIDE = 35;
/** mm of a graduation to each side of the path, and of words off the lines. */
const GRADUATION = 1.4;
const OFF_LINES = 2.2;
/** mm: a gap below this is none in either unit's finest words. */
const NOTHING = 0.002;
/** mm of the car shown around what the arcs hang on. */
const AROUND = 70;

/** The piece of the car that the view shows: the wheel, and the drag link from ball to ball. */
function shownAround({ layout }: SheetModel, { view, circle }: ArcsDetail): Box {
  const { steering, axle, car } = layout;
  const wheel = axle[steering.dragLinkTo].wheelCentre;
  const { tyreRadius: r } = car;
  const places: ViewPoint[] = [
    ...[steering.dragLinkBall, steering.box.pitmanBall, steering.box.sectorCentre].map((at) =>
      project(view, at),
    ),
    project(view, [wheel[0] + r, wheel[1], wheel[2] + r]),
    project(view, [wheel[0] - r, wheel[1], wheel[2] - r]),
    [circle.centre[0], circle.centre[1] - circle.radius],
    [circle.centre[0], circle.centre[1] + circle.radius],
  ];
  const { left, top, right, bottom } = boxOf(places.flatMap((place) => [...place]));
  return {
    left: left - AROUND,
    top: top - AROUND,
    right: right + AROUND,
    bottom: Math.min(bottom + AROUND, 30),
  };
}

function circleOf([x, y]: ViewPoint, radius: number): number[] {
  return Array.from({ length: 72 }, (_, i) => {
    const angle = (2 * Math.PI * i) / 72;
    return [x + radius * Math.cos(angle), y + radius * Math.sin(angle)];
  }).flat();
}

/** Where the letter may stand about its circle, right and down: the first that no number covers. */
const CORNERS = [
  [-1, -1],
  [-1, 1],
  [1, -1],
  [1, 1],
] as const;

/** The circle in the view with its letter, on bare paper so that no line runs through it and off the numbers that stand there. */
export function circleInView(
  pen: PrintPen,
  view: CarView,
  { circle }: ArcsDetail,
  numbers: readonly Standing[] = [],
): void {
  const [x, y] = onPage(view, circle.centre);
  const radius = circle.radius / view.scale;
  pen.stroke(circleOf([x, y], radius), THIN, true);
  const [wide, cap] = [pen.widthOf(LETTER, DETAIL_NAME), capHeight(DETAIL_NAME.size)];
  const off = 0.71 * radius + 0.6;
  const rooms = CORNERS.map(([right, down]) => {
    const left = right < 0 ? x - off - wide : x + off;
    const base = down < 0 ? y - off : y + off + cap;
    return [left - 0.5, base - cap - 0.5, left + wide + 0.5, base + 0.5] as const;
  });
  const [left, top, right, bottom] =
    rooms.find((room) => isClear(numbers, room)) ?? (rooms[0] as (typeof rooms)[number]);
  pen.fill([left, bottom, right, bottom, right, top, left, top], WHITE);
  pen.text(LETTER, left + 0.5, bottom - 0.5, DETAIL_NAME);
}

/** "+7/16 in (10.9 mm)"; neither unit rounds a gap to nothing. */
export function gapWords({ style }: SheetModel, gap: number): string {
  // Sixteenths are too coarse for a gap between arcs.
  const inches: LengthStyle = { unit: 'in', fraction: style.fraction === 0 ? 0 : 32 };
  const millimetres: LengthStyle = { unit: 'mm', fraction: 0 };
  const [first, second] = style.unit === 'in' ? [inches, millimetres] : [millimetres, inches];
  const size = Math.abs(gap);
  if (size < NOTHING) return 'no gap';
  const words = [first, second].map((each) => lengthBeside(size, [0], each));
  return `${gap > 0 ? '+' : '−'}${words[0]} (${words[1]})`;
}

/** Path, arc and ticks at their scale, in the middle of an area. */
export function drawDetail(pen: PrintPen, model: SheetModel, detail: ArcsDetail, area: Area): number {
  const covered = boxOf([...detail.asked, ...detail.allowed].flatMap((place) => [...place]));
  const room = { width: area.width - 2 * BESIDE, height: area.height - NAME_HIGH - 4 };
  const times = paperScaleFor(covered.right - covered.left, covered.bottom - covered.top, room);
  const middle: ViewPoint = [area.x + area.width / 2, area.y + NAME_HIGH + room.height / 2];
  const place = ([x, y]: ViewPoint): ViewPoint => [
    middle[0] + times * (x - (covered.left + covered.right) / 2),
    middle[1] + times * (y - (covered.top + covered.bottom) / 2),
  ];
  const lineOf = (places: readonly ViewPoint[]) => places.flatMap((each) => [...place(each)]);
  const across = ({ asked, allowed }: GapTick) => lineOf([asked, allowed]);
  pen.text(
    `DETAIL ${LETTER} (${detailScaleWords(times)})`,
    middle[0],
    middle[1] - (times * (covered.bottom - covered.top)) / 2 - NAME_HIGH + capHeight(DETAIL_NAME.size),
    DETAIL_NAME,
    'centre',
  );
  const arcs = [lineOf(detail.asked), lineOf(detail.allowed)];
  pen.figure(
    `Path of the steering-arm ball and arc of the drag link, scale ${detailScaleWords(times)}`,
    () => {
      for (const tick of detail.ticks) {
        const [x, y] = place(tick.asked);
        pen.line(x - GRADUATION, y, x + GRADUATION, y, THIN);
        pen.stroke(across(tick), GAP);
      }
      pen.stroke(arcs[0] as number[], ASKED);
      pen.stroke(arcs[1] as number[], ALLOWED);
    },
  );
  const drawn = [...arcs, ...detail.ticks.map(across)];
  const half = lineHeight(DIMENSION.size) / 2;
  for (const tick of detail.ticks) {
    const y = place(tick.asked)[1];
    const reach = reachBetween(drawn, y - half, y + half);
    if (!reach) continue;
    const base = y + capHeight(DIMENSION.size) / 2;
    pen.text(
      heaveWords(model, tick.heave),
      reach.left - OFF_LINES,
      base,
      { ...DIMENSION, colour: SOFT },
      'right',
    );
    pen.text(gapWords(model, tick.gap), reach.right + OFF_LINES, base, DIMENSION);
  }
  return times;
}

/** What the lines are and what the signs mean. */
export function drawKey(pen: PrintPen, x: number, y: number, width: number): void {
  let at = y;
  for (const [line, words] of [
    [ASKED, 'What the axle asks: the path of the steering-arm ball with the wheels straight.'],
    [ALLOWED, 'What the link allows: its length from the pitman ball as drawn.'],
    [
      GAP,
      'The gap: with a plus the link is too short by it to keep the wheels straight, with a minus too long.',
    ],
  ] as const) {
    pen.line(x, at + 1.9, x + 9, at + 1.9, line);
    at = writeLines(pen, brokenInto(pen, words, BODY, width - 12), x + 12, at, BODY) + 1.6;
  }
  writeLines(
    pen,
    brokenInto(
      pen,
      'By the heave alone: no roll, handwheel straight ahead, brakes off. The figures are lengths in space; where the link runs askew to the view, a gap is drawn shorter.',
      SMALL,
      width,
    ),
    x,
    at + 1,
    SMALL,
  );
}

/** The detail of the arcs, beside the view that it belongs to. */
export function arcsPage(pageFrame: PageFrame, model: SheetModel): void {
  const detail = arcsDetail(holdTravel(model.frontEnd), model.style.unit);
  const shown = shownAround(model, detail);
  const room = pageFrame.roomBelowTitle(false);
  const width = LEFT_SHARE * room.width;
  const high = VIEW_HIGH - 10;
  const scale = scaleFor(model.style.unit, shown.right - shown.left, shown.bottom - shown.top, {
    width,
    height: high,
  });
  const area = pageFrame.open(
    { title: 'Detail of the arcs', scale: scaleWords(scale), lying: false },
    'Why the wheels steer over bumps',
  );
  const { pen } = pageFrame;
  const view = centredView(detail.view, shown, scale, { x: area.x, y: area.y + 5, width, height: high });
  paintView(pen, model, view);
  circleInView(pen, view, detail);
  viewSigns(pen, view, model.style.unit, { piece: true });
  const below = area.y + VIEW_HIGH + 8;
  if (detail.asked.length === 0) {
    writeLines(pen, brokenInto(pen, NO_ARCS, BODY, width), area.x, below, BODY);
    return;
  }
  drawKey(pen, area.x, below, width);
  const right: Area = {
    x: area.x + width + BETWEEN,
    y: area.y + 1,
    width: area.width - width - BETWEEN,
    height: area.height - 1,
  };
  drawDetail(pen, model, detail, right);
}
