import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { describe, expect, test } from 'vitest';
import { leastClearances } from '../../shared-math/clearance/index.ts';
import { analyse, LIMITS } from '../../shared-math/findings/index.ts';
import {
  type LayoutDocument,
  parseLayout,
  readLayout,
  resolveLayout,
} from '../../shared-math/layout/index.ts';
import { prepareFrontEnd } from '../../shared-math/linkage/index.ts';
import { seededRandom } from '../../shared-math/solve/random.ts';
import { lockAngles, sweepTurn } from '../../shared-math/sweep/index.ts';
import {
  FREEDOMS,
  type FreeMove,
  freedomNamed,
  holdsOf,
  type TuneOptions,
  type TuneResult,
  tune,
  tuneRefusalWords,
} from '../../shared-math/tune/index.ts';
import { type Problem, searchLeast } from '../../shared-math/tune/search.ts';
import { DEGREE, expectClose } from '../support/close.ts';
import { CROSS_STEER, documentOf, LOCATIONS, rawLayout, SIDE_STEER } from '../support/layouts.ts';

/** Runs a generator to its end. */
function finished<Step, Result>(steps: Generator<Step, Result>): { result: Result; steps: Step[] } {
  const seen: Step[] = [];
  for (;;) {
    const { done, value } = steps.next();
    if (done) return { result: value, steps: seen };
    seen.push(value);
  }
}

function free(reach: Record<string, number | [number, number]>): FreeMove[] {
  return Object.entries(reach).map(([name, way]) => {
    const freedom = freedomNamed(name);
    if (!freedom) throw new Error(`no freedom ${name}`);
    const [from, to] = Array.isArray(way) ? way : [-way, way];
    return { freedom, from, to };
  });
}

function tuned(
  document: LayoutDocument,
  reach: Record<string, number | [number, number]>,
  options: TuneOptions = {},
): TuneResult {
  const { result } = finished(tune(document, free(reach), options));
  if (!result.ok) throw new Error(tuneRefusalWords(result.failure));
  return result.value;
}

function refused(document: LayoutDocument, moves: FreeMove[], options: TuneOptions = {}): string {
  const { result } = finished(tune(document, moves, options));
  return result.ok ? '' : tuneRefusalWords(result.failure);
}

function demonstration(name: string): LayoutDocument {
  const text = readFileSync(resolve(import.meta.dirname, '../../projects', `${name}.json`), 'utf8');
  const read = parseLayout(text);
  if (!read.ok) throw new Error(read.failure.reason);
  return read.value;
}

const raw = (over: Record<string, unknown> = {}) => documentOf(rawLayout(over));

