import type { WorkerLine } from '../../jobs/job-client.ts';
import { lineTo } from '../../jobs/worker-line.ts';

/** Starts the worker's script on a thread of its own. It is one of the program's files, as the page's policy asks. */
export function startCounterWorker(): WorkerLine {
  return lineTo(new Worker(new URL('./counter-worker.ts', import.meta.url), { type: 'module' }));
}
