import {
  adjust,
  type FurtherMisfit,
  type FurtherOf,
  findMisfits,
  type Snooping,
  type SurveyRow,
  unknownsOf,
} from '../../shared-math/adjust/index.ts';
import type { Point } from '../../shared-math/geometry/points.ts';
import {
  hardpoints,
  isOtherOfPair,
  type LayoutDocument,
  type Origin,
  originOf,
  withOrigin,
  withValue,
} from '../../shared-math/layout/index.ts';
import { type Outcome, succeeded } from '../../shared-math/outcome.ts';
import {
  isNamed,
  movedByPhotos,
  type PhotoObservations,
  photosFurther,
  placesByPhotos,
  withPlaces,
} from '../../shared-math/trace/index.ts';

// What a document's photos and its car's survey come to together.

export interface PhotosFound extends Pick<PhotoObservations, 'observed' | 'photos'> {
  readonly misfits: readonly FurtherMisfit[];
  /** All that is left out until it is settled, rows of the survey and clicks. */
  readonly aside: ReadonlySet<string>;
  /** The points that the photos put where they stand. */
  readonly moved: ReadonlySet<string>;
  /** And where that is. */
  readonly places: ReadonlyMap<string, Point>;
}

/** What the photos of a document are found to be once what does not fit is left out. */
export function photosFound(
  base: LayoutDocument,
  rows: readonly SurveyRow[],
  { furtherMisfits, aside, clean }: Snooping,
): PhotosFound {
  const observations = photosFurther(rows)(unknownsOf(base));
  const { observed, photos } = observations;
  const moved = movedByPhotos(base, rows, observations, aside);
  const places = placesByPhotos(base, clean, observations, moved);
  return { observed, photos, misfits: furtherMisfits, aside, moved, places };
}

/**
 * A document with its points where its photos and a survey together have them; as it is where they cannot be adjusted. `base` is
 * the same with its points where the adjustment counts from; points that wait for the person stay. What does not fit is
 * looked for, unless it is known what to leave aside; points of which nothing else is left stay where they `stood`.
 */
export function adjustedByPhotos(
  document: LayoutDocument,
  stood: LayoutDocument,
  base: LayoutDocument,
  rows: readonly SurveyRow[],
  waiting: ReadonlySet<string>,
  known?: ReadonlySet<string>,
): LayoutDocument {
  const further = photosFurther(rows);
  const outcome = known
    ? adjustedAside(base, rows, further, known)
    : findMisfits(base, rows, { further, slips: false, pointsOnly: true });
  if (!outcome.ok) return document;
  const { clean, aside } = outcome.value;
  const observations = further(unknownsOf(base));
  const moved = movedByPhotos(document, rows, observations, aside);
  // What the tape measured of the car moves with it, where this variant has taken it.
  for (const point of hardpoints(document)) {
    if (isOtherOfPair(point) || originOf(document, point) !== 'tape') continue;
    if (waiting.has(point.id)) moved.delete(point.id);
    else if (isNamed(rows, point) && clean.points.get(point.id)?.free.length === 0) moved.add(point.id);
  }
  const places = placesByPhotos(document, clean, observations, moved);
  const next = withPlaces(document, places, clean.document.car.tyreRadius);
  const asked = [...aside].flatMap((id) =>
    observations.observed.get(id)?.kind === 'mark' ? (observations.seen.get(id) ?? []) : [],
  );
  return asStood(next, stood, new Set(asked.filter((id) => !moved.has(id))));
}

/** The document with some of its points where they stood before, and from where they came. */
function asStood(document: LayoutDocument, stood: LayoutDocument, ids: ReadonlySet<string>): LayoutDocument {
  if (ids.size === 0) return document;
  let next = document;
  const { ...origins } = document.origins;
  for (const point of hardpoints(stood)) {
    if (!ids.has(point.id)) continue;
    next = withValue(next, point.id, point.at);
    for (const id of [point.id, point.twin ?? point.id]) delete origins[id];
    const origin = originOf(stood, point);
    if (origin !== 'guess') origins[point.id] = origin;
  }
  return { ...next, origins };
}

/** An adjustment with what is known not to fit left out. */
function adjustedAside(
  document: LayoutDocument,
  rows: readonly SurveyRow[],
  further: FurtherOf,
  aside: ReadonlySet<string>,
): Outcome<Pick<Snooping, 'clean' | 'aside'>, unknown> {
  const clean = adjust(document, rows, { aside, further, pointsOnly: true });
  return clean.ok ? succeeded({ clean: clean.value, aside }) : clean;
}

/**
 * What a survey's adjustment makes of a document that has photos: points that they show stay traced, whatever the tape
 * measures of them besides; those that a tape measured of which no row is at hand stay where they stand.
 */
export function takenWithPhotos(
  before: LayoutDocument,
  taken: LayoutDocument,
  rows: readonly SurveyRow[],
  traced: ReadonlyMap<string, Point>,
): LayoutDocument {
  let next = taken;
  let origins: Readonly<Record<string, Origin>> = taken.origins ?? {};
  for (const point of hardpoints(before)) {
    if (isOtherOfPair(point)) continue;
    const origin = originOf(before, point);
    const at = traced.get(point.id);
    if (at) next = withValue(next, point.id, at);
    if (at && origin !== 'tape') origins = withOrigin(origins, point, 'photo');
    else if (origin === 'tape' && !isNamed(rows, point)) next = withValue(next, point.id, point.at);
  }
  return { ...next, origins: { ...origins } };
}
