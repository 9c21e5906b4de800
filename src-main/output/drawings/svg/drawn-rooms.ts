import { type outlinesOf, paintRooms } from '../../pages/rooms.ts';
import type { CarView } from '../../pens/car-view.ts';
import type { SvgPen } from '../../pens/svg-pen.ts';

/** The rooms in a view, in a group for each part with its id: `side-room-tyre`. */
export function drawRooms(pen: SvgPen, view: CarView, outlines: ReturnType<typeof outlinesOf>): void {
  for (const of of new Set(outlines.map(({ part }) => part)))
    pen.named(`${view.view}-room-${of}`, () =>
      paintRooms(
        pen,
        view,
        outlines.filter(({ part }) => part === of),
      ),
    );
}
