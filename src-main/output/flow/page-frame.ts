import { CAUTION } from '../../../shared-math/words/index.ts';
import { ATTENTION, INK, SOFT } from '../pens/colours.ts';
import { type Area, type Paper, pageSize } from '../pens/papers.ts';
import { capHeight, lineHeight, type PrintPen, type TextStyle } from '../pens/print-pen.ts';
import { BODY, BORDER, CELL, LABEL, TITLE, WARNING, WARNING_SIGN } from '../pens/styles.ts';
import { brokenInto, shortened, writeLines } from '../pens/text-lines.ts';

/** mm from the paper's edge to the border: what any printer reaches. */
const EDGE = 8;
/** mm between border and what is inside. */
const PAD = 4;
/** mm of each of the title block's two rows. */
const TITLE_ROW = 10.4;

/** What the title block says on every page, and the paper that it stands on. */
export interface TitleFacts {
  readonly customer?: string;
  readonly car?: string;
  readonly document?: { readonly name: string };
  /** The fields of the first row with their shares of its width; those of a layout's sheet if absent. */
  readonly names?: readonly (readonly [label: string, value: string, share: number])[];
  readonly date: Date;
  /** Only the day of the date is known. */
  readonly dayOnly?: boolean;
  readonly drawnBy?: string;
  /** Which sheet of this layout's it is; absent where nothing counts them. */
  readonly revision?: number;
  /** What the pages were made from, as a short mark. */
  readonly mark: string;
  readonly paper: Paper;
}

/** What a page says of itself. */
export interface PageFacts {
  /** What is on it: "Side view". */
  readonly title: string;
  /** "1 : 10"; undefined if nothing on it is to scale. */
  readonly scale?: string;
  readonly lying: boolean;
  /** Shows the sign of third-angle projection. */
  readonly projection?: boolean;
}

interface Cell {
  readonly label: string;
  readonly value: string;
  /** mm; a share of what is left where it is below 1. */
  readonly width: number;
}

interface FieldCell extends Cell {
  /** mm. */
  readonly wide: number;
}

/** mm that a field keeps free beside its value, and that the sign of projection takes in the second row. */
const CELL_PAD = 3.4;
const SIGN = 21;

/** The fields with their widths where all of them share `width` mm. */
function widthsOf(cells: readonly Cell[], width: number): FieldCell[] {
  const fixed = cells.reduce((sum, cell) => sum + (cell.width >= 1 ? cell.width : 0), 0);
  return cells.map((cell) => ({
    ...cell,
    wide: cell.width >= 1 ? cell.width : cell.width * (width - fixed),
  }));
}

/** A date as in ISO 8601, by the calendar on the wall. */
export function dateWords(date: Date): string {
  const two = (value: number) => String(value).padStart(2, '0');
  return `${date.getFullYear()}-${two(date.getMonth() + 1)}-${two(date.getDate())}`;
}

/** A date with the time of the day, 24 hours: "2026-03-14 12:00". */
export function timeWords(date: Date): string {
  const two = (value: number) => String(value).padStart(2, '0');
  return `${dateWords(date)} ${two(date.getHours())}:${two(date.getMinutes())}`;
}

/** A warning triangle with its mark, its lower left corner at x, y; mm. */
export function warningSign(pen: PrintPen, x: number, y: number, height: number): void {
  const half = height * 0.58;
  pen.stroke([x, y, x + 2 * half, y, x + half, y - height], { width: 0.35, colour: ATTENTION }, true);
  pen.text('!', x + half, y - height * 0.14, { ...WARNING_SIGN, size: height * 2.1 }, 'centre');
}

/** The sign of third-angle projection (ISO 5456-2): a cut cone, its narrow end seen on the side where it is. */
function projectionSign(pen: PrintPen, x: number, y: number, height: number): void {
  const line = { width: 0.25, colour: INK };
  const axis = { width: 0.12, colour: SOFT, dash: [1.6, 0.5, 0.3, 0.5] };
  const r = height / 2;
  const small = r * 0.52;
  pen.circle(x + r, y, r, line);
  pen.circle(x + r, y, small, line);
  const left = x + 2 * r + 2;
  const right = left + height * 1.05;
  pen.stroke([left, y - small, right, y - r, right, y + r, left, y + small], line, true);
  pen.line(x - 0.8, y, right + 0.8, y, axis);
  pen.line(x + r, y - r - 0.8, x + r, y + r + 0.8, axis);
}

