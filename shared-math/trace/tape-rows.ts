import { distance } from '../geometry/points.ts';
import type { Hardpoint, Photo } from '../layout/index.ts';
import { clickDoubt } from './photo-doubts.ts';
import type { PhotoPlane } from './photo-plane.ts';
import { checkTape, type TapeCheck } from './tape.ts';

/**
 * px on the longer side of what is shown of a photo and clicked on: sharp on a board, and a twentieth of a phone's photo in
 * memory.
 */
export const WORKED_SIDE = 2400;

/** One length of the table: what it is called, what the tracing says, and the tape's word where it has been asked. */
export interface TapeRow {
  readonly kind: 'note' | 'length';
  /** Its place in the photo's list of its kind. */
  readonly at: number;
  readonly words: string;
  readonly traced: number;
  readonly check: TapeCheck | undefined;
}

/** The photo's dimension notes and the lengths between hardpoints, traced and by the tape. mm. */
export function tapeRows(photo: Photo, plane: PhotoPlane, points: readonly Hardpoint[]): TapeRow[] {
  const { mmPerPixel, scaleBase } = plane;
  const clicked = { mmPerPixel, scaleBase, click: clickDoubt(photo) };
  const notes = photo.notes.flatMap(({ from, to, text, tape }, at): TapeRow[] => {
    const [a, b] = [plane.toPlace(from), plane.toPlace(to)];
    if (!a || !b) return [];
    const traced = Math.hypot(a[0] - b[0], a[1] - b[1]);
    const check = tape === undefined ? undefined : checkTape(traced, tape, clicked);
    return [{ kind: 'note', at, words: text || `Dimension ${at + 1}`, traced, check }];
  });
  const named = (id: string) => points.find((point) => point.id === id);
  const lengths = photo.lengths.flatMap(({ from, to, tape }, at): TapeRow[] => {
    const [a, b] = [named(from), named(to)];
    if (!a || !b) return [];
    const traced = distance(a.at, b.at);
    const words = `${a.name} to ${b.name.charAt(0).toLowerCase()}${b.name.slice(1)}`;
    return [{ kind: 'length', at, words, traced, check: checkTape(traced, tape, clicked) }];
  });
  return [...notes, ...lengths];
}
