import { type Picture, warpPicture } from '../../../../shared-math/trace/index.ts';
import type { FromPhotoWorker, ToPhotoWorker } from './photo-messages.ts';

// The script that runs in the photo worker: it keeps each working picture and shows it straight on when asked.

const kept = new Map<string, Picture>();

self.onmessage = ({ data }: MessageEvent<ToPhotoWorker>) => {
  if (data.kind === 'keep') {
    kept.set(data.hash, data.picture);
    return;
  }
  const source = kept.get(data.hash);
  if (!source) return;
  const picture = warpPicture(source, data.order);
  const answer: FromPhotoWorker = { id: data.id, picture };
  self.postMessage(answer, { transfer: [picture.data.buffer as ArrayBuffer] });
};
