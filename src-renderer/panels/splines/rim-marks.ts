import { type RimEllipse, rimThrough } from '../../../shared-math/splines/index.ts';

// What is clicked on the photo of a shaft's end: its middle first, then its rim, over the teeth, as often as one likes.

export type Spot = readonly [x: number, y: number];

/** px of the picture. */
export interface RimMarks {
  readonly centre: Spot | undefined;
  readonly rim: readonly Spot[];
}

export const NO_MARKS: RimMarks = { centre: undefined, rim: [] };

/** Clicks on the rim from which an end seen off square is met; fewer make a circle of it. */
export const RIM_CLICKS = 3;

/** The next click: the middle, then the rim. */
export function withMark({ centre, rim }: RimMarks, spot: Spot): RimMarks {
  return centre ? { centre, rim: [...rim, spot] } : { centre: spot, rim };
}

/** Without the last click. */
export function withoutLast({ centre, rim }: RimMarks): RimMarks {
  return rim.length > 0 ? { centre, rim: rim.slice(0, -1) } : NO_MARKS;
}

/** Share of the farthest click's distance from the middle below which a click is not on the same rim, however slanted. */
const NEAR_THE_MIDDLE = 0.5;

function hasOneAtTheMiddle(centre: Spot, rim: readonly Spot[]): boolean {
  const far = rim.map(([x, y]) => Math.hypot(x - centre[0], y - centre[1]));
  return Math.min(...far) < NEAR_THE_MIDDLE * Math.max(...far);
}

/** Why the marks make no rim; empty where they do, or where there is none to make yet. */
export function rimTrouble({ centre, rim }: RimMarks): string {
  return centre && rim.length > 0 && (hasOneAtTheMiddle(centre, rim) || !rimThrough(centre, rim))
    ? 'A click on the rim stands at the middle, or the clicks make no round end: take the last one back.'
    : '';
}

/** The rim that is counted on, once three clicks or more are on it. */
export function markedRim({ centre, rim }: RimMarks): RimEllipse | undefined {
  return centre && rim.length > 0 ? rimThrough(centre, rim) : undefined;
}

/** What to do next, in words. */
export function nextStep({ centre, rim }: RimMarks): string {
  if (!centre) return 'Click the middle of the shaft’s end.';
  const left = RIM_CLICKS - rim.length;
  if (left === RIM_CLICKS) return 'Now click the rim, over the teeth, in three places spread around it.';
  if (left > 0) return `${left} more on the rim, spread around it: an end seen at a slant is not round.`;
  return 'Check that every mark stands at a tooth. Another click on the rim makes it surer.';
}
