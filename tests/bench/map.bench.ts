import { expect, test } from 'vitest';
import {
  createMap,
  fillMap,
  holdTravel,
  mapWindow,
  prepareMapKernel,
  worstAt,
  worstBumpSteerAt,
} from '../../shared-math/aim/index.ts';
import { leastClearances, markHits, withBoxAt } from '../../shared-math/clearance/index.ts';
import type { Point } from '../../shared-math/geometry/points.ts';
import { resolveLayout } from '../../shared-math/layout/index.ts';
import { createState, type FrontEnd, prepareFrontEnd } from '../../shared-math/linkage/index.ts';
import { sweepTurn } from '../../shared-math/sweep/index.ts';
import {
  type FreeMove,
  freedomNamed,
  sensitivityOf,
  toleranceBand,
  tune,
} from '../../shared-math/tune/index.ts';
import { expectClose } from '../support/close.ts';
import { documentOf, frontEndOf, LOCATIONS, layoutOf, rawLayout, SIDE_STEER } from '../support/layouts.ts';
import { preparePeer } from './peer.ts';
import { microseconds, tellRatio } from './report.ts';

const NODES = 96;
const POSES = 31;

function mapOf(frontEnd: FrontEnd, nodes: number) {
  const [x, , z] = frontEnd.layout.steering.box.pitmanBall;
  const window = mapWindow(frontEnd, [x - 200, x + 200], [z - 150, z + 150]);
  if (!window.ok) throw new Error(window.failure);
  return createMap(window.value, nodes, nodes);
}

function milliseconds(what: string, micro: number): number {
  process.stdout.write(`${what}: ${(micro / 1000).toFixed(2)} ms\n`);
  return micro / 1000;
}

test('a map of 96 × 96 places over 31 poses, linear in its places', async ({ bench }) => {
  const frontEnd = frontEndOf();
  const travel = holdTravel(frontEnd, POSES);
  const times: number[] = [];
  for (const nodes of [NODES / 2, NODES, 2 * NODES]) {
    const map = mapOf(frontEnd, nodes);
    const result = await bench(`${nodes} × ${nodes} places`, () => {
      fillMap(travel, map);
    }).run();
    times.push(
      milliseconds(`a map of ${nodes} × ${nodes} places over ${POSES} poses`, microseconds(result, 1)),
    );
  }
  const [quarter, whole, fourfold] = times as [number, number, number];
  expect(whole).toBeLessThan(40);
  // Four times the places, four times the time: what is made ready once hardly shows.
  expect(whole / quarter).toBeLessThan(6);
  expect(fourfold / whole).toBeLessThan(6);
});

test('one pose of one place: drag link, tie rod and mean steer in closed form', async ({ bench }) => {
  const frontEnd = frontEndOf();
  const travel = holdTravel(frontEnd, POSES);
  const kernel = prepareMapKernel(travel);
  const map = mapOf(frontEnd, NODES);
  const state = createState();
  const ball: Point = [-760, 500, 372];

  // The three give the same figure, or the comparison would compare nothing.
  const layout = withBoxAt(layoutOf(), ball);
  const peer = preparePeer(layout);
  const unknowns = [0, 0, 0, 0, 0, 0, 0];
  expectClose(worstAt(kernel, ball), worstBumpSteerAt(travel, ball), 1e-12, 'worst');

  const lean = await bench(`${NODES * NODES} places, ${POSES} poses`, () => {
    fillMap(travel, map, kernel);
  }).run();
  const full = await bench(`one place, ${POSES} poses, with camber and caster`, () => {
    worstBumpSteerAt(travel, ball, state);
  }).run();
  const theirs = await bench(`one place, ${POSES} poses, ml-levenberg-marquardt`, () => {
    unknowns.fill(0);
    for (const heave of travel.heave) peer.solve(heave, 0, unknowns);
  }).run();
  const ours = microseconds(lean, NODES * NODES * POSES);
  tellRatio(
    'one pose of one place in a map',
    ours,
    'the same with every output of a wheel',
    microseconds(full, POSES),
  );
  const ratio = tellRatio(
    'one pose of one place in a map',
    ours,
    'ml-levenberg-marquardt, its pose and both spindles',
    microseconds(theirs, POSES),
  );
  expect(ratio).toBeGreaterThan(1);

  const turns = Float64Array.from({ length: 64 }, (_, i) => (i - 32) * 0.01);
  let kept = 0;
  const pairs = await bench('64 pairs of atan2 and acos', () => {
    for (const turn of turns) kept += Math.atan2(turn, 0.7) + Math.acos(turn);
  }).run();
  const pair = microseconds(pairs, 64);
  process.stdout.write(
    `one pose of one place costs ${(ours / pair).toFixed(2)} pairs of Math.atan2 and Math.acos (${pair.toFixed(4)} µs a pair)\n`,
  );
  expect(ours / pair).toBeLessThan(12);
  expect(Number.isFinite(kept)).toBe(true);
});

