import { carryPoint, type FrontEnd, type FrontEndState } from '../linkage/index.ts';
import { type ShaftLine, turnsOf } from '../shaft/index.ts';
import type { Radians } from '../units/index.ts';
import type { Drawing, DrawnPoint, Part, Role, TurnedPoint } from './drawing.ts';
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

/** Scratch: how far each member of a shaft has turned, then sine and cosine of it. */
let turns = new Float64Array(0);

/** Works out how far the members of the shaft have turned; tells whether they have at all. */
function turnShaft({ shaft }: Drawing, handwheel: Radians): boolean {
  const turning = shaft?.turning;
  if (!shaft || !turning || handwheel === 0) return false;
  const count = shaft.members.length;
  if (turns.length < 3 * count) turns = new Float64Array(3 * count);
  // The handwheel counts counter-clockwise for the driver; shafts turn right-hand about axes that point away from him.
  turnsOf(turning.chain, turning.clocks, turning.columnYoke, -handwheel, turns);
  for (let i = 0; i < count; i += 1) {
    turns[count + i] = Math.sin(turns[i] as number);
    turns[2 * count + i] = Math.cos(turns[i] as number);
  }
  return true;
}

/** Writes a point of a shaft's member turned about the member's axis: Rodrigues' formula. */
function writeTurned(
  { members }: ShaftLine,
  { member, at }: TurnedPoint,
  to: number,
  placed: Float64Array,
): void {
  const { origin, direction: d } = members[member] as ShaftLine['members'][number];
  const s = turns[members.length + member] as number;
  const c = turns[2 * members.length + member] as number;
  const x = at[0] - origin[0];
  const y = at[1] - origin[1];
  const z = at[2] - origin[2];
  const along = (1 - c) * (d[0] * x + d[1] * y + d[2] * z);
  placed[to] = origin[0] + c * x + s * (d[1] * z - d[2] * y) + along * d[0];
  placed[to + 1] = origin[1] + c * y + s * (d[2] * x - d[0] * z) + along * d[1];
  placed[to + 2] = origin[2] + c * z + s * (d[0] * y - d[1] * x) + along * d[2];
}

/** Places a drawing in a solved pose of its layout; the state must be `ok`. */
export function placeInPose(
  drawing: Drawing,
  frontEnd: FrontEnd,
  state: FrontEndState,
  placed: Float64Array,
): void {
  const turned = turnShaft(drawing, state.handwheel);
  for (let i = 0; i < drawing.points.length; i += 1) {
    const point = drawing.points[i] as DrawnPoint;
    if ('carrier' in point) carryPoint(frontEnd, state, point.carrier, point.at, placed, 3 * i);
    else if ('of' in point) writeBlend(point, 3 * i, placed);
    else if (turned && drawing.shaft) writeTurned(drawing.shaft, point, 3 * i, placed);
    else placed.set(point.at, 3 * i);
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
 * Which parts lie under which: the ground first, then rails, obstacles and tyres, on which the rest must be seen, then what
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
