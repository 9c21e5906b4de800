import type { Answer, AnswerLine, AnswerPart, Sketch } from '../../../../shared-math/counter/index.ts';
import { type Block, drawn, heading, item, paragraph } from '../../flow/block.ts';
import { Flow } from '../../flow/flow.ts';
import { type PageFacts, PageFrame, timeWords } from '../../flow/page-frame.ts';
import { table } from '../../flow/table.ts';
import { INK, STEEL } from '../../pens/colours.ts';
import { noType } from '../../pens/no-type.ts';
import type { Area, Paper } from '../../pens/papers.ts';
import { lineHeight, PdfPen, type PrintPen, type TextStyle } from '../../pens/print-pen.ts';
import { severitySign } from '../../pens/signs.ts';
import { BODY, BODY_SOFT, HEADING, SMALL, SMALL_INK } from '../../pens/styles.ts';
import { brokenInto, writeLines } from '../../pens/text-lines.ts';
import { contentMark } from '../content-mark.ts';

/** A ticket of the counter as it goes on paper. */
export interface PrintedTicket {
  readonly customer: string;
  readonly note: string;
  /** What the question is called, and the question itself. */
  readonly name: string;
  readonly asks: string;
  /** What was said, for the mark of the content. */
  readonly question: object;
  readonly answer: Answer;
  /** When it was first kept. */
  readonly asked: Date;
  readonly date: Date;
  readonly paper: Paper;
  readonly drawnBy?: string;
}

const HEADLINE: TextStyle = { face: 'bold', size: 11, colour: INK };

const SIGN = { good: 'info', look: 'attention', stop: 'stop' } as const;

function bullet(pen: PrintPen, x: number, y: number): void {
  pen.circle(x + 1.7, y - 1, 0.45, undefined, INK);
}

/** The styles of a page whose body is so many points large. */
interface Type {
  readonly body: TextStyle;
  readonly soft: TextStyle;
  readonly heading: TextStyle;
}

/** Points of the body, from the usual down to what is still read with ease; the largest with which all is on one page. */
const SIZES = [8.4, 7.8, 7.2, 6.7] as const;

const typeOf = (size: number): Type => ({
  body: { ...BODY, size },
  soft: { ...BODY_SOFT, size },
  heading: { ...HEADING, size: (HEADING.size * size) / BODY.size },
});

function lineBlock({ words, tone }: AnswerLine, { body }: Type): Block {
  const sign = (pen: PrintPen, x: number, y: number) =>
    tone ? severitySign(pen, SIGN[tone], x, y) : bullet(pen, x, y);
  return item(sign, [[words, body]], 5, 0.5);
}

/** mm that a sketch is tall beside a body of the usual size. */
const SKETCH_TALL = 34;
/** mm between columns, and between sketches. */
const GUTTER = 9;

/** The extent of all that a sketch shows, in its own plane, mm. */
function extentOf({ ends, line, supports }: Sketch) {
  const points = [...ends.flatMap(({ from, to }) => [from, to]), ...line, ...supports];
  const across = points.map(([right]) => right);
  const down = points.map(([, depth]) => depth);
  const [left, top] = [Math.min(...across), Math.min(...down)];
  return { left, top, width: Math.max(...across) - left, height: Math.max(...down) - top };
}

function paintSketch(pen: PrintPen, sketch: Sketch, x: number, y: number, width: number, tall: number): void {
  const { left, top, width: wide, height } = extentOf(sketch);
  const pad = 5;
  const scale = Math.min((width - 2 * pad) / Math.max(wide, 1), (tall - 2 * pad) / Math.max(height, 1));
  const at = ([right, down]: readonly [number, number]) =>
    [
      x + width / 2 + (right - left - wide / 2) * scale,
      y + tall / 2 + (down - top - height / 2) * scale,
    ] as const;
  for (const { name, from, to } of sketch.ends) {
    const [a, b] = [at(from), at(to)];
    pen.line(a[0], a[1], b[0], b[1], { width: 0.9, colour: INK });
    pen.text(name, a[0], a[1] - 1.6, SMALL_INK, 'centre');
  }
  for (let i = 0; i + 1 < sketch.line.length; i += 1) {
    const [a, b] = [at(sketch.line[i] as never), at(sketch.line[i + 1] as never)];
    pen.line(a[0], a[1], b[0], b[1], { width: 0.6, colour: STEEL });
  }
  sketch.joints.forEach(({ at: place, double }, i) => {
    const [a, b] = at(place);
    pen.circle(a, b, 1.1, { width: 0.5, colour: STEEL }, '#ffffff');
    if (double) pen.circle(a, b, 1.8, { width: 0.3, colour: STEEL });
    pen.text(String(i + 1), a, b + 4.6, SMALL_INK, 'centre');
  });
  for (const place of sketch.supports) {
    const [a, b] = at(place);
    pen.rect(a - 0.9, b - 0.9, 1.8, 1.8, { width: 0.4, colour: INK });
  }
}

