import { describe, expect, test } from 'vitest';
import { leastClearances } from '../../shared-math/clearance/index.ts';
import type { Point } from '../../shared-math/geometry/points.ts';
import { hardpoints, moveHardpoint, resolveLayout } from '../../shared-math/layout/index.ts';
import { prepareFrontEnd } from '../../shared-math/linkage/index.ts';
import { summariseTravel, sweepTravel, sweepTurn } from '../../shared-math/sweep/index.ts';
import {
  type Sensitivity,
  sensitivityOf,
  type ToleranceBand,
  toleranceBand,
} from '../../shared-math/tune/index.ts';
import { DEGREE, expectClose } from '../support/close.ts';
import { documentOf, rawLayout, SIDE_STEER } from '../support/layouts.ts';

const raw = (over: Record<string, unknown> = {}) => documentOf(rawLayout(over));

function known(document: ReturnType<typeof raw>, id: string, step?: number): Sensitivity {
  const outcome = sensitivityOf(document, id, step);
  if (!outcome.ok) throw new Error(outcome.failure);
  return outcome.value;
}

function swept(document: ReturnType<typeof raw>) {
  const frontEnd = prepareFrontEnd(resolveLayout(document));
  return sweepTravel(frontEnd, 'heave', -75, 75, 31, 0);
}

const PIPE = {
  name: 'Pipe',
  role: 'header',
  kind: 'capsule',
  from: [-400, 300, 450],
  to: [-420, 620, 455],
  radius: 15,
  mirrored: false,
};

/** Its links leave the axle free, so that it has no travel. */
const FREE = raw({ location: { kind: 'hairpins', left: { framePivot: [0, 415, 330] }, right: 'mirror' } });

describe('what a step does', () => {
  const document = raw({ obstacles: [PIPE] });

  test('is what the sweep of the moved layout says, each way along each axis', () => {
    for (const id of ['steering.box.pitmanBall', 'axle.left.tieRodBall', 'location.left.framePivot']) {
      const { effects, step, drawn } = known(document, id);
      expect(step).toBe(3.175);
      expect(effects.map(({ axis, direction }) => [axis, direction])).toEqual(
        [0, 1, 2].flatMap((axis) => [-1, 1].map((direction) => [axis, direction])),
      );
      expectClose(drawn.worstBumpSteer, summariseTravel(swept(document)).worstBumpSteer, 1e-12);
      const at = hardpoints(document).find((point) => point.id === id)!.at;
      for (const { axis, direction, figures } of effects) {
        const to = [...at] as [number, number, number];
        to[axis] += direction * step;
        const moved = swept(moveHardpoint(document, id, to as Point));
        const { worstBumpSteer, slopeAtRide } = summariseTravel(moved);
        expectClose(figures!.worstBumpSteer, worstBumpSteer, 1e-12, id);
        expectClose(figures!.slope, slopeAtRide, 1e-12, id);
        const toe = [...moved.totalToeIn];
        expectClose(figures!.toeChange, Math.max(...toe) - Math.min(...toe), 1e-12, id);
        expect(Number.isFinite(figures!.ratio)).toBe(true);
      }
    }
  });

  test('height of the frame end does most, by the rule of thumb; sideways does next to nothing', () => {
    // At the aim: on the hairpin pivot in side view.
    const aimed = raw({
      steering: {
        ...SIDE_STEER,
        box: { ...SIDE_STEER.box, pitmanBall: [-890, 484, 335], sectorCentre: [-890, 484, 475] },
      },
    });
    const { effects, step, drawn } = known(aimed, 'steering.box.sectorCentre');
    expect(drawn.worstBumpSteer / DEGREE).toBeLessThan(1e-6);
    const arm = Math.sqrt(prepareFrontEnd(resolveLayout(aimed)).dragLinkBall.radiusSquared);
    const rule = (57.3 * 75 * step) / (890 * arm);
    const worst = (axis: number) =>
      Math.max(
        ...effects
          .filter((effect) => effect.axis === axis)
          .map(({ figures }) => figures!.worstBumpSteer / DEGREE),
      );
    expectClose(worst(2), rule, 0.1 * rule, 'height');
    expect(worst(0)).toBeLessThan(0.2 * rule);
    expect(worst(1)).toBeLessThan(0.05 * rule);
  });

  test('the ratio goes with the arms', () => {
    const ratio = (id: string, axis: number, direction: number) => {
      const { drawn, effects } = known(document, id);
      const effect = effects.find((entry) => entry.axis === axis && entry.direction === direction)!;
      return effect.figures!.ratio! / drawn.ratio!;
    };
    // The pitman ball hangs 140 below its sector: 3.175 lower is a longer arm, and quicker.
    expectClose(ratio('steering.box.pitmanBall', 2, -1), 140 / 143.175, 0.01);
    expectClose(ratio('steering.box.pitmanBall', 2, 1), 140 / 136.825, 0.01);
  });

  test('the gap is the least of those that the point has a part in', () => {
    const id = 'steering.box.pitmanBall';
    const { drawn, effects, step } = known(document, id);
    const gapOf = (of: ReturnType<typeof raw>) => {
      const frontEnd = prepareFrontEnd(resolveLayout(of));
      const turn = sweepTurn(frontEnd, 0, 0, 2);
      const locks = { right: turn.right.handwheel, left: turn.left.handwheel };
      return leastClearances(frontEnd, locks, { heaves: 9, turns: 13 }).pairs;
    };
    const touched = gapOf(document).filter(({ a }) => a === 'drag-link' || a === 'pitman-arm');
    expect(drawn.clearance!).toBeLessThanOrEqual(Math.min(...touched.map(({ distance }) => distance)) + 1e-9);
    // Raised, the drag link comes nearer to the pipe above it, by some of the step.
    const pipe = (of: ReturnType<typeof raw>) =>
      gapOf(of).find(({ a, b }) => a === 'drag-link' && b === 'obstacle-0')!.distance;
    const at = document.steering.box.pitmanBall;
    const raised = moveHardpoint(document, id, [at[0], at[1], at[2] + step]);
    expect(pipe(raised)).toBeLessThan(pipe(document));
    expect(effects.every(({ figures }) => figures!.clearance !== undefined)).toBe(true);
  });

  test('a mirrored point moves with its twin, and stays itself', () => {
    const { effects } = known(document, 'axle.right.wheelCentre');
    const other = known(document, 'axle.left.wheelCentre').effects;
    const figures = (list: typeof effects, axis: number, direction: number) =>
      list.find((effect) => effect.axis === axis && effect.direction === direction)!.figures!;
    // To the right on the right is outboard, as to the left is on the left.
    expectClose(figures(effects, 1, -1).worstBumpSteer, figures(other, 1, 1).worstBumpSteer, 1e-12);
  });

  test('a step that leaves no layout has no figures; an unknown point is named; so is a layout that does not reach', () => {
    // 140 up the pitman ball is on the sector shaft.
    const { effects } = known(document, 'steering.box.pitmanBall', 140);
    const told = effects.map(({ figures }) => figures !== undefined);
    expect(told).toEqual([true, true, true, true, true, false]);
    expect(sensitivityOf(document, 'axle.left.nose')).toEqual({ ok: false, failure: 'unknown-point' });
    expect(sensitivityOf(FREE, 'steering.dragLinkBall')).toEqual({ ok: false, failure: 'no-travel' });
  });
});