/** The pages of a printed job: each with its border, its cautions and its title block, numbered when all are there. */
export class PageFrame {
  readonly pen: PrintPen;
  readonly #title: TitleFacts;
  readonly #facts: PageFacts[] = [];
  readonly #what: string;
  /** What is written on pages once all of them are there. */
  readonly #later: (readonly [page: number, write: (pageOf: (title: string) => string) => void])[] = [];

  constructor(pen: PrintPen, title: TitleFacts, what: string) {
    this.pen = pen;
    this.#title = title;
    this.#what = what;
  }

  get count(): number {
    return this.#facts.length;
  }

  /**
   * Writes something on the page at hand once all pages are there: what names other pages. `pageOf` answers the number of the
   * first page of a title, or "after this one" if there is none.
   */
  afterwards(write: (pageOf: (title: string) => string) => void): void {
    this.#later.push([this.#facts.length - 1, write]);
  }

  /** Where a page's border is, mm. */
  #border(lying: boolean): Area {
    const { width, height } = pageSize(this.#title.paper, lying);
    return { x: EDGE, y: EDGE, width: width - 2 * EDGE, height: height - 2 * EDGE };
  }

  #cautionLines(width: number): string[] {
    return brokenInto(this.pen, CAUTION, WARNING, width - 12);
  }

  #cautionHeight(width: number): number {
    return this.#cautionLines(width).length * lineHeight(WARNING.size) + 2.4;
  }

  /** The room that a page has for its own content, mm. */
  room(lying: boolean): Area {
    const { x, y, width, height } = this.#border(lying);
    const foot = 2 * TITLE_ROW + this.#cautionHeight(width);
    return { x: x + PAD, y: y + PAD, width: width - 2 * PAD, height: height - foot - 2 * PAD };
  }

  /** Begins a page; its title stands at the head. Answers the room below it. */
  open(facts: PageFacts, note = ''): Area {
    this.pen.addPage(pageSize(this.#title.paper, facts.lying));
    this.#facts.push(facts);
    const room = this.room(facts.lying);
    this.pen.text(facts.title, room.x, room.y + capHeight(TITLE.size), TITLE);
    if (note) {
      const style: TextStyle = { face: 'regular', size: 8.4, colour: SOFT };
      const from = room.x + this.pen.widthOf(facts.title, TITLE) + 5;
      const lines = brokenInto(this.pen, note, style, room.x + room.width - from);
      // The last line stands level with the title; more grow upwards, two fit under the border.
      const top = room.y + capHeight(TITLE.size) - (lines.length - 0.23) * lineHeight(style.size);
      writeLines(this.pen, lines, room.x + room.width, top, style, 'right');
    }
    return this.roomBelowTitle(facts.lying);
  }

  /** The room that is left below a page's title, mm. */
  roomBelowTitle(lying: boolean): Area {
    const room = this.room(lying);
    const head = capHeight(TITLE.size) + 4;
    return { ...room, y: room.y + head, height: room.height - head };
  }

  /** The names of the title block that its fields have no room for, with what they name. */
  #cutNames(): Cell[] {
    const cut = new Set<string>();
    for (const { lying } of this.#facts) {
      const { width } = this.#border(lying);
      for (const { label, value, wide } of this.#owner(width))
        if (this.#setName(value, wide - CELL_PAD).cut) cut.add(label);
    }
    return this.#names().filter(({ label }) => cut.has(label));
  }

  /** Draws border, cautions and title block of every page, now that their number is known. */
  finish(): void {
    const cut = this.#cutNames();
    if (cut.length > 0) {
      const area = this.open({ title: 'Names in full', lying: false });
      let { y } = area;
      for (const { label, value } of cut) {
        this.pen.text(label, area.x, y + 3, LABEL);
        y = writeLines(this.pen, brokenInto(this.pen, value, BODY, area.width), area.x, y + 4.4, BODY) + 4;
      }
    }
    const pageOf = (title: string) => {
      const page = this.#facts.findIndex((facts) => facts.title === title);
      return page < 0 ? 'after this one' : String(page + 1);
    };
    for (const [page, write] of this.#later) {
      this.pen.turnTo(page);
      write(pageOf);
    }
    this.#facts.forEach((facts, page) => {
      this.pen.turnTo(page);
      const border = this.#border(facts.lying);
      const block = 2 * TITLE_ROW;
      const { x, y, width, height } = border;
      const foot = y + height;
      this.#cautions(x, foot - block - this.#cautionHeight(width), width);
      this.#titleBlock(facts, page, x, foot - block, width);
      this.pen.rect(x, y, width, height, BORDER);
    });
  }

  #cautions(x: number, y: number, width: number): void {
    const height = this.#cautionHeight(width);
    this.pen.line(x, y, x + width, y, CELL);
    warningSign(this.pen, x + 3, y + height / 2 + 1.7, 3.6);
    writeLines(this.pen, this.#cautionLines(width), x + 10, y + 1.2, WARNING);
  }

  #names(): Cell[] {
    const { customer, car, document, drawnBy = '', names } = this.#title;
    if (names) return names.map(([label, value, width]) => ({ label, value, width }));
    return [
      { label: 'CUSTOMER', value: customer || 'not named', width: 0.25 },
      { label: 'CAR', value: car || 'not named', width: 0.28 },
      { label: 'VARIANT', value: document?.name ?? 'not named', width: 0.3 },
      // Blank where nobody said, to be written by hand.
      { label: 'DRAWN BY', value: drawnBy, width: 0.17 },
    ];
  }

  /** What stands in the title block on every page below the names. */
  #facing(facts: PageFacts, page: number): Cell[] {
    const { date, dayOnly = false, revision, mark } = this.#title;
    return [
      { label: this.#what.toUpperCase(), value: facts.title, width: 0.999999 },
      { label: 'SCALE', value: facts.scale ?? 'none', width: 17 },
      { label: 'REVISION', value: revision === undefined ? 'not counted' : String(revision), width: 19 },
      { label: 'CONTENT', value: mark, width: 19 },
      { label: 'DATE', value: dayOnly ? dateWords(date) : timeWords(date), width: 30 },
      { label: 'PAGE', value: `${page + 1} of ${this.#facts.length}`, width: 17 },
    ];
  }

  /** The names' fields with the width of each, mm. */
  #owner(width: number): FieldCell[] {
    return widthsOf(this.#names(), width);
  }

  #titleBlock(facts: PageFacts, page: number, x: number, y: number, width: number): void {
    const { pen } = this;
    const sign = facts.projection ? SIGN : 0;
    pen.line(x, y, x + width, y, BORDER);
    this.#cells(this.#names(), x, y, width, TITLE_ROW);
    pen.line(x, y + TITLE_ROW, x + width, y + TITLE_ROW, CELL);
    this.#cells(this.#facing(facts, page), x, y + TITLE_ROW, width - sign, TITLE_ROW);
    if (sign) projectionSign(pen, x + width - sign + 3.6, y + 1.5 * TITLE_ROW, 5.4);
  }

  #cells(cells: readonly Cell[], x: number, y: number, width: number, height: number): void {
    const { pen } = this;
    let at = x;
    for (const { label, value, wide } of widthsOf(cells, width)) {
      if (at > x) pen.line(at, y, at, y + height, CELL);
      pen.text(label, at + 1.8, y + 3.2, LABEL);
      const { lines, style } = this.#setName(value, wide - CELL_PAD);
      if (lines.length === 1) pen.text(lines[0] as string, at + 1.8, y + height - 2, style);
      else if (lines.length > 1) {
        const [first, second] = lines as [string, string];
        pen.text(first, at + 1.8, y + height - 1.4 - lineHeight(style.size) * 0.9, style);
        pen.text(second, at + 1.8, y + height - 1.4, style);
      }
      at += wide;
    }
    if (at < x + width - 0.01) pen.line(at, y, at, y + height, CELL);
  }

  /** A name as a field of a width holds it: a long one is set smaller, then on two lines, then cut. */
  #setName(value: string, width: number): { lines: string[]; style: TextStyle; cut: boolean } {
    const { pen } = this;
    const style: TextStyle = { face: 'bold', size: 9.2, colour: INK };
    const fitting = [9.2, 8, 7]
      .map((size) => ({ ...style, size }))
      .find((one) => pen.widthOf(value, one) <= width);
    if (fitting) return { lines: [value], style: fitting, cut: false };
    const small = { ...style, size: 7 };
    const [first = '', ...rest] = brokenInto(pen, value, small, width);
    const second = shortened(pen, rest.join(' '), small, width);
    return { lines: [first, second], style: small, cut: rest.length > 1 };
  }
}
