import { failed, type Outcome, succeeded } from '../../shared-math/outcome.ts';
import { fileKind, LOOKED_AT } from '../../shared-math/outside/file-kinds.ts';
import type { FromDecoder, ToDecoder } from './decoder-messages.ts';
import type { DecodedPicture, OwnType, Which } from './picture-file.ts';
import { startHeicDecoder, startPdfDecoder } from './start-decoders.ts';

/**
 * ms after which a decoder is taken to hang and is ended. A HEIC picture of 48 megapixels took 33 s on two cores with ten times
 * the work that they can do.
 */
const DECODED_WITHIN = 120_000;

/** The decoders that this program brings. */
const OWN: Readonly<Record<OwnType, () => Worker>> = {
  'image/heic': startHeicDecoder,
  'application/pdf': startPdfDecoder,
};

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
const TYPES: Readonly<Record<string, OwnType>> = {
  'a HEIC picture': 'image/heic',
  'a PDF': 'application/pdf',
};

async function ownType(file: Blob): Promise<OwnType | undefined> {
  const head = new Uint8Array(await file.slice(0, LOOKED_AT).arrayBuffer());
  return TYPES[fileKind(head) ?? ''];
}

/** As `decodePicture` of the room's door, which loads this when it is wanted. */
export async function decode(file: Blob, which: Which): Promise<Outcome<DecodedPicture, string>> {
  const type = await ownType(file);
  if (type) {
    const content = await file.arrayBuffer();
    return asked(OWN[type](), { content, page: which.page ?? 1, size: which.size });
  }
  try {
    return succeeded({ bitmap: await createImageBitmap(file), pages: undefined });
  } catch {
    return failed('its picture cannot be decoded');
  }
}
