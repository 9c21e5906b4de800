import libraryAddress from 'libheif-js/libheif-wasm/libheif.js?url';
import wasmAddress from 'libheif-js/libheif-wasm/libheif.wasm?url';
import type { FromDecoder, ToDecoder } from './decoder-messages.ts';

// The script of a worker that decodes one HEIC picture. The library is loaded as the file that its makers built, beside the
// bundle and not in it: whoever wants another build of it puts that file in its place.

interface HeifPicture {
  get_width(): number;
  get_height(): number;
  is_primary(): boolean;
  /** Upright: what the file asks to be turned and mirrored is done. Answers null if it cannot be decoded. */
  display(into: ImageData, done: (shown: ImageData | null) => void): void;
}
interface HeifLibrary {
  HeifDecoder: new () => { decode(content: ArrayBuffer): HeifPicture[] };
}
type MakeLibrary = (options: { wasmBinary: ArrayBuffer }) => HeifLibrary;

const DAMAGED = 'its picture cannot be decoded';

/** Loads the library, which offers itself to whoever defines modules and gives no module of its own. */
async function library(): Promise<HeifLibrary> {
  const wasmBinary = await (await fetch(wasmAddress)).arrayBuffer();
  const make = await new Promise<MakeLibrary>((found, missing) => {
    const define = (_needs: readonly string[], own: () => MakeLibrary) => found(own());
    Object.assign(globalThis, { define: Object.assign(define, { amd: true }) });
    import(/* @vite-ignore */ libraryAddress).catch(missing);
  });
  return make({ wasmBinary });
}

async function decoded(content: ArrayBuffer): Promise<FromDecoder> {
  const { HeifDecoder } = await library();
  const pictures = new HeifDecoder().decode(content);
  const picture = pictures.find((each) => each.is_primary()) ?? pictures[0];
  if (!picture) return { ok: false, failure: DAMAGED };
  const into = new ImageData(picture.get_width(), picture.get_height());
  const shown = await new Promise<ImageData | null>((done) => picture.display(into, done));
  if (!shown) return { ok: false, failure: DAMAGED };
  return { ok: true, bitmap: await createImageBitmap(shown), pages: undefined };
}

self.onmessage = async ({ data }: MessageEvent<ToDecoder>) => {
  const answer = await decoded(data.content).catch((): FromDecoder => ({ ok: false, failure: DAMAGED }));
  self.postMessage(answer, { transfer: answer.ok ? [answer.bitmap] : [] });
};
