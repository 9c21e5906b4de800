import { enlargementFor } from '../../../../../shared-math/detail/index.ts';
import type { Box, ViewPoint } from '../../../../../shared-math/drawing/index.ts';

/** Where the detail stands on the sheet, how much larger than the views it is drawn, and how much of the car it shows. */
export interface DetailPlace {
  /** mm of the sheet. */
  readonly centre: ViewPoint;
  readonly times: number;
  /** Of the circle in the view, mm of the car; on the sheet it is `times` as large. */
  readonly radius: number;
  /** All that the detail takes with its title and words, mm of the sheet. */
  readonly box: Box;
}

/** What decides it. px of the board, mm of the sheet. */
export interface DetailRoom {
  readonly view: 'side' | 'front';
  /** What is round the steering-arm ball over the whole travel, mm of the car. */
  readonly radius: number;
  /** What the view that it belongs to covers, and all views that show. */
  readonly own: Box;
  readonly all: Box;
  /** px of the board without its margins, and px per mm at which the views alone would fill it. */
  readonly size: { readonly width: number; readonly height: number };
  readonly scale: number;
  /** px of a line of weight 1. */
  readonly weight: number;
}

/** px at weight 1: between view and detail, for the title above it, for the words below it. */
const APART = 26;
const TITLE = 26;
const WORDS = 58;
/** px at weight 1 that the circle may be wide at least, whatever room there is: below that its words hide it. */
const LEAST = 210;
/** px at weight 1 below which a circle has no room for words at its ticks, and how wide the words below it are. */
export const WORDS_FROM = 130;
const KEY = 184;
/** Share of the views' own size that they may lose to a larger detail, and to one that has words at its ticks only so. */
const YIELD = 0.12;
const YIELD_FOR_WORDS = 0.3;

/**
 * Places the detail beside its view, on the sheet's free side: right of the side view, left of the front view, its words
 * ending at the view's lower edge. Its scale is the largest enlargement at which the whole travel has room; where not even the least
 * has, the circle shows less.
 */
export function placeDetail({ view, radius, own, all, size, scale, weight }: DetailRoom): DetailPlace {
  const wide = scale * (all.right - all.left);
  const free = size.width - wide - APART * weight;
  const tall = size.height - (TITLE + WORDS) * weight;
  const roomFor = (yields: number) => Math.min(tall, Math.max(free + yields * wide, LEAST * weight));
  const hasWords = 2 * radius * scale * enlargementFor(radius, roomFor(YIELD) / scale) >= WORDS_FROM * weight;
  const room = roomFor(hasWords ? YIELD : YIELD_FOR_WORDS);
  const times = enlargementFor(radius, room / scale);
  const shown = Math.min(radius, room / scale / (2 * times));
  const reach = shown * times;
  const apart = (APART * weight) / scale;
  const half = Math.max(reach, (KEY * weight) / (2 * scale));
  const right = view === 'side' ? all.right + apart + 2 * half : own.left - apart;
  const bottom = own.bottom - (WORDS * weight) / scale;
  return {
    centre: [right - half, bottom - reach],
    times,
    radius: shown,
    box: {
      left: right - 2 * half,
      right,
      top: bottom - 2 * reach - (TITLE * weight) / scale,
      bottom: own.bottom,
    },
  };
}
