import type { AimOutcome, HeldTravel } from '../../../../shared-math/aim/index.ts';
import { aimAtPlane, judgedPlane, worstBumpSteerAt } from '../../../../shared-math/aim/index.ts';
import type { TravelSummary, TravelSweep } from '../../../../shared-math/sweep/index.ts';
import { ROW_OK, toeLength } from '../../../../shared-math/sweep/index.ts';
import { BIND_SHOWN_FROM } from '../../../../shared-math/tolerances.ts';
import { degreesBeside, MM_PER_INCH, toDegrees } from '../../../../shared-math/units/index.ts';
import type { Along } from './travel-data.ts';

/** Bump steer as a length: what the front of one tyre moves against its back. mm, without a sign. */
export function bumpSteerLength(summary: TravelSummary, tyreRadius: number): number {
  return Math.abs(toeLength(summary.worstBumpSteer, tyreRadius));
}

/** mm that lengths are reported per in a slope: an inch, or 25 mm. */
const PER: Record<'in' | 'mm', { readonly mm: number; readonly words: string }> = {
  in: { mm: MM_PER_INCH, words: 'per inch' },
  mm: { mm: 25, words: 'per 25 mm' },
};

/** "0.84° per inch", "0.05° per degree of roll". */
export function slopeWords(
  summary: TravelSummary,
  along: Exclude<Along, 'braking'>,
  unit: 'in' | 'mm',
): string {
  if (along === 'roll') return `${degreesBeside(summary.slopeAtRide, [0], 3)} per degree of roll`;
  const { mm, words } = PER[unit];
  return `${degreesBeside(toDegrees(summary.slopeAtRide) * mm, [0], 2)} ${words}`;
}

/** The most that a link or bushing must give along a sweep, mm, and where; undefined if it is less than slack. */
export function worstBind(sweep: TravelSweep): { readonly size: number; readonly at: number } | undefined {
  let size = 0;
  let at = 0;
  for (let row = 0; row < sweep.count; row += 1) {
    if (sweep.status[row] !== ROW_OK) continue;
    const bind = sweep.bind[row] as number;
    if (bind > size) {
      size = bind;
      at = sweep.at[row] as number;
    }
  }
  return size >= BIND_SHOWN_FROM ? { size, at } : undefined;
}

/** Worst |bump steer| if the pitman ball were at the aim point, rad; undefined if there is none or it is out of reach. */
export function worstAtAim(travel: HeldTravel, aim: AimOutcome): number | undefined {
  if (!aim.ok) return undefined;
  const { frontEnd } = travel;
  const { kept } = judgedPlane(frontEnd);
  const at = aimAtPlane(aim.value, kept, frontEnd.layout.steering.box.pitmanBall[kept]);
  if (!at) return undefined;
  const worst = worstBumpSteerAt(travel, at);
  return Number.isFinite(worst) ? worst : undefined;
}
