import { distance, type Point } from '../geometry/points.ts';
import { type Layout, lateralBars, type Side } from '../layout/index.ts';
import type { LINK_ENDS, LinkKey } from './link-keys.ts';

/** A link of a car that is cut to a length: between two hardpoints, one or two alike. mm. */
export interface CarLink {
  /** The key of the document that tells how it is made. */
  readonly key: LinkKey;
  /** "Drag link"; "Upper bar, left" where the sides differ. */
  readonly name: string;
  /** Ids of the hardpoints at its ends, in the order of its ends. */
  readonly ends: readonly [string, string];
  readonly centres: number;
  /** How many of it the car has: 2 where both sides are alike. */
  readonly count: 1 | 2;
}

/** What each end of a link is at, as a builder calls it. */
export const LINK_END_WORDS = {
  pitman: 'pitman arm end',
  steeringArm: 'steering arm end',
  left: 'left end',
  right: 'right end',
  axle: 'axle end',
  frame: 'frame end',
} as const satisfies Record<(typeof LINK_ENDS)[LinkKey][number], string>;

/** mm. Two sides nearer to one another than this are cut alike. */
const ALIKE = 0.05;

/** A link on both sides, as one line where they are alike. */
function bothSides(
  name: string,
  ends: (side: Side) => readonly [string, string],
  points: (side: Side) => readonly [Point, Point],
): CarLink[] {
  const of = (side: Side) => ({ key: 'rods', ends: ends(side), centres: distance(...points(side)) }) as const;
  const [left, right] = [of('left'), of('right')];
  if (Math.abs(left.centres - right.centres) < ALIKE) return [{ ...left, name, count: 2 }];
  return [
    { ...left, name: `${name}, left`, count: 1 },
    { ...right, name: `${name}, right`, count: 1 },
  ];
}

/**
 * The links of a car that run from one hardpoint to another, so that their lengths are known: drag link, tie rod, lateral
 * bars, four bars, radius rods with a ball at either end. Hairpins, wishbones and rods that are rigid with the axle end at the axle wherever their brackets are, which no layout holds.
 * Units: mm.
 */
export function carLinks({ steering, axle, lateral, location }: Layout): CarLink[] {
  return [
    {
      key: 'dragLink',
      name: 'Drag link',
      ends: ['steering.box.pitmanBall', 'steering.dragLinkBall'],
      centres: distance(steering.box.pitmanBall, steering.dragLinkBall),
      count: 1,
    },
    {
      key: 'tieRod',
      name: 'Tie rod',
      ends: ['axle.left.tieRodBall', 'axle.right.tieRodBall'],
      centres: distance(axle.left.tieRodBall, axle.right.tieRodBall),
      count: 1,
    },
    ...lateralBars(lateral).map(
      ({ name, from, to }): CarLink => ({
        key: 'lateralBar',
        name,
        ends: [from.id, to.id],
        centres: distance(from.at, to.at),
        count: 1,
      }),
    ),
    ...(location.kind === 'four-bar'
      ? (['upper', 'lower'] as const).flatMap((which) =>
          bothSides(
            which === 'upper' ? 'Upper bar' : 'Lower bar',
            (side) => [`location.${side}.${which}.axle`, `location.${side}.${which}.frame`],
            (side) => [location[side][which].axle, location[side][which].frame],
          ),
        )
      : []),
    ...(location.kind === 'quarter-elliptic' && location.eyes === 'pinned'
      ? bothSides(
          'Radius rod',
          (side) => [`location.${side}.rod.axle`, `location.${side}.rod.frame`],
          (side) => [location[side].rod.axle, location[side].rod.frame],
        )
      : []),
  ];
}
