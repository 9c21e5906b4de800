import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { type LayoutDocument, parseLayout } from '../../shared-math/layout/index.ts';
import { type RideRun, type RoadProfile, runRide } from '../../shared-math/ride/index.ts';

const project = (name: string): LayoutDocument => {
  const read = parseLayout(readFileSync(new URL(`../../projects/${name}.json`, import.meta.url), 'utf8'));
  if (!read.ok) throw new Error(read.failure.reason);
  return read.value;
};

const TOO_LOW = project('hairpins-box-too-low');
const AT_THE_COWL = project('hairpins-side-steer');
const ONE_WHEEL: RoadProfile = { kind: 'one-wheel', side: 'left', height: 40, length: 1000, start: 1000 };

function drive(document: LayoutDocument, road: RoadProfile, speed = 10_000, seconds = 1): RideRun {
  const run = runRide(document, road, { speed, seconds });
  if (!run.ok) throw new Error(run.failure.reason);
  return run.value;
}

const worst = (column: Float64Array) => (180 / Math.PI) * Math.max(...column.map(Math.abs));

describe('a bump under one wheel', () => {
  test('darts the car whose box is too low, and not the one whose box is right', () => {
    const bad = drive(TOO_LOW, ONE_WHEEL);
    const good = drive(AT_THE_COWL, ONE_WHEEL);
    // The same travel: both are one car but for the box.
    expect(good.heave).toEqual(bad.heave);
    expect(good.roll).toEqual(bad.roll);
    expect(worst(bad.bumpSteer)).toBeGreaterThan(1);
    expect(worst(good.bumpSteer)).toBeLessThan(0.1);
    expect(worst(bad.kick)).toBeGreaterThan(20);
    expect(worst(good.kick)).toBeLessThan(2);
    for (const run of [bad, good]) expect(new Set(run.status)).toEqual(new Set([0]));
  });
});
