import { distance, type Point } from '../geometry/points.ts';
import type { Layout } from '../layout/index.ts';
import { moveWords, type Remedy, type Speech } from './finding.ts';

/** mm. Lengths that pitman arms are made in: 4 1/2 to 7 in; common practice, no published source. */
const USUAL_ARM = [114.3, 177.8] as const;

/**
 * The pitman ball brought to a place (mm): alone where an arm of a usual length reaches there from the box, else the box
 * with its arm, which then turns the wheels as far as before. In words and as a remedy.
 */
export function ballMove(
  layout: Layout,
  to: Point,
  length: Speech['length'],
): { readonly words: string; readonly remedy: Remedy } {
  const { sectorCentre, pitmanBall } = layout.steering.box;
  const arm = distance(sectorCentre, to);
  if (arm >= USUAL_ARM[0] && arm <= USUAL_ARM[1])
    return {
      words: moveWords('pitman ball', pitmanBall, to, length),
      remedy: { kind: 'move', id: 'steering.box.pitmanBall', to },
    };
  const box: Point = [
    sectorCentre[0] + to[0] - pitmanBall[0],
    sectorCentre[1] + to[1] - pitmanBall[1],
    sectorCentre[2] + to[2] - pitmanBall[2],
  ];
  return {
    words: moveWords('box with its arm', sectorCentre, box, length),
    remedy: { kind: 'move', id: 'steering.box.sectorCentre', to: box },
  };
}
