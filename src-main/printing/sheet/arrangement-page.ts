import { formatSpan } from '../../../shared-math/units/index.ts';
import {
  ASSIST_WORDS,
  LATERAL_WORDS,
  LOCATION_WORDS,
  tallyWords,
  wordsOf,
} from '../../../shared-math/words/index.ts';
import { bumpSteer, overallRatio, turningCircleOf, turnsWords } from '../figures.ts';
import { type CarView, frameOf, paintCar } from '../ink/car-view.ts';
import { SOFT } from '../ink/colours.ts';
import type { Leaves } from '../ink/leaves.ts';
import type { Area } from '../ink/papers.ts';
import type { PrintPen } from '../ink/print-pen.ts';
import { paintShaft } from '../ink/shaft-view.ts';
import { BODY, BODY_SOFT, FIGURE, LABEL, SMALL } from '../ink/styles.ts';
import { brokenInto, writeLines } from '../ink/text-lines.ts';
import type { Matter } from '../matter.ts';
import { scaleFor, scaleWords } from '../scales.ts';

/** mm of paper between two views. */
const GAP = 7;

const widthOf = ({ left, right }: { left: number; right: number }) => right - left;
const heightOf = ({ top, bottom }: { top: number; bottom: number }) => bottom - top;

/** The three views in third-angle projection: the top view above the side view, the front view left of it. */
function threeViews(matter: Matter, area: Area, scale: number): Record<'side' | 'top' | 'front', CarView> {
  const { side, top, front } = matter.shown;
  const wide = (widthOf(front) + widthOf(side)) / scale + GAP;
  const high = (heightOf(top) + heightOf(side)) / scale + GAP;
  const left = area.x + (area.width - wide) / 2;
  const upper = area.y + (area.height - high) / 2;
  const sideX = left + widthOf(front) / scale + GAP - side.left / scale;
  const sideY = upper + heightOf(top) / scale + GAP - side.top / scale;
  const view = (name: 'side' | 'top' | 'front', x: number, y: number): CarView => ({
    view: name,
    shown: matter.shown[name],
    scale,
    x,
    y,
  });
  return {
    side: view('side', sideX, sideY),
    top: view('top', sideX, upper - top.top / scale),
    front: view('front', left - front.left / scale, sideY),
  };
}

export function paintView(pen: PrintPen, matter: Matter, view: CarView): void {
  paintCar(pen, view, matter.drawing, matter.placed);
  if (matter.layout.shaft) paintShaft(pen, view, matter.layout.shaft);
}

/** One figure to be seen across the bench: large, with what it is below. */
function bigFigure(pen: PrintPen, value: string, unit: string, what: string, x: number, y: number): void {
  pen.text(value, x, y, FIGURE);
  if (unit) pen.text(unit, x + pen.widthOf(value, FIGURE) + 1.2, y, { ...FIGURE, size: 11 });
  pen.text(what, x, y + 4, SMALL);
}

function glance(pen: PrintPen, matter: Matter, area: Area): void {
  const { layout, analysis, style } = matter;
  const { turn } = analysis;
  const { box } = layout.steering;
  const bump = bumpSteer(matter);
  const circle = turningCircleOf(layout, turn);
  const figures: [string, string, string][] = [
    [
      bump?.angle ?? 'none',
      '',
      bump ? `worst bump steer over the travel, ${bump.atTyre} at the tyre` : 'the linkage does not reach',
    ],
    [turnsWords(turn), 'turns', 'lock to lock'],
    [overallRatio(turn), '', 'overall ratio, straight ahead'],
    [circle === undefined ? 'none' : formatSpan(circle, style.unit), '', 'turning circle between kerbs'],
  ];
  const lines = [
    `${analysis.arrangement === 'side' ? 'Side steer' : 'Cross steer'}, ${wordsOf(ASSIST_WORDS, box.assist)} box.`,
    `Axle on ${wordsOf(LOCATION_WORDS, layout.location.kind)}, held sideways by ${wordsOf(LATERAL_WORDS, layout.lateral.kind)}.`,
  ];
  let y =
    writeLines(
      pen,
      lines.flatMap((line) => brokenInto(pen, line, BODY, area.width)),
      area.x,
      area.y,
      BODY,
    ) + 10;
  const column = area.width / 2;
  figures.forEach(([value, unit, what], i) => {
    bigFigure(pen, value, unit, what, area.x + (i % 2) * column, y + Math.floor(i / 2) * 16);
  });
  y += 32;
  const counts = { stop: 0, attention: 0, info: 0 };
  for (const finding of matter.findings) counts[finding.severity] += 1;
  writeLines(pen, [`Verdict: ${tallyWords(counts)}.`], area.x, y - 4, BODY_SOFT);
}

/** General arrangement: the three views, and what the car comes to at a glance. */
export function arrangementPage(leaves: Leaves, matter: Matter): void {
  const { side, top, front } = matter.shown;
  const room = leaves.room(true);
  const scale = scaleFor(matter.style.unit, widthOf(front) + widthOf(side), heightOf(top) + heightOf(side), {
    width: room.width - GAP,
    height: room.height - GAP - 9,
  });
  const area = leaves.open(
    { title: 'General arrangement', scale: scaleWords(scale), lying: true, projection: true },
    'Third-angle projection, at ride height, wheels straight ahead',
  );
  const { pen } = leaves;
  const views = threeViews(matter, area, scale);
  for (const view of Object.values(views)) paintView(pen, matter, view);
  const [fx] = frameOf(views.front);
  const [, ty, , tb] = frameOf(views.top);
  for (const [name, view] of Object.entries(views)) {
    const [left, upper] = frameOf(view);
    pen.text(`${name.toUpperCase()} VIEW`, left, upper + 2.4, { ...LABEL, colour: SOFT });
  }
  glance(pen, matter, { x: fx, y: ty, width: widthOf(front) / scale, height: tb - ty });
}
