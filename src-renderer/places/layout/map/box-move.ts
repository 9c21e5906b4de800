import type { Point } from '../../../../shared-math/geometry/points.ts';
import { type LayoutDocument, moveHardpoint } from '../../../../shared-math/layout/index.ts';

/** mm. What nobody builds to is not shown. */
const LEAST_REPORTED = 0.05;

const WAYS: readonly [plus: string, minus: string][] = [
  ['ahead', 'back'],
  ['to the left', 'to the right'],
  ['up', 'down'],
];

/** A shift in words: "3 1/16 in up and 2 in back"; nothing for none. */
export function shiftWords(by: Point, length: (mm: number) => string): string {
  return ([2, 0, 1] as const)
    .filter((axis) => Math.abs(by[axis]) >= LEAST_REPORTED && length(Math.abs(by[axis])) !== length(0))
    .map((axis) => `${length(Math.abs(by[axis]))} ${WAYS[axis]?.[by[axis] > 0 ? 0 : 1]}`)
    .join(' and ');
}

/** The document with the box, and the pitman arm with it, moved so that the pitman ball stands at a point. */
export function withBallAt(document: LayoutDocument, to: Point): LayoutDocument {
  const { sectorCentre, pitmanBall } = document.steering.box;
  const centre: Point = [
    sectorCentre[0] + to[0] - pitmanBall[0],
    sectorCentre[1] + to[1] - pitmanBall[1],
    sectorCentre[2] + to[2] - pitmanBall[2],
  ];
  return moveHardpoint(document, 'steering.box.sectorCentre', centre);
}
