import type { View } from '../../shared-math/drawing/index.ts';
import type { Camera } from './camera.ts';

/**
 * Where things are on the canvas, for tests and tools that drive the pointer: a canvas has no elements to ask. Reads
 * only. Page px; nothing for a point that the view shows no handle of.
 */
export interface BoardHook {
  handleAt(view: View, hardpoint: string): { readonly x: number; readonly y: number } | undefined;
  /** Something that a contributor has on the board, by its name and what it is asked by; nothing while it is not shown. */
  spotAt(
    name: string,
    ...asked: readonly (string | number)[]
  ): { readonly x: number; readonly y: number } | undefined;
  /** Where the pictorial shows a hardpoint. */
  picturedAt(hardpoint: string): { readonly x: number; readonly y: number } | undefined;
  camera(): Camera;
  /** All that is written over the drawing, in no order. */
  written(): readonly string[];
}

declare global {
  interface Window {
    toeboardBoard?: BoardHook;
  }
}

/** Puts the hook on the page; call what it gives back to take it away again. */
export function offerTestHook(hook: BoardHook): () => void {
  window.toeboardBoard = hook;
  return () => {
    if (window.toeboardBoard === hook) delete window.toeboardBoard;
  };
}
