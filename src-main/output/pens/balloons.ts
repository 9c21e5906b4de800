import type { Point } from '../../../shared-math/geometry/points.ts';
import { toRadians } from '../../../shared-math/units/index.ts';
import type { CarView } from './car-view.ts';
import { frameOf, pointOnPage } from './car-view.ts';
import { INK, WHITE } from './colours.ts';
import { capHeight, type PrintPen, type TextStyle } from './print-pen.ts';

const NUMBER: TextStyle = { face: 'bold', size: 7, colour: INK };
const RADIUS = 2.1;

/** A point to be numbered in a view. */
export interface Numbered {
  readonly number: number;
  readonly at: Point;
  /** Nobody measured or planned it: its balloon is broken, its spot hollow. */
  readonly guessed?: boolean;
}

/** Points that a view shows on one spot share a balloon: "3, 5". */
export function onOneSpot(
  view: CarView,
  points: readonly Numbered[],
): { x: number; y: number; words: string; guessed: boolean }[] {
  const spots: { x: number; y: number; numbers: number[]; guessed: boolean }[] = [];
  for (const { number, at, guessed = false } of points) {
    const [x, y] = pointOnPage(view, at);
    const same = spots.find((spot) => Math.hypot(spot.x - x, spot.y - y) < 0.6);
    if (same) {
      if (!same.numbers.includes(number)) same.numbers.push(number);
      same.guessed ||= guessed;
    } else spots.push({ x, y, numbers: [number], guessed });
  }
  return spots.map(({ x, y, numbers, guessed }) => ({ x, y, words: numbers.join(', '), guessed }));
}

/** Ways in which a balloon may stand off its point, nearest and handiest first. */
const WAYS = [3.6, 5.4, 7.6, 10.2, 13.4].flatMap((length) =>
  [-60, -120, -20, -160, 60, 120, 20, 160, -90, 90].map((degrees) => {
    const angle = toRadians(degrees);
    return [length * Math.cos(angle), length * Math.sin(angle)] as const;
  }),
);

/** Where a balloon stands: its middle and half its width, mm of the page; `RADIUS` is half its height. */
export interface Standing {
  readonly x: number;
  readonly y: number;
  readonly half: number;
}

/** Draws numbered balloons beside their points, off each other and off the other points; gives where they stand. */
export function balloons(pen: PrintPen, view: CarView, points: readonly Numbered[]): Standing[] {
  const spots = onOneSpot(view, points);
  const [left, top, right, bottom] = frameOf(view);
  const standing: Standing[] = [];
  for (const { x, y, words, guessed } of spots) {
    const half = Math.max(RADIUS, pen.widthOf(words, NUMBER) / 2 + 1);
    const free = WAYS.map(
      ([dx, dy]): Standing => ({ x: x + dx + Math.sign(dx) * (half - RADIUS), y: y + dy, half }),
    ).find(
      (one) =>
        one.x - half > left &&
        one.x + half < right &&
        one.y - RADIUS > top &&
        one.y + RADIUS < bottom &&
        standing.every(
          (other) =>
            Math.abs(other.x - one.x) > other.half + half + 0.4 ||
            Math.abs(other.y - one.y) > 2 * RADIUS + 0.4,
        ) &&
        spots.every(
          (spot) => Math.abs(spot.x - one.x) > half + 0.9 || Math.abs(spot.y - one.y) > RADIUS + 0.9,
        ),
    ) ?? { x: x + 4, y: y - 4, half };
    standing.push(free);
    const length = Math.hypot(free.x - x, free.y - y) || 1;
    pen.line(
      x,
      y,
      x + ((free.x - x) * (length - RADIUS)) / length,
      y + ((free.y - y) * (length - RADIUS)) / length,
      { width: 0.18, colour: INK },
    );
    if (guessed) pen.circle(x, y, 0.6, { width: 0.2, colour: INK }, WHITE);
    else pen.circle(x, y, 0.45, undefined, INK);
    const outline = { width: 0.25, colour: INK, ...(guessed ? { dash: [0.8, 0.6] } : {}) };
    if (half === RADIUS) pen.circle(free.x, free.y, RADIUS, outline, WHITE);
    else pen.pill(free.x - half, free.y - RADIUS, 2 * half, 2 * RADIUS, outline, WHITE);
    pen.text(words, free.x, free.y + capHeight(NUMBER.size) / 2, NUMBER, 'centre');
  }
  return standing;
}

/** Whether balloons leave an upright rectangle of the page free. */
export function isClear(
  standing: readonly Standing[],
  [left, top, right, bottom]: readonly [left: number, top: number, right: number, bottom: number],
): boolean {
  return standing.every(
    ({ x, y, half }) => x + half < left || x - half > right || y + RADIUS < top || y - RADIUS > bottom,
  );
}
