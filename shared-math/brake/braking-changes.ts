import type { Point } from '../geometry/points.ts';
import type { Layout, SpringDocument } from '../layout/index.ts';
import { arrangementOf, prepareFrontEnd } from '../linkage/index.ts';
import { rideParameters } from '../ride/index.ts';
import { type Radians, toRadians } from '../units/index.ts';
import { JUDGED_GRIP } from './braked.ts';
import { type BrakingCar, brakingCar } from './braking-car.ts';
import { leastCaster, sweepBraking } from './sweep-braking.ts';

/** A change that a builder could make, and what braking then does at the judged grip. rad. */
export interface BrakingChange {
  readonly id:
    | 'as-it-is'
    | 'radius-rods'
    | 'wedges'
    | 'full-leaf'
    | 'thicker'
    | 'stiffer'
    | 'seat'
    | 'arm-ball';
  /** "One more leaf of full length"; lengths as the reader has them, from mm. */
  readonly words: (length: (mm: number) => string) => string;
  /** What it costs besides, or undefined. */
  readonly but?: string;
  /** Ride rate after it over that before. */
  readonly stiffer: number;
  /** The lesser caster of the two wheels. */
  readonly caster: number;
  /** Mean steer less that with the brakes off. */
  readonly steer: number;
}

/** Degrees of the wedges that are laid between spring and seat; a usual size, from memory. */
const WEDGE = 2;
/** mm that a seat is moved along its spring, and how many times as thick leaves are made, and as stiff springs. */
const SEAT_STEP = 50;
const THICKER = 1.1;
const STIFFER = 1.25;

/** A point turned about the line across the car through the axle's centre; above 0 its top goes ahead. */
function turned<At extends Point>(point: At, centre: Point, angle: Radians): At {
  const c = Math.cos(angle);
  const s = Math.sin(angle);
  const x = point[0] - centre[0];
  const z = point[2] - centre[2];
  return [centre[0] + c * x + s * z, point[1], centre[2] - s * x + c * z] as unknown as At;
}

/** The axle tipped back on its seats by an angle: kingpins and arms with it, the wheels' centres where they are. */
export function tippedBack(layout: Layout, by: Radians): Layout {
  const half = (side: 'left' | 'right') => {
    const at = layout.axle[side];
    const turn = <At extends Point>(point: At) => turned(point, at.wheelCentre, -by as Radians);
    return {
      ...at,
      kingpinTop: turn(at.kingpinTop),
      kingpinBottom: turn(at.kingpinBottom),
      tieRodBall: turn(at.tieRodBall),
    };
  };
  const { steering, lateral } = layout;
  const centre = layout.axle[steering.dragLinkTo].wheelCentre;
  return {
    ...layout,
    axle: { ...layout.axle, left: half('left'), right: half('right') },
    steering: { ...steering, dragLinkBall: turned(steering.dragLinkBall, centre, -by as Radians) },
    lateral:
      lateral.kind === 'bar' ? { ...lateral, axle: turned(lateral.axle, centre, -by as Radians) } : lateral,
  };
}

const withSpring = (layout: Layout, spring: SpringDocument): Layout => ({
  ...layout,
  ride: { ...layout.ride, spring },
});

type ParallelLeaf = Extract<Layout['location'], { kind: 'parallel-leaf' }>;

/** The seats moved ahead along their springs: the axle stays where it is, springs and eyes go back by as much. */
function seatAhead(layout: Layout, location: ParallelLeaf): Layout {
  const back = <At extends Point>(point: At) => [point[0] - SEAT_STEP, point[1], point[2]] as unknown as At;
  const side = (at: ParallelLeaf['left']) => ({
    ...at,
    fixedEye: back(at.fixedEye),
    shackleEye: back(at.shackleEye),
  });
  return { ...layout, location: { ...location, left: side(location.left), right: side(location.right) } };
}

/** The drag link's ball on the steering arm at the height of the seat, about which the axle winds up. */
function armBallAtSeat(layout: Layout, location: ParallelLeaf): Layout {
  const { steering } = layout;
  const [x, y] = steering.dragLinkBall;
  const z = location[steering.dragLinkTo].seat[2];
  return {
    ...layout,
    steering: { ...steering, dragLinkBall: [x, y, z] as unknown as typeof steering.dragLinkBall },
  };
}

