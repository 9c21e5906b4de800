import type { FromRideWorker, ToRideWorker } from './ride-messages.ts';

/** A line to the ride worker. */
export interface RideWorkerLine {
  send(message: ToRideWorker): void;
  listen(hear: (message: FromRideWorker) => void): void;
}

/** Starts the worker that steps the car on its springs and tyres, on a thread of its own. */
export function startRideWorker(): RideWorkerLine {
  const worker = new Worker(new URL('./ride-worker.ts', import.meta.url), { type: 'module' });
  return {
    send: (message) => worker.postMessage(message),
    listen: (hear) => {
      worker.onmessage = ({ data }: MessageEvent<FromRideWorker>) => hear(data);
    },
  };
}
