import type { Body, Vec2, World } from 'planck';
import type { RideParameters } from './parameters.ts';
import type { Road } from './roads/index.ts';

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
  /** mm by which each spring's stops are pressed; negative: the droop stop. */
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
  /** Whether it minds `over`: where only `up` is wanted, as in a side view, the point goes sideways as axle and frame let it. */
  sideways: boolean;
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

export interface RideEngine {
  readonly world: World;
  readonly frame: Body;
  readonly axle: Body;
  readonly push: Vec2;
  /** m/s² and rad/s² of the last step: frame, frame roll, axle, axle roll. */
  readonly acceleration: Float64Array;
  /** N and N·m on frame, frame roll, axle, axle roll; weight is the engine's own business. */
  readonly forces: Float64Array;
  /** mm/s at which the road rises under the left and the right wheel. */
  readonly roadSpeed: Float64Array;
  /** m/s and rad/s at the places' own moment. */
  readonly speeds: Float64Array;
  steps: number;
  /** mm. */
  distance: number;
}

/** A state to be written into. The halves in the initial numbers make the engine keep them as doubles. */
export function createState(): RideState {
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
export function createHand({ springRate, bump, rebound, unsprungMass }: RideParameters): Hand {
  const stiffness = 4 * springRate;
  return {
    on: false,
    against: 'frame',
    y: 0,
    z: 0,
    up: 0,
    over: 0,
    sideways: true,
    stiffness,
    damping: (0.7 * Math.sqrt(stiffness * 1000 * unsprungMass)) / 1000,
    strength: 4 * springRate * Math.max(bump, rebound),
    pullUp: 0,
    pullOver: 0,
  };
}
