import {
  type CarSurvey,
  EMPTY_CAR_SURVEY,
  type ListRow,
  surveyList,
} from '../../../../shared-math/adjust/list/index.ts';
import { drawLayout, placeAtRide, roomFor } from '../../../../shared-math/drawing/index.ts';
import { resolveLayout } from '../../../../shared-math/layout/index.ts';
import type { Block } from '../../flow/block.ts';
import { Flow } from '../../flow/flow.ts';
import type { PageFrame } from '../../flow/page-frame.ts';
import type { PrintJob } from '../job.ts';
import type { Pages } from '../pages.ts';
import { ROW_TALL, type RowPicture, rowCard } from './row-card.ts';

// The list to take to the car: a figure for each thing to measure, a blank for what it comes to, what to measure it with.

const NOTE =
  'At ride height, tyres on the ground, wheels straight ahead. A row may stay open; each one checks the others.';

/** Rows side by side on a page. */
const COLUMNS = 2;

function listPages(pageFrame: PageFrame, job: PrintJob, rows: readonly ListRow[], survey: CarSurvey): void {
  const layout = resolveLayout(job.document);
  const drawing = drawLayout(layout);
  const placed = roomFor(drawing);
  placeAtRide(drawing, placed);
  const picture: RowPicture = { drawing, placed };
  const flow = new Flow(pageFrame, { title: 'What to measure on the car', lying: false }, COLUMNS, NOTE);
  const cards = rows.map(
    (row, i): Block => ({
      height: () => ROW_TALL,
      paint: (pen, x, y, width) =>
        rowCard(pen, { x, y, width, height: ROW_TALL }, row, {
          number: i + 1,
          picture,
          unit: job.unit,
          taken: survey.taken[row.id],
        }),
    }),
  );
  flow.put(...cards);
}

/** The measuring sheet: the list of the car's arrangement, with what has been measured so far where that is given. */
export function measuringPages(job: PrintJob): Pages {
  const survey = job.survey ?? EMPTY_CAR_SURVEY;
  const rows = surveyList(job.document);
  return [['what to measure', (pageFrame) => listPages(pageFrame, job, rows, survey)]];
}
