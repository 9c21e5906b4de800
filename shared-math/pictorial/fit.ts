import type { Drawing } from '../drawing/drawing.ts';
import { type Box, placeAtRide, pointsOf, roomFor } from '../drawing/index.ts';
import type { Point } from '../geometry/points.ts';
import { ARROW, Pictorial } from './pictorial.ts';
import { axesOf, onPaper, type Turn } from './turn.ts';

/** How much room a picture takes; mm of paper at full size. */
export interface PictureRoom {
  /** What it turns about. */
  readonly centre: Point;
  /** Half of what it covers across in any turn. */
  readonly radius: number;
  /** What it covers in one turn, from where the centre is seen. */
  readonly box: Box;
}

/** The room that the picture of a drawing at ride height takes: all around across, and all of it in one turn. */
export function roomOfPicture(drawing: Drawing, turn: Turn): PictureRoom {
  const placed = roomFor(drawing);
  placeAtRide(drawing, placed);
  const least = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY];
  const most = [Number.NEGATIVE_INFINITY, Number.NEGATIVE_INFINITY, Number.NEGATIVE_INFINITY];
  const points = new Set(drawing.parts.filter(({ role }) => role !== 'ground').flatMap(pointsOf));
  for (const point of points)
    for (let axis = 0; axis < 3; axis += 1) {
      const value = placed[3 * point + axis] as number;
      least[axis] = Math.min(least[axis] as number, value);
      most[axis] = Math.max(most[axis] as number, value);
    }
  const middle = (axis: number) => ((least[axis] as number) + (most[axis] as number)) / 2;
  const centre: Point = [middle(0), middle(1), middle(2)];
  let radius = 0;
  for (const point of points)
    radius = Math.max(
      radius,
      Math.hypot((placed[3 * point] as number) - centre[0], (placed[3 * point + 1] as number) - centre[1]),
    );
  const pictorial = new Pictorial(drawing);
  const strokes = pictorial.draw(placed, turn);
  const [right, down] = onPaper(axesOf(turn), centre);
  const box = { left: 0, top: 0, right: 0, bottom: 0 };
  const take = (x: number, y: number) => {
    box.left = Math.min(box.left, x - right);
    box.right = Math.max(box.right, x - right);
    box.top = Math.min(box.top, y - down);
    box.bottom = Math.max(box.bottom, y - down);
  };
  for (let i = 0; i < strokes.count; i += 1)
    for (let at = strokes.from[i] as number; at < (strokes.to[i] as number); at += 2)
      take(strokes.places[at] as number, strokes.places[at + 1] as number);
  // The word beyond the arrow.
  const { front } = pictorial;
  take(front.right + 1.5 * ARROW.long * front.wayRight, front.down + 1.5 * ARROW.long * front.wayDown);
  return { centre, radius, box };
}