describe('the search', () => {
  const search = (problem: Omit<Problem, 'penalty' | 'violation'> & Partial<Problem>, seed = 5) =>
    finished(searchLeast({ violation: () => 0, penalty: 10, ...problem }, seededRandom(seed))).result;

  test('finds the least of bowls, ridges and many dents, inside the bounds', () => {
    const bowl = search({
      from: [-9, -9, -9],
      to: [9, 9, 9],
      start: [5, 5, 5],
      value: ([x, y, z]) => (x! - 1) ** 2 + (y! + 2) ** 2 + (z! - 3) ** 2,
    });
    for (const [i, value] of [1, -2, 3].entries()) expectClose(bowl.at[i]!, value, 1e-3);
    const ridge = search({
      from: [-2, -2],
      to: [2, 2],
      start: [-1, 1.5],
      value: ([x, y]) => (1 - x!) ** 2 + 100 * (y! - x! * x!) ** 2,
    });
    expectClose(ridge.at[0]!, 1, 0.02);
    expectClose(ridge.at[1]!, 1, 0.04);
    const dents = search({
      from: [-4, -4],
      to: [4, 4],
      start: [3.1, -2.9],
      value: (x) =>
        x.reduce((sum, v) => sum + (v - 0.5) ** 2 + 2 * (1 - Math.cos(2 * Math.PI * (v - 0.5))), 0),
    });
    expectClose(dents.value, 0, 1e-3, 'dents');
    // A kink, as the worst of two poses makes it.
    const kink = search({ from: [-10], to: [20], start: [15], value: ([x]) => Math.abs(x! - Math.SQRT2) });
    expectClose(kink.at[0]!, Math.SQRT2, 1e-3);
  });

  test('stops at a bound, and at a condition', () => {
    const bounded = search({
      from: [2, -1],
      to: [5, 1],
      start: [4, 0],
      value: ([x, y]) => x! ** 2 + y! ** 2,
    });
    expectClose(bounded.at[0]!, 2, 1e-3);
    // Least distance from the origin on or beyond the line x + y = 1.
    const conditioned = search({
      from: [-3, -3],
      to: [3, 3],
      start: [-2, -2],
      value: ([x, y]) => x! ** 2 + y! ** 2,
      violation: ([x, y]) => Math.max(0, 1 - x! - y!),
    });
    expect(conditioned.violation).toBe(0);
    expectClose(conditioned.value, 0.5, 2e-3);
    const impossible = search({
      from: [0],
      to: [1],
      start: [0.2],
      value: ([x]) => x!,
      violation: ([x]) => 2 - x!,
    });
    expectClose(impossible.violation, 1, 1e-3, 'the least that is missing');
  });

  test('keeps what cannot move where it is, and answers alike for a seed', () => {
    const problem = {
      from: [1, -5],
      to: [1, 5],
      start: [1, 0],
      value: ([x, y]: readonly number[]) => (x! - 3) ** 2 + (y! - 2) ** 2,
    };
    expect(search(problem).at[0]).toBe(1);
    expect(search(problem, 8)).toEqual(search(problem, 8));
    const random = seededRandom(3);
    const drawn = Array.from({ length: 4000 }, random);
    expectClose(drawn.reduce((sum, value) => sum + value, 0) / 4000, 0.5, 0.02);
    expect(Math.min(...drawn)).toBeGreaterThanOrEqual(0);
    expect(Math.max(...drawn)).toBeLessThan(1);
    expect(seededRandom(4)()).not.toBe(seededRandom(3)());
  });

  test('tells its progress, and may be left', () => {
    const { steps } = finished(
      searchLeast(
        { from: [-1], to: [1], start: [0.5], value: ([x]) => x! ** 2, violation: () => 0, penalty: 1 },
        seededRandom(1),
      ),
    );
    const shares = steps.map(({ share }) => share);
    expect(shares).toEqual([...shares].sort((a, b) => a - b));
    expect(shares.at(-1)).toBe(1);
    const begun = tune(raw(), free({ 'box-up': 50 }));
    expect(begun.next().done).toBe(false);
    expect(begun.return(undefined as never).done).toBe(true);
  });
});

