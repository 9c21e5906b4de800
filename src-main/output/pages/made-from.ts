import { findMisfits } from '../../../shared-math/adjust/index.ts';
import { rowsFor } from '../../../shared-math/adjust/list/index.ts';
import {
  type NumberedPoint,
  type Origin,
  originCounts,
  originOf,
} from '../../../shared-math/layout/index.ts';
import { degreesBeside, type Radians, toDegrees } from '../../../shared-math/units/index.ts';
import type { SheetModel } from './sheet-model.ts';

// What a sheet was made from: which of its points were measured, planned or guessed, and what that leaves in doubt.

const ORIGIN_WORDS: Record<Origin, string> = {
  tape: 'taped',
  photo: 'from a photo',
  plan: 'planned',
  guess: 'guessed, not measured',
};

/** The same in a word, where there is little room. */
export function originWord({ job }: SheetModel, point: NumberedPoint): string {
  return { tape: 'taped', photo: 'photo', plan: 'planned', guess: 'guessed' }[originOf(job.document, point)];
}

/** How a point's place is known: "taped", "from a photo", "planned", "guessed, not measured". */
export function originWords({ job }: SheetModel, point: NumberedPoint): string {
  return ORIGIN_WORDS[originOf(job.document, point)];
}

/** "Made from 9 points measured on the car, 3 planned and 1 guessed." */
export function madeFromWords({ job }: SheetModel): string {
  const { measured, planned, guessed, all } = originCounts(job.document);
  const parts = [
    measured > 0 ? `${measured} measured on the car` : '',
    planned > 0 ? `${planned} planned` : '',
    guessed > 0 ? `${guessed} guessed` : '',
  ].filter(Boolean);
  if (parts.length === 1)
    return `Made from ${all} points, all of them ${(parts[0] as string).replace(/^\d+ /, '')}.`;
  return `Made from ${all} points: ${parts.slice(0, -1).join(', ')} and ${parts.at(-1)}.`;
}

/**
 * What measuring leaves in doubt of the worst bump steer over heave, one standard deviation, in words; undefined where nothing
 * was measured, where it cannot be worked out, or where the drawing does not stand as measured.
 */
export function headlineDoubt({ job, analysis }: SheetModel): string | undefined {
  const { survey, document } = job;
  if (!survey) return undefined;
  const { rows } = rowsFor(document, survey);
  if (rows.length === 0) return undefined;
  const found = findMisfits(document, rows, { slips: false });
  if (!found.ok) return undefined;
  const { bumpSteer } = found.value.clean;
  if (!bumpSteer) return undefined;
  // A drawing that has not taken what was measured has another figure, of which this is not the doubt.
  const drawn = toDegrees(analysis.heaveSummary.worstBumpSteer as Radians);
  if (Math.abs(drawn - bumpSteer.worst) > Math.max(0.01, bumpSteer.doubt)) return undefined;
  return `± ${degreesBeside(bumpSteer.doubt, [0], 2)} from measuring (one standard deviation)`;
}
