import type { Point } from '../geometry/points.ts';
import { carryPoint, createState, type FrontEnd, poseAxle, steerByBall } from '../linkage/index.ts';
import { judgedPlane } from './aim.ts';

/**
 * Where in the judged plane a frame end of the drag link gives no bump steer slope at ride height. mm, vehicle axes.
 */
export interface ZeroSlopeLine {
  /** The plane: the pitman ball's own, y (side view) or x (front view) at this value. */
  readonly plane: { readonly axis: 0 | 1; readonly at: number };
  /** On the line, beside the steering-arm ball. */
  readonly through: Point;
  /** Length 1, in the plane, toward the pitman ball. */
  readonly direction: Point;
}

/** mm of heave either way by which the ball's way at ride height is taken: its error is of the second order. */
const STEP = 0.5;
/** mm. A try-out link of this length stands square to the arm, so that it turns the wheels however the box is drawn. */
const TRIAL_LINK = 1000;

/**
 * The zero-slope line, exact in the plane that is judged, the axle's own yaw included.
 * Let the wheels keep their mean steer while the axle rises: the steering-arm ball then goes a way of its own, w for each
 * mm of heave. A drag link does not turn the wheels at first where its length does not change along it: w · (ball - P) =
 * 0. So the frame ends P without slope are the plane through the ball square to w; this is its line in the plane kept.
 * Frame:    vehicle. Units: mm. Shapes: points [x, y, z].
 * Outcomes: a line; undefined if the axle has no pose, or the arm cannot hold the wheels.
 * Source:   own derivation.
 * Checked:  tests/unit/zero-slope.test.ts (slopes of the solved sweep with the frame end moved off the line).
 */
export function zeroSlopeLine(frontEnd: FrontEnd): ZeroSlopeLine | undefined {
  const { dragLinkBall: ball, box } = frontEnd.layout.steering;
  const { onward } = frontEnd.dragLinkBall;
  const size = Math.hypot(...onward);
  const trial = ball.map(
    (value, i) => value + (TRIAL_LINK * (onward[i] as number)) / size,
  ) as unknown as Point;
  const state = createState();
  const steer = (length: number): number =>
    steerByBall(frontEnd, trial[0], trial[1], trial[2], length, -1, state) === 'ok'
      ? state.meanSteer
      : Number.NaN;
  if (!poseAxle(frontEnd, 0, 0, state)) return undefined;
  const kept = steer(TRIAL_LINK);
  const perLength = (steer(TRIAL_LINK + 0.01) - steer(TRIAL_LINK - 0.01)) / 0.02;
  const places = new Float64Array(6);
  for (const [i, heave] of [-STEP, STEP].entries()) {
    if (!poseAxle(frontEnd, heave, 0, state)) return undefined;
    let length = TRIAL_LINK;
    for (let step = 0; step < 4; step += 1) length -= (steer(length) - kept) / perLength;
    if (!Number.isFinite(steer(length))) return undefined;
    carryPoint(frontEnd, state, `spindle-${frontEnd.driven}`, ball, places, 3 * i);
  }
  const way = [0, 1, 2].map(
    (i) => ((places[3 + i] as number) - (places[i] as number)) / (2 * STEP),
  ) as unknown as Point;
  const { free, kept: axis } = judgedPlane(frontEnd);
  const [along] = free;
  const at = box.pitmanBall[axis];
  // The ball rises with the axle: were its way level, no height of the frame end would do.
  if (Math.abs(way[2]) < 1e-6) return undefined;
  const through: [number, number, number] = [ball[0], ball[1], 0];
  through[axis] = at;
  through[2] = ball[2] - (way[axis] * (at - ball[axis])) / way[2];
  const toward = Math.sign(box.pitmanBall[along] - ball[along]) || 1;
  const rise = -way[along] / way[2];
  const direction: [number, number, number] = [0, 0, (toward * rise) / Math.hypot(1, rise)];
  direction[along] = toward / Math.hypot(1, rise);
  return { plane: { axis, at }, through, direction };
}

/** z of the line where its free coordinate, x in a side view and y in a front view, has a value; mm. */
export function zeroSlopeHeight({ plane, through, direction }: ZeroSlopeLine, value: number): number {
  const along = plane.axis === 1 ? 0 : 1;
  return through[2] + ((value - through[along]) * direction[2]) / (direction[along] as number);
}
