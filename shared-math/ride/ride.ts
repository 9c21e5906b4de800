import { type Body, Vec2, World } from 'planck';
import type { Refusal } from '../layout/index.ts';
import { failed, type Outcome, succeeded } from '../outcome.ts';
import { stiffest } from './figures.ts';
import { GRAVITY, type RideParameters } from './parameters.ts';
import { FLAT_ROAD, type Road } from './road.ts';

/** s. The one step of the engine: a wheel that hops at 12 Hz is followed in 170 steps. */
export const SUB_STEP = 1 / 2000;

/** How a ride came out so far: `diverged` where the numbers ran away, and nothing of them means anything. */
export type RideStatus = 'ok' | 'diverged';

/** Where frame and axle stand and how they move. mm, rad, s, N; up and left side up are positive. */
export interface RideState {
  status: RideStatus;
  time: number;
  /** mm travelled along the road. */
  distance: number;
  /** Of the axle toward the frame, and against it: what the kinematics are asked for. */
  heave: number;
  roll: number;
  /** Against the level of rest, in the world. */
  frameRise: number;
  frameRoll: number;
  axleRise: number;
  axleRoll: number;
  frameSpeed: number;
  frameRollSpeed: number;
  axleSpeed: number;
  axleRollSpeed: number;
  /** mm/s² of the frame. */
  frameAcceleration: number;
  /** The road under each wheel. */
  roadLeft: number;
  roadRight: number;
  /** What each tyre presses on the road with; 0 where it is off the ground. */
  loadLeft: number;
  loadRight: number;
  /** mm by which each spring's stops are pressed; negative: the rebound stop. */
  stopLeft: number;
  stopRight: number;
}

/**
 * A hand that pulls at a point of the axle. Set its fields between steps. `up` and `over` say how far (mm, up and left)
 * the hand wants the point from where it is at ride height. `against` the frame, the hand pulls frame and axle toward
 * one another, as if the other hand held the frame; against the ground it lifts.
 */
export interface Hand {
  on: boolean;
  against: 'frame' | 'ground';
  /** The point's place at ride height: y left and z up, mm. */
  y: number;
  z: number;
  up: number;
  over: number;
  /** N/mm, N·s/mm, and the most that it pulls with, N. */
  stiffness: number;
  damping: number;
  strength: number;
  /** What it feels, N: written by each step. */
  pullUp: number;
  pullOver: number;
}

/** The front of the car in the physics engine. One user at a time. */
export interface Ride {
  readonly parameters: RideParameters;
  readonly subStep: number;
  readonly state: RideState;
  readonly hand: Hand;
  road: Road;
  /** mm/s. */
  speed: number;
  readonly engine: RideEngine;
}

interface RideEngine {
  readonly world: World;
  readonly frame: Body;
  readonly axle: Body;
  readonly push: Vec2;
  /** m/s² and rad/s² of the last step: frame, frame roll, axle, axle roll. */
  readonly acceleration: Float64Array;
  readonly forces: Float64Array;
  steps: number;
}

/** m. Nothing that is thrown about on a road comes this far. */
const FARTHEST = 20;

/** A figure that must be more than nothing, or not less. */
function problemOf(parameters: RideParameters): Refusal | undefined {
  for (const [name, value] of Object.entries(parameters) as [keyof RideParameters, number][]) {
    const path = `ride.${name}`;
    if (!Number.isFinite(value)) return { path, reason: 'not a finite number' };
    const mayBeNothing = MAY_BE_NOTHING.has(name);
    if (value < 0 || (value === 0 && !mayBeNothing))
      return { path, reason: `must be ${mayBeNothing ? 'at least' : 'more than'} 0, found ${value}` };
  }
  return undefined;
}

const MAY_BE_NOTHING: ReadonlySet<string> = new Set([
  'bumpDamping',
  'reboundDamping',
  'tyreDamping',
  'rollStiffness',
  'bump',
  'rebound',
  'stopRate',
  'rollCentre',
]);

/** Shares of a step: beyond these the engine's step is too long to follow a swing, or a damper would overshoot. */
const SWING_MOST = 0.25;
const DAMPING_MOST = 0.25;

function stepProblem(parameters: RideParameters, subStep: number): Refusal | undefined {
  const { swing, damping } = stiffest(parameters);
  if (swing * subStep > SWING_MOST)
    return {
      path: 'ride',
      reason: `springs and tyres are so stiff for these masses that the axle would swing ${Math.round(swing / 2 / Math.PI)} times a second; the steps follow at most ${Math.round(SWING_MOST / subStep / 2 / Math.PI)}`,
    };
  if (damping * subStep > DAMPING_MOST)
    return {
      path: 'ride.damper',
      reason: 'the dampers are so strong for these masses that the steps cannot follow them',
    };
  return undefined;
}

