import { type Line, lineTo } from '../../jobs/worker-line.ts';
import type { FromRideWorker, ToRideWorker } from './ride-messages.ts';

/** A line to the ride worker. */
export type RideWorkerLine = Line<ToRideWorker, FromRideWorker>;

/** Starts the worker that steps the car on its springs and tyres, on a thread of its own. */
export function startRideWorker(): RideWorkerLine {
  return lineTo(new Worker(new URL('./ride-worker.ts', import.meta.url), { type: 'module' }));
}