describe('a planar linkage whose best is known', () => {
  // Equal parallel bars: the axle moves without turning, every point of it on an arc of the bars' length. A drag link
  // parallel to the bars and as long turns nothing. The spring keeps it all in the plane; no roll.
  const bars = (dz: number) => ({
    kind: 'four-bar',
    left: {
      upper: { axle: [-45, 430, 395], frame: [-645, 430, 395 + dz] },
      lower: { axle: [-45, 430, 262], frame: [-645, 430, 262 + dz] },
    },
    right: 'mirror',
  });
  const off = (dx: number, dz: number, barsUp: number): LayoutDocument => {
    const ball = [-600 + dx, 484, 395 + barsUp + dz];
    const box = { ...SIDE_STEER.box, pitmanBall: ball, sectorCentre: [ball[0], 484, ball[2]! + 140] };
    return raw({
      location: bars(barsUp),
      steering: { ...SIDE_STEER, box, stopAngle: 25 },
      travel: { bump: 75, rebound: 75, roll: 0 },
    });
  };

  test.each([
    [40, 35, 0],
    [-50, -20, 0],
    [30, -45, 24],
  ])('box %d mm along and %d mm up of it, bars sloping by %d', (dx, dz, slope) => {
    const { moves, after, before, document } = tuned(
      off(dx, dz, slope),
      { 'box-along': 80, 'box-up': 80 },
      { holds: {} },
    );
    expect(before.worstHeave / DEGREE).toBeGreaterThan(0.3);
    expect(after.worstHeave / DEGREE).toBeLessThan(0.001);
    const by = Object.fromEntries(moves.map((move) => [move.name, move.by]));
    // Height is sharp; along it the valley is shallow.
    expectClose(by['box-up']!, -dz, 0.3, 'up');
    expectClose(by['box-along']!, -dx, 4, 'along');
    expect(document.steering.box.pitmanBall[1]).toBe(484);
  });

  test('by the pitman arm alone: it hangs straight down, so its length is the height', () => {
    const { moves, after } = tuned(off(0, 30, 0), { 'pitman-length': 60 }, { holds: {} });
    expectClose(moves[0]!.by, 30, 0.05);
    expect(after.worstHeave / DEGREE).toBeLessThan(0.001);
  });

  test('by the lateral bar’s frame end: level and parallel to the drag link, as long as it', () => {
    const steering = {
      ...CROSS_STEER,
      dragLinkBall: [-148, -628, 352],
      box: { ...CROSS_STEER.box, pitmanBall: [-148, 258, 352], sectorCentre: [-148, 262, 500] },
    };
    const document = raw({
      location: bars(0),
      lateral: { kind: 'bar', axle: [-72, -570, 352], frame: [-72, 330, 372] },
      steering,
      travel: { bump: 75, rebound: 75, roll: 0 },
    });
    const { after, before, moves } = tuned(
      document,
      { 'bar-frame-up': 40, 'bar-frame-across': 40 },
      { holds: {} },
    );
    expect(before.worstHeave / DEGREE).toBeGreaterThan(0.3);
    expect(after.worstHeave / DEGREE).toBeLessThan(0.01);
    expectClose(moves.find(({ name }) => name === 'bar-frame-up')!.by, -20, 0.5);
  });
});

