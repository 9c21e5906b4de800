import { setImmediate } from 'node:timers/promises';
import { CAUTION } from '../../../../shared-math/words/index.ts';
import { TERM_FAMILIES, type Term } from '../../../../shared-math/words/terms/index.ts';
import { WALKS, type WalkPicture } from '../../../../shared-math/words/walks/index.ts';
import { type Block, heading, item, paragraph, space } from '../../flow/block.ts';
import { INK, RULE, SOFT, STEEL } from '../../pens/colours.ts';
import { type Paper, pageSize } from '../../pens/papers.ts';
import { capHeight, PdfPen, type PrintPen, type TextStyle } from '../../pens/print-pen.ts';
import { drawSketch, sketchHeight } from './sketch-on-paper.ts';

/** A picture of a walk: its PNG, and its size in pixels. */
export interface HandbookPicture {
  readonly png: Uint8Array;
  readonly width: number;
  readonly height: number;
}

export interface HandbookJob {
  readonly paper: Paper;
  /** The picture of that name; undefined if it was not taken. */
  readonly picture: (file: string) => HandbookPicture | undefined;
  /** Stands in the file; the same date gives the same bytes. */
  readonly date: Date;
}

/** mm around what is set, and room for the foot. */
const MARGIN = 18;
const FOOT = 9;
/** mm of a sketch beside its word, and between the two. */
const SKETCH = 44;
const GAP = 7;

const TITLE: TextStyle = { face: 'headingBold', size: 30, colour: INK };
const CHAPTER: TextStyle = { face: 'headingBold', size: 18, colour: INK };
const WORD: TextStyle = { face: 'headingBold', size: 12.5, colour: INK };
const BODY: TextStyle = { face: 'regular', size: 9.6, colour: INK };
const LEAD: TextStyle = { ...BODY, size: 11, colour: SOFT };
const NOTE: TextStyle = { face: 'regular', size: 8, colour: SOFT };
const STEP: TextStyle = { face: 'headingBold', size: 12, colour: STEEL };

/** Puts blocks onto pages, one column, and writes each page's foot. */
class Book {
  readonly #pen: PdfPen;
  readonly #size: { readonly width: number; readonly height: number };
  #y = 0;
  #leading: Block[] = [];
  #chapter = '';

  constructor(pen: PdfPen, paper: Paper) {
    this.#pen = pen;
    this.#size = pageSize(paper, false);
  }

  get width(): number {
    return this.#size.width - 2 * MARGIN;
  }

  /** A new page; its foot names the chapter. */
  open(chapter: string): void {
    this.#chapter = chapter;
    this.#pen.addPage(this.#size);
    this.#y = MARGIN;
    const foot = this.#size.height - MARGIN + 3;
    this.#pen.line(MARGIN, foot - 5, this.#size.width - MARGIN, foot - 5, { width: 0.2, colour: RULE });
    this.#pen.text(`Toeboard, the handbook: ${chapter}`, MARGIN, foot, NOTE);
    this.#pen.text(String(this.#pen.pageCount), this.#size.width - MARGIN, foot, NOTE, 'right');
  }

  put(...blocks: readonly Block[]): void {
    for (const block of blocks) {
      this.#leading.push(block);
      if (!block.leads) this.#place();
    }
  }

