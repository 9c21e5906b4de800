import type { WorkerLine } from '../../../jobs/job-client.ts';
import { lineTo } from '../../../jobs/worker-line.ts';

/** Starts the worker that reads drawings. */
export function startDrawingWorker(): WorkerLine {
  return lineTo(new Worker(new URL('./drawing-worker.ts', import.meta.url), { type: 'module' }));
}
