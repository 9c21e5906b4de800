import { readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, test } from 'vitest';
import { holdTravel, holdWheels, worstBumpSteerAt } from '../../shared-math/aim/index.ts';
import { type Layout, parseLayout, resolveLayout } from '../../shared-math/layout/index.ts';
import {
  createState,
  type FrontEnd,
  prepareFrontEnd,
  solveFrontEnd,
} from '../../shared-math/linkage/index.ts';
import {
  heaveEnds,
  summariseTravel,
  sweepTravel,
  visitGrid,
  wheelPlaces,
  wheelTravel,
  worstOneWheel,
} from '../../shared-math/sweep/index.ts';
import { expectClose } from '../support/close.ts';
import { frontEndOf, layoutOf, STEERED } from '../support/layouts.ts';

const DEGREE = Math.PI / 180;
const projects = resolve(import.meta.dirname, '../../projects');

/**
 * The same figure by brute force: a fine grid of heave and roll over everything, of which only those places count where
 * both wheels, at heave ± T/2 · sin roll, are within droop and bump; T the distance across of the wheel centres.
 */
function byGrid(frontEnd: FrontEnd, heaves = 153, rolls = 61): number {
  const { travel, axle } = frontEnd.layout;
  const half = (axle.left.wheelCentre[1] - axle.right.wheelCentre[1]) / 2;
  let worst = 0;
  const within = (mm: number) => mm >= -travel.rebound - 1e-9 && mm <= travel.bump + 1e-9;
  // Further than with one wheel at full bump and the other at full droop no car rolls.
  const most = Math.min(travel.roll * DEGREE, Math.asin((travel.bump + travel.rebound) / (2 * half)));
  for (let j = 0; j < rolls; j += 1) {
    const roll = most * ((2 * j) / (rolls - 1) - 1);
    const apart = half * Math.sin(roll);
    // The edges themselves, where the figure mostly is largest, and an even grid between the car's own ends.
    const at = Array.from(
      { length: heaves },
      (_, i) => -travel.rebound + ((travel.bump + travel.rebound) * i) / (heaves - 1),
    );
    at.push(Math.abs(apart) - travel.rebound, travel.bump - Math.abs(apart));
    const kept = at.filter((heave) => within(heave + apart) && within(heave - apart));
    visitGrid(frontEnd, kept, [roll], [0], (_, status, bump) => {
      expect(status).toBe('ok');
      worst = Math.max(worst, Math.abs(bump));
    });
  }
  return worst;
}

function figureOf(frontEnd: FrontEnd) {
  const found = worstOneWheel(frontEnd);
  if (found.status !== 'ok') throw new Error(found.status);
  return found;
}

function demonstration(name: string): Layout {
  const outcome = parseLayout(readFileSync(join(projects, `${name}.json`), 'utf8'));
  if (!outcome.ok) throw new Error(outcome.failure.reason);
  return resolveLayout(outcome.value);
}

