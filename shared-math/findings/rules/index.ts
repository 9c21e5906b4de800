import type { Rule } from '../finding.ts';
import { ackermann } from './ackermann.ts';
import { aimHeight } from './aim-height.ts';
import { ballTilt } from './ball-tilt.ts';
import { barAndLink } from './bar-and-link.ts';
import { beamTwist } from './beam-twist.ts';
import { bindInRoll } from './bind-in-roll.ts';
import { boxDirection } from './box-direction.ts';
import { brakeSteer } from './brake-steer.ts';
import { bumpSteerSlope } from './bump-steer-slope.ts';
import { bumpSteerWorst } from './bump-steer-worst.ts';
import { casterBraked } from './caster-braked.ts';
import { casterChange } from './caster-change.ts';
import { casterStatic } from './caster-static.ts';
import { clearance } from './clearance.ts';
import { crossSteerWithoutBar } from './cross-steer-without-bar.ts';
import { deadCentre } from './dead-centre.ts';
import { driverSide } from './driver-side.ts';
import { effort } from './effort.ts';
import { leafFixedInFront } from './leaf-fixed-in-front.ts';
import { linkStrength } from './link-strength.ts';
import { linkThread } from './link-thread.ts';
import { lock } from './lock.ts';
import { oneWheelWorst } from './one-wheel.ts';
import { outOfReach } from './out-of-reach.ts';
import { plausible } from './plausible.ts';
import { ratio } from './ratio.ts';
import { rollSteer } from './roll-steer.ts';
import { boxInput } from './shaft/box-input.ts';
import { shaftClearance } from './shaft/clearance.ts';
import { shaftClocking } from './shaft/clocking.ts';
import { shaftAxis, shaftEnds } from './shaft/ends.ts';
import { shaftJointAngle } from './shaft/joint-angle.ts';
import { shaftSpan, shaftSupport } from './shaft/support.ts';
import { sights } from './sights.ts';
import { tape } from './tape.ts';
import { tieRodAhead } from './tie-rod-ahead.ts';
import { toeStatic } from './toe-static.ts';
import { turnsUnequal } from './turns-unequal.ts';
import { tyreAndGround } from './tyre-and-ground.ts';

/** The rules in the order of their weight. A new one is one file and one line here. */
export const RULES: readonly Rule[] = [
  outOfReach,
  tyreAndGround,
  plausible,
  boxDirection,
  driverSide,
  bumpSteerWorst,
  oneWheelWorst,
  bumpSteerSlope,
  aimHeight,
  leafFixedInFront,
  barAndLink,
  crossSteerWithoutBar,
  rollSteer,
  bindInRoll,
  beamTwist,
  deadCentre,
  ballTilt,
  clearance,
  lock,
  turnsUnequal,
  ackermann,
  tieRodAhead,
  ratio,
  effort,
  linkStrength,
  linkThread,
  casterStatic,
  casterChange,
  casterBraked,
  brakeSteer,
  toeStatic,
  boxInput,
  shaftJointAngle,
  shaftEnds,
  shaftClearance,
  shaftSupport,
  shaftSpan,
  shaftClocking,
  shaftAxis,
  sights,
  tape,
];
