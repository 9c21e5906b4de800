import { getDocument, PasswordException, PDFWorker, VerbosityLevel } from 'pdfjs-dist/legacy/build/pdf.mjs';
import type { FromDecoder, ToDecoder } from './decoder-messages.ts';
import type { LeftOut } from './pdf-reader-warnings.ts';
import { pageSize } from './pdf-size.ts';

// The script of a worker that draws one page of a PDF. The library reads the file in a worker of its own below this one,
// which ends with it.

const DAMAGED = 'it is a PDF that cannot be read';
/** Pixels of one picture within a page. Its header may claim any number, in a few bytes. */
const IMAGE_PIXELS_MOST = 120e6;

/** By its name, what the library asks for: letters of fonts that a file leaves out, tables of letters, readers of scans. */
const addresses = new Map(
  Object.entries({
    ...import.meta.glob<string>('../../node_modules/pdfjs-dist/standard_fonts/*.{pfb,ttf}', {
      query: '?url',
      import: 'default',
      eager: true,
    }),
    ...import.meta.glob<string>('../../node_modules/pdfjs-dist/cmaps/*.bcmap', {
      query: '?url',
      import: 'default',
      eager: true,
    }),
    ...import.meta.glob<string>('../../node_modules/pdfjs-dist/wasm/{jbig2,openjpeg,qcms_bg}.wasm', {
      query: '?url',
      import: 'default',
      eager: true,
    }),
  }).map(([path, address]) => [path.slice(path.lastIndexOf('/') + 1), address]),
);

class OwnFiles {
  async fetch({ filename }: { filename: string }): Promise<Uint8Array> {
    const address = addresses.get(filename);
    if (address === undefined) throw new Error(`there is no file ${filename}`);
    return new Uint8Array(await (await fetch(address)).arrayBuffer());
  }
}

type CanvasAndContext = { canvas: OffscreenCanvas; context: OffscreenCanvasRenderingContext2D };

/** Canvases for a worker, which has no page to make them. */
class OffscreenCanvases {
  create(width: number, height: number): CanvasAndContext {
    const canvas = new OffscreenCanvas(width, height);
    return { canvas, context: contextOf(canvas) };
  }
  reset({ canvas }: CanvasAndContext, width: number, height: number): void {
    canvas.width = width;
    canvas.height = height;
  }
  destroy({ canvas }: CanvasAndContext): void {
    canvas.width = 0;
    canvas.height = 0;
  }
  getNoAlphaContext(canvas: OffscreenCanvas): OffscreenCanvasRenderingContext2D {
    return contextOf(canvas, false);
  }
}

/** Filters are made of elements of a page, and drawings do without. */
class NoFilters {
  addFilter = () => 'none';
  addHCMFilter = () => 'none';
  addAlphaFilter = () => 'none';
  addLuminosityFilter = () => 'none';
  addKnockoutFilter = () => 'none';
  addHighlightHCMFilter = () => 'none';
  addSelectionHCMFilter = () => 'none';
  addSelectionFilter = () => 'none';
  createSelectionStyle = () => null;
  destroy = () => {};
}

function contextOf(canvas: OffscreenCanvas, alpha = true): OffscreenCanvasRenderingContext2D {
  const context = canvas.getContext('2d', { alpha, willReadFrequently: true });
  if (!context) throw new Error('this browser draws no pictures');
  return context;
}

async function drawn({ content, page: number, size }: ToDecoder): Promise<FromDecoder> {
  const reader = new Worker(new URL('./pdf-reader-worker.ts', import.meta.url), { type: 'module' });
  let leftOut = false;
  reader.addEventListener('message', ({ data }: MessageEvent<Partial<LeftOut>>) => {
    if (data.leftOut) leftOut = true;
  });
  const document = await getDocument({
    data: new Uint8Array(content),
    worker: new PDFWorker({ port: reader as never, verbosity: VerbosityLevel.WARNINGS }),
    // Letters are drawn as lines: a worker has no fonts.
    disableFontFace: true,
    useSystemFonts: false,
    useWorkerFetch: false,
    disableWorkerRendering: true,
    maxImageSize: IMAGE_PIXELS_MOST,
    cMapUrl: './',
    standardFontDataUrl: './',
    wasmUrl: './',
    BinaryDataFactory: OwnFiles,
    CanvasFactory: OffscreenCanvases,
    FilterFactory: NoFilters,
  }).promise;
  const pages = document.numPages;
  if (number > pages) return { ok: false, failure: `it has ${pages} ${pages === 1 ? 'page' : 'pages'} only` };
  const page = await document.getPage(number);
  const plain = page.getViewport({ scale: 1 });
  const [width, height] = size ?? pageSize(plain.width, plain.height) ?? [0, 0];
  if (width === 0) return { ok: false, failure: 'its page has no size' };
  const canvas = new OffscreenCanvas(width, height);
  const viewport = page.getViewport({ scale: Math.max(width / plain.width, height / plain.height) });
  await page.render({
    canvas: null,
    canvasContext: contextOf(canvas) as unknown as CanvasRenderingContext2D,
    viewport,
  }).promise;
  return leftOut
    ? {
        ok: false,
        failure: `its page holds a picture of more than ${IMAGE_PIXELS_MOST / 1e6} million pixels`,
      }
    : { ok: true, bitmap: canvas.transferToImageBitmap(), pages };
}

function failure(error: unknown): FromDecoder {
  return {
    ok: false,
    failure: error instanceof PasswordException ? 'it is locked with a password' : DAMAGED,
  };
}

self.onmessage = async ({ data }: MessageEvent<ToDecoder>) => {
  const answer = await drawn(data).catch(failure);
  self.postMessage(answer, { transfer: answer.ok ? [answer.bitmap] : [] });
};
