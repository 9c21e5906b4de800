import { type Box, boxOf, joined, type Outline, type View } from '../../../shared-math/drawing/index.ts';
import { sweepTurn } from '../../../shared-math/sweep/index.ts';
import { lookOf, roomOutlines, type SweptRooms, sweepRooms } from '../../../shared-math/swept/index.ts';
import { formatDegrees } from '../../../shared-math/units/index.ts';
import { type CarView, frameOf, onPage } from '../pens/car-view.ts';
import { SOFT, STEEL } from '../pens/colours.ts';
import type { PrintPen } from '../pens/print-pen.ts';
import type { PrintJob } from './job.ts';
import type { SheetModel } from './sheet-model.ts';

// The room that what moves needs over travel and turn, in views that were asked to show it.

/** mm of line and gap: the long-dashed double-dotted narrow line of extreme places (ISO 128-2:2020, type 05.1, from memory). */
const EXTREME = [5, 0.9, 0.5, 0.9, 0.5, 0.9];

const NAMES = { tyre: 'tyres', 'drag-link': 'drag link', 'tie-rod': 'tie rod' } as const;

function allOf(job: Generator<undefined, SweptRooms>): SweptRooms {
  for (let step = job.next(); ; step = job.next()) if (step.done) return step.value;
}

/** The room of the parts that the job asks for; undefined if it asks for none, or if the layout cannot be steered at ride height. */
export function roomsOf({
  job,
  frontEnd,
}: Pick<SheetModel, 'frontEnd'> & { readonly job: Pick<PrintJob, 'rooms'> }): SweptRooms | undefined {
  if (!job.rooms || job.rooms.length === 0) return undefined;
  const turn = sweepTurn(frontEnd, 0, 0, 2);
  if (turn.status !== 'ok' || turn.count < 2) return undefined;
  const ends = { right: turn.right.handwheel, left: turn.left.handwheel };
  return allOf(sweepRooms(frontEnd, job.rooms, ends));
}

/** The outlines of all rooms in a view's own plane, mm, with the part that each is of. */
export function outlinesOf(rooms: SweptRooms, view: View): { part: keyof typeof NAMES; outline: Outline }[] {
  return rooms.rooms.flatMap((room) =>
    roomOutlines(room, lookOf(view)).map((outline) => ({ part: room.part, outline })),
  );
}

/** What a view shows, and the rooms in it. */
export function shownWith(shown: Box, outlines: readonly { readonly outline: Outline }[]): Box {
  return outlines.map(({ outline }) => boxOf(outline)).reduce(joined, shown);
}

export function paintRooms(pen: PrintPen, view: CarView, outlines: ReturnType<typeof outlinesOf>): void {
  const [left, top, right, bottom] = frameOf(view);
  pen.within([left, top, right, top, right, bottom, left, bottom], 1, () => {
    for (const { part, outline } of outlines) {
      const points: number[] = [];
      for (let i = 0; i < outline.length; i += 2)
        points.push(...onPage(view, [outline[i] as number, outline[i + 1] as number]));
      const colour = part === 'tyre' ? SOFT : STEEL;
      pen.stroke(points, { width: 0.18, colour, dash: EXTREME, cap: 'butt' }, true);
    }
  });
}

/** What the outlines are, for the head of the page; why there are none where they were asked for. */
export function roomsWords(
  { job, layout, length }: Pick<SheetModel, 'layout' | 'length'> & { readonly job: Pick<PrintJob, 'rooms'> },
  rooms: SweptRooms | undefined,
): string {
  if (!job.rooms || job.rooms.length === 0) return '';
  if (!rooms) return 'The room that was asked for is not known: the layout cannot be steered at ride height';
  const { bump, rebound: droop, roll } = layout.travel;
  const rolled = roll > 0 ? `, ${formatDegrees(roll)} of roll each way` : '';
  const partly = rooms.outOfReach > 0 ? '; part of it is out of reach and not shown' : '';
  const names = job.rooms.map((part) => NAMES[part]).join(', ');
  return `Double-dotted: the room needed by ${names}, ${length(bump)} bump to ${length(droop)} droop${rolled}, lock to lock${partly}`;
}
