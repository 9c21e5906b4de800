import { distance, type Point } from '../geometry/points.ts';
import type { Layout, LinksDocument } from '../layout/index.ts';

/** The links that the document's `links` and `diameters` tell of. */
export type LinkKey = Exclude<keyof LinksDocument, ArmKey>;
export type ArmKey = 'pitmanArm' | 'steeringArm' | 'tieRodArms';

export const LINK_KEYS: readonly LinkKey[] = ['dragLink', 'tieRod', 'lateralBar', 'rods'];
export const ARM_KEYS: readonly ArmKey[] = ['pitmanArm', 'steeringArm', 'tieRodArms'];

/** The names of a link's two ends, in the order in which its points stand. */
export const LINK_ENDS = {
  dragLink: ['pitman', 'steeringArm'],
  tieRod: ['left', 'right'],
  lateralBar: ['axle', 'frame'],
  rods: ['axle', 'frame'],
} as const satisfies Record<LinkKey, readonly [string, string]>;

export type EndName<Key extends LinkKey = LinkKey> = (typeof LINK_ENDS)[Key][number];

/** Centre to centre of a steering link or the lateral bar as drawn, mm; undefined if the car has no such link. */
export function drawnLength({ steering, axle, lateral }: Layout, key: Exclude<LinkKey, 'rods'>) {
  const between: Record<Exclude<LinkKey, 'rods'>, readonly [Point, Point] | undefined> = {
    dragLink: [steering.box.pitmanBall, steering.dragLinkBall],
    tieRod: [axle.left.tieRodBall, axle.right.tieRodBall],
    lateralBar: lateral.kind === 'bar' ? [lateral.axle, lateral.frame] : undefined,
  };
  const points = between[key];
  return points ? distance(...points) : undefined;
}
