import { createState, type FrontEnd, poseAxle, steerAxle } from '../linkage/index.ts';
import type { TurnSweep } from '../sweep/index.ts';
import type { Radians } from '../units/index.ts';
import { transmissionAngles } from './travel-grid.ts';

/** The least transmission angle of a turn and the handwheel angle at which it is met; both rad. */
export interface LeastTransmission {
  readonly angle: number;
  readonly handwheel: number;
}

/**
 * The least transmission angle at each end of the drag link over a turn that was swept at this heave (mm) and roll;
 * undefined if there is no turn. A right angle drives best; at nothing the arm stands at its dead centre.
 */
export function turnTransmission(
  frontEnd: FrontEnd,
  heave: number,
  roll: Radians,
  turn: TurnSweep,
): { readonly pitman: LeastTransmission; readonly steeringArm: LeastTransmission } | undefined {
  const state = createState();
  if (turn.count === 0 || !poseAxle(frontEnd, heave, roll, state)) return undefined;
  let pitman: LeastTransmission = { angle: Number.POSITIVE_INFINITY, handwheel: 0 };
  let steeringArm = pitman;
  for (let row = 0; row < turn.count; row += 1) {
    const handwheel = turn.handwheel[row] as number;
    if (steerAxle(frontEnd, handwheel, state) !== 'ok') continue;
    const angles = transmissionAngles(frontEnd, state);
    if (angles.pitman < pitman.angle) pitman = { angle: angles.pitman, handwheel };
    if (angles.steeringArm < steeringArm.angle) steeringArm = { angle: angles.steeringArm, handwheel };
  }
  return Number.isFinite(pitman.angle) ? { pitman, steeringArm } : undefined;
}
