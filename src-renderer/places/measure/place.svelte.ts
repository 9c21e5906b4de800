import { Late, shown } from '../../controls/late.svelte.ts';
import { getMeasuring } from '../../document/measuring.svelte.ts';
import { getOpenLayout } from '../../document/open-layout.svelte.ts';
import { JobClient } from '../../jobs/job-client.ts';
import { isPictureFile, startOriginals } from '../../pictures/index.ts';
import type { Place } from '../place.ts';
import { startDrawingWorker } from './drawings/start-drawing-worker.ts';
import { Underlays } from './drawings/underlays.svelte.ts';
import { underlaysOnBoard } from './drawings/underlays-on-board.ts';
import { measureOnBoard } from './measure-on-board.ts';
import type { MeasurePage } from './measure-words.ts';
import { AsSeen } from './photos/as-seen.svelte.ts';
import { PhotoAdvice } from './photos/photo-advice.svelte.ts';
import { startAdviceWorker } from './photos/start-advice-worker.ts';
import { startPhotoWorker } from './photos/start-photo-worker.ts';
import { Trace } from './photos/trace.svelte.ts';
import { traceOnBoard } from './photos/trace-on-board.ts';
import { TapeList } from './tape-list.svelte.ts';

/** A drawing that can be laid under a view. */
const isDrawingFile = ({ name, type }: File): boolean =>
  /\.(dxf|svg)$/i.test(name) || /^image\/(svg\+xml|vnd\.dxf)$/.test(type);

/** What the car on the stands measures: by tape, row by row, and from photos under the drawing. */
export function measurePlace(): Place {
  const openLayout = getOpenLayout();
  const measuring = getMeasuring();
  const trace = new Trace(openLayout, measuring, startPhotoWorker, startOriginals);
  const asSeen = new AsSeen(openLayout, measuring, trace);
  const advice = new PhotoAdvice(openLayout, measuring, trace, new JobClient(startAdviceWorker));
  $effect(() => advice.follow());
  const underlays = new Underlays(openLayout, startDrawingWorker);
  $effect(() => underlays.follow());
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
    column: new Late(
      () => import('./measure-column.ts'),
      ({ default: MeasureColumn, FinishedCar }) =>
        shown(MeasureColumn, {
          trace,
          advice,
          tape,
          finished: new FinishedCar(openLayout, measuring),
          underlays,
          get page() {
            return page;
          },
          turnTo: (to: MeasurePage) => {
            page = to;
          },
        }),
    ),
    ownMarks: true,
    contributors: [
      traceOnBoard(openLayout, trace, asSeen),
      underlaysOnBoard(underlays),
      measureOnBoard(openLayout, measuring, tape),
    ],
    files: {
      takes: (file) => isPictureFile(file) || isDrawingFile(file),
      take: (files) => {
        const drawings = files.filter(isDrawingFile);
        const photos = files.filter((file) => !isDrawingFile(file));
        page = photos.length > 0 ? 'photos' : 'drawings';
        if (photos.length > 0) {
          trace.open = true;
          void trace.bring(photos);
        }
        if (drawings.length > 0) void underlays.bring(drawings);
      },
    },
    escape: () => {
      if (underlays.tool) {
        underlays.use(null);
        return true;
      }
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
      underlays.use(null);
      tape.here = false;
      tape.focused = null;
      tape.putAway();
    },
  };
}