describe('a tune', () => {
  const bad = demonstration('hairpins-box-too-low');

  test('of the bad demonstration brings bump steer down, inside its bounds, as a layout that reads', () => {
    const reach = { 'box-up': 100, 'box-along': [-300, 50] as [number, number], 'pitman-length': 20 };
    const result = tuned(bad, reach, { seed: 2 });
    expect(result.improved).toBe(true);
    expect(Math.max(result.after.worstHeave, result.after.worstRoll)).toBeLessThan(
      Math.max(result.before.worstHeave, result.before.worstRoll) / 10,
    );
    for (const { freedom, from, to } of free(reach)) {
      const { by } = result.moves.find(({ name }) => name === freedom.name)!;
      expect(by).toBeGreaterThanOrEqual(from);
      expect(by).toBeLessThanOrEqual(to);
      expectClose(by, Math.round(by * 100) / 100, 1e-9, 'told to a hundredth');
    }
    expect(readLayout(JSON.parse(JSON.stringify(result.document))).ok).toBe(true);
    // Nothing else was touched.
    const { steering: moved, shaft, ...rest } = result.document;
    const { steering: was, shaft: drawnShaft, ...drawn } = bad;
    expect(rest).toEqual(drawn);
    // The steering shaft's box end is bolted to the box and goes along; the column stays.
    expect(shaft?.column).toEqual(drawnShaft?.column);
    for (const axis of [0, 1, 2] as const)
      expect((shaft?.box.end[axis] ?? 0) - (drawnShaft?.box.end[axis] ?? 0)).toBeCloseTo(
        moved.box.sectorCentre[axis] - was.box.sectorCentre[axis],
        6,
      );
  });

  test('tells figures that are those of the documents', () => {
    const result = tuned(bad, { 'box-up': 90 });
    for (const [figures, document] of [
      [result.before, bad],
      [result.after, result.document],
    ] as const) {
      const analysis = analyse(resolveLayout(document));
      expect(figures.worstHeave).toBe(analysis.heaveSummary.worstBumpSteer);
      expect(figures.worstRoll).toBe(analysis.rollSummary.worstBumpSteer);
      expect(figures.ratio).toBe(analysis.turn.straightRatio);
      expect(figures.outOfReach).toBe(analysis.extremes!.outOfReach);
    }
  });

  test('is the same for the same seed, and as good for another', () => {
    const reach = { 'box-up': 90, 'box-along': 60 };
    const first = tuned(bad, reach, { seed: 11 });
    expect(tuned(bad, reach, { seed: 11 })).toEqual(first);
    const other = tuned(bad, reach, { seed: 12 });
    expectClose(other.after.worstHeave / first.after.worstHeave, 1, 0.02);
  });

  test('of what is at its best already leaves it there', () => {
    const done = tuned(bad, { 'box-up': 90 }).document;
    const again = tuned(done, { 'box-up': 90 });
    expectClose(again.moves[0]!.by, 0, 0.05);
    expect(again.after.worstHeave).toBeLessThanOrEqual(again.before.worstHeave * 1.001);
  });

  test('moves what each freedom says, and nothing it does not', () => {
    const cross = demonstration('four-bar-cross-steer');
    const at = (document: LayoutDocument) => ({
      box: document.steering.box.sectorCentre,
      end: document.steering.box.pitmanBall,
      ball: document.steering.dragLinkBall,
      ...(document.lateral.kind === 'bar'
        ? { axle: document.lateral.axle, frame: document.lateral.frame }
        : {}),
    });
    const moved: Record<string, string[]> = {
      box: ['box', 'end'],
      'link-end': ['end'],
      'arm-ball': ['ball'],
      'bar-axle': ['axle'],
      'bar-frame': ['frame'],
      'pitman-length': ['end'],
    };
    const axes = ['along', 'across', 'up'];
    for (const freedom of FREEDOMS) {
      expect(freedom.absent(cross)).toBeUndefined();
      const [before, after] = [at(cross), at(freedom.move(cross, 7))] as Record<string, readonly number[]>[];
      const stem = freedom.name.replace(/-(along|across|up)$/, '');
      const axis = axes.indexOf(freedom.name.split('-').at(-1)!);
      for (const key of Object.keys(before!)) {
        const change = after![key]!.map((value, i) => value - before![key]![i]!);
        if (!moved[stem]!.includes(key)) expect(change).toEqual([0, 0, 0]);
        else if (axis >= 0)
          expect(change.map((value) => Math.round(value) + 0)).toEqual(
            [0, 1, 2].map((i) => (i === axis ? 7 : 0)),
          );
      }
    }
    const longer = freedomNamed('pitman-length')!.move(cross, 7);
    // Square to the sector shaft.
    const arm = ({ steering: { box } }: LayoutDocument) => {
      const out = box.pitmanBall.map((value, i) => value - (box.sectorCentre[i] as number));
      const [x, y, z] = box.sectorAxis;
      const along = out.reduce((sum, value, i) => sum + value * (box.sectorAxis[i] as number), 0);
      return Math.sqrt(Math.hypot(...out) ** 2 - along ** 2 / (x * x + y * y + z * z));
    };
    expectClose(arm(longer) - arm(cross), 7, 1e-9);
  });
});