/** Sketches side by side. */
function sketchBlock(sketches: readonly Sketch[], { body }: Type): Block {
  const caption = lineHeight(SMALL.size) + 1;
  const tall = SKETCH_TALL * (body.size / BODY.size) ** 2;
  return drawn(tall + caption, (pen, x, y, width) => {
    const wide = (width - (sketches.length - 1) * GUTTER) / sketches.length;
    sketches.forEach((sketch, i) => {
      const left = x + i * (wide + GUTTER);
      paintSketch(pen, sketch, left, y, wide, tall);
      pen.text(sketch.title, left, y + tall + caption - 1.6, SMALL);
    });
  });
}

/** What takes the page's whole width: sketches and tables, each under its heading. */
function wideBlocks({ title, table: rows, sketches }: AnswerPart, type: Type): Block[] {
  if (!rows && !sketches) return [];
  const blocks: Block[] = [heading(title, type.heading)];
  if (sketches) blocks.push(sketchBlock(sketches, type));
  if (rows)
    blocks.push(
      table(
        rows.head.map((head, i) => ({ head, width: i === 0 || i === rows.head.length - 1 ? 1.4 : 1 })),
        rows.rows.map((row) => row.map((cell) => [[cell, type.body] as const])),
      ),
    );
  return blocks;
}

/** All that is said in sentences, for columns. */
function sentenceBlocks({ parts, assumed, cautions }: Answer, type: Type): Block[] {
  return [
    ...parts.flatMap(({ title, lines = [] }) =>
      lines.length === 0 ? [] : [heading(title, type.heading), ...lines.map((line) => lineBlock(line, type))],
    ),
    ...(assumed.length === 0
      ? []
      : [
          heading('Nobody said, so it is assumed', type.heading),
          ...assumed.map(({ words }) => lineBlock({ words, tone: 'look' }, type)),
        ]),
    heading('Cautions', type.heading),
    ...cautions.map(({ words, source }) => paragraph(`${words} (${source})`, type.body, 0.7)),
  ];
}

function refuseUnsettable(pen: PrintPen, { customer, note, drawnBy = '' }: PrintedTicket): void {
  for (const [what, text] of [
    ['The customer’s name', customer],
    ['The note', note],
    ['The name of who drew it', drawnBy],
  ] as const) {
    const letters = pen.unsettable(text);
    if (letters.length > 0) throw noType(what, text, letters);
  }
}

/** Sets an answer in a type, below what stands on the page already; without ink where it is a trial. Answers the pages. */
function set(
  frame: PageFrame,
  facts: PageFacts,
  answer: Answer,
  area: Area,
  type: Type,
  trial: boolean,
): number {
  const { pen } = frame;
  let { y } = area;
  for (const block of answer.parts.flatMap((part) => wideBlocks(part, type))) {
    if (y > area.y) y += block.above ?? 0;
    if (!trial) block.paint(pen, area.x, y, area.width);
    y += block.height(pen, area.width);
  }
  const width = (area.width - GUTTER) / 2;
  const height = area.y + area.height - y;
  const first = [0, 1].map((i) => ({ x: area.x + i * (width + GUTTER), y, width, height }));
  const flow = new Flow(frame, facts, 2, '', { first, trial });
  flow.put(...sentenceBlocks(answer, type));
  return flow.pages;
}

/** Draws a ticket: what was asked and what it comes to, what was assumed, and the cautions; on one page where it fits. */
export function drawTicket(pen: PrintPen, ticket: PrintedTicket): void {
  refuseUnsettable(pen, ticket);
  const { answer, asks, customer, note, asked } = ticket;
  const frame = new PageFrame(
    pen,
    {
      names: [
        ['CUSTOMER', customer === '' ? 'not named' : customer, 0.3],
        ['QUESTION', ticket.name, 0.28],
        ['ASKED', timeWords(asked), 0.22],
        ['ANSWERED BY', ticket.drawnBy ?? '', 0.2],
      ],
      date: ticket.date,
      mark: contentMark(ticket.question),
      paper: ticket.paper,
    },
    'Counter ticket',
  );
  const facts = { title: asks, lying: false };
  const room = frame.open(facts);
  let y =
    writeLines(pen, brokenInto(pen, answer.headline, HEADLINE, room.width), room.x, room.y, HEADLINE) + 2;
  if (note.trim() !== '')
    y = writeLines(pen, brokenInto(pen, note, BODY_SOFT, room.width), room.x, y, BODY_SOFT) + 2;
  const below = { ...room, y, height: room.y + room.height - y };
  const fitting = SIZES.find((size) => set(frame, facts, answer, below, typeOf(size), true) <= 1);
  set(frame, facts, answer, below, typeOf(fitting ?? SIZES[SIZES.length - 1] ?? BODY.size), false);
  frame.finish();
}

/** A ticket as a PDF; the same ticket and date give the same bytes. */
export async function printTicket(ticket: PrintedTicket): Promise<Uint8Array> {
  const pen = new PdfPen({
    title: ['Counter ticket', ticket.name, ticket.customer].filter(Boolean).join(' – '),
    author: 'Toeboard',
    subject: ticket.customer,
    date: ticket.date,
  });
  drawTicket(pen, ticket);
  return pen.end();
}
