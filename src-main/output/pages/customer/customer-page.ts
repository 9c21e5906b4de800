import { resolveLayout } from '../../../../shared-math/layout/index.ts';
import {
  byThemselves,
  type HandPose,
  MovedCar,
  RIDE_HEIGHT,
  roundBump,
  standingWords,
} from '../../../../shared-math/moving/index.ts';
import { ISOMETRIC } from '../../../../shared-math/pictorial/index.ts';
import { formatSpan } from '../../../../shared-math/units/index.ts';
import { item } from '../../flow/block.ts';
import { stack } from '../../flow/flow.ts';
import { dateWords, type PageFrame, warningSign } from '../../flow/page-frame.ts';
import { FAINT, INK, RULE, SOFT } from '../../pens/colours.ts';
import { CAR_INKS, DRAWN_LARGER, MovedPicture } from '../../pens/moved-picture.ts';
import { paintMarks } from '../../pens/paint-marks.ts';
import type { Area } from '../../pens/papers.ts';
import { inkFor } from '../../pens/pictorial-view.ts';
import { lineHeight, type PrintPen, type StrokeStyle, type TextStyle } from '../../pens/print-pen.ts';
import { LABEL } from '../../pens/styles.ts';
import { brokenInto, shortened, writeLines } from '../../pens/text-lines.ts';
import { bumpSteer, NONE, steers, turningCircleOf, turnsWords } from '../figures.ts';
import type { PrintJob } from '../job.ts';
import { headlineDoubt } from '../made-from.ts';
import type { Pages } from '../pages.ts';
import { type SheetModel, sheetModelOf } from '../sheet-model.ts';
import { stateWords, watchFor } from './customer-words.ts';

// One page for the one who drives the car: the picture, three figures, what to watch for, in plain words.

const NAME: TextStyle = { face: 'headingBold', size: 26, colour: INK };
const NAME_SIZES = [26, 22, 18];
const PLAIN: TextStyle = { face: 'regular', size: 11, colour: INK };
const PLAIN_SOFT: TextStyle = { ...PLAIN, colour: SOFT };
const BIG: TextStyle = { face: 'headingBold', size: 32, colour: INK };
const KEY: TextStyle = { ...PLAIN, size: 9 };
const WHAT: TextStyle = { face: 'bold', size: 11, colour: INK };
const SUBHEAD: TextStyle = { face: 'headingBold', size: 14, colour: INK };

interface CustomerFigure {
  readonly figure: string;
  readonly what: string;
  readonly plain: string;
}

/** The three figures with what each means at the wheel. */
function threeFigures(model: SheetModel): CustomerFigure[] {
  const { layout, analysis, style, length } = model;
  const { turn } = analysis;
  const bump = bumpSteer(model);
  const doubt = headlineDoubt(model);
  const circle = turningCircleOf(layout, turn);
  const whole = length(layout.travel.bump + layout.travel.rebound);
  return [
    {
      figure: bump?.angle ?? NONE,
      what: 'bump steer, at the worst',
      plain: bump
        ? `How far the front wheels steer by themselves while the axle goes through its whole travel of ${whole}${doubt ? ` (${doubt})` : ''}; with one wheel over a bump ${bump.oneWheel}.`
        : 'The linkage as drawn does not reach: there is no figure.',
    },
    {
      figure: turnsWords(turn),
      what: 'turns, lock to lock',
      plain: steers(turn)
        ? 'How often the handwheel goes around from full left to full right.'
        : 'The linkage as drawn does not steer.',
    },
    {
      figure: circle === undefined ? NONE : formatSpan(circle, style.unit),
      what: 'turning circle, between kerbs',
      plain: 'The widest circle that it needs to turn around in one go, to the left or to the right.',
    },
  ];
}

/** The cars of the picture: the layout's own, and the one beside it, both with their wheels on the bump. */
function picturedCars({ job, layout }: SheetModel) {
  const layouts = job.beside ? [layout, resolveLayout(job.beside)] : [layout];
  const cars = layouts.map((each, at) => ({ at: at as 0 | 1, car: new MovedCar(each) }));
  const [{ car }] = cars as [(typeof cars)[number]];
  const pose: HandPose = { ...RIDE_HEIGHT, heave: roundBump(car, job.unit) };
  // Where one of them does not get there, all of them are shown as they stand.
  const stands = cars.every((each) => each.car.put(pose) === undefined);
  if (!stands) for (const each of cars) each.car.put(RIDE_HEIGHT);
  return cars.filter((each) => each.car.standing);
}

/** mm across that the key has beside the picture. */
const KEY_WIDE = 62;

/** A line of the key: as it is drawn, then what it is. Answers where the next would begin, mm. */
function keyEntry(pen: PrintPen, line: StrokeStyle, words: string, area: Area, y: number): number {
  pen.line(area.x, y + 2.4, area.x + 7, y + 2.4, line);
  return writeLines(pen, brokenInto(pen, words, KEY, area.width - 9), area.x + 9, y, KEY) + 2;
}

/** What the lines of the picture are, and what the wheels of each car do. */
function pictureKey(
  pen: PrintPen,
  model: SheetModel,
  cars: ReturnType<typeof picturedCars>,
  area: Area,
): void {
  const [first] = cars;
  if (!first) return;
  const stands = standingWords(first.car, first.car.pose, model.style);
  let y = writeLines(pen, brokenInto(pen, `${stands}:`, WHAT, area.width), area.x, area.y, WHAT) + 2;
  for (const { at, car } of cars) {
    const { colour, dash } = CAR_INKS[at];
    const name = cars.length > 1 ? `${at === 0 ? model.layout.name : (model.job.beside?.name ?? '')}: ` : '';
    const line = { width: 0.7, colour, ...(dash ? { dash } : {}) };
    y = keyEntry(pen, line, `${name}${byThemselves(car.wheels.bumpSteer)}`, area, y);
  }
  y = keyEntry(pen, { width: 0.4, colour: FAINT, dash: [2, 1.6] }, 'where the driver points them', area, y);
  const note = `The arrows on the ground are drawn ${DRAWN_LARGER} times as large.`;
  writeLines(pen, brokenInto(pen, note, KEY, area.width), area.x, y + 1, KEY);
}