/**
 * Puts the front of a car into the engine, at rest on a level road.
 * Outcomes: a refusal of figures that are no car's, or that the step cannot follow.
 */
export function prepareRide(
  parameters: RideParameters,
  options: { readonly road?: Road; readonly speed?: number; readonly subStep?: number } = {},
): Outcome<Ride, Refusal> {
  const subStep = options.subStep ?? SUB_STEP;
  const problem = problemOf(parameters) ?? stepProblem(parameters, subStep);
  if (problem) return failed(problem);
  const world = new World({ gravity: { x: 0, y: -GRAVITY }, allowSleep: false });
  const body = (mass: number, inertia: number) => {
    const made = world.createBody({ type: 'dynamic' });
    made.setMassData({ mass, center: new Vec2(0, 0), I: inertia * 1e-6 });
    return made;
  };
  const { sprungMass, sprungInertia, sprungHeight, rollCentre } = parameters;
  const ride: Ride = {
    parameters,
    subStep,
    road: options.road ?? FLAT_ROAD,
    speed: options.speed ?? 0,
    state: createState(),
    hand: createHand(parameters),
    engine: {
      world,
      // The frame rolls about the place where the axle holds it sideways, so its inertia is taken about that.
      frame: body(sprungMass, sprungInertia + sprungMass * (sprungHeight - rollCentre) ** 2),
      axle: body(parameters.unsprungMass, parameters.axleInertia),
      push: new Vec2(0, 0),
      acceleration: new Float64Array(4),
      forces: new Float64Array(4),
      steps: 0,
    },
  };
  restRide(ride);
  return succeeded(ride);
}

function createState(): RideState {
  return {
    status: 'ok',
    time: 0.5,
    distance: 0.5,
    heave: 0.5,
    roll: 0.5,
    frameRise: 0.5,
    frameRoll: 0.5,
    axleRise: 0.5,
    axleRoll: 0.5,
    frameSpeed: 0.5,
    frameRollSpeed: 0.5,
    axleSpeed: 0.5,
    axleRollSpeed: 0.5,
    frameAcceleration: 0.5,
    roadLeft: 0.5,
    roadRight: 0.5,
    loadLeft: 0.5,
    loadRight: 0.5,
    stopLeft: 0.5,
    stopRight: 0.5,
  };
}

/** A hand about as stiff as four springs and strong enough to press the springs home. */
function createHand({ springRate, bump, rebound, unsprungMass }: RideParameters): Hand {
  const stiffness = 4 * springRate;
  return {
    on: false,
    against: 'frame',
    y: 0,
    z: 0,
    up: 0,
    over: 0,
    stiffness,
    damping: (0.7 * Math.sqrt(stiffness * 1000 * unsprungMass)) / 1000,
    strength: 4 * springRate * Math.max(bump, rebound),
    pullUp: 0,
    pullOver: 0,
  };
}

/** What frame and axle are put at: mm, rad, and their speeds. What is left out is 0. */
export interface RidePlace {
  readonly frameRise?: number;
  readonly frameRoll?: number;
  readonly axleRise?: number;
  readonly axleRoll?: number;
  readonly frameSpeed?: number;
  readonly frameRollSpeed?: number;
  readonly axleSpeed?: number;
  readonly axleRollSpeed?: number;
}

/** Puts the car back to the beginning of its road, at rest on it: level, or tilted as the road there is. */
export function restRide(ride: Ride): void {
  const left = ride.road.leftAt(0);
  const right = ride.road.rightAt(0);
  const rise = (left + right) / 2;
  const tilt = (left - right) / ride.parameters.track;
  placeRide(ride, { frameRise: rise, frameRoll: tilt, axleRise: rise, axleRoll: tilt });
}

/** Puts frame and axle where told, at time 0 and the beginning of the road. */
export function placeRide(ride: Ride, place: RidePlace): void {
  const { engine, subStep } = ride;
  const { frame, axle, acceleration, forces } = engine;
  frame.setTransform({ x: 0, y: (place.frameRise ?? 0) / 1000 }, place.frameRoll ?? 0);
  axle.setTransform({ x: 0, y: (place.axleRise ?? 0) / 1000 }, place.axleRoll ?? 0);
  engine.steps = 0;
  const speeds = [
    (place.frameSpeed ?? 0) / 1000,
    place.frameRollSpeed ?? 0,
    (place.axleSpeed ?? 0) / 1000,
    place.axleRollSpeed ?? 0,
  ] as const;
  workOutForces(ride, ...speeds);
  writeAcceleration(engine, forces);
  // The engine keeps its speeds half a step behind its places.
  const half = subStep / 2;
  const back = speeds.map((speed, i) => speed - half * (acceleration[i] as number));
  setSpeeds(engine, back);
  ride.state.status = 'ok';
  writeState(ride, ...speeds);
}

