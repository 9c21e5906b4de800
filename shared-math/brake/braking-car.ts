import type { Point } from '../geometry/points.ts';
import { type Layout, type Refusal, SIDES, type Side } from '../layout/index.ts';
import { failed, type Outcome, succeeded } from '../outcome.ts';
import { leafHalves, leafRate, type RideOrigin, rideParameters } from '../ride/index.ts';
import { toRadians } from '../units/index.ts';
import type { LoadedCar } from './brake-loads.ts';
import { windUpStiffness } from './wind-up-stiffness.ts';

/** What stands where a layout gives no figure: common practice, no published source. */
export const USUAL_BRAKING = {
  /** Engine in front and the axle under it, two people on board. */
  frontShare: 0.5,
  /** Of the tyre's radius. */
  gravityHeight: 1.5,
} as const;

/** What resists the axle's winding up: its leaves, its links, or as stiffly as was typed. */
export type WindUpBy = 'leaves' | 'links' | 'typed';

/** What braking works on, every figure there. */
export interface BrakingCar extends LoadedCar {
  /** N·mm/rad of each side; infinite where links resist and nothing was typed. */
  readonly stiffness: Readonly<Record<Side, number>>;
  /** mm: the brake force's lever for the moment that winds each side up. */
  readonly lever: Readonly<Record<Side, number>>;
  readonly by: WindUpBy;
  readonly origin: Readonly<Record<'frontShare' | 'gravityHeight' | 'stiffness', RideOrigin>>;
}

/**
 * The lever of the brake force at the road. Leaves take the push where they are clamped: the moment at the seat is the
 * force times the seat's height above the road, the tyre's radius less what the seat lies below the wheel's centre. Rods and
 * bars are fast to the axle: their brackets take the moment about its line, the tyre's radius.
 */
function leverOf(layout: Layout, side: Side): number {
  const { car, location, axle } = layout;
  if (location.kind !== 'parallel-leaf') return car.tyreRadius;
  return car.tyreRadius - (axle[side].wheelCentre[2] - location[side].seat[2]);
}

/**
 * The point about which one side of the axle winds up while its height is held: the seat of a leaf, which holds the axle
 * fore and aft there; else the axle's own line. A drag link whose line passes it is not moved along by the wind-up. mm, as drawn.
 */
export function windUpCentre(layout: Layout, side: Side): Point {
  const { location, axle } = layout;
  return location.kind === 'parallel-leaf' ? location[side].seat : axle[side].wheelCentre;
}

/** Stiffness of one side's leaf, N·mm/rad, by what `ride` gives of it. */
function leafStiffness(layout: Layout, side: Side, rate: number): number {
  const spring = layout.ride?.spring;
  if (layout.location.kind !== 'parallel-leaf') return Number.POSITIVE_INFINITY;
  if (spring?.kind === 'leaf' && spring.lie === 'along') {
    const [fixed, shackle] = leafHalves(layout, spring.length, side);
    return windUpStiffness(leafRate(spring, fixed, shackle), fixed, shackle);
  }
  const { fixedEye, seat, shackleEye } = layout.location[side];
  const inPlan = (eye: typeof seat | typeof fixedEye) => Math.hypot(eye[0] - seat[0], eye[1] - seat[1]);
  return windUpStiffness(rate, inPlan(fixedEye), inPlan(shackleEye));
}

/**
 * What a layout's car brakes with: as its `braking` gives, the stiffness from its leaves as `ride` gives them, the rest as is
 * usual, each with where it comes from.
 * Outcomes: the refusal of `rideParameters` where the leaves' rate would follow from masses that cannot be.
 */
export function brakingCar(layout: Layout): Outcome<BrakingCar, Refusal> {
  const { braking = {}, car, location, ride } = layout;
  const typed = braking.windUpStiffness;
  const byLeaves = location.kind === 'parallel-leaf';
  const shared = {
    frontAxleLoad: car.frontAxleLoad,
    wheelbase: car.wheelbase,
    frontShare: braking.frontShare ?? USUAL_BRAKING.frontShare,
    gravityHeight: braking.gravityHeight ?? USUAL_BRAKING.gravityHeight * car.tyreRadius,
    lever: { left: leverOf(layout, 'left'), right: leverOf(layout, 'right') },
  };
  const origin = (stiffness: RideOrigin) => ({
    frontShare: braking.frontShare === undefined ? ('usual' as const) : ('told' as const),
    gravityHeight: braking.gravityHeight === undefined ? ('usual' as const) : ('told' as const),
    stiffness,
  });
  if (typed !== undefined) {
    const ofOneSide = (typed * 1000) / toRadians(1) / SIDES.length;
    return succeeded({
      ...shared,
      stiffness: { left: ofOneSide, right: ofOneSide },
      by: 'typed',
      origin: origin('told'),
    });
  }
  if (!byLeaves) {
    const none = Number.POSITIVE_INFINITY;
    return succeeded({
      ...shared,
      stiffness: { left: none, right: none },
      by: 'links',
      origin: origin('worked-out'),
    });
  }
  const setUp = rideParameters(layout);
  if (!setUp.ok) return failed(setUp.failure);
  const { springRate } = setUp.value.parameters;
  return succeeded({
    ...shared,
    stiffness: {
      left: leafStiffness(layout, 'left', springRate),
      right: leafStiffness(layout, 'right', springRate),
    },
    by: 'leaves',
    origin: origin(ride?.spring === undefined ? 'usual' : 'worked-out'),
  });
}
