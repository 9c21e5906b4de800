import type { PhotoPart, WarpOrder } from '../../shared-math/trace/index.ts';

// What the page and the worker that keeps originals say to one another. A picture goes by a key of the page's own.

export type ToOriginals =
  /** A picture that was decoded elsewhere. */
  | { readonly kind: 'take'; readonly key: string; readonly bitmap: ImageBitmap }
  /** A file that the browser decodes. */
  | { readonly kind: 'open'; readonly id: number; readonly key: string; readonly file: Blob }
  /** A stretch of it as it is. */
  | { readonly kind: 'part'; readonly id: number; readonly key: string; readonly part: PhotoPart }
  /** A stretch of it seen straight on. */
  | { readonly kind: 'straight'; readonly id: number; readonly key: string; readonly order: WarpOrder };

export type FromOriginals =
  | { readonly id: number; readonly kind: 'opened'; readonly ok: boolean }
  /** The picture was let go: it has to be opened again. */
  | { readonly id: number; readonly kind: 'missing' }
  | { readonly id: number; readonly kind: 'part'; readonly bitmap: ImageBitmap }
  | { readonly id: number; readonly kind: 'straight'; readonly bitmap: ImageBitmap | undefined };
