import type { Picture, WarpOrder } from '../../../../shared-math/trace/index.ts';

// What page and photo worker say to one another: a picture to keep, orders to see it straight on, and the results.

export type ToPhotoWorker =
  | { readonly kind: 'keep'; readonly hash: string; readonly picture: Picture }
  | { readonly kind: 'warp'; readonly id: number; readonly hash: string; readonly order: WarpOrder };

export interface FromPhotoWorker {
  readonly id: number;
  readonly picture: Picture;
}
