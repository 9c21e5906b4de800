import type { Layout } from '../layout/index.ts';
import { groundEccentricity, parkingEffort } from '../sweep/index.ts';
import { leverage, turnsOf } from './arms.ts';
import type { BoxKind } from './boxes.ts';
import { type Car, limitOf } from './car.ts';

/** How badly a box suits two levers: what it misses of ratio, turn and effort, each as a share of its limit. */
function misfit(car: Car, layout: Layout, kind: BoxKind, levers: number, stop: number): number {
  const overall = kind.ratio * levers;
  const [least, most] = [limitOf(car, 'ratioLeast'), limitOf(car, 'ratioMost')];
  let missing = Math.max(0, least - overall) / least + Math.max(0, overall - most) / most;
  // A tenth to spare: at lock the levers stand askew.
  const needed = 1.1 * stop * levers;
  missing += Math.max(0, needed - kind.sectorTravel) / kind.sectorTravel;
  const { centre, axis, pitman } = {
    centre: layout.steering.box.sectorCentre,
    axis: layout.steering.box.sectorAxis,
    pitman: layout.steering.box.pitmanBall,
  };
  if (kind.turns && kind.turns !== turnsOf(centre, axis, pitman)) missing += 10;
  if (kind.assist === 'manual') {
    const limit = limitOf(car, 'rimForce');
    missing += Math.max(0, (1.1 * rimForceAt(layout, overall)) / limit - 1);
  }
  // Of boxes that all suit, the lightest, and one that lies there before one to be bought.
  return missing + (kind.shelved ? 0 : 1e-3) + 1e-5 / overall;
}

/** N at the rim, parking, straight ahead. */
export function rimForceAt(layout: Layout, overallRatio: number): number {
  const { frontAxleLoad, tyreWidth, handwheelRadius } = layout.car;
  return (['left', 'right'] as const).reduce(
    (sum, side) =>
      sum +
      parkingEffort({
        frontAxleLoad: frontAxleLoad / 2,
        tyreWidth,
        eccentricity: groundEccentricity(layout, side),
        overallRatio,
        handwheelRadius,
      }).rimForce,
    0,
  );
}

/** The box of those given that suits the levers of a laid layout best, by its place in the list. */
function chooseBox(car: Car, layout: Layout, kinds: readonly BoxKind[]): BoxKind {
  const levers = leverage(layout);
  const stop = layout.steering.stopAngle ?? 35;
  let best = kinds[0] as BoxKind;
  let least = Number.POSITIVE_INFINITY;
  for (const kind of kinds) {
    const value = misfit(car, layout, kind, levers, stop);
    if (value < least) [best, least] = [kind, value];
  }
  return best;
}

/** The layout with that box in its place. */
function withBox(layout: Layout, kind: BoxKind): Layout {
  const { steering } = layout;
  const { inputAngle: _, greatestOutput: __, ...box } = steering.box;
  return {
    ...layout,
    steering: {
      ...steering,
      box: {
        ...box,
        ratio: kind.ratio,
        sectorTravel: kind.sectorTravel,
        assist: kind.assist,
        ...(kind.inputAngle === undefined ? {} : { inputAngle: kind.inputAngle }),
      },
    },
  };
}

/** Where a box stands and its pitman arm hangs. Frame and units: the layout's. */
type BoxPlace = Pick<Layout['steering']['box'], 'sectorCentre' | 'sectorAxis' | 'pitmanBall'>;

/** The layout with its box at a place, if another is given, and of the kind that suits the levers there best. */
export function boxedAt(car: Car, layout: Layout, kinds: readonly BoxKind[], place?: BoxPlace): Layout {
  const { steering } = layout;
  const laid = place ? { ...layout, steering: { ...steering, box: { ...steering.box, ...place } } } : layout;
  return withBox(laid, chooseBox(car, laid, kinds));
}
