import type { Point } from '../geometry/points.ts';
import { add, scaled, subtract, unit } from '../geometry/vectors.ts';
import { type Carrier, type Layout, lateralBars, SIDES, type Side } from '../layout/index.ts';

/** A point of a link's middle line with what carries it. */
export interface CarriedPoint {
  readonly carrier: Carrier;
  readonly at: Point;
}

/**
 * A ball or rod end: a stud fixed to one part, and the link that pivots on it. Its tilt is the angle between the link
 * and the plane square to the stud, in which it swings freely.
 */
export interface BallJoint {
  /** The hardpoint at its centre. */
  readonly id: string;
  readonly name: string;
  readonly centre: CarriedPoint;
  /** The link's other end. */
  readonly away: CarriedPoint;
  /** Stud direction as drawn, length 1, carried with the part it is bolted to. */
  readonly stud: Point;
  readonly studCarrier: Carrier;
  /** Whether the handwheel moves it; else it is settled by the axle's pose. */
  readonly steered: boolean;
}

const FORE_AFT: Point = [1, 0, 0];
const ACROSS: Point = [0, 1, 0];
const UPRIGHT: Point = [0, 0, 1];

/** Where a line along `stud` through a point's stud is carried: two points are enough to carry a direction. */
export function studTip(joint: BallJoint): Point {
  return add(joint.centre.at, scaled(joint.stud, 100));
}

/**
 * The balls and rod ends of a layout. A stud's usual direction (common practice, no published source): on an arm it is
 * along the axis that the arm turns about; on a lateral bar fore and aft; on hairpins, radius rods and four bars across the car;
 * under a wishbone upright. `studs` in the layout says otherwise, by hardpoint. Leaves have bushings, not balls.
 */
export function ballJoints(layout: Layout): BallJoint[] {
  const { axle, steering, location, lateral } = layout;
  const joints: BallJoint[] = [];
  const join = (
    id: string,
    name: string,
    centre: CarriedPoint,
    away: CarriedPoint,
    usual: Point,
    steered: boolean,
  ): void => {
    const given = layout.studs?.[id];
    joints.push({ id, name, centre, away, stud: unit(given ?? usual), studCarrier: centre.carrier, steered });
  };

  const kingpin = (side: Side) => subtract(axle[side].kingpinTop, axle[side].kingpinBottom);
  const arm: CarriedPoint = { carrier: `spindle-${steering.dragLinkTo}`, at: steering.dragLinkBall };
  const pitman: CarriedPoint = { carrier: 'pitman', at: steering.box.pitmanBall };
  join('steering.box.pitmanBall', 'Pitman ball', pitman, arm, steering.box.sectorAxis, true);
  join('steering.dragLinkBall', 'Steering arm ball', arm, pitman, kingpin(steering.dragLinkTo), true);

  const tie = (side: Side): CarriedPoint => ({ carrier: `spindle-${side}`, at: axle[side].tieRodBall });
  join('axle.left.tieRodBall', 'Left tie rod ball', tie('left'), tie('right'), kingpin('left'), true);
  join('axle.right.tieRodBall', 'Right tie rod ball', tie('right'), tie('left'), kingpin('right'), true);

  for (const { from, to } of lateralBars(lateral)) {
    join(from.id, from.name, from, to, FORE_AFT, false);
    join(to.id, to.name, to, from, FORE_AFT, false);
  }

  const middle = (side: Side): Point => {
    const { wheelCentre } = axle[side];
    return [wheelCentre[0], wheelCentre[1], wheelCentre[2]];
  };
  switch (location.kind) {
    case 'hairpins':
    case 'split-rods': {
      const rod = location.kind === 'hairpins' ? 'hairpin pivot' : 'radius rod ball';
      for (const side of SIDES) {
        const { framePivot } = location[side];
        // The rod runs ahead to the axle at the pivot's own distance from the car's middle.
        const ahead: Point = [middle(side)[0], framePivot[1], middle(side)[2]];
        join(
          `location.${side}.framePivot`,
          `${side === 'left' ? 'Left' : 'Right'} ${rod}`,
          { carrier: 'frame', at: framePivot },
          { carrier: `axle-${side}`, at: ahead },
          ACROSS,
          false,
        );
      }
      break;
    }
    case 'wishbone':
      join(
        'location.framePivot',
        'Wishbone pivot',
        { carrier: 'frame', at: location.framePivot },
        { carrier: 'axle-left', at: [middle('left')[0], location.framePivot[1], middle('left')[2]] },
        UPRIGHT,
        false,
      );
      break;
    case 'four-bar':
      for (const side of SIDES)
        for (const bar of ['upper', 'lower'] as const) {
          const { axle: front, frame } = location[side][bar];
          const onAxle: CarriedPoint = { carrier: `axle-${side}`, at: front };
          const onFrame: CarriedPoint = { carrier: 'frame', at: frame };
          const label = `${side === 'left' ? 'Left' : 'Right'} ${bar} bar`;
          join(`location.${side}.${bar}.axle`, `${label}, axle end`, onAxle, onFrame, ACROSS, false);
          join(`location.${side}.${bar}.frame`, `${label}, frame end`, onFrame, onAxle, ACROSS, false);
        }
      break;
    case 'parallel-leaf':
      break;
    case 'quarter-elliptic':
      for (const side of SIDES) {
        const { axle: front, frame } = location[side].rod;
        const onAxle: CarriedPoint = { carrier: `axle-${side}`, at: front };
        const onFrame: CarriedPoint = { carrier: 'frame', at: frame };
        const label = `${side === 'left' ? 'Left' : 'Right'} radius rod`;
        // A rod that is rigid with the axle has no ball there.
        if (location.eyes === 'pinned')
          join(`location.${side}.rod.axle`, `${label}, axle end`, onAxle, onFrame, ACROSS, false);
        join(`location.${side}.rod.frame`, `${label}, frame end`, onFrame, onAxle, ACROSS, false);
      }
      break;
    default:
      location satisfies never;
  }
  return joints;
}
