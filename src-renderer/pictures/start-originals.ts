import { lineTo } from '../jobs/worker-line.ts';
import type { OriginalsLine } from './originals.ts';

/** Starts the worker that keeps originals, so that a look through the loupe never waits for a whole photo. */
export function startOriginals(): OriginalsLine {
  return lineTo(new Worker(new URL('./originals-worker.ts', import.meta.url), { type: 'module' }));
}