describe('the largest bump steer with each wheel anywhere in its own travel', () => {
  test.each([...STEERED])('$label: as a fine grid finds it, to 1 %', ({ over }) => {
    for (const travel of [
      { bump: 75, rebound: 75, roll: 3 },
      { bump: 50, rebound: 90, roll: 9 },
    ]) {
      const frontEnd = frontEndOf({ ...over, travel });
      const { worst } = figureOf(frontEnd);
      const grid = byGrid(frontEnd, 41, 31);
      expect(worst / grid, JSON.stringify(travel)).toBeGreaterThan(0.99);
      // What the search found it found in a pose: it can be no more than the truth, of which the grid misses little.
      expect(worst / grid, JSON.stringify(travel)).toBeLessThan(1.01);
    }
  });

  test.each([
    'hairpins-side-steer',
    'wishbone-side-steer',
    'parallel-leaf-cross-steer',
    'four-bar-cross-steer',
  ])('%s: as a fine grid finds it, and in the pose that is told with it', (name) => {
    const frontEnd = prepareFrontEnd(demonstration(name));
    const { travel, axle } = frontEnd.layout;
    const { worst, heave, roll } = figureOf(frontEnd);
    expectClose(worst / byGrid(frontEnd), 1, 0.01, name);
    const state = createState();
    solveFrontEnd(frontEnd, 0, 0, 0, state);
    const ride = state.meanSteer;
    solveFrontEnd(frontEnd, heave, roll, 0, state);
    expectClose(Math.abs(state.meanSteer - ride), worst, 1e-9, 'the figure at its pose');
    const { left, right } = wheelPlaces(frontEnd.layout, { heave, roll });
    expectClose(left - right, (axle.left.wheelCentre[1] - axle.right.wheelCentre[1]) * Math.sin(roll), 1e-9);
    for (const place of [left, right]) {
      expect(place).toBeGreaterThanOrEqual(-travel.rebound - 1e-6);
      expect(place).toBeLessThanOrEqual(travel.bump + 1e-6);
    }
    expect(Math.abs(roll)).toBeLessThanOrEqual(travel.roll * DEGREE + 1e-12);
  });

  test('is no less than over heave alone and over the roll that the wheels allow at ride height', () => {
    for (const { over, label } of STEERED) {
      const frontEnd = frontEndOf(over);
      const { worst } = figureOf(frontEnd);
      const along = summariseTravel(sweepTravel(frontEnd, 'heave', -75, 75, 31, 0)).worstBumpSteer;
      const roll = 3 * DEGREE;
      const over3 = summariseTravel(sweepTravel(frontEnd, 'roll', -roll, roll, 31, 0)).worstBumpSteer;
      expect(worst, label).toBeGreaterThanOrEqual(0.999 * Math.max(along, over3));
    }
  });

  test('keeps each wheel within its own bump and droop, and ends the roll where one is at either end', () => {
    const wide = wheelTravel(layoutOf({ travel: { bump: 60, rebound: 40, roll: 3 } }));
    // T is 1420 mm: 3 degrees put the wheels 74.3 mm apart, which bump and droop of 100 mm together allow.
    expectClose(wide.sine, Math.sin(3 * DEGREE), 1e-15);
    const ends = heaveEnds(wide, wide.sine);
    expectClose(ends.from, -40 + 710 * Math.sin(3 * DEGREE), 1e-9);
    expectClose(ends.to, 60 - 710 * Math.sin(3 * DEGREE), 1e-9);
    const narrow = wheelTravel(layoutOf({ travel: { bump: 30, rebound: 20, roll: 10 } }));
    expectClose(narrow.sine, 50 / 1420, 1e-15);
    expectClose(heaveEnds(narrow, narrow.sine).from, 5, 1e-9);
    expectClose(heaveEnds(narrow, narrow.sine).to, 5, 1e-9);
  });

  test('without roll it is the figure over heave, and without travel none at all', () => {
    const level = frontEndOf({ travel: { bump: 75, rebound: 60, roll: 0 } });
    const fine = summariseTravel(sweepTravel(level, 'heave', -60, 75, 501, 0)).worstBumpSteer;
    const found = figureOf(level);
    expectClose(found.worst / fine, 1, 1e-3);
    expect(found.roll).toBe(0);
    expect(figureOf(frontEndOf({ travel: { bump: 0, rebound: 0, roll: 3 } })).worst).toBe(0);
  });

  test('is counted from the handwheel that is held', () => {
    const frontEnd = frontEndOf();
    const turned = worstOneWheel(frontEnd, 2);
    if (turned.status !== 'ok') throw new Error(turned.status);
    const state = createState();
    solveFrontEnd(frontEnd, 0, 0, 2, state);
    const ride = state.meanSteer;
    solveFrontEnd(frontEnd, turned.heave, turned.roll, 2, state);
    expectClose(Math.abs(state.meanSteer - ride), turned.worst, 1e-9);
    expect(turned.worst).not.toBe(figureOf(frontEnd).worst);
  });

  test('a travel that a link does not reach everywhere has no figure, but says so by name', () => {
    const short = frontEndOf({
      travel: { bump: 400, rebound: 400, roll: 3 },
      steering: {
        dragLinkTo: 'left',
        dragLinkBall: [0, 484, 395],
        box: {
          sectorCentre: [-120, 500, 490],
          sectorAxis: [0, -1, 0],
          pitmanBall: [-120, 500, 395],
          ratio: 16,
          sectorTravel: 35,
          assist: 'manual',
        },
      },
    });
    expect(worstOneWheel(short).status).toBe('out-of-reach');
  });

  test('a frame end tried on the held poses comes to the same, to some per cent', () => {
    const frontEnd = prepareFrontEnd(demonstration('wishbone-side-steer'));
    const held = holdWheels(holdTravel(frontEnd));
    const tried = worstBumpSteerAt(held, frontEnd.layout.steering.box.pitmanBall);
    const { worst } = figureOf(frontEnd);
    expect(tried).toBeLessThanOrEqual(worst * (1 + 1e-9));
    expect(tried).toBeGreaterThan(0.95 * worst);
    expect(tried).toBeGreaterThan(
      worstBumpSteerAt(holdTravel(frontEnd), frontEnd.layout.steering.box.pitmanBall),
    );
  });
});
