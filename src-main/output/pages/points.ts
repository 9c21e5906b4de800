import { capitalised } from '../../../shared-math/capitalised.ts';
import { type NumberedPoint, originCounts, originOf } from '../../../shared-math/layout/index.ts';
import type { SheetModel } from './sheet-model.ts';

// Where points are, in the distances that a builder measures. mm in, words in the customer's unit.

/** The axle centre line: where the wheel centres stand along the car, mm. */
export function axleLine({ layout }: SheetModel): number {
  return (layout.axle.left.wheelCentre[0] + layout.axle.right.wheelCentre[0]) / 2;
}

/** A point of each number: the left one stands for its mirrored twin. */
export function onePerNumber({ points }: SheetModel): NumberedPoint[] {
  return points.filter((point, i) => points.findIndex(({ number }) => number === point.number) === i);
}

/** What a numbered point is called: "Kingpin, top, both sides" where the other side is its mirror image. */
export function pointName(point: NumberedPoint): string {
  return point.twin ? `${bareName(point)}, both sides` : point.name;
}

/** What a numbered point is called without its side, where the other side is its mirror image. */
export function bareName(point: NumberedPoint): string {
  if (!point.twin) return point.name;
  const bare = point.name.replace(/^(Left|Right) /, '');
  return capitalised(bare);
}

/** A distance whose usual way stands in the head above it; the other way is said: "3 in", "3 in ahead". */
export function usually(words: (mm: number) => string, mm: number, otherwise: string): string {
  const size = words(Math.abs(mm));
  return mm < 0 && size !== words(0) ? `${size} ${otherwise}` : size;
}

/** A distance from the centre line with its side: "17 5/16 in left". */
export function sided(words: (mm: number) => string, mm: number): string {
  const size = words(Math.abs(mm));
  return size === words(0) ? size : `${size} ${mm > 0 ? 'left' : 'right'}`;
}

/** Whether a point's place was guessed: nobody measured, traced or planned it. */
export function isGuessed({ job }: SheetModel, point: NumberedPoint): boolean {
  return originOf(job.document, point) === 'guess';
}

/** How many of the car's points are guesses, in a sentence; empty where none is. */
export function guessedWords({ job }: SheetModel): string {
  const { guessed, all } = originCounts(job.document);
  if (guessed === 0) return '';
  const which = guessed === all ? `All ${all} points` : `${guessed} of ${all} points`;
  return `${which} of this car are guesses, not measured on it: what rests on them may be otherwise.`;
}
