import { norm, subtract } from '../../../../shared-math/geometry/vectors.ts';
import { createState, solveFrontEnd } from '../../../../shared-math/linkage/index.ts';
import { ISOMETRIC } from '../../../../shared-math/pictorial/index.ts';
import { toeLength } from '../../../../shared-math/sweep/index.ts';
import { formatSpan, formatToe, toDegrees } from '../../../../shared-math/units/index.ts';
import {
  ASSIST_WORDS,
  LATERAL_WORDS,
  LOCATION_WORDS,
  tallyWords,
  wordsOf,
} from '../../../../shared-math/words/index.ts';
import type { Block } from '../../flow/block.ts';
import { Flow } from '../../flow/flow.ts';
import type { PageFrame } from '../../flow/page-frame.ts';
import { facts } from '../../flow/table.ts';
import { type CarView, frameOf, paintCar } from '../../pens/car-view.ts';
import type { Area } from '../../pens/papers.ts';
import { fittedPictorial, paintPictorial } from '../../pens/pictorial-view.ts';
import { lineHeight, type PrintPen } from '../../pens/print-pen.ts';
import { scaleFor, scaleWords } from '../../pens/scales.ts';
import { severitySign } from '../../pens/signs.ts';
import { BODY, BODY_BOLD, FIGURE, LABEL, SMALL } from '../../pens/styles.ts';
import { brokenInto, writeLines } from '../../pens/text-lines.ts';
import { viewSigns } from '../../pens/view-signs.ts';
import { angle, bumpSteer, NONE, overallRatio, turningCircleOf, turnsWords } from '../figures.ts';
import { armList, linkList } from '../links.ts';
import { headlineDoubt, madeFromWords } from '../made-from.ts';
import { guessedWords } from '../points.ts';
import { outlinesOf, paintRooms, roomsOf, roomsWords, shownWith } from '../rooms.ts';
import type { SheetModel } from '../sheet-model.ts';
import { FINDINGS_TITLE } from './findings-pages.ts';

/** mm of paper between two views. */
const GAP = 9;
/** Least mm of paper across that the pictorial has, left of the front view. */
const PICTORIAL = 54;

const widthOf = ({ left, right }: { left: number; right: number }) => right - left;
const heightOf = ({ top, bottom }: { top: number; bottom: number }) => bottom - top;

