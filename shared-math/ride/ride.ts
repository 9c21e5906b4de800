import { Vec2, World } from 'planck';
import type { Refusal } from '../layout/index.ts';
import { failed, type Outcome, succeeded } from '../outcome.ts';
import { stiffest } from './figures.ts';
import { readRoad, workOutForces } from './forces.ts';
import { GRAVITY, type RideParameters } from './parameters.ts';
import { FLAT_ROAD, type Road } from './roads/index.ts';
import { createHand, createState, type Ride, type RideEngine, type RideStatus } from './state.ts';

/** s. The one step of the engine: a wheel that hops at 12 Hz is followed in 170 steps. */
export const SUB_STEP = 1 / 2000;

/** m and rad. Nothing that is thrown about on a road comes this far, and angles are no longer small by far. */
const FARTHEST = 20;
const STEEPEST = 2;

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
      speeds: new Float64Array(4),
      roadSpeed: new Float64Array(2),
      steps: 0,
      distance: 0,
    },
  };
  restRide(ride);
  return succeeded(ride);
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

/** Puts frame and axle where specified, at time 0 and the beginning of the road. */
export function placeRide(ride: Ride, place: RidePlace): void {
  const { engine, state } = ride;
  const { frame, axle, acceleration, speeds, push } = engine;
  frame.setTransform({ x: 0, y: (place.frameRise ?? 0) / 1000 }, place.frameRoll ?? 0);
  axle.setTransform({ x: 0, y: (place.axleRise ?? 0) / 1000 }, place.axleRoll ?? 0);
  speeds[0] = (place.frameSpeed ?? 0) / 1000;
  speeds[1] = place.frameRollSpeed ?? 0;
  speeds[2] = (place.axleSpeed ?? 0) / 1000;
  speeds[3] = place.axleRollSpeed ?? 0;
  engine.steps = 0;
  engine.distance = 0;
  state.status = 'ok';
  readRoad(ride);
  workOutForces(ride, speeds);
  writeAcceleration(engine);
  // The engine keeps its speeds half a step behind its places.
  const half = ride.subStep / 2;
  push.x = 0;
  push.y = (speeds[0] as number) - half * (acceleration[0] as number);
  frame.setLinearVelocity(push);
  frame.setAngularVelocity((speeds[1] as number) - half * (acceleration[1] as number));
  push.y = (speeds[2] as number) - half * (acceleration[2] as number);
  axle.setLinearVelocity(push);
  axle.setAngularVelocity((speeds[3] as number) - half * (acceleration[3] as number));
  writeState(ride);
}

/** m/s² and rad/s² that forces and weight make. */
function writeAcceleration({ frame, axle, acceleration, forces }: RideEngine): void {
  acceleration[0] = (forces[0] as number) / frame.getMass() - GRAVITY;
  acceleration[1] = (forces[1] as number) / frame.getInertia();
  acceleration[2] = (forces[2] as number) / axle.getMass() - GRAVITY;
  acceleration[3] = (forces[3] as number) / axle.getInertia();
}

/** Speeds at the places' own moment, forces and acceleration: a guess from the step before, then from its own forces. */
function meetForces(ride: Ride): void {
  const { engine, subStep } = ride;
  const { frame, axle, acceleration, speeds } = engine;
  const half = subStep / 2;
  readRoad(ride);
  for (let guess = 0; guess < 2; guess += 1) {
    speeds[0] = frame.getLinearVelocity().y + half * (acceleration[0] as number);
    speeds[1] = frame.getAngularVelocity() + half * (acceleration[1] as number);
    speeds[2] = axle.getLinearVelocity().y + half * (acceleration[2] as number);
    speeds[3] = axle.getAngularVelocity() + half * (acceleration[3] as number);
    workOutForces(ride, speeds);
    writeAcceleration(engine);
  }
}

function writeState({ state, engine, subStep }: Ride): void {
  const { frame, axle, speeds, acceleration } = engine;
  state.time = engine.steps * subStep;
  state.distance = engine.distance;
  state.frameRise = frame.getPosition().y * 1000;
  state.frameRoll = frame.getAngle();
  state.axleRise = axle.getPosition().y * 1000;
  state.axleRoll = axle.getAngle();
  state.heave = state.axleRise - state.frameRise;
  state.roll = state.axleRoll - state.frameRoll;
  state.frameSpeed = (speeds[0] as number) * 1000;
  state.frameRollSpeed = speeds[1] as number;
  state.axleSpeed = (speeds[2] as number) * 1000;
  state.axleRollSpeed = speeds[3] as number;
  state.frameAcceleration = (acceleration[0] as number) * 1000;
}

/**
 * Takes the ride on by whole steps of the engine, and writes its state. Many steps at once or one by one come to the same.
 * The engine adds force · step to the speeds and speed · step to the places: its speeds stand half a step behind its
 * places, and undamped swings keep their height for ever. Dampers are asked at the places' own moment, with the speeds
 * carried half a step on by the acceleration. What is set between steps (hand, road, speed) is met one step later.
 * Frame:    front view, as `workOutForces`.
 * Units:    mm, rad, N, s in the state; metres in the engine.
 * Outcomes: ok; diverged, after which the ride must be put back.
 * Source:   own derivation; the engine's rule is known as leapfrog, its error about (ω step)²/24 of a frequency.
 * Checked:  tests/reference/ride-modes.test.ts, tests/reference/ride-bump.test.ts.
 */
export function stepRide(ride: Ride, count: number): RideStatus {
  const { engine, state, subStep } = ride;
  const { world, frame, axle, push, forces } = engine;
  if (state.status !== 'ok') return state.status;
  for (let i = 0; i < count; i += 1) {
    push.x = 0;
    push.y = forces[0] as number;
    frame.applyForceToCenter(push);
    frame.applyTorque(forces[1] as number);
    push.y = forces[2] as number;
    axle.applyForceToCenter(push);
    axle.applyTorque(forces[3] as number);
    world.step(subStep);
    engine.steps += 1;
    engine.distance += ride.speed * subStep;
    const far = Math.abs(frame.getPosition().y) + Math.abs(axle.getPosition().y);
    const tilted = Math.abs(frame.getAngle()) + Math.abs(axle.getAngle());
    if (!(far < FARTHEST && tilted < STEEPEST)) {
      state.status = 'diverged';
      return state.status;
    }
    meetForces(ride);
  }
  writeState(ride);
  return state.status;
}
