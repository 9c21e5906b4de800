import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { vi } from 'vitest';
import { type Box, boxOf } from '../../shared-math/drawing/index.ts';
import type { LayoutDocument } from '../../shared-math/layout/index.ts';
import { type PrintJob, printPdf } from '../../src-main/output/pages/index.ts';
import { capHeight, PdfPen } from '../../src-main/output/pens/print-pen.ts';
import { documentOf } from './layouts.ts';

const projects = resolve(import.meta.dirname, '../../projects');

/** The demonstrations' files. */
export const DEMONSTRATIONS = readdirSync(projects).filter(
  (name) => name.endsWith('.json') && name !== 'shop.json',
);

export function demonstration(name: string): LayoutDocument {
  return documentOf(JSON.parse(readFileSync(join(projects, name), 'utf8')));
}

/** A job with what is left out filled in: letter paper, inches in sixteenths, one day of an invented year. */
export function jobOf(over: Partial<PrintJob> & Pick<PrintJob, 'document'>): PrintJob {
  return {
    kind: 'sheet',
    customer: 'Odile Farrowby',
    car: 'Open two-seater on hairpins',
    paper: 'letter',
    unit: 'in',
    fraction: 16,
    date: new Date(2026, 2, 14, 12),
    ...over,
  };
}

/** A line of text where it was put: its box on the page, mm. */
export interface PutText {
  readonly page: number;
  readonly text: string;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** What was printed: the PDF, and where every line of text was put. */
export interface Printed {
  readonly texts: readonly PutText[];
  readonly bytes: Uint8Array;
}

const kept = new Map<string, Promise<Printed>>();

/** A job printed once for all who read it in this process. The bytes are a copy, as a reader of PDF takes what it is given. */
export async function printed(job: Omit<PrintJob, 'progress' | 'signal'>): Promise<Printed> {
  const key = JSON.stringify(job);
  const print = kept.get(key) ?? printedAnew(job);
  kept.set(key, print);
  const { texts, bytes } = await print;
  return { texts, bytes: Uint8Array.from(bytes) };
}

/** Prints, and reports where every line of text was put. Lines set small within a small picture do not count. */
async function printedAnew(job: PrintJob): Promise<Printed> {
  const texts: PutText[] = [];
  let page = -1;
  let count = 0;
  let turned = 0;
  let small = 0;
  const clips: Box[] = [];
  const put = (box: Omit<PutText, 'page'>) => {
    let { left, right, top, bottom } = box;
    // What is cut off is not seen.
    for (const clip of clips) {
      left = Math.max(left, clip.left);
      right = Math.min(right, clip.right);
      top = Math.max(top, clip.top);
      bottom = Math.min(bottom, clip.bottom);
    }
    if (small === 0 && left < right && top < bottom)
      texts.push({ page, text: box.text, left, right, top, bottom });
  };
  const { text, turnedText, addPage, turnTo, smaller, within } = PdfPen.prototype;
  const spies = [
    vi.spyOn(PdfPen.prototype, 'addPage').mockImplementation(function (this: PdfPen, ...args) {
      page = count;
      count += 1;
      addPage.apply(this, args);
    }),
    vi.spyOn(PdfPen.prototype, 'turnTo').mockImplementation(function (this: PdfPen, to) {
      page = to;
      turnTo.call(this, to);
    }),
    vi.spyOn(PdfPen.prototype, 'smaller').mockImplementation(function (this: PdfPen, ...args) {
      small += 1;
      smaller.apply(this, args);
      small -= 1;
    }),
    vi.spyOn(PdfPen.prototype, 'within').mockImplementation(function (this: PdfPen, ...args) {
      const [line] = args;
      if (line) clips.push(boxOf([...line]));
      within.apply(this, args);
      if (line) clips.pop();
    }),
    vi.spyOn(PdfPen.prototype, 'turnedText').mockImplementation(function (this: PdfPen, ...args) {
      const [words, x, y, style, , align = 'left'] = args;
      const wide = this.widthOf(words, style);
      const from = align === 'left' ? y : align === 'right' ? y + wide : y + wide / 2;
      put({ text: words, left: x - capHeight(style.size), right: x, top: from - wide, bottom: from });
      turned += 1;
      turnedText.apply(this, args);
      turned -= 1;
    }),
    vi.spyOn(PdfPen.prototype, 'text').mockImplementation(function (this: PdfPen, ...args) {
      const [words, x, y, style, align = 'left'] = args;
      if (turned === 0 && words.trim() !== '') {
        const wide = this.widthOf(words, style);
        const left = align === 'left' ? x : align === 'right' ? x - wide : x - wide / 2;
        put({ text: words, left, right: left + wide, top: y - capHeight(style.size), bottom: y });
      }
      text.apply(this, args);
    }),
  ];
  try {
    const bytes = await printPdf(job);
    return { texts, bytes };
  } finally {
    for (const spy of spies) spy.mockRestore();
  }
}