/** The three views in third-angle projection, to the right of the area: the top view above the side view, the front view left of it. */
function threeViews(
  shown: SheetModel['shown'],
  area: Area,
  scale: number,
): Record<'side' | 'top' | 'front', CarView> {
  const { side, top, front } = shown;
  const wide = (widthOf(front) + widthOf(side)) / scale + GAP;
  const high = (heightOf(top) + heightOf(side)) / scale + GAP;
  const left = area.x + area.width - wide;
  const upper = area.y + (area.height - high) / 2;
  const sideX = left + widthOf(front) / scale + GAP - side.left / scale;
  const sideY = upper + heightOf(top) / scale + GAP - side.top / scale;
  const view = (name: 'side' | 'top' | 'front', x: number, y: number): CarView => ({
    view: name,
    shown: shown[name],
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

/** What a view shows, for whoever cannot see it. */
const VIEW_ALTS = {
  side: 'The front of the car from its left side: wheels, axle, steering and frame',
  top: 'The front of the car from above, its front to the left',
  front: 'The front of the car from ahead',
} as const;

export function paintView(pen: PrintPen, model: SheetModel, view: CarView): void {
  pen.figure(`${VIEW_ALTS[view.view]}, scale ${scaleWords(view.scale)}`, () =>
    paintCar(pen, view, model.drawing, model.placed),
  );
}

/** The car in space beside the three views, for whoever does not read those. */
function pictorialView(pen: PrintPen, model: SheetModel, area: Area): void {
  pen.text('PICTORIAL, NOT TO SCALE', area.x, area.y - 1.5, LABEL);
  const fitted = fittedPictorial(model.drawing, model.placed, ISOMETRIC, area);
  pen.figure('The front of the car in space, from ahead and its left', () =>
    paintPictorial(pen, fitted, area),
  );
}

/** One figure to be seen across the bench: large, with what it is below. */
function bigFigure(pen: PrintPen, [value, unit, what]: Figure, x: number, y: number, width: number): void {
  pen.text(value, x, y, FIGURE);
  if (unit) pen.text(unit, x + pen.widthOf(value, FIGURE) + 1.4, y, { ...FIGURE, size: 11 });
  writeLines(pen, brokenInto(pen, what, SMALL, width - 4), x, y + 1.4, SMALL);
}

type Figure = readonly [value: string, unit: string, what: string];

/** What is to be mended, the gravest first, as far as there is room; what is left says on which page it stands. */
function toMend(pageFrame: PageFrame, model: SheetModel, area: Area): void {
  const { pen } = pageFrame;
  const counts = { stop: 0, attention: 0, info: 0 };
  for (const finding of model.findings) counts[finding.severity] += 1;
  const open = model.findings.filter(({ severity }) => severity !== 'info');
  const step = lineHeight(BODY.size);
  let { y } = area;
  pen.text(`Verdict: ${tallyWords(counts)}`, area.x, y + 3, BODY_BOLD);
  y += 6;
  for (const [i, finding] of open.entries()) {
    const lines = brokenInto(pen, finding.sentence, BODY, area.width - 6);
    const tall = lines.length * step + 0.8;
    const rest = open.length - i;
    // The line that tells of the others needs room of its own.
    if (y + tall + (rest > 1 ? step : 0) > area.y + area.height) {
      const at = y;
      // Known when all pages are there.
      pageFrame.afterwards((pageOf) => {
        const page = pageOf(FINDINGS_TITLE);
        const more = i === 0 ? `All ${rest} of them: page ${page}.` : `${rest} more: page ${page}.`;
        writeLines(pen, [more], area.x + 6, at, BODY_BOLD);
      });
      return;
    }
    severitySign(pen, finding.severity, area.x, y + 0.77 * step);
    writeLines(pen, lines, area.x + 6, y, BODY);
    y += tall;
  }
}

/**
 * mm. Between the pitman arm's length square to its shaft and that straight from the shaft's centre to the ball, as a tape
 * laid across it reads: from here on both are printed, so that nobody wonders which one is meant.
 */
const TWO_LENGTHS = 0.8;

/** The lengths and angles that are asked for first. */
function keyFigures(model: SheetModel): Block {
  const { layout, frontEnd, both } = model;
  const state = createState();
  const settled = solveFrontEnd(frontEnd, 0, 0, 0, state) === 'ok';
  const named = [...linkList(layout), ...armList(layout)].filter(({ name }) =>
    ['Drag link', 'Tie rod', 'Lateral bar', 'Pitman arm'].includes(name),
  );
  const { box } = layout.steering;
  const pitmanArm = named.find(({ name }) => name === 'Pitman arm');
  const straight = norm(subtract(box.pitmanBall, box.sectorCentre));
  return facts(
    [
      ...named.map(({ name, length: mm }) => [name, both(mm)] as const),
      ...(pitmanArm && straight - pitmanArm.length > TWO_LENGTHS
        ? [['Pitman arm, straight', both(straight)] as const]
        : []),
      ...(settled
        ? [
            ['Caster', angle(state.left.caster)] as const,
            [
              'Total toe-in, at the tyres',
              formatToe(
                toeLength(state.left.toeIn, layout.car.tyreRadius) +
                  toeLength(state.right.toeIn, layout.car.tyreRadius),
                toDegrees(state.totalToeIn),
                model.style.unit,
              ),
            ] as const,
          ]
        : []),
    ],
    0.4,
  );
}

function glance(pageFrame: PageFrame, model: SheetModel, area: Area): void {
  const { pen } = pageFrame;
  const { layout, analysis, style } = model;
  const { turn } = analysis;
  const { box } = layout.steering;
  const bump = bumpSteer(model);
  const doubt = headlineDoubt(model);
  const circle = turningCircleOf(layout, turn);
  const figures: Figure[] = [
    [
      bump?.angle ?? NONE,
      '',
      bump
        ? `${doubt ? `${doubt}, ` : ''}worst bump steer over the travel${bump.way && `, ${bump.way}`}, ${bump.atTyre}; one wheel over a bump ${bump.oneWheel}`
        : 'the linkage does not reach',
    ],
    [turnsWords(turn), 'turns', 'of the handwheel from lock to lock'],
    [overallRatio(turn), '', 'overall ratio, straight ahead'],
    [circle === undefined ? NONE : formatSpan(circle, style.unit), '', 'turning circle between kerbs'],
  ];
  const text = `${analysis.arrangement === 'side' ? 'Side steer' : 'Cross steer'}, ${wordsOf(ASSIST_WORDS, box.assist)} box. Axle on ${wordsOf(LOCATION_WORDS, layout.location.kind)}, held sideways by ${wordsOf(LATERAL_WORDS, layout.lateral.kind)}.`;
  let y = writeLines(pen, brokenInto(pen, text, BODY, area.width), area.x, area.y, BODY);
  const guessed = guessedWords(model);
  const from = guessed
    ? [madeFromWords(model), 'What rests on guessed points may be otherwise.']
    : [madeFromWords(model)];
  y = writeLines(
    pen,
    brokenInto(pen, from.join(' '), guessed ? BODY_BOLD : BODY, area.width),
    area.x,
    y + 0.6,
    guessed ? BODY_BOLD : BODY,
  );
  y += 10;
  const column = area.width / 2;
  figures.forEach((figure, i) => {
    bigFigure(pen, figure, area.x + (i % 2) * column, y + Math.floor(i / 2) * 19.5, column);
  });
  const below = { ...area, y: y + 29, height: area.y + area.height - y - 29 };
  toMend(pageFrame, model, { ...below, width: column - 6 });
  const first = [{ ...below, x: area.x + column, y: below.y - 1, width: column, height: below.height + 1 }];
  new Flow(pageFrame, { title: 'General arrangement', lying: true }, 2, '', { first }).put(keyFigures(model));
}

/** General arrangement: the three views, and what the car comes to at a glance. */
export function arrangementPage(pageFrame: PageFrame, model: SheetModel): void {
  const rooms = roomsOf(model);
  const outlines = (view: 'side' | 'top' | 'front') => (rooms ? outlinesOf(rooms, view) : []);
  const inView = { side: outlines('side'), top: outlines('top'), front: outlines('front') };
  const shown = {
    side: shownWith(model.shown.side, inView.side),
    top: shownWith(model.shown.top, inView.top),
    front: shownWith(model.shown.front, inView.front),
  };
  const { side, top, front } = shown;
  const room = pageFrame.room(true);
  const scale = scaleFor(model.style.unit, widthOf(front) + widthOf(side), heightOf(top) + heightOf(side), {
    width: room.width - 2 * GAP - PICTORIAL,
    height: room.height - GAP - 13,
  });
  const area = pageFrame.open(
    { title: 'General arrangement', scale: scaleWords(scale), lying: true, projection: true },
    ['Third-angle projection, at ride height, wheels straight ahead', roomsWords(model, rooms)]
      .filter(Boolean)
      .join('. '),
  );
  const { pen } = pageFrame;
  const views = threeViews(shown, area, scale);
  for (const view of Object.values(views)) {
    paintView(pen, model, view);
    paintRooms(pen, view, inView[view.view]);
  }
  const [topLeft] = frameOf(views.top);
  const [, frontTop] = frameOf(views.front);
  for (const view of Object.values(views)) viewSigns(pen, view, model.style.unit);
  const [frontLeft, , , frontBottom] = frameOf(views.front);
  pictorialView(pen, model, {
    x: area.x,
    y: frontTop,
    width: frontLeft - GAP - area.x,
    height: frontBottom - frontTop,
  });
  glance(pageFrame, model, {
    x: area.x,
    y: area.y + 1,
    width: topLeft - area.x - 12,
    height: frontTop - area.y - 6,
  });
}
