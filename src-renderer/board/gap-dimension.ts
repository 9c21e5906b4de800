import { project, type View, type ViewPoint } from '../../shared-math/drawing/index.ts';
import { toDegrees } from '../../shared-math/units/index.ts';
import { gapWords } from '../../shared-math/words/index.ts';
import type { ShownGap } from '../document/clearances.svelte.ts';
import type { ScreenPoint } from './camera.ts';
import type { OverlayInk, OverlayLine, OverlayMark } from './overlay.ts';
import type { Note } from './overlay-picture.ts';

/** Seen at less than this share of its length, a gap in a view would pass for a smaller one. */
const LEAST_SHARE = 0.9;
/** px at weight 1: a gap longer than this has its arrows inside, a shorter one outside. */
const ROOM_INSIDE = 34;
/** px at weight 1 of an arrow's line outside the gap, of its head, and of half the head's width. */
const OUTSIDE = 22;
const HEAD = 7;
const HEAD_HALF = 2.6;

export interface GapSource {
  readonly gap: ShownGap | undefined;
  readonly shown: readonly View[];
  /** px of a line of weight 1. */
  readonly weight: number;
  onBoard(view: View, place: ViewPoint): ScreenPoint;
  length(mm: number): string;
}

/** The views in which a gap is seen at nearly its true length; at least the one that shows it best. */
export function viewsOfGap(gap: Pick<ShownGap, 'from' | 'to'>, shown: readonly View[]): View[] {
  const along = gap.to.map((value, axis) => value - (gap.from[axis] as number));
  const whole = Math.hypot(...along);
  // Where two parts meet there is a place and no length: every view shows it.
  if (whole < 1e-6) return [...shown];
  const share = (view: View) => {
    const [from, to] = [project(view, gap.from), project(view, gap.to)];
    return Math.hypot(to[0] - from[0], to[1] - from[1]) / whole;
  };
  const best = Math.max(...shown.map(share));
  return shown.filter((view) => share(view) >= Math.min(LEAST_SHARE, best));
}

/** An arrow whose point is at `tip`, its line coming from `tail`. */
function arrow(tip: ScreenPoint, tail: ScreenPoint, weight: number, ink: OverlayInk): OverlayLine[] {
  const length = Math.hypot(tip[0] - tail[0], tip[1] - tail[1]);
  if (length === 0) return [];
  const [x, y] = [(tail[0] - tip[0]) / length, (tail[1] - tip[1]) / length];
  const [back, half] = [HEAD * weight, HEAD_HALF * weight];
  return [
    { points: [tail[0], tail[1], tip[0], tip[1]], ink },
    {
      points: [
        tip[0] + x * back - y * half,
        tip[1] + y * back + x * half,
        tip[0],
        tip[1],
        tip[0] + x * back + y * half,
        tip[1] + y * back - x * half,
      ],
      ink,
    },
  ];
}

/** A dimension as a draughtsman writes it: arrows within the gap, or from outside where there is no room. */
export function dimensionLines(
  from: ScreenPoint,
  to: ScreenPoint,
  weight: number,
  ink: OverlayInk,
): OverlayLine[] {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
  const way: ScreenPoint = length > 1e-3 ? [(to[0] - from[0]) / length, (to[1] - from[1]) / length] : [1, 0];
  const beyond = (at: ScreenPoint, by: number): ScreenPoint => [at[0] + by * way[0], at[1] + by * way[1]];
  if (length > ROOM_INSIDE * weight)
    return [...arrow(from, to, weight, ink), ...arrow(to, from, weight, ink)];
  return [
    ...arrow(from, beyond(from, -OUTSIDE * weight), weight, ink),
    ...arrow(to, beyond(to, OUTSIDE * weight), weight, ink),
  ];
}

/** The gap between two parts on the board: the two nearest points, the dimension and its figure. */
export function gapDimension(source: GapSource): {
  lines: OverlayLine[];
  marks: OverlayMark[];
  notes: Note[];
} {
  const { gap, shown, weight } = source;
  if (!gap) return { lines: [], marks: [], notes: [] };
  const hits = gap.distance <= 0;
  const ink: OverlayInk = gap.under ? 'short' : 'clear';
  const lines: OverlayLine[] = [];
  const marks: OverlayMark[] = [];
  const notes: Note[] = [];
  for (const view of viewsOfGap(gap, shown)) {
    const [from, to] = [gap.from, gap.to].map((at) => source.onBoard(view, project(view, at))) as [
      ScreenPoint,
      ScreenPoint,
    ];
    const middle: ScreenPoint = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2];
    if (hits) marks.push({ x: middle[0], y: middle[1], kind: 'cross' });
    else {
      lines.push(...dimensionLines(from, to, weight, ink));
      for (const [x, y] of [from, to]) marks.push({ x, y, kind: 'tick' });
    }
    // The figure stands square to the dimension, off its arrows.
    const along = toDegrees(Math.atan2(to[1] - from[1], to[0] - from[0]));
    notes.push({
      id: `gap between parts ${view}`,
      view,
      x: middle[0],
      y: middle[1],
      clear: 8,
      toward: hits ? -60 : along - 90,
      lines: [
        { text: gapWords(gap, source.length), ink, strong: true },
        // Between what is said once.
        ...(notes.length === 0 ? [{ text: gap.words, ink: 'soft' as const, strong: false }] : []),
      ],
    });
  }
  return { lines, marks, notes };
}
