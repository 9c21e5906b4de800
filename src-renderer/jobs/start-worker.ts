import type { WorkerLine } from './courier.ts';
import type { FromWorker } from './messages.ts';

/** Starts the worker's script on a thread of its own. It is one of the program's files, as the page's policy asks. */
export function startWorker(): WorkerLine {
  const worker = new Worker(new URL('./worker.ts', import.meta.url), { type: 'module' });
  return {
    send: (message) => worker.postMessage(message),
    listen: (hear) => {
      worker.onmessage = ({ data }: MessageEvent<FromWorker>) => hear(data);
    },
  };
}
