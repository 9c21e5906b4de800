import { type Line, lineTo } from '../../../jobs/worker-line.ts';
import type { FromPhotoWorker, ToPhotoWorker } from './photo-messages.ts';

/** A line to the photo worker. */
export type PhotoWorkerLine = Line<ToPhotoWorker, FromPhotoWorker>;

/** Starts the worker that straightens photos, so that a drag of a corner never waits for pixels. */
export function startPhotoWorker(): PhotoWorkerLine {
  return lineTo(new Worker(new URL('./photo-worker.ts', import.meta.url), { type: 'module' }));
}
