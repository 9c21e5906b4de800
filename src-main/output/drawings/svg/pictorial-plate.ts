import { type Box, boxOf } from '../../../../shared-math/drawing/index.ts';
import { Pictorial } from '../../../../shared-math/pictorial/index.ts';
import { formatDegrees, toDegrees } from '../../../../shared-math/units/index.ts';
import { paintMarks } from '../../pens/paint-marks.ts';
import { frontWord, marksOf } from '../../pens/pictorial-marks.ts';
import { LABEL, SMALL } from '../../pens/styles.ts';
import type { SvgPen } from '../../pens/svg-pen.ts';
import { type DrawingJob, USUAL_TURN } from '../job.ts';
import { sceneOf } from '../scene.ts';
import { openPlate } from './plate.ts';

/** mm of paper that a pictorial may take. */
const ROOM = { width: 250, height: 180 };
const NOTE = 7;
/** mm of paper that a round outline may be off. */
const OFF = 0.02;

/** The car in space, as it is seen from far off: axonometric, in the pose of the job and from where it asks. */
export function pictorialPlate(pen: SvgPen, job: DrawingJob): void {
  const { drawing, placed } = sceneOf(job);
  const turn = job.turn ?? USUAL_TURN;
  const pictorial = new Pictorial(drawing);
  // Once to see how large it is, and once as finely as that asks.
  const box: Box = boxOf(marksOf(pictorial.draw(placed, turn), drawing).flatMap(({ points }) => points));
  const scale = Math.max((box.right - box.left) / ROOM.width, (box.bottom - box.top) / ROOM.height);
  const marks = marksOf(pictorial.draw(placed, turn, [], OFF * scale), drawing);
  const area = openPlate(
    pen,
    { width: ROOM.width, height: (box.bottom - box.top) / scale + NOTE },
    job,
    undefined,
  );
  const x = area.x + (area.width - (box.right - box.left) / scale) / 2 - box.left / scale;
  const y = area.y - box.top / scale;
  pen.named('pictorial', () => paintMarks(pen, marks, { x, y, scale }));
  const { right, down, align } = frontWord(pictorial);
  pen.text('FRONT', x + right / scale, y + down / scale, LABEL, align);
  const angle = (radians: number) => formatDegrees(toDegrees(radians), 1);
  pen.text(
    `Axonometric (ISO 5456-3), seen from ahead ${angle(Math.abs(turn.azimuth))} round to its ${turn.azimuth < 0 ? 'right' : 'left'} and ${angle(turn.elevation)} above level; not for measuring.`,
    area.x,
    area.y + area.height - 1,
    SMALL,
  );
}
