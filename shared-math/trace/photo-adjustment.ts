import type { Adjustment, SurveyRow, UnknownTable } from '../adjust/index.ts';
import {
  type Hardpoint,
  hardpoints,
  isOtherOfPair,
  type LayoutDocument,
  type Origin,
  originOf,
  withOrigin,
  withValue,
} from '../layout/index.ts';
import { isNamed, type PhotoObservations, photoObservations } from './photo-observations.ts';

/** What a document's own photos observe, for `adjust`. */
export function photosFurther(survey: readonly SurveyRow[]): (table: UnknownTable) => PhotoObservations {
  return (table) => photoObservations(table, survey, table.document.photos);
}

/**
 * The points that a document's photos move: those with a click that is not set aside, but for planned ones and for those that
 * are known by a tape whose rows are not at hand. By the id that the document holds.
 */
export function movedByPhotos(
  document: LayoutDocument,
  survey: readonly SurveyRow[],
  { observed, seen }: Pick<PhotoObservations, 'observed' | 'seen'>,
  aside: ReadonlySet<string>,
): Set<string> {
  const points = hardpoints(document);
  const clicked = new Set(
    [...observed].flatMap(([row, { kind }]) =>
      kind === 'mark' && !aside.has(row) ? (seen.get(row) ?? []) : [],
    ),
  );
  const moved = points.filter(
    (point) =>
      (clicked.has(point.id) || clicked.has(point.twin ?? '')) &&
      !isOtherOfPair(point) &&
      movable(document, survey, point),
  );
  return new Set(moved.map(({ id }) => id));
}

function movable(document: LayoutDocument, survey: readonly SurveyRow[], point: Hardpoint): boolean {
  const origin = originOf(document, point);
  return origin === 'photo' || origin === 'guess' || (origin === 'tape' && isNamed(survey, point));
}

/** The document with some of its points where an adjustment has them; a traced point that no tape measured comes from a photo. */
export function withAdjusted(
  document: LayoutDocument,
  { points, document: adjusted }: Pick<Adjustment, 'points' | 'document'>,
  moved: ReadonlySet<string>,
): LayoutDocument {
  let next = document;
  let origins: Readonly<Record<string, Origin>> = document.origins ?? {};
  for (const point of hardpoints(document)) {
    const to = moved.has(point.id) ? points.get(point.id) : undefined;
    if (!to) continue;
    next = withValue(next, point.id, to.at);
    if (originOf(document, point) === 'guess') origins = withOrigin(origins, point, 'photo');
  }
  const wheels = [...moved].some((id) => id.endsWith('.wheelCentre'));
  return {
    ...next,
    ...(wheels ? { car: { ...next.car, tyreRadius: adjusted.car.tyreRadius } } : {}),
    origins: { ...origins },
  };
}
