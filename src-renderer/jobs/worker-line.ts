import type { WorkerLine } from './courier.ts';
import type { FromWorker } from './messages.ts';

/** The page's line to a worker that serves jobs. */
export function lineTo(worker: Worker): WorkerLine {
  return {
    send: (message) => worker.postMessage(message),
    listen: (hear) => {
      worker.onmessage = ({ data }: MessageEvent<FromWorker>) => hear(data);
    },
  };
}
