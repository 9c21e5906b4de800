import { steerPlot, toePlot, turnPlot } from '../../pages/sheet/curves-page.ts';
import { sheetModelOf } from '../../pages/sheet-model.ts';
import type { Area } from '../../pens/papers.ts';
import type { SvgPen } from '../../pens/svg-pen.ts';
import type { DrawingJob } from '../job.ts';
import { openPlate } from './plate.ts';

const ONE = { width: 240, height: 140 };
const EACH = { width: 110, height: 105 };
const GAP = 10;

/** The curves as vectors, as the build sheet has them: one of them large, or all three in a row. */
export function curvesPlate(pen: SvgPen, job: DrawingJob): void {
  const model = sheetModelOf({ ...job, kind: 'sheet', paper: 'a4', date: new Date(0) });
  const plots = { steer: steerPlot, toe: toePlot, turn: turnPlot };
  const { view } = job;
  if (view === 'steer' || view === 'toe' || view === 'turn') {
    plots[view](pen, model, openPlate(pen, ONE, job, undefined));
    return;
  }
  const area = openPlate(pen, { width: 3 * EACH.width + 2 * GAP, height: EACH.height }, job, undefined);
  Object.values(plots).forEach((draw, i) => {
    const room: Area = { ...EACH, x: area.x + i * (EACH.width + GAP), y: area.y };
    draw(pen, model, room);
  });
}
