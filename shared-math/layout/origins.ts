import type { Hardpoint } from './hardpoint.ts';
import { hardpoints } from './hardpoints.ts';
import type { Refusal } from './refusals.ts';
import type { LayoutDocument, Origin } from './schema.ts';

// Where a point's place comes from: guessed with the plain car, planned by the user, taped on the car, traced from a photo.
// Keyed by hardpoint; a point without an entry is a guess; the two points of a mirrored pair are one place and have one.

/** What in `origins` speaks of no point of the layout, or twice of one. */
export function* originProblems(document: LayoutDocument): Generator<Refusal> {
  const origins = document.origins ?? {};
  const ids = Object.keys(origins);
  if (ids.length === 0) return;
  const points = new Map(hardpoints(document).map((point) => [point.id, point]));
  for (const id of ids) {
    const point = points.get(id);
    if (!point) yield { path: `origins.${id}`, reason: 'this layout has no such point' };
    else if (point.twin !== undefined && point.twin in origins && ids.indexOf(point.twin) < ids.indexOf(id))
      yield {
        path: `origins.${id}`,
        reason: `${point.twin} has one already, and the two are mirrored: only one of them may have it`,
      };
  }
}

/** Where a point's place comes from; the two points of a mirrored pair share it. */
export function originOf(document: LayoutDocument, { id, twin }: Hardpoint): Origin {
  return document.origins?.[id] ?? (twin === undefined ? undefined : document.origins?.[twin]) ?? 'guess';
}

const isJoint = (id: string) => /^shaft\.joints\.\d+\.centre$/.test(id);

/** By which id a point was known before: joints are counted, so one that is put in or taken out shifts the others. */
function earlierId(
  { id, at }: Hardpoint,
  before: readonly Hardpoint[],
  counted: boolean,
): string | undefined {
  if (counted || !isJoint(id)) return id;
  return before.find((other) => isJoint(other.id) && other.at.every((value, axis) => value === at[axis]))?.id;
}

/**
 * An edited copy of a document with the origins of the points that it still has: those of points that went with the edit
 * go with them, a pair that is mirrored from now on keeps the left one's, one that is spelled out from now on has it on
 * both sides, and a joint's goes along with the joint. An edit that wrote `origins` itself is left as it is.
 */
export function withOriginsKept(before: LayoutDocument, edited: LayoutDocument): LayoutDocument {
  if (!before.origins || edited.origins !== before.origins) return edited;
  const earlier = hardpoints(before);
  const counted = before.shaft?.joints.length === edited.shaft?.joints.length;
  const origins: Record<string, Origin> = {};
  for (const point of hardpoints(edited)) {
    if (point.twin !== undefined && point.twin in origins) continue;
    const id = earlierId(point, earlier, counted);
    const known = earlier.find((other) => other.id === id);
    // Mirrored from now on: the right one's place is gone, and with it where that came from.
    if (point.id.includes('.right.') && point.twin !== undefined && known?.twin === undefined) continue;
    if (!known || !(known.id in before.origins || (known.twin ?? '') in before.origins)) continue;
    // Under the id that it has already, where that still stands for it.
    const kept = point.twin !== undefined && known.twin === point.twin && !(known.id in before.origins);
    origins[kept ? (point.twin as string) : point.id] = originOf(before, known);
  }
  const same =
    Object.keys(origins).length === Object.keys(before.origins).length &&
    Object.entries(origins).every(([id, origin]) => before.origins?.[id] === origin);
  return same ? edited : { ...edited, origins };
}

/** mm. Below this a point has not been moved. */
const MOVED = 1e-6;

/**
 * An edited copy of a document in which what the edit moved is planned: a point that stood elsewhere before has the
 * origin `plan`, one that the edit brought is a guess, all others keep theirs as `withOriginsKept` has it. An edit that
 * wrote `origins` itself is left as it is.
 */
export function withMovedPlanned(before: LayoutDocument, edited: LayoutDocument): LayoutDocument {
  if (edited.origins !== before.origins) return edited;
  const kept = withOriginsKept(before, edited);
  const earlier = new Map(hardpoints(before).map((point) => [point.id, point]));
  const counted = before.shaft?.joints.length === edited.shaft?.joints.length;
  const first = kept.origins ?? {};
  let origins = first;
  for (const point of hardpoints(edited)) {
    const known = isJoint(point.id) && !counted ? undefined : earlier.get(point.id);
    const moved = known?.at.some((value, axis) => Math.abs(value - (point.at[axis] as number)) > MOVED);
    if (moved) origins = withOrigin(origins, point, 'plan');
  }
  return origins === first ? kept : { ...kept, origins };
}

/** Origins in which a point, and with it its mirror image, comes from elsewhere. The input is not changed. */
export function withOrigin(
  origins: Readonly<Record<string, Origin>>,
  { id, twin }: Hardpoint,
  origin: Origin,
): Record<string, Origin> {
  const key = twin !== undefined && twin in origins ? twin : id;
  return origins[key] === origin ? origins : { ...origins, [key]: origin };
}

/** How many places of axle, location, lateral and steering come from where; mirrored pairs once. */
export interface OriginCounts {
  readonly measured: number;
  readonly planned: number;
  readonly guessed: number;
  readonly all: number;
}

/** The right one of a mirrored pair: the left one speaks for both. */
export function isOtherOfPair({ id, twin }: Hardpoint): boolean {
  return twin !== undefined && id.includes('.right.');
}

/** Counts where a document's points come from, those of the shaft left out. Taped and traced ones are measured. */
export function originCounts(document: LayoutDocument): OriginCounts {
  const origins = hardpoints(document)
    .filter((point) => !point.id.startsWith('shaft.') && !isOtherOfPair(point))
    .map((point) => originOf(document, point));
  const of = (...wanted: Origin[]) => origins.filter((origin) => wanted.includes(origin)).length;
  return { measured: of('tape', 'photo'), planned: of('plan'), guessed: of('guess'), all: origins.length };
}

/** The document with every guessed place taken as it is meant to be: planned there. */
export function withGuessesPlanned(document: LayoutDocument): LayoutDocument {
  let origins = document.origins ?? {};
  for (const point of hardpoints(document))
    if (!isOtherOfPair(point) && originOf(document, point) === 'guess')
      origins = withOrigin(origins, point, 'plan');
  return { ...document, origins: { ...origins } };
}
