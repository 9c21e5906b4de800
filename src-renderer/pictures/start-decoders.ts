// Each is started for one file alone.

export function startHeicDecoder(): Worker {
  return new Worker(new URL('./heic-decoder-worker.ts', import.meta.url), { type: 'module' });
}

export function startPdfDecoder(): Worker {
  return new Worker(new URL('./pdf-decoder-worker.ts', import.meta.url), { type: 'module' });
}
