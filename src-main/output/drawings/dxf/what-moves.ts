import type { ArcsDetail } from '../../../../shared-math/detail/index.ts';
import type { ViewPoint } from '../../../../shared-math/drawing/index.ts';
import type { outlinesOf } from '../../pages/rooms.ts';
import { NO_ARCS } from '../../pages/sheet/arcs-page.ts';
import { DRAWN_WORDS, type DrawingJob } from '../job.ts';
import type { Spot } from '../strokes/stroke.ts';
import { type DrawingFile, inUnit, ON_PAPER } from './drawing-file.ts';
import type { ViewLayer } from './layers.ts';
import type { ViewWriter } from './view-writer.ts';

// What moves, in a view: the rooms that parts need, and the arcs that decide bump steer.

/** The rooms in a view, each part's on its layer. */
export function drawRooms(writer: ViewWriter, outlines: ReturnType<typeof outlinesOf>): void {
  for (const { part, outline } of outlines) writer.line(`room-${part}`, outline, true);
}

/** Path, arc and gap of the steering-arm ball at full size, in the view in which they are judged. */
export function drawArcs(writer: ViewWriter, { asked, allowed, ticks }: ArcsDetail): void {
  const flat = (places: readonly ViewPoint[]) => places.flatMap((place) => [...place]);
  writer.line('ball-path', flat(asked), false);
  writer.line('link-arc', flat(allowed), false);
  for (const { asked: from, allowed: to } of ticks) writer.line('arc-gaps', [...from, ...to], false);
}

/** The gaps of the arcs in figures, a row for each; its upper left corner at a place. */
export function drawGaps(
  file: DrawingFile<ViewLayer>,
  { view, ticks }: ArcsDetail,
  [left, top]: Spot,
  job: DrawingJob,
): void {
  const size = inUnit(job.unit);
  const height = file.onPaper(ON_PAPER.letters);
  const write = (words: string, mm: number, row: number, align: 'left' | 'right' = 'left') =>
    file.text('words', words, [left + file.onPaper(mm), top - row * 1.8 * height], { height, align });
  const figure = (mm: number, decimals: number) => {
    const written = Math.abs(size(mm)).toFixed(decimals);
    return Number(written) === 0 ? written : `${mm > 0 ? '+' : '-'}${written}`;
  };
  const decimals = job.unit === 'in' ? 4 : 3;
  write(
    `Arcs, in the ${DRAWN_WORDS[view].toLowerCase()}: ball-path is what the axle asks of the steering-arm ball with the wheels straight, link-arc what the drag link allows.`,
    0,
    0,
  );
  write(
    ticks.length > 0
      ? `arc-gaps by heave, ${job.unit}, true lengths: with + the link is too short, with - too long. No roll, handwheel straight ahead, brakes off.`
      : NO_ARCS,
    0,
    1,
  );
  ticks.forEach(({ heave, gap }, i) => {
    write(`heave ${figure(heave, decimals)}`, 40, i + 3, 'right');
    write(`gap ${figure(gap, decimals)}`, 80, i + 3, 'right');
  });
}