function setSpeeds({ frame, axle, push }: RideEngine, speeds: readonly number[]): void {
  push.x = 0;
  push.y = speeds[0] as number;
  frame.setLinearVelocity(push);
  frame.setAngularVelocity(speeds[1] as number);
  push.y = speeds[2] as number;
  axle.setLinearVelocity(push);
  axle.setAngularVelocity(speeds[3] as number);
}

/** Weight is the engine's own business; everything else is in `forces`. */
function writeAcceleration({ frame, axle, acceleration }: RideEngine, forces: Float64Array): void {
  acceleration[0] = (forces[0] as number) / frame.getMass() - GRAVITY;
  acceleration[1] = (forces[1] as number) / frame.getInertia();
  acceleration[2] = (forces[2] as number) / axle.getMass() - GRAVITY;
  acceleration[3] = (forces[3] as number) / axle.getInertia();
}

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

/**
 * Forces of springs, dampers, stops, bar, tyres, overturning and hand on frame and axle at the present places and given
 * speeds (m/s, rad/s): N upward and N·m about x, of the frame, then of the axle.
 * Frame: front view, y left and z up; roll turns the left side up. Angles are small.
 */
function workOutForces(ride: Ride, vf: number, wf: number, va: number, wa: number): void {
  const { parameters: p, engine, state, hand } = ride;
  const { forces } = engine;
  const frameRise = engine.frame.getPosition().y * 1000;
  const frameRoll = engine.frame.getAngle();
  const axleRise = engine.axle.getPosition().y * 1000;
  const axleRoll = engine.axle.getAngle();
  const heave = axleRise - frameRise;
  const roll = axleRoll - frameRoll;
  const heaveSpeed = (va - vf) * 1000;
  const rollSpeed = wa - wf;
  const springArm = p.springBase / 2;
  const damperArm = p.damperBase / 2;
  const tyreArm = p.track / 2;
  const weightOnSpring = (p.sprungMass * GRAVITY) / 2;
  const weightOnTyre = ((p.sprungMass + p.unsprungMass) * GRAVITY) / 2;

  let onFrame = 0;
  let turnsFrame = 0;
  let onAxle = 0;
  let turnsAxle = 0;
  const time = engine.steps * ride.subStep;
  const at = ride.speed * time;
  const stride = ride.speed * ride.subStep;
  for (let side = 1; side >= -1; side -= 2) {
    const compression = heave + side * springArm * roll;
    const stop = stopForce(p, compression);
    const spring = weightOnSpring + p.springRate * compression + stop;
    const closing = heaveSpeed + side * damperArm * rollSpeed;
    const damper = (closing > 0 ? p.bumpDamping : p.reboundDamping) * closing;
    const lift = spring + damper;
    const turn = side * (springArm * spring + damperArm * damper);
    onFrame += lift;
    turnsFrame += turn;
    onAxle -= lift;
    turnsAxle -= turn;

    const road = side > 0 ? ride.road.leftAt(at) : ride.road.rightAt(at);
    let load = weightOnTyre + p.tyreRate * (road - axleRise - side * tyreArm * axleRoll);
    // Off the ground there is neither spring nor damping; on it a tyre presses and never pulls.
    if (load > 0) {
      const behind = side > 0 ? ride.road.leftAt(at - stride) : ride.road.rightAt(at - stride);
      const ahead = side > 0 ? ride.road.leftAt(at + stride) : ride.road.rightAt(at + stride);
      const roadSpeed = (ahead - behind) / (2 * ride.subStep);
      load += p.tyreDamping * (roadSpeed - va * 1000 - side * tyreArm * wa);
    }
    if (load < 0) load = 0;
    onAxle += load;
    turnsAxle += side * tyreArm * load;

    const pressed = compression > p.bump ? compression - p.bump : Math.min(0, compression + p.rebound);
    if (side > 0) {
      state.roadLeft = road;
      state.loadLeft = load;
      state.stopLeft = pressed;
    } else {
      state.roadRight = road;
      state.loadRight = load;
      state.stopRight = pressed;
    }
  }
  const bar = p.rollStiffness * roll;
  turnsFrame += bar + p.sprungMass * GRAVITY * (p.sprungHeight - p.rollCentre) * frameRoll;
  turnsAxle -= bar;

  hand.pullUp = 0;
  hand.pullOver = 0;
  if (hand.on) {
    const onFrameToo = hand.against === 'frame';
    // Sideways the point swings about where the frame holds the axle, or about the ground.
    const arm = onFrameToo ? hand.z - p.rollCentre : hand.z;
    const rise = onFrameToo ? heave : axleRise;
    const tilt = onFrameToo ? roll : axleRoll;
    const riseSpeed = onFrameToo ? heaveSpeed : va * 1000;
    const tiltSpeed = onFrameToo ? rollSpeed : wa;
    const up =
      hand.stiffness * (hand.up - rise - hand.y * tilt) - hand.damping * (riseSpeed + hand.y * tiltSpeed);
    const over = hand.stiffness * (hand.over + arm * tilt) + hand.damping * arm * tiltSpeed;
    hand.pullUp = Math.max(-hand.strength, Math.min(hand.strength, up));
    hand.pullOver = Math.max(-hand.strength, Math.min(hand.strength, over));
    const turn = hand.y * hand.pullUp - arm * hand.pullOver;
    onAxle += hand.pullUp;
    turnsAxle += turn;
    if (onFrameToo) {
      onFrame -= hand.pullUp;
      turnsFrame -= turn;
    }
  }
  forces[0] = onFrame;
  forces[1] = turnsFrame / 1000;
  forces[2] = onAxle;
  forces[3] = turnsAxle / 1000;
}