describe('what must hold', () => {
  const bad = demonstration('hairpins-box-too-low');
  const figures = (document: LayoutDocument) => {
    const layout = resolveLayout(document);
    const { turn, extremes } = analyse(layout);
    return {
      ratio: Math.abs(turn.straightRatio),
      lock: Math.min(...[turn.left, turn.right].map((lock) => lockAngles(layout, lock).inner)) / DEGREE,
      tilt: Math.max(...extremes!.tilts.map(({ tilt }) => tilt)) / DEGREE,
    };
  };

  test('holds, at the price of bump steer, and says what is to spare', () => {
    const document = raw({
      steering: {
        ...SIDE_STEER,
        box: { ...SIDE_STEER.box, pitmanBall: [-800, 484, 300], sectorCentre: [-800, 484, 420] },
      },
    });
    const reach = { 'pitman-length': [-60, 60] as [number, number] };
    const loose = tuned(document, reach, { holds: {} });
    const ratio = figures(loose.document).ratio;
    const held = tuned(document, reach, { holds: { ratio: { least: ratio * 0.7, most: ratio * 0.9 } } });
    const after = figures(held.document).ratio;
    expect(after).toBeLessThanOrEqual(ratio * 0.9 + 1e-6);
    // The least bump steer would be beyond the condition, so it is taken right to it.
    expectClose(after, ratio * 0.9, 0.02);
    expect(held.after.worstHeave).toBeGreaterThan(loose.after.worstHeave);
    const told = held.holds.find(({ name }) => name === 'ratio')!;
    expectClose(told.after, Math.min(ratio * 0.9 - after, after - ratio * 0.7), 1e-6);
    expect(told.after).toBeGreaterThanOrEqual(0);
  });

  test('lock and tilt, where they are asked for', () => {
    const drawn = figures(bad);
    const result = tuned(
      bad,
      { 'box-up': 80, 'pitman-length': 60 },
      { holds: { lock: { least: drawn.lock - 1 }, tilt: { most: drawn.tilt + 1 } } },
    );
    const after = figures(result.document);
    expect(after.lock).toBeGreaterThanOrEqual(drawn.lock - 1 - 1e-6);
    expect(after.tilt).toBeLessThanOrEqual(drawn.tilt + 1 + 1e-6);
    expect(result.holds.map(({ name }) => name).sort()).toEqual(['lock', 'reach', 'tilt']);
  });

  test('where nothing is asked, what is within the limits as drawn stays so', () => {
    const result = tuned(bad, { 'box-up': 100, 'pitman-length': 100 });
    const after = figures(result.document);
    expect(after.ratio).toBeGreaterThanOrEqual(LIMITS.ratioLeast.usual - 1e-6);
    expect(after.ratio).toBeLessThanOrEqual(LIMITS.ratioMost.usual + 1e-6);
    expect(after.lock).toBeGreaterThanOrEqual(LIMITS.lockLeast.usual - 1e-6);
    for (const { after: slack } of result.holds) expect(slack).toBeGreaterThanOrEqual(-1e-9);
  });

  test('an obstacle where the box would go best: it keeps clear of it', () => {
    // Bars well away from everything; a tube beside the drag link's best line.
    const document = raw({
      location: {
        kind: 'four-bar',
        left: {
          upper: { axle: [-45, 370, 395], frame: [-645, 370, 395] },
          lower: { axle: [-45, 370, 262], frame: [-645, 370, 262] },
        },
        right: 'mirror',
      },
      steering: {
        ...SIDE_STEER,
        dragLinkBall: [0, 440, 395],
        box: { ...SIDE_STEER.box, pitmanBall: [-600, 440, 330], sectorCentre: [-600, 440, 470] },
        stopAngle: 18,
      },
      travel: { bump: 40, rebound: 40, roll: 0 },
      obstacles: [
        {
          name: 'Tube',
          role: 'header',
          kind: 'capsule',
          from: [-520, 380, 440],
          to: [-520, 520, 440],
          radius: 15,
          mirrored: false,
        },
      ],
    });
    const reach = { 'box-up': 90 };
    const gap = (of: LayoutDocument) => {
      const frontEnd = prepareFrontEnd(resolveLayout(of));
      const turn = sweepTurn(frontEnd, 0, 0, 2);
      const { pairs } = leastClearances(frontEnd, { right: turn.right.handwheel, left: turn.left.handwheel });
      return pairs.find(({ a, b }) => a === 'drag-link' && b === 'obstacle-0')!.distance;
    };
    const loose = tuned(document, reach, { holds: {} });
    const need = gap(loose.document) + 15;
    expect(gap(document)).toBeGreaterThan(need);
    const kept = tuned(document, reach, {
      holds: { clearance: { moving: need, tyre: 0, strict: false } },
    });
    expect(gap(kept.document)).toBeGreaterThanOrEqual(need - 1e-6);
    // Some pair is what stops it from going on to the best.
    expectClose(kept.holds.find(({ name }) => name === 'clearance')!.after, 0, 1, 'slack');
    expect(kept.after.worstHeave).toBeGreaterThan(loose.after.worstHeave);
    expect(kept.after.worstHeave).toBeLessThan(kept.before.worstHeave);
  });

  test('the shop’s own limits are the usual ones of the holds', () => {
    expect(holdsOf({ ratioLeast: 9 }).ratio).toEqual({ least: 9, most: LIMITS.ratioMost.usual });
    expect(holdsOf({}).clearance).toEqual({ moving: 12.7, tyre: 25.4, strict: false });
  });
});

