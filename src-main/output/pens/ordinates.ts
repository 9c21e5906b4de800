import type { CarView } from './car-view.ts';
import { frameOf } from './car-view.ts';
import { INK, SOFT, WHITE } from './colours.ts';
import { capHeight, type PrintPen, type StrokeStyle, type TextStyle } from './print-pen.ts';
import { DIMENSION, HAIR, LABEL } from './styles.ts';

// Ordinate dimensions: from each point a thin line to a strip beside the view, where its distance from the datum
// stands with the numbers of its balloons. Figures that would touch are moved apart and their lines kinked.

/** A dimension to be read off a strip: where its point is on the page, what the distance is, and the point's number. */
export interface Ordinate {
  readonly at: readonly [x: number, y: number];
  readonly words: string;
  readonly number: number;
}

/** A figure of a strip, with the numbers of all points that it is the distance of. */
interface Gathered extends Ordinate {
  readonly numbers: readonly number[];
}

/** mm from the view's frame to the figures, and the least between two of them. */
const KINK = 5;
const STEP = 3.7;
/** mm left free between a point and the line that leads away from it (ISO 129-1). */
const FREE = 1;
const NUMBER: TextStyle = { face: 'bold', size: 6.2, colour: INK };
const OUTLINE: StrokeStyle = { width: 0.18, colour: INK };
const PILL = { half: 1.45, pad: 0.9, gap: 1.2 } as const;

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
function gathered(ordinates: readonly Ordinate[], axis: 0 | 1, towards: 1 | -1): Gathered[] {
  const found = new Map<string, Gathered>();
  for (const ordinate of ordinates) {
    const key = `${ordinate.words} ${ordinate.at[axis].toFixed(1)}`;
    const same = found.get(key);
    const cross = axis === 0 ? 1 : 0;
    const farther = !same || (same.at[cross] - ordinate.at[cross]) * towards > 0;
    const numbers = [...new Set([...(same?.numbers ?? []), ordinate.number])].sort((a, b) => a - b);
    found.set(key, { ...(farther ? ordinate : same), numbers });
  }
  return [...found.values()].sort((a, b) => a.at[axis] - b.at[axis]);
}

const numberWords = ({ numbers }: Gathered) => numbers.join(', ');

/** mm that a figure's numbers take along its line. */
function pillLength(pen: PrintPen, ordinate: Gathered): number {
  return Math.max(2 * PILL.half, pen.widthOf(numberWords(ordinate), NUMBER) + 2 * PILL.pad);
}

/** A strip below a view: distances along it, the figures turned to stand upright. Answers the base of its title, mm. */
export function stripBelow(
  pen: PrintPen,
  view: CarView,
  ordinates: readonly Ordinate[],
  title: string,
): number {
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
    pen.stroke([x, Math.min(y + FREE, bottom), x, bottom + 1, to, bottom + KINK], HAIR);
    const ordinate = shown[i] as Gathered;
    const pill = pillLength(pen, ordinate);
    const wide = pen.widthOf(words, DIMENSION);
    pen.turnedText(words, to + half, bottom + KINK + 0.8, DIMENSION, 90, 'right');
    const from = bottom + KINK + 0.8 + wide + PILL.gap;
    pen.pill(to - PILL.half, from, 2 * PILL.half, pill, OUTLINE, WHITE);
    pen.turnedText(
      numberWords(ordinate),
      to + capHeight(NUMBER.size) / 2,
      from + pill / 2,
      NUMBER,
      90,
      'centre',
    );
    longest = Math.max(longest, wide + PILL.gap + pill);
  });
  const base = bottom + KINK + longest + 4.4;
  pen.text(title, left, base, { ...LABEL, colour: SOFT });
  return base;
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
    pen.stroke([x + towards * FREE, y, edge + towards, y, edge + towards * KINK, to], HAIR);
    const at = edge + towards * (KINK + 0.8);
    pen.text(words, at, to + half, DIMENSION, side === 'left' ? 'right' : 'left');
    const ordinate = shown[i] as Gathered;
    const pill = pillLength(pen, ordinate);
    const near = at + towards * (pen.widthOf(words, DIMENSION) + PILL.gap);
    pen.pill(towards === 1 ? near : near - pill, to - PILL.half, pill, 2 * PILL.half, OUTLINE, WHITE);
    pen.text(
      numberWords(ordinate),
      near + (towards * pill) / 2,
      to + capHeight(NUMBER.size) / 2,
      NUMBER,
      'centre',
    );
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

/** The origin from which the strips count (ISO 129-1: a small circle on the datum). */
export function originSign(pen: PrintPen, [x, y]: readonly [x: number, y: number]): void {
  pen.circle(x, y, 1.1, { width: 0.25, colour: INK }, WHITE);
}
