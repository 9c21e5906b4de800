import { GRAVITY, type RideParameters } from './parameters.ts';
import type { Ride } from './state.ts';

/** Force of a spring's stops, N, at a compression of the spring from ride height (mm). Stiff, and stiffer as they close. */
function stopForce({ bump, rebound, stopRate, stopDepth }: RideParameters, compression: number): number {
  if (compression > bump) {
    const x = compression - bump;
    return stopRate * x * (1 + x / stopDepth);
  }
  if (compression < -rebound) {
    const x = -compression - rebound;
    return -stopRate * x * (1 + x / stopDepth);
  }
  return 0;
}

/** The road under both wheels where the car is, and how fast it rises there: half of what it rises in two steps. */
export function readRoad({ road, speed, subStep, state, engine }: Ride): void {
  const { distance, roadSpeed } = engine;
  const stride = speed * subStep;
  state.roadLeft = road.leftAt(distance);
  state.roadRight = road.rightAt(distance);
  if (stride === 0) {
    roadSpeed.fill(0);
    return;
  }
  roadSpeed[0] = (road.leftAt(distance + stride) - road.leftAt(distance - stride)) / (2 * subStep);
  roadSpeed[1] = (road.rightAt(distance + stride) - road.rightAt(distance - stride)) / (2 * subStep);
}

/**
 * What the hand pulls with at the present places, added to `forces`. Sideways the point swings about the place where the
 * frame holds the axle, or about the ground.
 */
function pull({ parameters, hand, engine }: Ride, heave: number, roll: number, speeds: Float64Array): void {
  hand.pullUp = 0;
  hand.pullOver = 0;
  if (!hand.on) return;
  const { forces, axle } = engine;
  const both = hand.against === 'frame';
  const arm = both ? hand.z - parameters.rollCentre : hand.z;
  const rise = both ? heave : axle.getPosition().y * 1000;
  const tilt = both ? roll : axle.getAngle();
  const riseSpeed = 1000 * ((speeds[2] as number) - (both ? (speeds[0] as number) : 0));
  const tiltSpeed = (speeds[3] as number) - (both ? (speeds[1] as number) : 0);
  const { stiffness, damping, strength, y } = hand;
  const up = stiffness * (hand.up - rise - y * tilt) - damping * (riseSpeed + y * tiltSpeed);
  const over = hand.sideways ? stiffness * (hand.over + arm * tilt) + damping * arm * tiltSpeed : 0;
  hand.pullUp = Math.max(-strength, Math.min(strength, up));
  hand.pullOver = Math.max(-strength, Math.min(strength, over));
  const turn = (y * hand.pullUp - arm * hand.pullOver) / 1000;
  forces[2] = (forces[2] as number) + hand.pullUp;
  forces[3] = (forces[3] as number) + turn;
  if (!both) return;
  forces[0] = (forces[0] as number) - hand.pullUp;
  forces[1] = (forces[1] as number) - turn;
}

/**
 * Forces of springs, dampers, stops, bar, tyres, leaning weight and hand on frame and axle, at their present places and at
 * given speeds (m/s and rad/s: frame, frame's roll, axle, axle's roll). The road must have been read.
 * Frame:  front view, y left and z up; roll turns the left side up. Angles are small.
 * Units:  into `engine.forces`: N upward and N·m about x, of the frame, then of the axle.
 */
export function workOutForces(ride: Ride, speeds: Float64Array): void {
  const { parameters: p, engine, state } = ride;
  const { frame, axle, forces, roadSpeed } = engine;
  const frameRoll = frame.getAngle();
  const axleRise = axle.getPosition().y * 1000;
  const axleRoll = axle.getAngle();
  const heave = axleRise - frame.getPosition().y * 1000;
  const roll = axleRoll - frameRoll;
  const heaveSpeed = 1000 * ((speeds[2] as number) - (speeds[0] as number));
  const rollSpeed = (speeds[3] as number) - (speeds[1] as number);
  const springArm = p.springBase / 2;
  const damperArm = p.damperBase / 2;
  const tyreArm = p.track / 2;
  const weightOnSpring = (p.sprungMass * GRAVITY) / 2;
  const weightOnTyre = ((p.sprungMass + p.unsprungMass) * GRAVITY) / 2;

  let lift = 0;
  let turn = p.rollStiffness * roll;
  let ground = 0;
  let groundTurn = 0;
  for (let side = 1; side >= -1; side -= 2) {
    const compression = heave + side * springArm * roll;
    const spring = weightOnSpring + p.springRate * compression + stopForce(p, compression);
    const closing = heaveSpeed + side * damperArm * rollSpeed;
    const damper = (closing > 0 ? p.bumpDamping : p.reboundDamping) * closing;
    lift += spring + damper;
    turn += side * (springArm * spring + damperArm * damper);

    const isLeft = side > 0;
    const road = isLeft ? state.roadLeft : state.roadRight;
    let load = weightOnTyre + p.tyreRate * (road - axleRise - side * tyreArm * axleRoll);
    // Off the ground there is neither spring nor damping; on it a tyre presses and never pulls.
    if (load > 0) {
      const rising = 1000 * ((speeds[2] as number) + ((side * tyreArm) / 1000) * (speeds[3] as number));
      load += p.tyreDamping * ((roadSpeed[isLeft ? 0 : 1] as number) - rising);
    }
    if (load < 0) load = 0;
    ground += load;
    groundTurn += side * tyreArm * load;

    const pressed = compression > p.bump ? compression - p.bump : Math.min(0, compression + p.rebound);
    if (isLeft) {
      state.loadLeft = load;
      state.stopLeft = pressed;
    } else {
      state.loadRight = load;
      state.stopRight = pressed;
    }
  }
  const leaning = p.sprungMass * GRAVITY * (p.sprungHeight - p.rollCentre) * frameRoll;
  forces[0] = lift;
  forces[1] = (turn + leaning) / 1000;
  forces[2] = ground - lift;
  forces[3] = (groundTurn - turn) / 1000;
  pull(ride, heave, roll, speeds);
}
