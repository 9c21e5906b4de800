import type { CarView } from './car-view.ts';
import { frameOf } from './car-view.ts';
import { SOFT } from './colours.ts';
import { capHeight, type PrintPen } from './print-pen.ts';
import { DIMENSION, HAIR, LABEL } from './styles.ts';

// Ordinate dimensions: from each point a thin line to a strip beside the view, where its distance from the datum
// stands. Figures that would touch are moved apart and their lines kinked.

/** A dimension to be read off a strip: where its point is on the page, and what the distance is. */
export interface Ordinate {
  readonly at: readonly [x: number, y: number];
  readonly words: string;
}

/** mm from the view's frame to the figures, and the least between two of them. */
const KINK = 5;
const STEP = 3.7;

/**
 * Places as near to those wished for as can be and no nearer to one another than `step`. Neighbours that touch form a
 * cluster about the mean of what its members wish for. Sorted in, sorted out.
 */
export function spread(wishes: readonly number[], step: number): number[] {
  const clusters: { sum: number; count: number }[] = [];
  const startOf = ({ sum, count }: { sum: number; count: number }) => sum / count - ((count - 1) * step) / 2;
  for (const wish of wishes) {
    clusters.push({ sum: wish, count: 1 });
    while (clusters.length > 1) {
      const [before, last] = clusters.slice(-2) as [
        { sum: number; count: number },
        { sum: number; count: number },
      ];
      if (startOf(before) + before.count * step <= startOf(last) + 1e-9) break;
      clusters.pop();
      clusters.pop();
      clusters.push({ sum: before.sum + last.sum, count: before.count + last.count });
    }
  }
  return clusters.flatMap((cluster) =>
    Array.from({ length: cluster.count }, (_, i) => startOf(cluster) + i * step),
  );
}

/** One of each distance: points that share it share its figure, whose line begins at the farthest of them. */
function gathered(ordinates: readonly Ordinate[], axis: 0 | 1, towards: 1 | -1): Ordinate[] {
  const found = new Map<string, Ordinate>();
  for (const ordinate of ordinates) {
    const key = `${ordinate.words} ${ordinate.at[axis].toFixed(1)}`;
    const same = found.get(key);
    const cross = axis === 0 ? 1 : 0;
    if (!same || (same.at[cross] - ordinate.at[cross]) * towards > 0) found.set(key, ordinate);
  }
  return [...found.values()].sort((a, b) => a.at[axis] - b.at[axis]);
}

/** A strip below a view: distances along it, the figures turned to stand upright. */
export function stripBelow(
  pen: PrintPen,
  view: CarView,
  ordinates: readonly Ordinate[],
  title: string,
): void {
  const [left, , , bottom] = frameOf(view);
  const shown = gathered(ordinates, 0, 1);
  const places = spread(
    shown.map(({ at }) => at[0]),
    STEP,
  );
  const half = capHeight(DIMENSION.size) / 2;
  let longest = 0;
  shown.forEach(({ at: [x, y], words }, i) => {
    const to = places[i] as number;
    pen.stroke([x, y, x, bottom + 1, to, bottom + KINK], HAIR);
    pen.turnedText(words, to + half, bottom + KINK + 0.8, DIMENSION, 90, 'right');
    longest = Math.max(longest, pen.widthOf(words, DIMENSION));
  });
  pen.text(title, left, bottom + KINK + longest + 4.4, { ...LABEL, colour: SOFT });
}

/** A strip at a side of a view: heights or distances across, the figures one above the other. */
export function stripBeside(
  pen: PrintPen,
  view: CarView,
  ordinates: readonly Ordinate[],
  title: string,
  side: 'left' | 'right',
): void {
  const [left, top, right] = frameOf(view);
  const towards = side === 'left' ? -1 : 1;
  const edge = side === 'left' ? left : right;
  const shown = gathered(ordinates, 1, towards === 1 ? 1 : -1);
  const places = spread(
    shown.map(({ at }) => at[1]),
    STEP,
  );
  const half = capHeight(DIMENSION.size) / 2;
  shown.forEach(({ at: [x, y], words }, i) => {
    const to = places[i] as number;
    pen.stroke([x, y, edge + towards, y, edge + towards * KINK, to], HAIR);
    pen.text(words, edge + towards * (KINK + 0.8), to + half, DIMENSION, side === 'left' ? 'right' : 'left');
  });
  const highest = Math.min(top, (places[0] ?? top) - 4);
  pen.text(
    title,
    edge + towards * (KINK + 0.8),
    highest - 1.4,
    { ...LABEL, colour: SOFT },
    side === 'left' ? 'right' : 'left',
  );
}