describe('the tolerance band', () => {
  const band = (options: Parameters<typeof toleranceBand>[1], document = raw()): ToleranceBand => {
    const outcome = toleranceBand(document, options);
    if (!outcome.ok) throw new Error(outcome.failure);
    return outcome.value;
  };

  test('with no tolerance there is none: all cars are as drawn', () => {
    const { drawn, lower, upper, worst, heave } = band({ tolerance: 0, cars: 20 });
    const { bumpSteer } = swept(raw());
    for (let i = 0; i < heave.length; i += 1) {
      expect(drawn[i]).toBe(bumpSteer[i]);
      expectClose(lower[i]!, drawn[i]!, 1e-12);
      expectClose(upper[i]!, drawn[i]!, 1e-12);
    }
    expectClose(worst, summariseTravel(swept(raw())).worstBumpSteer, 1e-12);
  });

  test('lies about the drawing, none of it at ride height, twice as wide for twice the tolerance', () => {
    const one = band({ tolerance: 1, cars: 300 });
    const two = band({ tolerance: 2, cars: 300 });
    const middle = 15;
    expect(one.heave[middle]).toBe(0);
    expectClose(one.upper[middle]! - one.lower[middle]!, 0, 1e-12, 'at ride height');
    for (const i of [0, 5, 25, 30]) {
      expect(one.lower[i]!).toBeLessThan(one.drawn[i]!);
      expect(one.upper[i]!).toBeGreaterThan(one.drawn[i]!);
      expectClose((two.upper[i]! - two.lower[i]!) / (one.upper[i]! - one.lower[i]!), 2, 0.1, `${i}`);
    }
    expect(two.worst).toBeGreaterThan(one.worst);
  });

  test('is as wide as single steps make it: the root of the sum of their squares', () => {
    // Both sides written out, so that each point is stepped on its own as the cars' points are off on their own.
    const drawn = resolveLayout(raw());
    const document = raw({
      axle: { ...drawn.axle, right: drawn.axle.right },
      location: { ...drawn.location },
    });
    const tolerance = 0.5;
    const at = 30;
    let sum = 0;
    for (const point of hardpoints(document)) {
      if (point.id === 'steering.box.sectorCentre') continue;
      for (let axis = 0; axis < 3; axis += 1) {
        const to = (direction: number) => {
          const moved = [...point.at] as [number, number, number];
          moved[axis]! += direction * tolerance;
          return swept(moveHardpoint(document, point.id, moved)).bumpSteer[at]!;
        };
        // Errors spread evenly over ± tolerance have a variance of a third of its square.
        sum += ((to(1) - to(-1)) / 2) ** 2 / 3;
      }
    }
    const { lower, upper } = band({ tolerance, cars: 1500, seed: 9 }, document);
    // Nineteen of twenty of many small errors lie within 1.96 standard deviations either way.
    expectClose((upper[at]! - lower[at]!) / (2 * 1.96 * Math.sqrt(sum)), 1, 0.08, 'width');
  });

  test('is the same for a seed, and near it for another', () => {
    expect(band({ seed: 3, cars: 60 })).toEqual(band({ seed: 3, cars: 60 }));
    const [a, b] = [band({ seed: 3, cars: 400 }), band({ seed: 4, cars: 400 })];
    expect(a).not.toEqual(b);
    expectClose(a.worst / b.worst, 1, 0.12);
  });

  test('cars that do not reach are counted; a layout that does not is named', () => {
    const { built, unreached } = band({ cars: 40 });
    expect({ built, unreached }).toEqual({ built: 40, unreached: 0 });
    const wild = band({ cars: 60, tolerance: 130, seed: 2 });
    expect(wild.unreached).toBeGreaterThan(0);
    for (const column of [wild.lower, wild.upper])
      for (const value of column) expect(Number.isFinite(value)).toBe(true);
    expect(toleranceBand(FREE)).toEqual({ ok: false, failure: 'no-travel' });
  });
});
