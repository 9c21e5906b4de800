import type { PhotoSpot } from '../../../../shared-math/trace/index.ts';
import type { ScreenPoint } from '../../../board/camera.ts';

/** Where a px of the photo that is traced shows on the page, for tests that drive the pointer; nothing off the photo. */
export type TraceHook = (spot: PhotoSpot) => ScreenPoint | undefined;

declare global {
  interface Window {
    toeboardTrace?: TraceHook;
  }
}

/** Puts the hook on the page; call what it gives back to take it away again. */
export function offerTraceHook(hook: TraceHook): () => void {
  window.toeboardTrace = hook;
  return () => {
    if (window.toeboardTrace === hook) delete window.toeboardTrace;
  };
}
