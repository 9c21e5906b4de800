import { failed, type Outcome, succeeded } from '../../shared-math/outcome.ts';
import { fileKind, LOOKED_AT } from '../../shared-math/outside/index.ts';
import type { FromDecoder, ToDecoder } from './decoder-messages.ts';
import { startHeicDecoder, startPdfDecoder } from './start-decoders.ts';

/** ms after which a decoder is taken to hang and is ended; a phone's largest picture takes some ten seconds on a slow machine. */
const DECODED_WITHIN = 120_000;

export interface DecodedPicture {
  /** Upright, at full size. Whoever is given it closes it. */
  readonly bitmap: ImageBitmap;
  /** Of a PDF: how many pages it has. */
  readonly pages: number | undefined;
}

/** Which picture of a file is meant: of a PDF the page, from 1, and px of it where they are settled. */
export interface Which {
  readonly page?: number | undefined;
  readonly size?: readonly [number, number] | undefined;
}

/** Decoders that this program brings, by the type of a file; the browser decodes the others by itself. */
const OWN: Readonly<Record<string, () => Worker>> = {
  'image/heic': startHeicDecoder,
  'application/pdf': startPdfDecoder,
};

/** Whether this program decodes a file, and not the browser; of one that is typed by what it is, as the store does. */
export function decodesItself({ type }: Blob): boolean {
  return type in OWN;
}

function asked(worker: Worker, question: ToDecoder): Promise<Outcome<DecodedPicture, string>> {
  return new Promise((done) => {
    const answered = (outcome: Outcome<DecodedPicture, string>) => {
      clearTimeout(limit);
      worker.terminate();
      done(outcome);
    };
    const limit = setTimeout(() => answered(failed('it takes too long to decode')), DECODED_WITHIN);
    worker.onmessage = ({ data }: MessageEvent<FromDecoder>) =>
      answered(data.ok ? succeeded({ bitmap: data.bitmap, pages: data.pages }) : failed(data.failure));
    worker.onerror = () => answered(failed('its picture cannot be decoded'));
    worker.postMessage(question, [question.content]);
  });
}

/** By what the bytes say that a file is, not by its name or type: not every system knows the types of phones' pictures. */
const TYPES: Readonly<Record<string, string>> = {
  'a HEIC picture': 'image/heic',
  'a PDF': 'application/pdf',
};

async function typeOf(file: Blob): Promise<string> {
  const head = new Uint8Array(await file.slice(0, LOOKED_AT).arrayBuffer());
  return TYPES[fileKind(head) ?? ''] ?? file.type;
}

/**
 * The whole picture of a file, beside the page.
 *
 * @returns Its picture at full size; the failure ends a sentence that begins with the file's name.
 */
export async function decodePicture(file: Blob, which: Which = {}): Promise<Outcome<DecodedPicture, string>> {
  const start = OWN[await typeOf(file)];
  if (start) {
    const content = await file.arrayBuffer();
    return asked(start(), { content, page: which.page ?? 1, size: which.size });
  }
  try {
    return succeeded({ bitmap: await createImageBitmap(file), pages: undefined });
  } catch {
    return failed('its picture cannot be decoded');
  }
}
