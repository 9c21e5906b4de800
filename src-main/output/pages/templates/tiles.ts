import type { Box, ViewPoint } from '../../../../shared-math/drawing/index.ts';
import type { PageFrame } from '../../flow/page-frame.ts';
import { INK, SOFT, WASH } from '../../pens/colours.ts';
import type { Area } from '../../pens/papers.ts';
import { lineHeight, type PrintPen } from '../../pens/print-pen.ts';
import { DIMENSION, SMALL_INK } from '../../pens/styles.ts';
import { brokenInto, writeLines } from '../../pens/text-lines.ts';
import { checkRules, EDGE, FOOT } from './check-rule.ts';
import { type Template, waySigns } from './template.ts';

/** mm that neighbouring pages share, so that they can be laid over one another at their marks. */
const OVERLAP = 12;
/** mm kept for the page map beside a template of several pages. */
const MAP = 16;

/** How a template is laid over pages. */
export interface TilePlan {
  readonly lying: boolean;
  readonly columns: number;
  readonly rows: number;
  /** What of the template's plane one page shows, mm. */
  readonly width: number;
  readonly height: number;
}

/** Where a page of templates has room for the drawing itself, mm. */
function drawingRoom(pageFrame: PageFrame, lying: boolean): Area {
  const area = pageFrame.roomBelowTitle(lying);
  return { ...area, width: area.width - EDGE, height: area.height - FOOT };
}

/** mm: how wide the words of a template run, and how tall they are. */
const WORDS_WIDE = 104;

function wordLines(pen: PrintPen, { words }: Template): string[] {
  return words.flatMap((sentence) => brokenInto(pen, sentence, SMALL_INK, WORDS_WIDE));
}

/** A template's bounds with room for its words above. */
function boundsWithWords(pen: PrintPen, template: Template): Box {
  const { bounds } = template;
  return { ...bounds, top: bounds.top - wordLines(pen, template).length * lineHeight(SMALL_INK.size) - 3 };
}

/** The plan that takes the fewest pages; of two alike the upright one. */
export function planTiles(pageFrame: PageFrame, template: Template): TilePlan {
  const bounds = boundsWithWords(pageFrame.pen, template);
  const [wide, tall] = [bounds.right - bounds.left, bounds.bottom - bounds.top];
  const count = (size: number, room: number) => Math.max(1, Math.ceil((size - OVERLAP) / (room - OVERLAP)));
  const plans = [false, true].map((lying): TilePlan => {
    const { width, height } = drawingRoom(pageFrame, lying);
    return { lying, width, height, columns: count(wide, width), rows: count(tall, height) };
  });
  return plans.reduce((best, plan) => (plan.columns * plan.rows < best.columns * best.rows ? plan : best));
}

/** "A1", "B2": columns by letter, rows by number. */
const tileName = (column: number, row: number) => `${String.fromCharCode(65 + (column % 26))}${row + 1}`;

/** A mark to lay pages over one another by: a cross in a circle, on the same spot of the template on every page. */
function registrationMark(pen: PrintPen, [x, y]: ViewPoint): void {
  const line = { width: 0.15, colour: INK };
  pen.circle(x, y, 2, line);
  pen.line(x - 4, y, x + 4, y, line);
  pen.line(x, y - 4, x, y + 4, line);
}

/** Which page this is among those of its template. */
function pageMap(pen: PrintPen, plan: TilePlan, column: number, row: number, right: number, y: number): void {
  const cell = Math.min(5, MAP / Math.max(plan.columns, plan.rows));
  const x = right - cell * plan.columns;
  for (let c = 0; c < plan.columns; c += 1)
    for (let r = 0; r < plan.rows; r += 1) {
      const here = c === column && r === row;
      pen.rect(x + c * cell, y + r * cell, cell, cell, { width: 0.2, colour: INK }, here ? INK : WASH);
    }
  pen.text(`page ${tileName(column, row)}`, x - 2, y + 3, DIMENSION, 'right');
}