function writeState(ride: Ride, vf: number, wf: number, va: number, wa: number): void {
  const { state, engine } = ride;
  state.time = engine.steps * ride.subStep;
  state.distance = ride.speed * state.time;
  state.frameRise = engine.frame.getPosition().y * 1000;
  state.frameRoll = engine.frame.getAngle();
  state.axleRise = engine.axle.getPosition().y * 1000;
  state.axleRoll = engine.axle.getAngle();
  state.heave = state.axleRise - state.frameRise;
  state.roll = state.axleRoll - state.frameRoll;
  state.frameSpeed = vf * 1000;
  state.frameRollSpeed = wf;
  state.axleSpeed = va * 1000;
  state.axleRollSpeed = wa;
  state.frameAcceleration = (engine.acceleration[0] as number) * 1000;
}

/**
 * Takes the ride on by whole steps of the engine, and writes its state.
 * The engine adds force · step to the speeds and speed · step to the places: its speeds stand half a step behind its
 * places, and undamped swings keep their height for ever. Dampers are asked at the places' own moment, with the speeds
 * carried half a step on by the acceleration: a first guess from the step before, then once from this step's own forces.
 * Units:    mm, N, s in the state; metres in the engine.
 * Outcomes: ok; diverged, after which the ride must be put back.
 */
export function stepRide(ride: Ride, count: number): RideStatus {
  const { engine, state, subStep } = ride;
  const { world, frame, axle, push, acceleration, forces } = engine;
  if (state.status !== 'ok') return state.status;
  const half = subStep / 2;
  for (let i = 0; i < count; i += 1) {
    const vf = frame.getLinearVelocity().y;
    const wf = frame.getAngularVelocity();
    const va = axle.getLinearVelocity().y;
    const wa = axle.getAngularVelocity();
    for (let guess = 0; guess < 2; guess += 1) {
      workOutForces(
        ride,
        vf + half * (acceleration[0] as number),
        wf + half * (acceleration[1] as number),
        va + half * (acceleration[2] as number),
        wa + half * (acceleration[3] as number),
      );
      writeAcceleration(engine, forces);
    }
    push.x = 0;
    push.y = forces[0] as number;
    frame.applyForceToCenter(push);
    frame.applyTorque(forces[1] as number);
    push.y = forces[2] as number;
    axle.applyForceToCenter(push);
    axle.applyTorque(forces[3] as number);
    world.step(subStep);
    engine.steps += 1;
    const far = Math.abs(frame.getPosition().y) + Math.abs(axle.getPosition().y);
    if (!(far < FARTHEST && Math.abs(axle.getAngle()) < 2 && Math.abs(frame.getAngle()) < 2)) {
      state.status = 'diverged';
      return state.status;
    }
  }
  writeState(
    ride,
    frame.getLinearVelocity().y + half * (acceleration[0] as number),
    frame.getAngularVelocity() + half * (acceleration[1] as number),
    axle.getLinearVelocity().y + half * (acceleration[2] as number),
    axle.getAngularVelocity() + half * (acceleration[3] as number),
  );
  return state.status;
}
