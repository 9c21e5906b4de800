import type { AdjustedPoint, Adjustment, Misfit } from '../../shared-math/adjust/index.ts';
import type {
  FarQuestion,
  FreeCoordinate,
  SideDifference,
  SlipQuestion,
} from '../../shared-math/adjust/list/index.ts';
import { hardpoints, type LayoutDocument, originOf, withOrigin } from '../../shared-math/layout/index.ts';
import type { PhotosFound } from './photos-measured.ts';

/** What the measurements of the open layout's car come to on its drawing. */
export interface Measured {
  /** The rows that do not fit set aside. */
  readonly clean: Adjustment;
  readonly misfits: readonly Misfit[];
  /** What the photos observe, and what of it does not fit; undefined where no photo's camera is known. */
  readonly photos: PhotosFound | undefined;
  readonly questions: readonly (SlipQuestion | FarQuestion)[];
  readonly free: readonly FreeCoordinate[];
  /** Where the rows of both sides say that a car whose sides are taken as alike is not. */
  readonly differences: readonly SideDifference[];
  /** Rows of other arrangements of this car, which this layout has no points for. */
  readonly elsewhere: number;
  /** Measured points that stand elsewhere in the drawing. */
  readonly waiting: readonly string[];
}

type Points = ReadonlyMap<string, Pick<AdjustedPoint, 'free'>>;

/** A copy of a document in which a taped point that the measurements gave before, and give no longer, is a guess again. */
export function withLostGuessed(
  document: LayoutDocument,
  before: Points | undefined,
  now: Points,
): LayoutDocument {
  const lost = hardpoints(document).filter(
    (point) =>
      originOf(document, point) === 'tape' &&
      before?.get(point.id)?.free.length === 0 &&
      (now.get(point.id)?.free.length ?? 0) > 0,
  );
  if (lost.length === 0) return document;
  const origins = lost.reduce((so, point) => withOrigin(so, point, 'guess'), document.origins ?? {});
  return { ...document, origins };
}