/** N/mm of one side; 1 where nothing tells, so that a ratio of two is 1. */
function rateOf(layout: Layout): number {
  const setUp = rideParameters(layout);
  return setUp.ok ? setUp.value.parameters.springRate : 1;
}

interface Candidate {
  readonly id: BrakingChange['id'];
  readonly words: string | BrakingChange['words'];
  readonly but?: string;
  readonly layout: Layout;
  /** The links hold the axle after it: nothing winds up. */
  readonly held?: boolean;
}

function candidates(layout: Layout, location: ParallelLeaf, car: BrakingCar): Candidate[] {
  const spring = layout.ride?.spring;
  const list: Candidate[] = [
    {
      id: 'radius-rods',
      words: 'A radius rod each side, from the axle to the frame, that takes the brakes’ twist',
      but: 'rod and leaf have to swing about one centre, or they bind',
      layout,
      held: true,
    },
    {
      id: 'wedges',
      words: `Wedges of ${WEDGE}° between springs and seats, which tip the axle back`,
      but: 'the caster with the brakes off rises as much',
      layout: tippedBack(layout, toRadians(WEDGE)),
    },
    {
      id: 'seat',
      words: (length) => `Seats moved ${length(SEAT_STEP)} ahead along the springs`,
      layout: seatAhead(layout, location),
    },
  ];
  if (arrangementOf(layout) === 'side')
    list.push({
      id: 'arm-ball',
      words: 'The drag link’s ball on the steering arm put at the height of the spring seat',
      but: 'the bump steer wants looking at again',
      layout: armBallAtSeat(layout, location),
    });
  if (spring?.kind === 'leaf')
    list.push(
      {
        id: 'full-leaf',
        words: 'One more leaf of full length',
        layout: withSpring(layout, {
          ...spring,
          leaves: spring.leaves + 1,
          fullLeaves: (spring.fullLeaves ?? 0) + 1,
        }),
      },
      {
        id: 'thicker',
        words: 'Leaves a tenth thicker',
        layout: withSpring(layout, { ...spring, thickness: spring.thickness * THICKER }),
      },
    );
  else if (car.by === 'leaves') {
    list.push({
      id: 'stiffer',
      words: 'Springs a quarter stiffer',
      layout: withSpring(layout, { kind: 'rate', rate: STIFFER * rateOf(layout) }),
    });
  }
  return list;
}

/**
 * What could be changed about an axle that winds up on its leaves, each worked out by itself: most caster left first, the
 * axle as it is among them. Each is posed and steered anew with all that it moves. None where links hold the axle, where a
 * stiffness was typed, or where the layout as it is does not reach. Changes that do not reach are left out.
 */
export function brakingChanges(layout: Layout, grip = JUDGED_GRIP): BrakingChange[] {
  const { location } = layout;
  const car = brakingCar(layout);
  if (location.kind !== 'parallel-leaf' || !car.ok || car.value.by !== 'leaves') return [];
  const judge = ({ layout: changed, held, words, ...said }: Candidate): BrakingChange | undefined => {
    const changedCar = brakingCar(changed);
    if (!changedCar.ok) return undefined;
    const none = Number.POSITIVE_INFINITY;
    const of = held ? { ...changedCar.value, stiffness: { left: none, right: none } } : changedCar.value;
    const [row] = sweepBraking(prepareFrontEnd(changed), of, [grip]);
    if (row?.status !== 'ok') return undefined;
    return {
      ...said,
      words: typeof words === 'string' ? () => words : words,
      stiffer: rateOf(changed) / rateOf(layout),
      caster: leastCaster(row),
      steer: row.brakeSteer,
    };
  };
  const asItIs = judge({ id: 'as-it-is', words: 'As it is', layout });
  if (!asItIs) return [];
  return [asItIs, ...candidates(layout, location, car.value).flatMap((one) => judge(one) ?? [])].sort(
    (a, b) => b.caster - a.caster,
  );
}
