import { brakingCar, prepareBraked } from '../../../shared-math/brake/index.ts';
import { drawLayout, placeInPose, roomFor } from '../../../shared-math/drawing/index.ts';
import type { Point } from '../../../shared-math/geometry/points.ts';
import type { Carrier } from '../../../shared-math/layout/index.ts';
import { hardpoints, refusalLine, resolveLayout } from '../../../shared-math/layout/index.ts';
import {
  carryPoint,
  createState,
  type FrontEnd,
  type FrontEndState,
  prepareFrontEnd,
  solveFrontEnd,
} from '../../../shared-math/linkage/index.ts';
import { FAILURE_WORDS } from '../../../shared-math/words/index.ts';
import { type DrawingJob, DrawingRefused, type DrawnPose } from './job.ts';

/** Steps in which a pose is walked to from ride height, so that every link stays on its own branch. */
const STEPS = 24;

/** A layout in a solved pose. */
export interface Posed {
  readonly frontEnd: FrontEnd;
  /** Where a point that a part carries is in this pose; mm. */
  place(carrier: Carrier, at: Point): Point;
  readonly state: FrontEndState;
}

/** The front end with its brakes on at a grip; refused in words where the layout's masses cannot be. */
function brakedAt(frontEnd: FrontEnd, grip: number): FrontEnd {
  if (grip === 0) return frontEnd;
  const car = brakingCar(frontEnd.layout);
  if (!car.ok) throw new DrawingRefused(refusalLine(car.failure));
  return prepareBraked(frontEnd, car.value, grip);
}

/** Solves the pose, walking to it from ride height; a pose that cannot be is refused by the link that stops it. */
export function posed(document: DrawingJob['document'], pose: DrawnPose): Posed {
  const frontEnd = brakedAt(prepareFrontEnd(resolveLayout(document)), pose.braking ?? 0);
  const state = createState();
  const walks = pose.heave !== 0 || pose.roll !== 0 || pose.handwheel !== 0;
  for (let step = walks ? 0 : STEPS; step <= STEPS; step += 1) {
    const share = step / STEPS;
    const heave = pose.heave * share;
    const roll = (pose.roll * share) as DrawnPose['roll'];
    const handwheel = (pose.handwheel * share) as DrawnPose['handwheel'];
    if (solveFrontEnd(frontEnd, heave, roll, handwheel, state) !== 'ok')
      throw new DrawingRefused(FAILURE_WORDS[state.failure]);
  }
  const room = new Float64Array(3);
  return {
    frontEnd,
    state,
    place: (carrier, at) => {
      carryPoint(frontEnd, state, carrier, at, room);
      return [(room[0] as number) + 0, (room[1] as number) + 0, (room[2] as number) + 0];
    },
  };
}

/** The car's strokes and its hardpoints in a pose. */
export function sceneOf(job: DrawingJob) {
  const { frontEnd, state, place } = posed(job.document, job.pose);
  const { layout } = frontEnd;
  const drawing = drawLayout(layout);
  const placed = roomFor(drawing);
  placeInPose(drawing, frontEnd, state, placed);
  const points = hardpoints(job.document).map((point) => ({ ...point, at: place(point.carrier, point.at) }));
  return { layout, drawing, placed, points, place };
}

export type Scene = ReturnType<typeof sceneOf>;
