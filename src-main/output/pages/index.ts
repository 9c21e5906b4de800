// Printing: a layout as a PDF, in the program itself. The same date and layout give the same bytes.

import { PageFrame } from '../flow/page-frame.ts';
import { noType } from '../pens/no-type.ts';
import { PdfPen, type PrintPen } from '../pens/print-pen.ts';
import { contentMark } from './content-mark.ts';
import { customerPages } from './customer/customer-page.ts';
import type { PrintJob, PrintKind } from './job.ts';
import { Making } from './making.ts';
import { measuringPages } from './measuring/measuring-pages.ts';
import type { Pages } from './pages.ts';
import { buildSheet } from './sheet/build-sheet.ts';
import { templatePages } from './templates/templates.ts';

export { PAPER_NAMES, type Paper } from '../pens/papers.ts';
export { PRINT_KINDS, type PrintJob, type PrintKind } from './job.ts';

export interface Print {
  /** What it is called on paper and in messages. */
  readonly words: string;
  readonly pages: (job: PrintJob) => Pages;
}

/** What can be printed, by kind. A new one is one folder and one line here; its name stands in `job.ts`. */
export const PRINTS: Readonly<Record<PrintKind, Print>> = {
  sheet: { words: 'Build sheet', pages: buildSheet },
  templates: { words: 'Templates at full size', pages: templatePages },
  customer: { words: 'The customer’s copy', pages: customerPages },
  measuring: { words: 'Measuring sheet', pages: measuringPages },
};

/** Refuses names and notes in letters that no type at hand has, by what they name, before anything is drawn. */
function refuseUnsettable(
  { customer = '', car = '', drawnBy = '', document }: PrintJob,
  pen: PrintPen,
): void {
  const texts: readonly (readonly [what: string, text: string])[] = [
    ['The customer’s name', customer],
    ['The car’s name', car],
    ['The name of who drew it', drawnBy],
    ['The layout’s name', document.name],
    ['The layout’s notes', document.notes],
    ...document.rails.map(({ name }, i) => [`The name of rail ${i + 1}`, name] as const),
    ...document.obstacles.map(({ name }, i) => [`The name of obstacle ${i + 1}`, name] as const),
  ];
  for (const [what, text] of texts) {
    const letters = pen.unsettable(text);
    if (letters.length > 0) throw noType(what, text, letters);
  }
}

/** Draws a job's pages with a pen, page by page; rejects with the signal's reason when called off. */
export async function drawPages(job: PrintJob, pen: PrintPen): Promise<void> {
  refuseUnsettable(job, pen);
  const { words, pages: pagesOf } = PRINTS[job.kind];
  const pages = pagesOf(job);
  const making = new Making(job, pages.length);
  const pageFrame = new PageFrame(pen, { ...job, mark: contentMark(job.document) }, words);
  for (const [what, draw] of pages) await making.part(what, () => draw(pageFrame));
  pageFrame.finish();
}

/**
 * Prints a layout as a PDF. Lengths in the job's unit first.
 * Outcomes: the whole file's bytes; rejects with the signal's reason when called off, having written nothing anywhere.
 */
export async function printPdf(job: PrintJob): Promise<Uint8Array> {
  const { document, customer = '', car = '', date } = job;
  const pen = new PdfPen({
    title: [PRINTS[job.kind].words, car, document.name].filter(Boolean).join(' – '),
    author: 'Toeboard',
    subject: [customer, car].filter(Boolean).join(', '),
    date,
  });
  await drawPages(job, pen);
  return pen.end();
}