/** A demonstration's size of car: rails, engine, sump, header tubes. */
const CROWDED = {
  location: LOCATIONS['four-bar'],
  steering: { ...SIDE_STEER, stopAngle: 28 },
  rails: [
    {
      name: 'Frame rail',
      path: [
        [430, 330, 470],
        [-240, 345, 470],
        [-560, 380, 420],
        [-2300, 470, 420],
      ],
      height: 100,
      width: 50,
      mirrored: true,
    },
  ],
  obstacles: [
    {
      name: 'Engine',
      role: 'engine',
      kind: 'box',
      centre: [-420, 0, 660],
      size: [620, 320, 420],
      mirrored: false,
    },
    {
      name: 'Sump',
      role: 'sump',
      kind: 'box',
      centre: [-400, 0, 420],
      size: [480, 220, 120],
      turn: 4,
      mirrored: false,
    },
    {
      name: 'Header',
      role: 'header',
      kind: 'capsule',
      from: [-300, 230, 580],
      to: [-900, 330, 360],
      radius: 24,
      mirrored: true,
    },
  ],
};

test('clearances of a car with rails and three obstacles, over travel and turn; what a map hits', async ({
  bench,
}) => {
  const frontEnd = prepareFrontEnd(layoutOf(CROWDED));
  const turn = sweepTurn(frontEnd, 0, 0, 2);
  const locks = { right: turn.right.handwheel, left: turn.left.handwheel };
  const { judged, poses } = leastClearances(frontEnd, locks);
  const result = await bench('all clearances', () => {
    leastClearances(frontEnd, locks, { within: 100 });
  }).run();
  const time = milliseconds(
    `least clearances of ${judged} pairs over ${poses} poses`,
    microseconds(result, 1),
  );
  expect(time).toBeLessThan(60);
  const map = mapOf(frontEnd, NODES);
  const travel = holdTravel(frontEnd, POSES);
  const hits = await bench('what is hit', () => {
    fillMap(travel, map);
    markHits(frontEnd, map, locks);
  }).run();
  milliseconds(
    `a map of ${NODES} × ${NODES} places with what is hit at every second one`,
    microseconds(hits, 1),
  );
});

test('a tune with three freedoms and every hold; what a step does; a tolerance band', async ({ bench }) => {
  const document = documentOf(rawLayout(CROWDED));
  const free = ['box-up', 'box-along', 'pitman-length'].map((name): FreeMove => {
    const freedom = freedomNamed(name);
    if (!freedom) throw new Error(name);
    return { freedom, from: -75, to: 75 };
  });
  const tuned = await bench('tune', () => {
    const search = tune(document, free);
    let step = search.next();
    while (!step.done) step = search.next();
    expect(step.value.ok).toBe(true);
  }).run({ time: 4000, iterations: 3, warmupIterations: 1, warmupTime: 0 });
  expect(milliseconds('a tune with three freedoms', microseconds(tuned, 1))).toBeLessThan(2000);
  const steps = await bench('sensitivity', () => {
    sensitivityOf(document, 'steering.box.pitmanBall');
  }).run({ time: 1000, iterations: 5 });
  milliseconds('what a step either way along each axis does', microseconds(steps, 1));
  const band = await bench('tolerance', () => {
    toleranceBand(document);
  }).run({ time: 1000, iterations: 5 });
  milliseconds('the tolerance band of 200 cars', microseconds(band, 1));
  expect(resolveLayout(document).obstacles).toHaveLength(3);
});