describe('bad input is told plainly', () => {
  const document = raw();
  const spring = freedomNamed('bar-axle-up')!;
  const up = freedomNamed('box-up')!;

  test('nothing free, bounds crossed, given twice, not there', () => {
    expect(refused(document, [])).toBe('nothing is free to move');
    expect(refused(document, [{ freedom: up, from: 0, to: 0 }])).toBe('nothing is free to move');
    expect(refused(document, [{ freedom: up, from: 10, to: -10 }])).toBe(
      'the bounds of box-up are crossed: from 10 mm to -10 mm',
    );
    expect(refused(document, [{ freedom: up, from: Number.NaN, to: 4 }])).toMatch(
      /^the bounds of box-up are crossed/,
    );
    expect(refused(document, free({ 'box-up': 5 }).concat(free({ 'box-up': 9 })))).toBe(
      'box-up is given twice',
    );
    expect(refused(document, [{ freedom: spring, from: -5, to: 5 }])).toBe(
      'bar-axle-up: the spring keeps the axle centred: there is no lateral bar to move',
    );
  });

  test('what cannot hold is named, with how much is missing at best', () => {
    expect(refused(document, free({ 'box-up': 20 }), { holds: { circle: { most: 5000 } } })).toMatch(
      /^not everything can hold within these bounds; at best misses the turning circle by \d+\.\d mm$/,
    );
    expect(
      refused(document, free({ 'box-up': 20 }), { holds: { lock: { least: 60 }, ratio: { most: 3 } } }),
    ).toMatch(/the overall ratio by \d+\.\d and the lock by \d+\.\d°$/);
    expect(
      refused(document, free({ 'box-up': 5 }), {
        holds: { clearance: { moving: 400, tyre: 400, strict: true } },
      }),
    ).toMatch(/the clearances by \d+(\.\d)? mm$/);
  });

  test('a layout that does not steer as drawn has nothing to tune', () => {
    const loose = raw({
      location: { kind: 'hairpins', left: { framePivot: [0, 415, 330] }, right: 'mirror' },
    });
    expect(refused(loose, free({ 'box-up': 20 }))).toBe(
      'the layout does not steer as drawn, so there is nothing to tune',
    );
  });

  test('a bound that would leave a link no length is searched around', () => {
    const short = raw({
      location: LOCATIONS.wishbone,
      steering: {
        ...SIDE_STEER,
        box: { ...SIDE_STEER.box, pitmanBall: [-800, 500, 480], sectorCentre: [-800, 500, 490] },
      },
    });
    const result = tuned(short, { 'pitman-length': [-30, 60] }, { holds: {} });
    expect(result.after.worstHeave).toBeLessThan(result.before.worstHeave);
  });
});
