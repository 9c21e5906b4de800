import { adjust, type SurveyRow } from '../../shared-math/adjust/index.ts';
import {
  type CarSurvey,
  type FarQuestion,
  farQuestions,
  type SlipQuestion,
  slipQuestions,
} from '../../shared-math/adjust/list/index.ts';
import type { LayoutDocument } from '../../shared-math/layout/index.ts';

/**
 * Rows that lie far off and that nobody has said to be so: set aside until they are answered. Those that nothing checks are held
 * against the drawing and the slips that would explain them; each, against what such cars have.
 */
export function questionsOf(
  base: LayoutDocument,
  rows: readonly SurveyRow[],
  { taken }: CarSurvey,
): (SlipQuestion | FarQuestion)[] {
  const all = adjust(base, rows, { pointsOnly: true });
  const unchecked = all.ok
    ? all.value.rows.filter(({ w, redundancy }) => w === null && redundancy !== null)
    : [];
  const answered = new Set(rows.map(({ id }) => id).filter((id) => taken[id]?.sure));
  const asked = unchecked.map(({ id }) => id).filter((id) => !answered.has(id));
  const slips = slipQuestions(base, rows, new Set(asked));
  return [...slips, ...farQuestions(rows, new Set([...answered, ...slips.map(({ id }) => id)]))];
}
