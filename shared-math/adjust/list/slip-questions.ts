import type { LayoutDocument } from '../../layout/index.ts';
import { distancesFromDrawing } from '../adjust.ts';
import { possibleSlips, type Slip } from '../slips.ts';
import type { SurveyRow } from '../survey.ts';

/** Standard deviations of the drawing's weak knowledge beyond which a figure that nothing checks is asked about. */
const ASKED_FROM = 1.8;
/** And within which the same figure without its slip would lie. */
const MEANT_WITHIN = 0.8;

export interface SlipQuestion {
  readonly id: string;
  /** What the drawing has there: mm or degrees. */
  readonly drawn: number;
  /** The row without the slip that would bring it nearest to the drawing. */
  readonly slip: Slip;
}

/**
 * Rows that nothing checks and that lie far from where the car is drawn, each with the slip that would explain it: a
 * minus too many, millimetres for inches. The drawing may be a plain car's, so that these are questions, not misfits.
 */
export function slipQuestions(
  document: LayoutDocument,
  rows: readonly SurveyRow[],
  unchecked: ReadonlySet<string>,
): SlipQuestion[] {
  const distances = new Map(distancesFromDrawing(document, rows, new Set()).map((each) => [each.id, each]));
  return rows.flatMap((row) => {
    const distance = distances.get(row.id);
    if (!unchecked.has(row.id) || !distance || Math.abs(distance.w) < ASKED_FROM) return [];
    const [nearest] = possibleSlips(document, row)
      .flatMap(({ kind, row: other }) => {
        const w = distancesFromDrawing(document, [other], new Set())[0]?.w;
        return w === undefined || Math.abs(w) > MEANT_WITHIN ? [] : [{ kind, row: other, w: Math.abs(w) }];
      })
      .sort((a, b) => a.w - b.w);
    return nearest ? [{ id: row.id, drawn: distance.expected, slip: nearest }] : [];
  });
}
