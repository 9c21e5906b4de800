import { hardpoints, isOtherOfPair, type LayoutDocument, resolveLayout } from '../../layout/index.ts';
import { adjust, FITS_WITHIN } from '../adjust.ts';
import type { SurveyRow } from '../survey.ts';
import { AXES, type AxisName } from '../unknowns.ts';

/** mm. A difference of the sides below this is no difference that a tape could show. */
const LEAST = 1;

/** A coordinate in which left and right were measured to differ. */
export interface SideDifference {
  /** The left point. */
  readonly id: string;
  readonly axis: AxisName;
  /** mm: how much further forward, further out or higher the right one is. */
  readonly by: number;
  /** mm: the most that the standard deviation of the difference can be, whatever the two have in common. */
  readonly doubt: number;
}

/**
 * Whether a car whose document mirrors its right side is so: its rows adjusted once more with both sides spelled out, and
 * every coordinate compared that is measured on both. A difference counts from 3.29 of its standard deviations on; of
 * that only an upper bound is known, σ_left + σ_right, so that none is claimed too early. Largest first; empty where
 * the sides agree, or where only one of them was measured.
 */
export function sideDifferences(document: LayoutDocument, rows: readonly SurveyRow[]): SideDifference[] {
  const { axle, location } = resolveLayout(document);
  const apart: LayoutDocument = { ...document, axle, location };
  const outcome = adjust(apart, rows, { pointsOnly: true });
  if (!outcome.ok) return [];
  const { points } = outcome.value;
  const found = hardpoints(document).flatMap((point) => {
    if (point.twin === undefined || isOtherOfPair(point)) return [];
    const [left, right] = [points.get(point.id), points.get(point.twin)];
    if (!left || !right) return [];
    return ([0, 1, 2] as const).flatMap((axis) => {
      const name = AXES[axis];
      if (left.free.includes(name) || right.free.includes(name)) return [];
      const by = axis === 1 ? -right.at[1] - left.at[1] : right.at[axis] - left.at[axis];
      const doubt = left.doubt[axis] + right.doubt[axis];
      return Math.abs(by) > Math.max(LEAST, FITS_WITHIN * doubt)
        ? [{ id: point.id, axis: name, by, doubt }]
        : [];
    });
  });
  return found.sort((a, b) => Math.abs(b.by) - Math.abs(a.by));
}
