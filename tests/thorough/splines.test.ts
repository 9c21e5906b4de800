import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  circularRim,
  countTeeth,
  identifySpline,
  type SplineMeasure,
  STANDARD_PITCHES,
  type ToothCount,
  TRUSTED_FROM,
  unwrapBand,
} from '../../shared-math/splines/index.ts';
import { expectClose } from '../support/close.ts';
import { type RenderedSpline, renderSpline } from '../support/rendered-spline.ts';

const IN = 25.4;
const MM = { unit: 'mm', fraction: 0 } as const;

function measured(over: Partial<SplineMeasure>): SplineMeasure {
  return { outsideDiameter: 19.05, counted: 23, over: 'circle', missing: 0, uncertainty: 0.05, ...over };
}

function identified(over: Partial<SplineMeasure>) {
  const outcome = identifySpline(measured(over), MM);
  if (!outcome.ok) throw new Error(outcome.failure);
  return outcome.value;
}

describe('identifying', () => {
  test('every standard form, measured as made, is found, before all that does not fit; crests a little low too', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 8, max: 60 }),
        fc.constantFrom(...STANDARD_PITCHES),
        fc.double({ min: 0, max: 0.009, noNaN: true }),
        (teeth, pitch, low) => {
          const made = ((teeth + 1) * IN) / pitch;
          fc.pre(made > 8 && made < 120);
          const { candidates, verdict } = identified({ outsideDiameter: made * (1 - low), counted: teeth });
          const own = candidates.filter((entry) => entry.pitch === pitch && entry.teeth === teeth);
          expect(own.map(({ fit, note, countDifference }) => [fit, note, countDifference])).toEqual(
            // 30° and 37.5° to 48/96, 45° from 10/20: they cannot be distinguished by size.
            own.map(() => ['fits', '', 0]),
          );
          expect(own).toHaveLength((pitch <= 48 ? 2 : 0) + (pitch >= 10 ? 1 : 0));
          for (const { difference } of own) expectClose(difference, -low * made, 1e-9);
          const fitting = candidates.filter(
            ({ fit, countDifference }) => fit === 'fits' && countDifference === 0,
          );
          expect(verdict).toBe(fitting.length > 1 ? 'choose' : 'match');
          expect(candidates.slice(0, fitting.length)).toEqual(fitting);
        },
      ),
      { seed: 630, numRuns: 200 },
    );
  });

  test('candidates are in order of fit, and the differences between neighbours are theirs', () => {
    const { candidates, neighbours, warnings } = identified({ outsideDiameter: 0.7708 * IN, counted: 36 });
    expect(candidates.length).toBeGreaterThan(1);
    for (const { first, second, difference, tooClose } of neighbours) {
      expectClose(
        difference,
        candidates[second]!.outsideDiameter - candidates[first]!.outsideDiameter,
        1e-12,
      );
      expect(tooClose).toBe(Math.abs(difference) <= 0.05);
    }
    expect(warnings.join(' ')).toMatch(
      /30° and 36 teeth, 48\/96 pitch, 37\.5° are one and the same over the teeth/,
    );
  });

  test('a rough caliper makes neighbours too close, a fine one does not; the sentence gives both figures', () => {
    // 24 teeth of module 1 by ISO 4156 measure 25 mm over the teeth at 30°, 24.9 at 37.5°.
    const both = { outsideDiameter: 24.9, counted: 24 };
    const pairs = (uncertainty: number) => {
      const { candidates, neighbours, warnings } = identified({ ...both, uncertainty });
      const name = (at: number) => candidates[at]!.name;
      const pair = neighbours.find(
        ({ first, second }) =>
          [name(first), name(second)].sort().join() === '24 teeth, module 1, 30°,24 teeth, module 1, 37.5°',
      );
      return { pair, warnings: warnings.join(' ') };
    };
    const rough = pairs(0.15);
    expectClose(Math.abs(rough.pair!.difference), 0.1, 1e-9);
    expect(rough.pair!.tooClose).toBe(true);
    expect(rough.warnings).toContain('differ by 0.10 mm, less than the caliper tells (0.15 mm)');
    expect(pairs(0.02).warnings).not.toContain('differ by 0.10 mm');
  });

  test('half of an odd number: the odd neighbour is offered, and a recount asked for', () => {
    for (const half of [11, 12]) {
      const { verdict, candidates, sentence, warnings } = identified({ counted: half, over: 'half' });
      expect(verdict).toBe('recount');
      expect(candidates[0]!.teeth).toBe(23);
      expect(sentence).toMatch(/Count once more, all the way round, or count the other half too/);
      expect(warnings.join(' ')).toMatch(/odd number of teeth has no half/);
    }
  });

  test('both halves counted are a full count; halves that differ by more than one are asked for again', () => {
    expect(identified({ counted: 11, over: 'half', otherHalf: 12 })).toMatchObject({
      teeth: 23,
      verdict: 'choose',
    });
    expect(identified({ counted: 11, over: 'half', otherHalf: 12 }).warnings.join(' ')).not.toMatch(
      /odd number/,
    );
    const refused = (over: Partial<SplineMeasure>) => identifySpline(measured(over), MM);
    expect(refused({ counted: 11, over: 'half', otherHalf: 13 })).toMatchObject({
      ok: false,
      failure: expect.stringMatching(/the halves differ by more than a tooth, 11 and 13/),
    });
    expect(refused({ counted: 23, otherHalf: 12 })).toMatchObject({ ok: false });
  });

  test('a diameter over a form’s asks for the caliper, one under it for a trial fit, and beyond it names none', () => {
    const made = (37 / 48) * IN;
    const fits = (off: number) =>
      identified({ outsideDiameter: made + off, counted: 36 }).candidates.find(
        ({ pitch, teeth }) => pitch === 48 && teeth === 36,
      )?.fit;
    expect([0.049, 0.06, 0.3, 0.31].map(fits)).toEqual(['fits', 'over', 'over', undefined]);
    expect([-0.28, -0.29, -0.83, -0.84].map(fits)).toEqual(['fits', 'under', 'under', undefined]);
  });

  test('blanks are counted in, on the circle and on the half', () => {
    const whole = identified({ outsideDiameter: 0.7708 * IN, counted: 32, missing: 4 });
    expect(whole.teeth).toBe(36);
    expect(whole.warnings.join(' ')).toMatch(/4 missing teeth are counted in/);
    expect(identified({ outsideDiameter: 0.7708 * IN, counted: 17, missing: 1, over: 'half' }).teeth).toBe(
      36,
    );
  });

  test.each<[string, Partial<SplineMeasure>, RegExp]>([
    ['no diameter', { outsideDiameter: 0 }, /5 to 150 mm/],
    ['not a number', { outsideDiameter: Number.NaN }, /5 to 150 mm/],
    ['too many teeth', { counted: 201 }, /3 to 200/],
    ['half a tooth', { counted: 11.5 }, /whole number/],
    ['more missing than counted', { missing: 24 }, /no more than those counted/],
    ['a caliper of nothing', { uncertainty: -1 }, /0 to 2 mm/],
  ])('%s is refused in one sentence', (_, over, reason) => {
    const outcome = identifySpline(measured(over), MM);
    expect(outcome).toMatchObject({ ok: false, failure: expect.stringMatching(reason) });
  });
});

