import { describe, expect, test } from 'vitest';
import { proposeArrangements } from '../../shared-math/arrange/index.ts';
import { leastClearances } from '../../shared-math/clearance/index.ts';
import { type LayoutDocument, readLayout, resolveLayout, withValue } from '../../shared-math/layout/index.ts';
import { arrangementOf, prepareFrontEnd } from '../../shared-math/linkage/index.ts';
import { sweepTurn } from '../../shared-math/sweep/index.ts';
import { COMBINATIONS, documentOf, LOCATIONS, rawLayout } from '../support/layouts.ts';

const FACTS = { frameWidth: 740, engineFillsFrame: false, driven: 'town' } as const;

describe('the arrangement helper', () => {
  test.each(COMBINATIONS)('lays four sound arrangements on $label', ({ over }) => {
    const document = documentOf(rawLayout(over));
    for (const engineFillsFrame of [false, true]) {
      const proposed = proposeArrangements(document, { ...FACTS, engineFillsFrame });
      expect(proposed.map(({ name }) => name)).toEqual([
        'side-manual',
        'side-assisted',
        'cross-manual',
        'cross-assisted',
      ]);
      for (const { name, document: laid, figures, reasons } of proposed) {
        expect(readLayout(laid).ok).toBe(true);
        expect(arrangementOf(resolveLayout(laid))).toBe(name.split('-')[0]);
        expect(laid.steering.box.assist).toBe(name.endsWith('assisted') ? 'power' : 'manual');
        // The car itself is not touched.
        expect({ ...laid.axle, ...laid.location, ...laid.car }).toEqual({
          ...document.axle,
          ...document.location,
          ...document.car,
        });
        expect(reasons.length).toBeGreaterThan(1);
        expect(figures).toBeDefined();
        for (const value of Object.values(figures ?? {})) expect(Number.isFinite(value)).toBe(true);
        expect(figures?.overallRatio).toBeGreaterThan(10);
      }
    }
  });

  test('a leaf fixed in front makes side steer bad and cross steer good, as the trade has it (common practice)', () => {
    const document = documentOf(rawLayout({ location: LOCATIONS['parallel-leaf'] }));
    const [side, , cross] = proposeArrangements(document, FACTS);
    expect(side?.figures?.worstBumpSteer).toBeGreaterThan(2);
    expect(cross?.figures?.worstBumpSteer).toBeLessThan(0.3);
    expect(side?.reasons.join(' ')).toMatch(/fixed in front/);
    // Under braking the axle winds up about its seats: a link along the rail goes with it, one across hardly (from memory).
    expect(side?.figures?.brakeSteer).toBeGreaterThan(1);
    expect(cross?.figures?.brakeSteer).toBeLessThan(0.3);
    expect(side?.reasons.join(' ')).toMatch(/wind up, and a drag link along the rail steers/);
  });

  test('an engine in the way moves the cross box ahead of the axle and the side box further back', () => {
    const document = documentOf(rawLayout({ location: LOCATIONS['four-bar'] }));
    const [sideFree, , crossFree] = proposeArrangements(document, FACTS);
    const [side, , cross] = proposeArrangements(document, { ...FACTS, engineFillsFrame: true });
    expect(cross?.document.steering.box.pitmanBall[0]).toBeGreaterThan(0);
    expect(crossFree?.document.steering.box.pitmanBall[0]).toBeLessThan(0);
    expect(side?.document.steering.box.pitmanBall[0]).toBeLessThanOrEqual(
      sideFree?.document.steering.box.pitmanBall[0] ?? 0,
    );
  });
});

describe('what the helper leaves as it is', () => {
  test('the stops at the axle are those of the car; a car without gets usual ones', () => {
    const document = documentOf(rawLayout());
    for (const { document: laid } of proposeArrangements(
      withValue(document, 'steering.stopAngle', 29),
      FACTS,
    ))
      expect(laid.steering.stopAngle).toBe(29);
    const { stopAngle: _, ...steering } = document.steering;
    for (const { document: laid } of proposeArrangements({ ...document, steering }, FACTS))
      expect(laid.steering.stopAngle).toBe(35);
  });
});

describe('what is laid across the car', () => {
  const hits = (document: LayoutDocument) => {
    const frontEnd = prepareFrontEnd(resolveLayout(document));
    const turn = sweepTurn(frontEnd, 0, 0);
    const locks = { right: turn.right.handwheel, left: turn.left.handwheel };
    return leastClearances(frontEnd, locks, { heaves: 7, turns: 9 })
      .pairs.filter(({ distance }) => distance <= 0)
      .map(({ a, b }) => `${a} ${b}`);
  };

  test.each(Object.entries(LOCATIONS))(
    'does not hit its own bar or the leaf it crosses: %s',
    (_, location) => {
      const document = documentOf(rawLayout({ location, rails: [], obstacles: [] }));
      for (const engineFillsFrame of [false, true]) {
        const [, , cross] = proposeArrangements(document, { ...FACTS, engineFillsFrame });
        const own = hits(cross!.document).filter(
          (pair) => /lateral|spring|leaf/.test(pair) && /arm|link/.test(pair),
        );
        expect(own).toEqual([]);
      }
    },
  );
});
