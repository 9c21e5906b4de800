import { hardpoints, isOtherOfPair, type LayoutDocument } from '../../layout/index.ts';
import { type AdjustedPoint, adjust, distancesFromDrawing } from '../adjust.ts';
import type { SurveyRow } from '../survey.ts';
import type { AxisName } from '../unknowns.ts';
import type { ListRow } from './list-row.ts';

/** A coordinate that nothing measures. */
export interface FreeCoordinate {
  readonly id: string;
  readonly axis: AxisName;
}

const AXIS_WORDS: Readonly<Record<AxisName, string>> = {
  x: 'distance back',
  y: 'distance out',
  z: 'height',
};

/** The coordinates that nothing measures, a mirrored pair's once. */
export function freeCoordinates(
  document: LayoutDocument,
  points: ReadonlyMap<string, AdjustedPoint>,
): FreeCoordinate[] {
  return hardpoints(document).flatMap((point) => {
    if (isOtherOfPair(point)) return [];
    return (points.get(point.id)?.free ?? []).map((axis) => ({ id: point.id, axis }));
  });
}

/** "the hairpin pivot's height", "the left hairpin pivot's height" where the sides differ. */
export function freeWords(document: LayoutDocument, { id, axis }: FreeCoordinate): string {
  return `the ${pointWords(document, id)}'s ${AXIS_WORDS[axis]}`;
}

/** "hairpin pivot": what a builder calls a point, its side only where the sides differ. */
export function pointWords(document: LayoutDocument, id: string): string {
  const point = hardpoints(document).find((each) => each.id === id);
  if (!point) return id;
  const name = point.name.toLowerCase();
  return point.twin === undefined ? name : name.replace(/^(left|right) /, '');
}

/** The rows of a list with the figures that the drawing has, as if the drawn car had been measured; facts left out. */
export function rowsAsDrawn(document: LayoutDocument, list: readonly ListRow[]): SurveyRow[] {
  const rows = list.flatMap((row) =>
    row.observes ? [{ ...row.observes, id: row.id, value: 1 } as SurveyRow] : [],
  );
  const drawn = new Map(
    distancesFromDrawing(document, rows, new Set()).map(({ id, expected }) => [id, expected]),
  );
  return rows.map((row) => ({ ...row, value: drawn.get(row.id) ?? row.value }));
}

/**
 * What stays unknown if this row alone of the list is left open, in words; empty where the others tell it too. Judged at
 * the drawn car, with every other row measured as it is usually.
 */
export function unknownWithout(document: LayoutDocument, list: readonly ListRow[], id: string): string[] {
  const others = rowsAsDrawn(document, list).filter((row) => row.id !== id);
  const outcome = adjust(document, others, { pointsOnly: true });
  if (!outcome.ok) return [];
  return freeCoordinates(document, outcome.value.points).map((free) => freeWords(document, free));
}
