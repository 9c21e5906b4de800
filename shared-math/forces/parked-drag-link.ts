import type { Point } from '../geometry/points.ts';
import { cross, dot, scaled, subtract, unit } from '../geometry/vectors.ts';
import type { Side } from '../layout/index.ts';
import {
  carriedTo,
  createState,
  type FrontEnd,
  kingpinDirection,
  poseAxle,
  steerAxle,
} from '../linkage/index.ts';
import type { TurnSweep } from '../sweep/index.ts';
import type { Radians } from '../units/index.ts';
import { PARKING_GRIPS, scrubAbout } from './scrub.ts';

/**
 * The most that parking at ride height on a dry floor asks of the drag link, N, by the moments about both kingpins alone: the
 * weight on the wheels, a few parts in a hundred, is left out, and nothing else of the axle is solved. For a figure beside
 * others; `linkForces` has it whole. Undefined if the linkage does not turn.
 * Checked: tests/unit/load-cases.test.ts (against the whole statics).
 */
export function parkedDragLink(frontEnd: FrontEnd, turn: TurnSweep): number | undefined {
  if (turn.status !== 'ok' || turn.count < 2) return undefined;
  const state = createState();
  if (!poseAxle(frontEnd, 0, 0 as Radians, state)) return undefined;
  const { layout, driven } = frontEnd;
  const follower: Side = driven === 'left' ? 'right' : 'left';
  const carried = (carrier: Parameters<typeof carriedTo>[2], at: Point) =>
    carriedTo(frontEnd, state, carrier, at);
  let most = 0;
  for (const handwheel of turn.handwheel) {
    if (steerAxle(frontEnd, handwheel as Radians, state) !== 'ok') continue;
    const lever = (side: Side, ball: Point, way: Point) => {
      const foot = carried(`axle-${side}`, layout.axle[side].kingpinBottom);
      return dot(kingpinDirection(frontEnd, state, side), cross(subtract(ball, foot), way));
    };
    const pitman = carried('pitman', layout.steering.box.pitmanBall);
    const arm = carried(`spindle-${driven}`, layout.steering.dragLinkBall);
    const near = carried(`spindle-${driven}`, layout.axle[driven].tieRodBall);
    const far = carried(`spindle-${follower}`, layout.axle[follower].tieRodBall);
    const tie = unit(subtract(far, near));
    // Both wheels scrub against one turn; the tie rod hands the far one's moment on.
    const pull = -scrubAbout(frontEnd, follower, PARKING_GRIPS[1]) / lever(follower, far, scaled(tie, -1));
    const moment = scrubAbout(frontEnd, driven, PARKING_GRIPS[1]) + pull * lever(driven, near, tie);
    const force = Math.abs(moment / lever(driven, arm, unit(subtract(pitman, arm))));
    if (Number.isFinite(force)) most = Math.max(most, force);
  }
  return most > 0 ? most : undefined;
}