  #place(): void {
    const blocks = this.#leading;
    this.#leading = [];
    const tall = blocks.reduce(
      (sum, block) => sum + (block.above ?? 0) + block.height(this.#pen, this.width),
      0,
    );
    if (this.#y > MARGIN && this.#y + tall > this.#size.height - MARGIN - FOOT) this.open(this.#chapter);
    for (const block of blocks) {
      if (this.#y > MARGIN) this.#y += block.above ?? 0;
      block.paint(this.#pen, MARGIN, this.#y, this.width);
      this.#y += block.height(this.#pen, this.width);
    }
  }
}

/** Blocks one below the other, as one that is not parted. */
function together(blocks: readonly Block[], indent = 0): Block {
  const height = (pen: PrintPen, width: number) =>
    blocks.reduce((sum, block) => sum + block.height(pen, width - indent), 0);
  return {
    height,
    paint: (pen, x, y, width) => {
      let at = y;
      for (const block of blocks) {
        block.paint(pen, x + indent, at, width - indent);
        at += block.height(pen, width - indent);
      }
    },
  };
}

/** How much of the page's width a picture takes, by the part of the board that it shows. */
const WIDE: Readonly<Record<WalkPicture['of'], number>> = {
  page: 1,
  board: 1,
  strip: 1,
  sheet: 0.8,
  column: 0.42,
};
/** mm that a picture is high at the most; a column of the page is narrow and would be taller than its step is worth. */
const TALL = { page: 105, board: 105, strip: 105, sheet: 88, column: 72 } as const;

function pictureBlock({ png, width, height }: HandbookPicture, { alt, of }: WalkPicture): Block {
  const sized = (room: number) => {
    const wide = Math.min(room * WIDE[of], (TALL[of] * width) / height);
    return { wide, tall: (wide * height) / width };
  };
  return {
    height: (_, room) => sized(room).tall + 5,
    paint: (pen, x, y, room) => {
      const { wide, tall } = sized(room);
      pen.figure(alt, () => {
        pen.picture(png, x, y, wide, tall);
        pen.rect(x, y, wide, tall, { width: 0.2, colour: RULE });
      });
    },
  };
}

/** A numbered step, with its picture below it. */
function stepBlocks(number: number, words: string, picture: Block | undefined): Block[] {
  const step = item((pen, x, y) => pen.text(String(number), x, y, STEP), [[words, BODY]], 8, 2.6);
  return picture ? [{ ...step, leads: true }, together([picture], 8)] : [step];
}

function termBlock({ name, also, what, measured, usual, sketch }: Term): Block {
  const text = [
    heading(name, WORD),
    ...(also ? [paragraph(`also: ${also.join(', ')}`, NOTE, 0.8)] : []),
    paragraph(what, BODY, 1.2),
    paragraph(`Measured: ${measured}`, BODY, 1.2),
    paragraph(`Usual: ${usual.words} (${usual.source})`, BODY, 1.2),
  ];
  const beside = together(text);
  const tall = (pen: PrintPen, width: number) =>
    Math.max(beside.height(pen, width - SKETCH - GAP), sketchHeight(SKETCH));
  return {
    height: (pen, width) => tall(pen, width) + 6,
    paint: (pen, x, y, width) => {
      beside.paint(pen, x + SKETCH + GAP, y, width - SKETCH - GAP);
      drawSketch(pen, sketch, x, y, SKETCH);
      const foot = y + tall(pen, width) + 3;
      pen.line(x, foot, x + width, foot, { width: 0.12, colour: RULE });
    },
  };
}

const chapter = (text: string): Block => ({
  leads: true,
  height: () => capHeight(CHAPTER.size) + 4.5,
  paint: (pen, x, y) => pen.text(text, x, y + capHeight(CHAPTER.size), CHAPTER),
});

/**
 * Prints the handbook: six short walks with pictures of the board, and all words with their sketches.
 * Returns the PDF's bytes. A picture that was not taken is left out, and the step stands without it.
 */
export async function printHandbook({ paper, picture, date }: HandbookJob): Promise<Uint8Array> {
  const pen = new PdfPen({
    title: 'Toeboard, the handbook',
    author: 'Toeboard',
    subject: 'Six short walks, and the words',
    date,
  });
  const book = new Book(pen, paper);
  book.open('what is in it');
  book.put(
    space(24),
    {
      height: () => capHeight(TITLE.size) + 8,
      paint: (on, x, y) => on.text('Toeboard, the handbook', x, y + capHeight(TITLE.size), TITLE),
    },
    paragraph(
      'Six short walks through the board, each from what you want to where it is done; then every word that stands on the screen and that a person with a tape measure may not know.',
      LEAD,
      8,
    ),
    ...WALKS.map(({ title, about }, i) =>
      item((on, x, y) => on.text(String(i + 1), x, y, STEP), [[`${title}. ${about}`, BODY]], 8, 2.2),
    ),
    item(
      (on, x, y) => on.text(String(WALKS.length + 1), x, y, STEP),
      [[`Words: ${TERM_FAMILIES.map(({ title }) => title.toLowerCase()).join('; ')}.`, BODY]],
      8,
      6,
    ),
    paragraph(CAUTION, NOTE),
  );
  for (const { title, about, steps } of WALKS) {
    book.open(title);
    book.put(chapter(title), paragraph(about, LEAD, 5));
    for (const [i, { words, picture: wanted }] of steps.entries()) {
      const taken = wanted && picture(wanted.file);
      book.put(...stepBlocks(i + 1, words, taken && pictureBlock(taken, wanted)));
      await setImmediate();
    }
  }
  for (const { title, terms } of TERM_FAMILIES) {
    book.open(`words, ${title.toLowerCase()}`);
    book.put(chapter(`Words: ${title.toLowerCase()}`));
    for (const term of Object.values(terms)) book.put(termBlock(term));
    await setImmediate();
  }
  return pen.end();
}
