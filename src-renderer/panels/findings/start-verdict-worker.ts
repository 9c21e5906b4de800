import type { WorkerLine } from '../../jobs/job-client.ts';
import { lineTo } from '../../jobs/worker-line.ts';

/** Starts the worker's script on a thread of its own. */
export function startVerdictWorker(): WorkerLine {
  return lineTo(new Worker(new URL('./verdict-worker.ts', import.meta.url), { type: 'module' }));
}
