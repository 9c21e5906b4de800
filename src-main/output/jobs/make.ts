import { setImmediate } from 'node:timers/promises';
import { safeFileName } from '../../files/index.ts';
import {
  DRAWN_WORDS,
  type DrawingJob,
  DrawingRefused,
  drawFile,
  drawSvg,
  SvgPen,
  USUAL_TURN,
} from '../drawings/index.ts';
import { filmPreview, makeFilm } from '../film/film.ts';
import { movingPage, movingPreview } from '../moving/moving-page.ts';
import { drawPages, PRINTS, type PrintJob, printPdf } from '../pages/index.ts';
import { forSpreadsheet, TABLES } from '../tables/index.ts';
import type { Made, OutputRequest, Source, Watch } from './request.ts';

const TYPES = {
  pdf: 'application/pdf',
  svg: 'image/svg+xml',
  png: 'image/png',
  dxf: 'image/vnd.dxf',
  csv: 'text/csv; charset=utf-8',
  html: 'text/html; charset=utf-8',
} as const;

/** Lines of a table that its preview tells. */
const LINES_SHOWN = 40;

const bytes = (text: string) => new Uint8Array(Buffer.from(text, 'utf8'));

function named({ car, document }: Source, what: string, ending: keyof typeof TYPES) {
  return { fileName: safeFileName(`${car} - ${document.name} - ${what}`, ending), type: TYPES[ending] };
}

/** Prints that show the layout: what was measured and what is to be measured is another matter. */
const COUNTED: ReadonlySet<PrintJob['kind']> = new Set(['sheet', 'templates', 'customer']);

async function print(
  request: Extract<OutputRequest, { kind: 'print' }>,
  source: Source,
  watch: Watch,
): Promise<Made> {
  const { counted } = source;
  const job: PrintJob = {
    ...source,
    ...watch,
    kind: request.print,
    paper: request.paper,
    ...(request.rooms ? { rooms: request.rooms } : {}),
    ...(counted ? { revision: counted.revision() } : {}),
  };
  const { words } = PRINTS[request.print];
  if (!source.preview) {
    const whole = await printPdf(job);
    watch.signal.throwIfAborted();
    // Counted once it is whole, so that one that failed or was called off takes no number.
    if (COUNTED.has(request.print)) counted?.wentOut();
    return { ...named(source, words, 'pdf'), parts: [whole] };
  }
  const pen = new SvgPen('outlines');
  await drawPages(job, pen);
  const parts: Uint8Array[] = [];
  for (let page = 0; page < pen.pageCount; page += 1) {
    parts.push(bytes(pen.document(page, `${words}, page ${page + 1}`)));
    await setImmediate();
  }
  return { ...named(source, words, 'svg'), parts };
}

async function draw(
  request: Extract<OutputRequest, { kind: 'drawing' }>,
  source: Source,
  watch: Watch,
): Promise<Made> {
  const { view, format, pose, turn = USUAL_TURN, rooms = [] } = request;
  const job: DrawingJob = { ...source, view, format, pose, turn, rooms, signal: watch.signal };
  const words = DRAWN_WORDS[view];
  if (source.preview) {
    if (view === 'templates')
      throw new DrawingRefused('the plates are not shown here: they are those of the templates, in the file');
    if (view === '3d') throw new DrawingRefused('points in space are not shown here: the file holds them');
    return { ...named(source, words, 'svg'), parts: [bytes(drawSvg(job, 'outlines').svg)] };
  }
  return { ...named(source, words, format), parts: [await drawFile(job)] };
}

async function table(
  request: Extract<OutputRequest, { kind: 'table' }>,
  source: Source,
  watch: Watch,
): Promise<Made> {
  const { words, of, columns } = TABLES[request.table];
  const { numbers = 'data' } = request;
  const plain = of(source.document);
  const pieces: string[] = [];
  for (const piece of numbers === 'data' ? plain : forSpreadsheet(plain, columns, numbers)) {
    pieces.push(piece);
    if (source.preview && pieces.length > LINES_SHOWN) break;
    await setImmediate();
    watch.signal.throwIfAborted();
  }
  const text = pieces.join('');
  const shown = source.preview ? text.split('\n').slice(0, LINES_SHOWN).join('\n') : text;
  // The mark tells spreadsheets that the letters are UTF-8.
  const content = source.preview ? bytes(shown) : bytes(`\uFEFF${text.replaceAll('\n', '\r\n')}`);
  return { ...named(source, words, 'csv'), parts: [content] };
}

/** The page as a file; to look at, its picture as it stands there without its script. */
async function moving(
  _request: Extract<OutputRequest, { kind: 'moving' }>,
  source: Source,
  watch: Watch,
): Promise<Made> {
  const words = 'Page that moves';
  if (source.preview) return { ...named(source, words, 'svg'), parts: [bytes(movingPreview(source))] };
  return { ...named(source, words, 'html'), parts: [await movingPage({ ...source, ...watch })] };
}

/** The film as a file; to look at, its pictures at the top of the way and at its foot. */
async function film(
  { over, width, seconds }: Extract<OutputRequest, { kind: 'film' }>,
  source: Source,
  watch: Watch,
): Promise<Made> {
  const job = { ...source, ...watch, over, width, seconds };
  if (source.preview) return { ...named(source, 'Film', 'svg'), parts: filmPreview(job).map(bytes) };
  return { ...named(source, 'Film', 'png'), parts: [await makeFilm(job)] };
}

type Maker<Kind extends OutputRequest['kind']> = (
  request: Extract<OutputRequest, { kind: Kind }>,
  source: Source,
  watch: Watch,
) => Promise<Made>;

/** How each kind of request is made. A new one is one line here. */
const MAKERS: { readonly [Kind in OutputRequest['kind']]: Maker<Kind> } = {
  print,
  drawing: draw,
  table,
  moving,
  film,
};

/** Makes what is requested. Rejects with the signal's reason when called off; nothing is written anywhere. */
export async function make(request: OutputRequest, source: Source, watch: Watch): Promise<Made> {
  watch.signal.throwIfAborted();
  const maker = MAKERS[request.kind] as Maker<OutputRequest['kind']>;
  return maker(request, source, watch);
}
