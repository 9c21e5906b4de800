import type { FromPhotoWorker, ToPhotoWorker } from './photo-messages.ts';

/** A line to the photo worker. */
export interface PhotoWorkerLine {
  send(message: ToPhotoWorker): void;
  listen(hear: (message: FromPhotoWorker) => void): void;
}

/** Starts the worker that straightens photos, so that a drag of a corner never waits for pixels. */
export function startPhotoWorker(): PhotoWorkerLine {
  const worker = new Worker(new URL('./photo-worker.ts', import.meta.url), { type: 'module' });
  return {
    send: (message) => worker.postMessage(message),
    listen: (hear) => {
      worker.onmessage = ({ data }: MessageEvent<FromPhotoWorker>) => hear(data);
    },
  };
}
