import { getMeasuring } from '../../document/measuring.svelte.ts';
import { getOpenLayout } from '../../document/open-layout.svelte.ts';
import { JobClient } from '../../jobs/job-client.ts';
import { isPictureFile, startOriginals } from '../../pictures/index.ts';
import { latePiece } from '../late-piece.svelte.ts';
import type { Place } from '../place.ts';
import { FinishedCar } from './gauge/finished-car.svelte.ts';
import { measureOnBoard } from './measure-on-board.ts';
import type { MeasurePage } from './measure-words.ts';
import { AsSeen } from './photos/as-seen.svelte.ts';
import { PhotoAdvice } from './photos/photo-advice.svelte.ts';
import { startAdviceWorker } from './photos/start-advice-worker.ts';
import { startPhotoWorker } from './photos/start-photo-worker.ts';
import { Trace } from './photos/trace.svelte.ts';
import { traceOnBoard } from './photos/trace-on-board.ts';
import { TapeList } from './tape-list.svelte.ts';

/** What the car on the stands measures: by tape, row by row, and from photos under the drawing. */
export function measurePlace(): Place {
  const openLayout = getOpenLayout();
  const measuring = getMeasuring();
  const trace = new Trace(openLayout, measuring, startPhotoWorker, startOriginals);
  const asSeen = new AsSeen(openLayout, trace);
  const advice = new PhotoAdvice(openLayout, measuring, trace, new JobClient(startAdviceWorker));
  $effect(() => advice.follow());
  const finished = new FinishedCar(openLayout, measuring);
  $effect(() => finished.followLayout());
  const tape = new TapeList(openLayout, measuring);
  let page: MeasurePage = $state('tape');
  $effect(() => tape.followPicking());
  // Photos are worked on while their page shows.
  $effect(() => {
    const open = tape.here && page === 'photos';
    if (trace.open === open) return;
    trace.open = open;
    if (!open) trace.use(null);
  });
  return {
    id: 'measure',
    name: 'Measure',
    begins: true,
    column: latePiece(() => import('./MeasureColumn.svelte'), {
      trace,
      advice,
      tape,
      finished,
      get page() {
        return page;
      },
      turnTo: (to: MeasurePage) => {
        page = to;
      },
    }),
    ownMarks: true,
    contributors: [traceOnBoard(openLayout, trace, asSeen), measureOnBoard(openLayout, measuring, tape)],
    files: {
      takes: isPictureFile,
      take: (files) => {
        page = 'photos';
        trace.open = true;
        void trace.bring(files);
      },
    },
    escape: () => {
      if (trace.open && trace.tool) {
        trace.use(null);
        return true;
      }
      return tape.putAway();
    },
    entered: () => {
      tape.here = true;
    },
    left: () => {
      tape.here = false;
      tape.focused = null;
      tape.putAway();
    },
  };
}
