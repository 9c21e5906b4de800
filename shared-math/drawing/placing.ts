import { carryPoint, type FrontEnd, type FrontEndState } from '../linkage/index.ts';
import type { Drawing, DrawnPoint, Part, Role } from './drawing.ts';
import { boxOf, isShown, type Outline, outline } from './outline.ts';
import { type Box, joined, NO_BOX, VIEW_AXES, VIEWS, type View } from './views.ts';

/** Room for a drawing's points: 3 numbers each, mm, in the car's frame. */
export function roomFor(drawing: Drawing): Float64Array {
  return new Float64Array(3 * drawing.points.length);
}

function writeBlend(point: DrawnPoint, at: number, placed: Float64Array): void {
  if (!('of' in point)) return;
  for (let axis = 0; axis < 3; axis += 1) {
    let sum = point.shift[axis] as number;
    for (const [source, weight] of point.of) sum += weight * (placed[3 * source + axis] as number);
    placed[at + axis] = sum;
  }
}

/** Places a drawing as it was drawn, at ride height. */
export function placeAtRide(drawing: Drawing, placed: Float64Array): void {
  for (let i = 0; i < drawing.points.length; i += 1) {
    const point = drawing.points[i] as DrawnPoint;
    if ('at' in point) placed.set(point.at, 3 * i);
    else writeBlend(point, 3 * i, placed);
  }
}

/** Places a drawing in a solved pose of its layout; the state must be `ok`. */
export function placeInPose(
  drawing: Drawing,
  frontEnd: FrontEnd,
  state: FrontEndState,
  placed: Float64Array,
): void {
  for (let i = 0; i < drawing.points.length; i += 1) {
    const point = drawing.points[i] as DrawnPoint;
    if ('at' in point) carryPoint(frontEnd, state, point.carrier, point.at, placed, 3 * i);
    else writeBlend(point, 3 * i, placed);
  }
}

const scratch: Outline = [];

/** What each view of a placed drawing covers in its own plane, mm. The ground line is as long as the sheet and does not count. */
export function viewBoxes(drawing: Drawing, placed: Float64Array): Record<View, Box> {
  const boxes: Record<View, Box> = { side: NO_BOX, top: NO_BOX, front: NO_BOX };
  for (const part of drawing.parts) {
    if (part.role === 'ground') continue;
    for (const shape of part.shapes)
      for (const view of VIEWS) {
        if (!isShown(shape, view)) continue;
        outline(shape, placed, view, scratch);
        boxes[view] = joined(boxes[view], boxOf(scratch));
      }
  }
  return boxes;
}

/** The points that give a part its outlines, in no order; some may come twice. */
export function pointsOf(part: Part): number[] {
  const points: number[] = [];
  for (const shape of part.shapes) {
    if (shape.kind === 'body') for (const disc of shape.discs) points.push(disc.at, disc.tip);
    else if (shape.kind === 'band')
      for (const section of shape.sections) points.push(section.centre, section.up, section.out);
    else points.push(...shape.points);
  }
  return points;
}

/**
 * Which parts lie under which: the ground first, then rails, what is in the way and tyres, on which the rest must be seen, then what
 * holds the axle, then the steering, which is never hidden.
 */
const BEDS: Record<Role, number> = {
  ground: 0,
  frame: 1,
  obstacle: 1,
  tyre: 2,
  axle: 3,
  link: 3,
  spring: 3,
  box: 4,
  steering: 4,
};

/** How near a part is to the one who looks at a view: the mean of its points, mm toward the eye. */
function nearness(part: Part, placed: Float64Array, view: View): number {
  const { toward } = VIEW_AXES[view];
  let sum = 0;
  let count = 0;
  for (const point of pointsOf(part)) {
    sum += toward.sign * (placed[3 * point + toward.axis] as number);
    count += 1;
  }
  return count === 0 ? 0 : sum / count;
}

/** The parts of a placed drawing in the order in which a view paints them: within a bed, the farther one first. */
export function paintOrder(drawing: Drawing, placed: Float64Array, view: View): Part[] {
  return drawing.parts
    .map((part) => ({ part, bed: BEDS[part.role], near: nearness(part, placed, view) }))
    .sort((a, b) => a.bed - b.bed || a.near - b.near)
    .map(({ part }) => part);
}
