import type { Adjustment, SurveyRow, UnknownTable } from '../adjust/index.ts';
import { VIEW_AXES } from '../drawing/index.ts';
import type { Point } from '../geometry/points.ts';
import { add, scaled, subtract } from '../geometry/vectors.ts';
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
import { cameraUnknownAt, isNamed, type PhotoObservations, photoObservations } from './photo-observations.ts';

/** What a document's own photos observe, for `adjust`. */
export function photosFurther(survey: readonly SurveyRow[]): (table: UnknownTable) => PhotoObservations {
  return (table) => photoObservations(table, survey, table.document.photos);
}

/**
 * The points that a document's photos move: those with a click that is not set aside, but for planned ones, for those that place a
 * photo, and for those that are known by a tape whose rows are not at hand. By the id that the document holds.
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
  const { id, twin } = point;
  const places = document.photos.some(
    ({ anchor }) => anchor && (anchor.point === id || anchor.point === twin),
  );
  if (places && origin !== 'tape') return false;
  return origin === 'photo' || origin === 'guess' || (origin === 'tape' && isNamed(survey, point));
}

/**
 * Where the moved points stand: where the adjustment has them, but for those that one photo alone shows and whose depth nobody
 * typed: of these it tells a line of sight, on which they stay as deep as they are drawn.
 */
export function placesByPhotos(
  document: LayoutDocument,
  { points, furtherUnknowns }: Pick<Adjustment, 'points' | 'furtherUnknowns'>,
  { observed, photos }: Pick<PhotoObservations, 'observed' | 'photos'>,
  moved: ReadonlySet<string>,
): Map<string, Point> {
  const places = new Map<string, Point>();
  for (const { id, at: drawn } of hardpoints(document)) {
    const found = moved.has(id) ? points.get(id) : undefined;
    if (!found) continue;
    const clicks = [...observed.values()].filter(
      (each) => (each.kind === 'mark' || each.kind === 'depth') && each.point === id,
    );
    const [only] = clicks;
    const camera = clicks.length === 1 && only ? photos.indexOf(only.photo) : -1;
    const view = only && document.photos[only.photo]?.view;
    const { axis } = VIEW_AXES[view ?? 'side'].toward;
    const at =
      camera >= 0 && found.free.includes(AXES[axis])
        ? atDepth(cameraPlace(furtherUnknowns, camera), found.at, axis, drawn[axis])
        : found.at;
    places.set(id, at);
  }
  return places;
}

const AXES = ['x', 'y', 'z'] as const;

function cameraPlace(unknowns: Adjustment['furtherUnknowns'], camera: number): Point {
  const value = (axis: number) => unknowns[cameraUnknownAt(camera) + axis]?.value ?? Number.NaN;
  return [value(0), value(1), value(2)];
}

/** Along the line from a camera through a point, at a depth. */
function atDepth(camera: Point, through: Point, axis: 0 | 1 | 2, depth: number): Point {
  const share = (depth - camera[axis]) / (through[axis] - camera[axis]);
  const at = add(camera, scaled(subtract(through, camera), share));
  return at.every(Number.isFinite) ? at : through;
}

/** The document with some of its points in new places; a traced point that no tape measured comes from a photo. */
export function withPlaces(
  document: LayoutDocument,
  places: ReadonlyMap<string, Point>,
  tyreRadius: number,
): LayoutDocument {
  let next = document;
  let origins: Readonly<Record<string, Origin>> = document.origins ?? {};
  for (const point of hardpoints(document)) {
    const to = places.get(point.id);
    if (!to) continue;
    next = withValue(next, point.id, to);
    if (originOf(document, point) === 'guess') origins = withOrigin(origins, point, 'photo');
  }
  const wheels = [...places.keys()].some((id) => id.endsWith('.wheelCentre'));
  return {
    ...next,
    ...(wheels ? { car: { ...next.car, tyreRadius } } : {}),
    origins: { ...origins },
  };
}