function paintTile(
  pageFrame: PageFrame,
  template: Template,
  plan: TilePlan,
  column: number,
  row: number,
): void {
  const { pen } = pageFrame;
  const bounds = boundsWithWords(pen, template);
  const many = plan.columns * plan.rows > 1;
  const name = many ? `, page ${tileName(column, row)}` : '';
  const whole = pageFrame.open(
    { title: `${template.title}${name}`, scale: '1 : 1', lying: plan.lying },
    template.note,
  );
  const room = drawingRoom(pageFrame, plan.lying);
  const step = { width: plan.width - OVERLAP, height: plan.height - OVERLAP };
  // The template stands in the middle of the pages that it takes.
  const spare = {
    right: (plan.columns * step.width + OVERLAP - (bounds.right - bounds.left)) / 2,
    down: (plan.rows * step.height + OVERLAP - (bounds.bottom - bounds.top)) / 2,
  };
  const left = bounds.left - spare.right + column * step.width;
  const top = bounds.top - spare.down + row * step.height;
  const at = ([right, down]: ViewPoint): ViewPoint => [room.x + right - left, room.y + down - top];
  const [x1, y1] = [room.x + room.width, room.y + room.height];
  // What runs on, as a rail does, ends where the words above begin.
  const y0 = Math.max(room.y, at([0, template.bounds.top])[1]);
  pen.within([room.x, y0, x1, y0, x1, y1, room.x, y1], 1, () => template.draw(pen, at));
  pen.within([room.x, room.y, x1, room.y, x1, y1, room.x, y1], 1, () => {
    if (!many) return;
    for (let c = 0; c <= plan.columns; c += 1)
      for (let r = 0; r <= plan.rows; r += 1) {
        const inside = (index: number, most: number) => Math.min(Math.max(index, 0), most);
        registrationMark(
          pen,
          at([
            bounds.left - spare.right + inside(c, plan.columns) * step.width + OVERLAP / 2,
            bounds.top - spare.down + inside(r, plan.rows) * step.height + OVERLAP / 2,
          ]),
        );
      }
  });
  if (many) {
    pen.rect(room.x, room.y, room.width, room.height, { width: 0.12, colour: SOFT, dash: [1.2, 1.2] });
    pageMap(pen, plan, column, row, x1 - 13, room.y + 3);
  }
  checkRules(pen, whole);
}

/** Draws a template at full size over its pages. */
export function paintTemplate(pageFrame: PageFrame, template: Template): void {
  const plan = planTiles(pageFrame, template);
  for (let row = 0; row < plan.rows; row += 1)
    for (let column = 0; column < plan.columns; column += 1) {
      paintTile(pageFrame, template, plan, column, row);
      if (row > 0 || column > 0) continue;
      paintWords(pageFrame, template, plan);
      const room = drawingRoom(pageFrame, plan.lying);
      // Beside the words, clear of the page map.
      const many = plan.columns * plan.rows > 1;
      waySigns(pageFrame.pen, template.ways, [
        room.x + room.width - (many ? 12 : 2),
        room.y + (many ? 22 : 5),
      ]);
    }
}

/** What belongs to a template, at the head of its first page. */
function paintWords(pageFrame: PageFrame, template: Template, plan: TilePlan): void {
  const { pen } = pageFrame;
  const room = drawingRoom(pageFrame, plan.lying);
  const beside = plan.columns * plan.rows > 1 ? 14 : 0;
  writeLines(pen, wordLines(pen, template), room.x + beside, room.y + (beside ? 3 : 0), SMALL_INK);
}

/** A template made small, with the pages that it takes over it and their numbers: `box` is where, mm. */
export function thumbnail(pageFrame: PageFrame, template: Template, firstPage: number, box: Area): void {
  const { pen } = pageFrame;
  const plan = planTiles(pageFrame, template);
  const bounds = boundsWithWords(pen, template);
  const step = { width: plan.width - OVERLAP, height: plan.height - OVERLAP };
  const whole = { width: plan.columns * step.width + OVERLAP, height: plan.rows * step.height + OVERLAP };
  const factor = Math.min(box.width / whole.width, (box.height - 9) / whole.height);
  const x = box.x + (box.width - whole.width * factor) / 2;
  const y = box.y + (box.height - 9 - whole.height * factor) / 2;
  const left = bounds.left - (whole.width - (bounds.right - bounds.left)) / 2;
  const top = bounds.top - (whole.height - (bounds.bottom - bounds.top)) / 2;
  const frame = [
    x,
    y,
    x + whole.width * factor,
    y,
    x + whole.width * factor,
    y + whole.height * factor,
    x,
    y + whole.height * factor,
  ];
  pen.within(frame, 1, () => {
    pen.smaller(x, y, factor, () =>
      template.draw(pen, ([right, down]) => [x + right - left, y + down - top]),
    );
  });
  for (let row = 0; row < plan.rows; row += 1)
    for (let column = 0; column < plan.columns; column += 1) {
      const [px, py] = [x + column * step.width * factor, y + row * step.height * factor];
      pen.rect(px, py, plan.width * factor, plan.height * factor, { width: 0.25, colour: INK });
      pen.text(
        String(firstPage + row * plan.columns + column),
        px + plan.width * factor - 1.5,
        py + plan.height * factor - 1.5,
        DIMENSION,
        'right',
      );
    }
  const foot = box.y + box.height;
  pen.text(template.title, box.x + box.width / 2, foot - 4.5, DIMENSION, 'centre');
}