/** The car in space on a bump, and where its wheels then steer by themselves. Answers where the next would begin, mm. */
function picture(pen: PrintPen, model: SheetModel, area: Area): number {
  const cars = picturedCars(model);
  const [first] = cars;
  if (!first) return area.y;
  const moved = new MovedPicture(cars.map(({ car }) => car));
  const box = moved.box(ISOMETRIC);
  const scale = Math.max(
    (box.right - box.left) / (area.width - KEY_WIDE),
    (box.bottom - box.top) / area.height,
  );
  const wide = (box.right - box.left) / scale;
  const tall = (box.bottom - box.top) / scale;
  const [x, y] = [area.x - box.left / scale, area.y - box.top / scale];
  const marks = moved.marks(cars, ISOMETRIC);
  const stands = standingWords(first.car, first.car.pose, model.style);
  pen.figure(`The front axle and steering in space, from ahead and the left. ${stands}.`, () => {
    paintMarks(pen, marks, { x, y, scale, ink: inkFor(wide) });
    const { right, down, align } = moved.front;
    pen.text('FRONT', x + right / scale, y + down / scale, LABEL, align);
  });
  const left = area.x + wide + 6;
  pictureKey(pen, model, cars, { x: left, y: area.y + 4, width: area.x + area.width - left, height: tall });
  return area.y + tall;
}

/** mm between two figures, and what a figure takes above its sentence. */
const BETWEEN = 8;
const ABOVE_PLAIN = 21;

/** mm that the figures take, the longest sentence below them with it. */
function figuresHeight(pen: PrintPen, model: SheetModel, width: number): number {
  const wide = (width - 2 * BETWEEN) / 3;
  const lines = threeFigures(model).map(({ plain }) => brokenInto(pen, plain, PLAIN, wide).length);
  return ABOVE_PLAIN + Math.max(...lines) * lineHeight(PLAIN.size);
}

function figures(pen: PrintPen, model: SheetModel, area: Area): number {
  const wide = (area.width - 2 * BETWEEN) / 3;
  let foot = area.y;
  threeFigures(model).forEach(({ figure, what, plain }, i) => {
    const x = area.x + i * (wide + BETWEEN);
    pen.line(x, area.y, x + wide, area.y, { width: 0.5, colour: INK });
    pen.text(shortened(pen, figure, BIG, wide), x, area.y + 13, BIG);
    pen.text(what, x, area.y + 19.4, WHAT);
    foot = Math.max(
      foot,
      writeLines(pen, brokenInto(pen, plain, PLAIN, wide), x, area.y + ABOVE_PLAIN, PLAIN),
    );
  });
  return foot;
}

/** The car's name, as large as it stands on one line, else small on several. Answers the last line's base, mm. */
function headline(pen: PrintPen, name: string, area: Area): number {
  const one = NAME_SIZES.map((size) => ({ ...NAME, size })).find(
    (style) => pen.widthOf(name, style) <= area.width,
  );
  if (one) {
    pen.text(name, area.x, area.y + 9, one);
    return area.y + 9;
  }
  const small = { ...NAME, size: 14 };
  return writeLines(pen, brokenInto(pen, name, small, area.width), area.x, area.y + 2, small);
}

function customerPage(pageFrame: PageFrame, model: SheetModel): void {
  const { pen } = pageFrame;
  const { job, layout } = model;
  const area = pageFrame.open({ title: 'Your steering', lying: false }, dateWords(job.date));
  const name = job.car || layout.name;
  let y = headline(pen, name, area);
  const whose = [job.customer ? `Drawn for ${job.customer}.` : '', job.car ? `Variant: ${layout.name}.` : '']
    .filter(Boolean)
    .join(' ');
  y = writeLines(pen, brokenInto(pen, whose, PLAIN_SOFT, area.width), area.x, y + 2.5, PLAIN_SOFT) + 4;
  const below = area.y + area.height;
  const watch = watchFor(model).map((line, i) =>
    item(
      (sign, x, at) =>
        i === 0 ? warningSign(sign, x, at + 0.4, 3.4) : sign.circle(x + 2, at - 1.2, 0.6, undefined, INK),
      [[line, i === 0 ? WHAT : PLAIN]],
      7,
      2.2,
    ),
  );
  const textTall = watch.reduce((sum, block) => sum + block.height(pen, area.width), 0) + 9;
  const figureTall = figuresHeight(pen, model, area.width) + 5;
  const state = brokenInto(pen, stateWords(model), PLAIN, area.width);
  const stateTall = state.length * lineHeight(PLAIN.size) + 5;
  const room = below - y - textTall - figureTall - stateTall - 8;
  y = picture(pen, model, { ...area, y, height: Math.max(40, Math.min(room, area.width * 0.6)) }) + 4;
  y = figures(pen, model, { ...area, y }) + 5;
  y = writeLines(pen, state, area.x, y, PLAIN) + 5;
  pen.line(area.x, y, area.x + area.width, y, { width: 0.2, colour: RULE });
  pen.text('What to watch for', area.x, y + 7, SUBHEAD);
  stack(pen, { ...area, y: y + 10 }, watch);
}

/** The customer's page. */
export function customerPages(job: PrintJob): Pages {
  const model = sheetModelOf(job);
  return [['the customer’s page', (pageFrame) => customerPage(pageFrame, model)]];
}
