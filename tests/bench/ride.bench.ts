import { expect, test } from 'vitest';
import { resolveLayout } from '../../shared-math/layout/index.ts';
import {
  prepareRide,
  prepareRoad,
  ROAD_KINDS,
  type RoadProfile,
  restRide,
  rideParameters,
  runRide,
  stepRide,
} from '../../shared-math/ride/index.ts';
import { expectClose } from '../support/close.ts';
import { documentOf, rawLayout } from '../support/layouts.ts';
import { prepareRidePeer } from '../support/ride-peer.ts';
import { microseconds, tellRatio } from './report.ts';

const SPEED = 20_000;
const STEPS = 2000;
const document = documentOf(rawLayout());
const layout = resolveLayout(document);
const found = rideParameters(layout);
if (!found.ok) throw new Error(found.failure.reason);
const { parameters } = found.value;

const ROADS: readonly (readonly [string, RoadProfile])[] = [
  ['a bump under one wheel', ROAD_KINDS['one-wheel'].usual],
  ['a rough road of class C', ROAD_KINDS.random.usual],
];

test.for(ROADS)('one second of road: %s', async ([name, profile], { bench }) => {
  const road = prepareRoad(profile, layout.car.tyreRadius);
  const made = prepareRide(parameters, { road, speed: SPEED });
  if (!made.ok) throw new Error(made.failure.reason);
  const ride = made.value;
  const peer = prepareRidePeer(parameters, road, SPEED, 1 / STEPS);

  // Both drive the same, or the comparison would compare nothing.
  restRide(ride);
  peer.rest();
  for (let tenth = 0; tenth < 10; tenth += 1) {
    stepRide(ride, STEPS / 10);
    peer.step(STEPS / 10);
    expectClose(ride.state.frameRise, 1000 * peer.state[0]!, 0.05, 'frame');
    expectClose(ride.state.axleRise, 1000 * peer.state[2]!, 0.1, 'axle');
    expectClose(ride.state.axleRoll, peer.state[3]!, 2e-4, 'roll');
  }

  const engine = await bench(`${name}, the engine`, () => {
    restRide(ride);
    stepRide(ride, STEPS);
  }).run();
  const theirs = await bench(`${name}, Runge-Kutta`, () => {
    peer.rest();
    peer.step(STEPS);
  }).run();
  tellRatio(
    `one second, ${name}: travel by the engine`,
    microseconds(engine, 1),
    'the same equations by Runge-Kutta',
    microseconds(theirs, 1),
  );

  const whole = await bench(`${name}, whole`, () => {
    const run = runRide(document, profile, { speed: SPEED, seconds: 1 });
    expect(run.ok).toBe(true);
  }).run();
  tellRatio(
    `one second, ${name}: the whole run with 501 rows of steering and kick`,
    microseconds(whole, 1),
    'Runge-Kutta, travel alone',
    microseconds(theirs, 1),
  );
});