describe('counting on a picture', () => {
  function counted(spec: RenderedSpline, off: readonly [number, number] = [0, 0], size = 1): ToothCount {
    const { image, circle } = renderSpline(spec);
    const outcome = countTeeth(image, {
      x: circle.x + off[0] * circle.radius,
      y: circle.y + off[1] * circle.radius,
      radius: circle.radius * size,
    });
    if (!outcome.ok) throw new Error(outcome.failure);
    return outcome.value;
  }

  test.each<[string, RenderedSpline]>([
    ['17 coarse teeth', { teeth: 17, root: 0.85 }],
    ['23 teeth with noise', { teeth: 23, noise: 25 }],
    ['30 teeth, lit from one side', { teeth: 30, shade: 0.6, noise: 12 }],
    ['36 dark teeth on a light ground', { teeth: 36, metal: 45, ground: 210, noise: 10 }],
    ['48 fine teeth', { teeth: 48, root: 0.92, noise: 15, shade: 0.3 }],
    ['79 very fine teeth', { teeth: 79, root: 0.95, noise: 6 }],
    ['36 teeth on a small picture', { teeth: 36, size: 150, noise: 8 }],
    ['23 teeth with two bright edges each', { teeth: 23, edges: true, noise: 8 }],
  ])('%s: the count, and sure of it', (_, spec) => {
    const { count, confidence, gaps } = counted(spec);
    expect(count).toBe(spec.teeth);
    expect(confidence).toBeGreaterThan(TRUSTED_FROM);
    expect(gaps).toEqual([]);
  });

  test.each<[number, number, number]>([
    [0.03, -0.02, 1],
    [-0.045, 0.03, 1.01],
    [0, 0.05, 0.98],
  ])('a mark off the centre by %d and %d of the radius, rim %d: the centre is found', (dx, dy, size) => {
    for (const teeth of [36, 48]) {
      const spec = { teeth, noise: 12, shade: 0.3, missing: [7], seed: teeth };
      const { circle: truth } = renderSpline(spec);
      const { count, rim, gaps } = counted(spec, [dx, dy], size);
      expect(count).toBe(teeth);
      expectClose(rim.x, truth.x, 0.6, 'x');
      expectClose(rim.y, truth.y, 0.6, 'y');
      expect(gaps).toHaveLength(1);
    }
  });

  test('teeth are marked where they are', () => {
    for (const spec of [
      { teeth: 20, turn: 0.1 },
      { teeth: 36, turn: -0.05, metal: 40, ground: 200 },
    ]) {
      const { teeth } = counted(spec);
      const step = (2 * Math.PI) / spec.teeth;
      for (const angle of teeth) {
        const phase = (angle - spec.turn) / step;
        expectClose(phase - Math.round(phase), 0, 0.03, 'share of a tooth');
      }
      expect(new Set([...teeth].map((angle) => Math.round((angle - spec.turn) / step))).size).toBe(
        spec.teeth,
      );
    }
  });

  test.each<[string, RenderedSpline, number, 'missing-tooth' | 'filled-space', number]>([
    ['a missing tooth', { teeth: 36, missing: [5], noise: 10 }, 5, 'missing-tooth', 1],
    ['a filled space', { teeth: 30, filled: [11], noise: 10 }, 11.5, 'filled-space', 1],
    ['a missing tooth across the start', { teeth: 24, missing: [0], noise: 10 }, 0, 'missing-tooth', 1],
    ['a notch of four teeth', { teeth: 36, missing: [3, 4, 5, 6], shade: 0.4 }, 4.5, 'missing-tooth', 4],
    ['dark metal', { teeth: 36, missing: [9], metal: 40, ground: 200 }, 9, 'missing-tooth', 1],
  ])('%s is found as the gap, and the full count told', (_, spec, place, kind, teeth) => {
    const { count, gaps, confidence } = counted(spec);
    expect(count).toBe(spec.teeth);
    // Four teeth gone leave the next count too near to be sure; one or a filled space do not.
    if (teeth === 1) expect(confidence).toBeGreaterThan(TRUSTED_FROM);
    expect(gaps).toHaveLength(1);
    expect(gaps[0]).toMatchObject({ kind, teeth });
    const off = (gaps[0]!.angle * spec.teeth) / (2 * Math.PI) - place;
    expectClose(off - spec.teeth * Math.round(off / spec.teeth), 0, 0.2, 'teeth from its place');
  });

  test('two blanks are two gaps', () => {
    const { gaps } = counted({ teeth: 36, missing: [4], filled: [20] });
    expect(gaps.map(({ kind }) => kind).sort()).toEqual(['filled-space', 'missing-tooth']);
  });

  test('the more noise, the less confidence; pure noise is not trusted', () => {
    const by = (noise: number) => counted({ teeth: 36, noise, size: 150 }).confidence;
    expect(by(5)).toBeGreaterThan(by(100));
    expect(by(250)).toBeLessThan(TRUSTED_FROM);
    let state = 9;
    const data = Uint8Array.from({ length: 200 * 200 }, () => {
      state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
      return state >>> 24;
    });
    const outcome = countTeeth({ data, width: 200, height: 200 }, { x: 100, y: 100, radius: 80 });
    expect(outcome.ok && outcome.value.confidence).toBeLessThan(0.8 * TRUSTED_FROM);
  });

  test('what cannot be counted is named', () => {
    const { image } = renderSpline({ teeth: 36 });
    const even = { data: new Uint8Array(320 * 320).fill(90), width: 320, height: 320 };
    const failure = (picture: typeof image, x: number, y: number, radius: number) => {
      const outcome = countTeeth(picture, { x, y, radius });
      return outcome.ok ? 'counted' : outcome.failure;
    };
    expect(failure(even, 160, 160, 120)).toBe('no-teeth');
    expect(failure(image, 160, 160, 10)).toBe('too-small');
    expect(failure(image, 300, 160, 120)).toBe('off-picture');
    expect(failure(image, Number.NaN, 160, 120)).toBe('off-picture');
    expect(failure(image, 160, 160, Number.NaN)).toBe('too-small');
  });

  test('unwrapping reads between pixels: a picture that brightens to the right is a cosine around the ring', () => {
    const width = 101;
    const data = Uint8Array.from({ length: width * width }, (_, i) => 2 * (i % width));
    const ring = new Float64Array(72);
    unwrapBand({ data, width, height: width }, circularRim({ x: 50, y: 50, radius: 40.3 }), 1, 1, 1, ring);
    for (let i = 0; i < 72; i += 1)
      expectClose(ring[i]!, 100 + 80.6 * Math.cos((2 * Math.PI * i) / 72), 1e-9);
  });
});
