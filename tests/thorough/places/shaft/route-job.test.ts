import { describe, expect, test } from 'vitest';
import type { LayoutDocument } from '../../../../shared-math/layout/index.ts';
import { USUAL_JOINT_LIMITS } from '../../../../shared-math/shaft/index.ts';
import { type RouteQuestion, routeJob } from '../../../../src-renderer/places/shaft/route-job.ts';
import { DEMONSTRATIONS } from '../../../support/demonstration-files.ts';

/** Cross steer past an engine; its shaft runs close to what stands there. */
const document = new Map(DEMONSTRATIONS).get('parallel-leaf-cross-steer.json') as LayoutDocument;

function routes(question: Partial<RouteQuestion> = {}) {
  const job = routeJob({ document, limits: {}, ...question });
  let steps = 0;
  for (;;) {
    const { done, value } = job.next();
    if (done) return { steps, suggestions: value };
    steps += 1;
  }
}

describe('routes looked for beside the page', () => {
  test('come one number of joints a step, so that a search is called off between them', () => {
    const { steps, suggestions } = routes();
    expect(steps).toBe(3);
    expect(suggestions.map(({ joints }) => joints)).toEqual([1, 2, 3]);
  });

  test.each([12.7, 30])('keep the shop’s own room of %d mm', (clearance) => {
    const { suggestions } = routes({ limits: { clearanceMoving: clearance } });
    const found = suggestions.flatMap(({ outcome }) => (outcome.ok ? [outcome.value.nearest.distance] : []));
    expect(found.length).toBeGreaterThan(0);
    for (const distance of found) expect(distance).toBeGreaterThanOrEqual(clearance - 1e-6);
  });

  test('say how much room is lacking, and to what, where a shop asks for more than there is', () => {
    const { suggestions } = routes({ limits: { clearanceMoving: 45 } });
    const lacking = suggestions.flatMap(({ outcome }) =>
      !outcome.ok && outcome.failure.kind === 'not-clear' ? [outcome.failure] : [],
    );
    expect(lacking.length).toBeGreaterThan(0);
    for (const { lacking: room, name } of lacking) {
      expect(room).toBeGreaterThan(0);
      expect(room).toBeLessThan(45);
      expect(name).not.toBe('');
    }
  });

  test('measure room from the stock that is chosen', () => {
    const { shaft } = document;
    if (!shaft) throw new Error('the demonstration carries a shaft');
    const thick: LayoutDocument = {
      ...document,
      shaft: {
        ...shaft,
        shafts: shaft.shafts.map((piece) => ({ ...piece, stock: { kind: 'round', diameter: 38.1 } })),
      },
    };
    const worst = (each: ReturnType<typeof routes>) =>
      each.suggestions.map(({ outcome }) => (outcome.ok ? outcome.value.worstAngle : Number.NaN));
    // More of it has to get past: never a smaller worst angle.
    const [thin, stout] = [worst(routes()), worst(routes({ document: thick }))];
    for (const [i, angle] of stout.entries())
      if (Number.isFinite(angle)) expect(angle).toBeGreaterThanOrEqual((thin[i] as number) - 1e-3);
  });

  test('keep a shop’s own limit of a joint: what is past it becomes a double joint, or is told', () => {
    const { suggestions } = routes({ limits: { jointSingle: 10 } });
    for (const { outcome } of suggestions) {
      if (!outcome.ok) continue;
      for (const joint of outcome.value.route.joints)
        if (joint.kind === 'single') expect(joint.limit).toBeLessThan(USUAL_JOINT_LIMITS.single);
      if (outcome.value.withinLimits)
        for (const joint of outcome.value.route.joints)
          expect(joint.angle).toBeLessThanOrEqual(joint.limit + 1e-9);
    }
  });

  test('are none where a layout has no shaft', () => {
    expect(routes({ document: { ...document, shaft: null } })).toEqual({ steps: 0, suggestions: [] });
  });
});
