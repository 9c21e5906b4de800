import type { LayoutDocument } from '../../../shared-math/layout/index.ts';
import {
  carriedLayout,
  MovedCar,
  type PageData,
  RIDE_HEIGHT,
  roundBump,
  type ShownCar,
} from '../../../shared-math/moving/index.ts';
import { oneLine } from '../../../shared-math/outside/index.ts';
import type { PrintJob } from '../pages/job.ts';
import { type SheetModel, sheetModelOf } from '../pages/sheet-model.ts';

/** A page that moves, to be made. */
export interface MovingJob extends Omit<PrintJob, 'kind' | 'paper' | 'progress'> {
  /** The layout that it is compared with; absent, it stands alone. */
  readonly beside?: LayoutDocument;
}

/** One of the page's cars with all that is said of it. */
export interface MovingCar extends ShownCar {
  readonly model: SheetModel;
}

/** What a page that moves is made of. */
export interface MovingModel {
  readonly job: MovingJob;
  /** The layout itself, then the one that it is compared with. */
  readonly cars: readonly MovingCar[];
  readonly data: PageData;
}

/** Works out what a page that moves shows; its cars stand in the pose in which the page opens. */
export function movingModelOf(job: MovingJob): MovingModel {
  const documents = job.beside ? [job.document, job.beside] : [job.document];
  const cars = documents.map((document, at): MovingCar => {
    const model = sheetModelOf({ ...job, document, kind: 'customer', paper: 'a4' });
    // What the page's script writes is plain text: no sign of a name may act on it.
    return { at: at as 0 | 1, name: oneLine(document.name), car: new MovedCar(model.layout), model };
  });
  const [first] = cars as [MovingCar];
  const start = { ...RIDE_HEIGHT, heave: roundBump(first.car, job.unit) };
  // Where one of them does not get there, all of them stay at ride height.
  const stands = cars.every(({ car }) => car.put(start) === undefined);
  if (!stands) for (const { car } of cars) car.put(RIDE_HEIGHT);
  return {
    job,
    cars,
    data: {
      cars: cars.map(({ name, model: { layout, analysis } }) => ({
        name,
        layout: carriedLayout(layout),
        locks: [analysis.turn.right.handwheel, analysis.turn.left.handwheel],
      })),
      style: first.model.style,
      start: stands ? start : RIDE_HEIGHT,
    },
  };
}
