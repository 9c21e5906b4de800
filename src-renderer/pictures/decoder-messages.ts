// What the page and a decoder of pictures say to one another. A decoder is started for one file and ended after it, so
// that what it took of memory goes with it, and one that hangs is ended too.

export interface ToDecoder {
  readonly content: ArrayBuffer;
  /** Of a PDF: which of its pages, from 1. */
  readonly page: number;
  /** Of a PDF: px of the picture, where they have been settled before; else as many as suit the page. */
  readonly size: readonly [number, number] | undefined;
}

export type FromDecoder =
  | {
      readonly ok: true;
      /** Upright, at full size. */
      readonly bitmap: ImageBitmap;
      /** Of a PDF: how many pages it has. */
      readonly pages: number | undefined;
    }
  | {
      readonly ok: false;
      /** Ends a sentence that begins with the file's name. */
      readonly failure: string;
    };
