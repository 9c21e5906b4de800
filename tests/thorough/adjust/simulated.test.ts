import { expect, test } from 'vitest';
import { adjust } from '../../../shared-math/adjust/index.ts';
import { resolveLayout, withValue } from '../../../shared-math/layout/index.ts';
import { prepareFrontEnd } from '../../../shared-math/linkage/index.ts';
import { summariseTravel, sweepTravel } from '../../../shared-math/sweep/index.ts';
import { documentOf, rawLayout } from '../../support/layouts.ts';
import { measured, pointsOf, seededNormal, sideSteerRows } from '../../support/surveys.ts';

const SURVEYS = 2000;

/** The 95 % point of chi-squared with one degree of freedom, from memory of any table. */
const CHI_1 = 3.841;

/**
 * Invented cars, each true car scattered about the drawing, each measured with noise of the stated doubts: the regions
 * that the adjustment reports hold the truth as often as they say. This asks nothing of how it was computed.
 */
test('the 95 % region holds the truth 93 to 97 times in 100, for points and for the worst bump steer', () => {
  const document = documentOf(rawLayout());
  const drawn = pointsOf(document);
  const rows = sideSteerRows();
  const ids = [
    'location.left.framePivot',
    'steering.box.pitmanBall',
    'steering.dragLinkBall',
    'axle.left.kingpinTop',
  ];
  const held = Object.fromEntries(ids.map((id) => [id, 0]));
  let heldBump = 0;
  let tried = 0;
  const normal = seededNormal(3);
  for (let k = 0; k < SURVEYS; k += 1) {
    const truth: Record<string, readonly [number, number, number]> = {};
    for (const [id, [x, y, z]] of Object.entries(drawn)) {
      if (id.includes('.right.')) continue;
      const wheel = id.endsWith('wheelCentre');
      truth[id] = [wheel ? x : x + 5 * normal(), y + 5 * normal(), z + 5 * normal()];
      const twin = id.replace('.left.', '.right.');
      if (twin !== id) truth[twin] = [truth[id][0], -truth[id][1], truth[id][2]];
    }
    const outcome = adjust(document, measured(rows, truth, drawn, normal));
    if (!outcome.ok) throw new Error(outcome.failure.kind);
    const { points, bumpSteer } = outcome.value;
    tried += 1;
    for (const id of ids) {
      const { at, doubt, free } = points.get(id)!;
      expect(free).toEqual([]);
      // Each coordinate by itself: one degree of freedom.
      for (const axis of [0, 1, 2])
        if (((at[axis]! - truth[id]![axis]!) / doubt[axis]!) ** 2 <= CHI_1) held[id]! += 1 / 3;
    }
    let car = document;
    for (const id of Object.keys(truth)) if (!id.includes('.right.')) car = withValue(car, id, truth[id]);
    const sweep = sweepTravel(prepareFrontEnd(resolveLayout(car)), 'heave', -75, 75, 31, 0);
    const worst = (summariseTravel(sweep).worstBumpSteer * 180) / Math.PI;
    if (((bumpSteer!.worst - worst) / bumpSteer!.doubt) ** 2 <= CHI_1) heldBump += 1;
  }
  for (const id of ids) {
    expect(held[id]! / tried, id).toBeGreaterThanOrEqual(0.93);
    expect(held[id]! / tried, id).toBeLessThanOrEqual(0.97);
  }
  expect(heldBump / tried, 'bump steer').toBeGreaterThanOrEqual(0.93);
  expect(heldBump / tried, 'bump steer').toBeLessThanOrEqual(0.97);
}, 300_000);
