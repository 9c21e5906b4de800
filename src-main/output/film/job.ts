import type { LayoutDocument } from '../../../shared-math/layout/index.ts';
import type { PrintJob } from '../pages/job.ts';

/** What a film goes through, there and back: the axle's bump and droop, its roll, or the handwheel from lock to lock. */
export const FILMED = ['bump', 'roll', 'steering'] as const;
export type Filmed = (typeof FILMED)[number];

/** Pixels across: for a message, for a screen, for a large one. */
export const FILM_WIDTHS = [480, 720, 1080] as const;
export type FilmWidth = (typeof FILM_WIDTHS)[number];

/** Seconds that a film takes there and back. */
export const FILM_SECONDS = [2, 4, 8] as const;
export type FilmSeconds = (typeof FILM_SECONDS)[number];

/** What is filmed, how large and how long. */
export interface FilmShape {
  readonly over: Filmed;
  readonly width: FilmWidth;
  readonly seconds: FilmSeconds;
}

/** A film to be made. */
export interface FilmJob
  extends FilmShape,
    Pick<PrintJob, 'unit' | 'fraction' | 'car' | 'signal' | 'progress'> {
  readonly document: LayoutDocument;
  /** The variant that it is compared with; absent, it stands alone. */
  readonly beside?: LayoutDocument;
}
