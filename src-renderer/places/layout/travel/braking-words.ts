import { type BrakingRow, leastCaster } from '../../../../shared-math/brake/index.ts';
import { formatMoment, type LengthUnit, toRadians } from '../../../../shared-math/units/index.ts';
import { formatQuantity, WIND_UP_STIFFNESS } from '../../../controls/quantities.ts';

/** A stiffness from N·mm/rad in the reader's unit: "362 N·m/°". */
export const stiffnessWords = (stiffness: number, unit: LengthUnit): string =>
  formatQuantity(WIND_UP_STIFFNESS, (stiffness * toRadians(1)) / 1000, unit);

/** A moment from N·mm in the reader's unit: "1480 N·m", "1092 lb·ft". */
export const momentWords = (moment: number, unit: LengthUnit): string => formatMoment(moment / 1000, unit);

/** The grip at which the lesser caster is gone, between two rows by the straight line; undefined where it never is. */
export function casterGoneAt(rows: readonly BrakingRow[]): number | undefined {
  for (let i = 1; i < rows.length; i += 1) {
    const [from, to] = [rows[i - 1], rows[i]] as [BrakingRow, BrakingRow];
    if (from.status !== 'ok' || to.status !== 'ok') continue;
    const [a, b] = [leastCaster(from), leastCaster(to)];
    if (a > 0 && b <= 0) return from.grip + ((to.grip - from.grip) * a) / (a - b);
  }
  return undefined;
}
