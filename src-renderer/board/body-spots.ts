import {
  boxOf,
  type Drawing,
  type Eyes,
  isClosed,
  isShown,
  type Outline,
  outline,
  paintOrder,
  placeAtRide,
  roomFor,
  seenOutline,
  VIEWS,
  type View,
  type ViewPoint,
} from '../../shared-math/drawing/index.ts';
import { bodyOfPart } from '../../shared-math/layout/index.ts';

/** A rail or an obstacle as one view draws it: an outline in the view's own plane, mm. */
export interface DrawnBody {
  /** The drawing's id of the part. */
  readonly part: string;
  readonly view: View;
  readonly outline: readonly number[];
}

/** All rails and obstacles in all views; what the frame carries stands where it does in every pose. */
export function drawnBodies(drawing: Drawing, eyes: Eyes = {}): DrawnBody[] {
  const placed = roomFor(drawing);
  placeAtRide(drawing, placed);
  return VIEWS.flatMap((view) =>
    paintOrder(drawing, placed, view)
      .filter(({ id }) => bodyOfPart(id) !== undefined)
      .flatMap(({ id, shapes }) =>
        shapes
          .filter((shape) => isClosed(shape) && isShown(shape, view))
          .map((shape) => {
            const line: Outline = [];
            const eye = eyes[view];
            if (eye) seenOutline(shape, placed, view, eye, line);
            else outline(shape, placed, view, line);
            return { part: id, view, outline: line };
          }),
      ),
  );
}

/** Whether a place lies within a closed outline: the even-odd rule. */
export function isWithin(outline: readonly number[], [right, down]: ViewPoint): boolean {
  let within = false;
  for (let i = 0, j = outline.length - 2; i + 1 < outline.length; j = i, i += 2) {
    const [x1, y1] = [outline[i] as number, outline[i + 1] as number];
    const [x2, y2] = [outline[j] as number, outline[j + 1] as number];
    if (y1 > down !== y2 > down && right < x1 + ((down - y1) / (y2 - y1)) * (x2 - x1)) within = !within;
  }
  return within;
}

/** The body under a place of a view, of several the one painted last; its id in the document. */
export function bodyUnder(bodies: readonly DrawnBody[], view: View, place: ViewPoint): string | undefined {
  const found = bodies.findLast((body) => body.view === view && isWithin(body.outline, place));
  return found && bodyOfPart(found.part);
}

/** Where a body's name stands in a view: beside the middle of its upper edge. */
export function nameSpot(bodies: readonly DrawnBody[], id: string, view: View): ViewPoint | undefined {
  const own = bodies.find((body) => body.view === view && bodyOfPart(body.part) === id);
  if (!own) return undefined;
  const box = boxOf([...own.outline]);
  return [(box.left + box.right) / 2, box.top];
}
