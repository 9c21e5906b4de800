import type { Box } from '../../../../shared-math/drawing/index.ts';
import { formatSpan } from '../../../../shared-math/units/index.ts';
import { item } from '../../flow/block.ts';
import { stack } from '../../flow/flow.ts';
import { dateWords, type PageFrame, warningSign } from '../../flow/page-frame.ts';
import { centredView, frameOf } from '../../pens/car-view.ts';
import { INK, RULE, SOFT } from '../../pens/colours.ts';
import type { Area } from '../../pens/papers.ts';
import { lineHeight, type PrintPen, type TextStyle } from '../../pens/print-pen.ts';
import { brokenInto, shortened, writeLines } from '../../pens/text-lines.ts';
import { bumpSteer, NONE, steers, turningCircleOf, turnsWords } from '../figures.ts';
import type { PrintJob } from '../job.ts';
import { headlineDoubt } from '../made-from.ts';
import type { Pages } from '../pages.ts';
import { paintView } from '../sheet/arrangement-page.ts';
import { type SheetModel, sheetModelOf } from '../sheet-model.ts';
import { stateWords, watchFor } from './customer-words.ts';

// One page for the one who drives the car: the picture, three figures, what to watch for, in plain words.

const NAME: TextStyle = { face: 'headingBold', size: 26, colour: INK };
const NAME_SIZES = [26, 22, 18];
const PLAIN: TextStyle = { face: 'regular', size: 11, colour: INK };
const PLAIN_SOFT: TextStyle = { ...PLAIN, colour: SOFT };
const BIG: TextStyle = { face: 'headingBold', size: 32, colour: INK };
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

/** The car from ahead and from its left, as large as the page takes it. Answers where the next would begin, mm. */
function picture(pen: PrintPen, model: SheetModel, area: Area): number {
  const size = (box: Box) => ({ width: box.right - box.left, height: box.bottom - box.top });
  const { side, front } = model.shown;
  const gap = 8;
  const scale = Math.max(
    (size(front).width + size(side).width) / (area.width - gap),
    Math.max(size(front).height, size(side).height) / area.height,
  );
  const tall = size(side).height / scale;
  const frontWide = size(front).width / scale;
  const sideWide = size(side).width / scale;
  const left = area.x + (area.width - frontWide - gap - sideWide) / 2;
  const views = [
    centredView('front', front, scale, { ...area, x: left, width: frontWide, height: tall }),
    centredView('side', side, scale, { ...area, x: left + frontWide + gap, width: sideWide, height: tall }),
  ];
  let foot = area.y;
  for (const view of views) {
    paintView(pen, model, view);
    foot = Math.max(foot, frameOf(view)[3]);
  }
  const note = 'Seen from ahead and from its left side, at ride height.';
  pen.text(note, area.x + area.width, foot + 4, { ...PLAIN_SOFT, size: 8.4 }, 'right');
  return foot + 6;
}

function figures(pen: PrintPen, model: SheetModel, area: Area): number {
  const gap = 8;
  const wide = (area.width - 2 * gap) / 3;
  let foot = area.y;
  threeFigures(model).forEach(({ figure, what, plain }, i) => {
    const x = area.x + i * (wide + gap);
    pen.line(x, area.y, x + wide, area.y, { width: 0.5, colour: INK });
    pen.text(shortened(pen, figure, BIG, wide), x, area.y + 13, BIG);
    pen.text(what, x, area.y + 19.4, WHAT);
    foot = Math.max(foot, writeLines(pen, brokenInto(pen, plain, PLAIN, wide), x, area.y + 21, PLAIN));
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
  const figureTall = 21 + 4 * lineHeight(PLAIN.size) + 9;
  const room = below - y - textTall - figureTall - 20;
  y = picture(pen, model, { ...area, y, height: Math.max(40, Math.min(room, area.width * 0.5)) }) + 6;
  y = figures(pen, model, { ...area, y }) + 5;
  y = writeLines(pen, brokenInto(pen, stateWords(model), PLAIN, area.width), area.x, y, PLAIN) + 5;
  pen.line(area.x, y, area.x + area.width, y, { width: 0.2, colour: RULE });
  pen.text('What to watch for', area.x, y + 7, SUBHEAD);
  stack(pen, { ...area, y: y + 10 }, watch);
}

/** The customer's page. */
export function customerPages(job: PrintJob): Pages {
  const model = sheetModelOf(job);
  return [['the customer’s page', (pageFrame) => customerPage(pageFrame, model)]];
}
