import { steerWay, wheelWords } from '../../../shared-math/findings/index.ts';
import type { Layout } from '../../../shared-math/layout/index.ts';
import {
  type Lock,
  lockAngles,
  type ReturnEnds,
  returnEnds,
  SIDE_FORCE_SHARE,
  type TurnSweep,
  toeLength,
  turningCircle,
  turnsLockToLock,
} from '../../../shared-math/sweep/index.ts';
import {
  formatDecimal,
  formatDegrees,
  formatRimForce,
  formatSpan,
  formatSteer,
  formatToeLength,
  type Radians,
  toDegrees,
} from '../../../shared-math/units/index.ts';
import { ratioWords } from '../../../shared-math/words/index.ts';
import type { SheetModel } from './sheet-model.ts';

// Figures of the whole car in words, each with its unit.

export const NONE = 'none';
export const NOT_KNOWN = 'not known';

export function angle(radians: Radians, decimals = 1): string {
  return formatDegrees(toDegrees(radians), decimals);
}

/** A length of car size in the customer's unit, the other one in brackets. */
export function spanBoth(model: SheetModel, mm: number): string {
  const { unit } = model.style;
  return `${formatSpan(mm, unit)} (${formatSpan(mm, unit === 'in' ? 'mm' : 'in')})`;
}

/**
 * Worst bump steer over the travel, how far its front comes in or out against its rear, and the worst with one wheel over a bump, with
 * where the wheels then stand; not known where the linkage does not reach everywhere in the travel of each wheel.
 */
export function bumpSteer(
  model: SheetModel,
): { angle: string; way: string; atTyre: string; oneWheel: string; wheels: string } | undefined {
  const { heaveSummary: summary, oneWheel } = model.analysis;
  if (summary.okCount === 0) return undefined;
  return {
    angle: formatSteer(summary.worstBumpSteer),
    way: steerWay(summary.worstSteer),
    oneWheel: oneWheel.status === 'ok' ? formatSteer(oneWheel.worst) : 'not known',
    wheels:
      oneWheel.status === 'ok'
        ? wheelWords(model.layout, oneWheel, model.length)
        : 'the linkage does not reach everywhere in the travel of each wheel',
    atTyre: `${formatToeLength(toeLength(summary.worstBumpSteer, model.layout.car.tyreRadius), model.style.unit)} front to rear of the tyre`,
  };
}

export const steers = (turn: TurnSweep) => turn.status === 'ok' && turn.count > 1;

export function turnsWords(turn: TurnSweep): string {
  return steers(turn) ? formatDecimal(turnsLockToLock(turn), 2) : NONE;
}

/** Overall ratio straight ahead, handwheel to wheels. */
export function overallRatio(turn: TurnSweep): string {
  return steers(turn) ? ratioWords(Math.abs(turn.straightRatio)) : NONE;
}

/** The wider of the two turning circles between kerbs, mm; undefined if the wheels do not turn. */
export function turningCircleOf(layout: Layout, turn: TurnSweep): number | undefined {
  if (!steers(turn)) return undefined;
  const found = [turn.left, turn.right].flatMap((lock) => turningCircle(layout, lock)?.betweenKerbs ?? []);
  return found.length > 0 ? Math.max(...found) : undefined;
}

/** Inner and outer wheel at a lock, and the ideal outer, rad. */
export function lockWheels(layout: Layout, lock: Lock) {
  return lockAngles(layout, lock);
}

/** What parking takes at the rim without assistance: straight ahead, and the most on the way to lock. */
export function parkingWords({ analysis: { effort }, style }: SheetModel): string {
  if (!effort) return NOT_KNOWN;
  const { centre, worst } = effort;
  const most =
    worst.handwheel === 0
      ? ''
      : `, at the most ${formatRimForce(worst.rimForce, style.unit)} at ${formatDecimal(Math.abs(toDegrees(worst.handwheel)), 0)}° of handwheel ${worst.handwheel > 0 ? 'left' : 'right'}`;
  return `${formatRimForce(centre.rimForce, style.unit)} at the rim straight ahead${most}`;
}

/** How far from straight the wheels come back by themselves, to either side, and what of it is left out. */
export function returnWords({ frontEnd, analysis: { turn } }: SheetModel): string {
  const ends = returnEnds(frontEnd, turn, 0, 0);
  if (!ends) return NOT_KNOWN;
  const words = ({ both }: ReturnEnds) => {
    if (both === null) return 'all the way';
    return both === 0 ? 'not at all' : `up to ${formatDecimal(Math.abs(both) / (2 * Math.PI), 2)} turns`;
  };
  const [left, right] = [words(ends.left), words(ends.right)];
  const sides = left === right ? `${left}, to either side` : `${left} to the left, ${right} to the right`;
  return `${sides}: by a side force of ${formatDecimal(100 * SIDE_FORCE_SHARE, 0)} per cent of the front load and the weight on inclined kingpins; without the tyres’ own trail, friction and assistance`;
}
