import { formatDegrees, toDegrees } from '../../../../shared-math/units/index.ts';
import { fittedPictorial, heightOf, paintPictorial } from '../../pens/pictorial-view.ts';
import { SMALL } from '../../pens/styles.ts';
import type { SvgPen } from '../../pens/svg-pen.ts';
import { type DrawingJob, USUAL_TURN } from '../job.ts';
import { sceneOf } from '../scene.ts';
import { openPlate } from './plate.ts';

/** mm of paper that a pictorial may take, and what the note takes below it. */
const ROOM = { width: 250, height: 180 };
const NOTE = 7;

/** The car in space, as it is seen from far off: axonometric, in the pose of the job and from where it asks. */
export function pictorialPlate(pen: SvgPen, job: DrawingJob): void {
  const { drawing, placed } = sceneOf(job);
  const turn = job.turn ?? USUAL_TURN;
  const fitted = fittedPictorial(drawing, placed, turn, ROOM);
  const area = openPlate(pen, { width: ROOM.width, height: heightOf(fitted) + NOTE }, job, undefined);
  paintPictorial(pen, fitted, area);
  const angle = (radians: number) => formatDegrees(toDegrees(radians), 1);
  const side = turn.azimuth < 0 ? 'right' : 'left';
  pen.text(
    `Axonometric (ISO 5456-3), seen from ahead ${angle(Math.abs(turn.azimuth))} round to its ${side} and ${angle(turn.elevation)} above level; not for measuring.`,
    area.x,
    area.y + area.height - 1,
    SMALL,
  );
}
