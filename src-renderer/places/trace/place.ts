import { getOpenLayout } from '../../document/open-layout.svelte.ts';
import { latePiece } from '../late-piece.svelte.ts';
import type { Place } from '../place.ts';
import { startPhotoWorker } from './start-photo-worker.ts';
import { Trace } from './trace.svelte.ts';
import { traceOnBoard } from './trace-on-board.ts';

/** Photos under the drawing, and points and outlines taken from them. */
export function tracePlace(): Place {
  const openLayout = getOpenLayout();
  const trace = new Trace(openLayout, startPhotoWorker);
  return {
    id: 'trace',
    name: 'Trace',
    column: latePiece(() => import('./TracePage.svelte'), { trace }),
    contributors: [traceOnBoard(openLayout, trace)],
    files: {
      takes: (file) => file.type.startsWith('image/'),
      take: (files) => void trace.bring(files),
    },
    escape: () => {
      if (!trace.open || !trace.tool) return false;
      trace.use(null);
      return true;
    },
    entered: () => {
      trace.open = true;
    },
    left: () => {
      trace.open = false;
      trace.use(null);
    },
  };
}
