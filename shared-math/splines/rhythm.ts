import { solveSymmetric } from '../solve/small-symmetric.ts';

/** How one tooth's wave around a ring keeps step with a count. */
export interface Rhythm {
  /** Mean of cos of what is left of the phases, weighed by strength: 1 in step everywhere, 0 or less where it is not. */
  readonly agreement: number;
  /** Share of the teeth that are strong enough and within an eighth of a turn of their step. */
  readonly inStep: number;
  /** For each tooth: strength of its wave, and what is left of its phase, rad. */
  readonly strength: Float64Array;
  readonly off: Float64Array;
}

/** Share of the usual strength below which a tooth's wave tells nothing. */
const FAINT = 0.35;
/** Phase of the rim's shape: constant, once and twice around. */
const SHAPE = 5;
/** Entries of a symmetric matrix of that size. */
const TRIANGLE = (SHAPE * (SHAPE + 1)) / 2;

/**
 * Whether a ring keeps step with a count of teeth, tooth by tooth.
 *
 * Within a window of two teeth (Hann) at each tooth j the wave of `count` has a strength and a phase. If the count is
 * right the phases stand still but for the rim's shape: a centre a little off moves them once around, an ellipse not met
 * quite twice around. That is fitted (constant, cos, sin of once and twice, weighed by strength, by Gauss-Newton on the
 * wrapped rest) and taken out. With a count that is wrong by n the phases run n turns around, which no such shape can
 * follow: most teeth fall out of step.
 * Shapes:   `ring` holds a whole number of samples for each tooth; results have one entry for each tooth.
 * Units:    rad.
 * Source:   own derivation.
 * Checked:  tests/thorough/splines.test.ts.
 */
export function rhythmOf(ring: Float64Array, count: number): Rhythm {
  const samples = ring.length;
  const width = Math.round(samples / count);
  const strength = new Float64Array(count);
  const phase = new Float64Array(count);
  for (let j = 0; j < count; j += 1) {
    const middle = Math.round((j * samples) / count);
    let [re, im, mean, weight] = [0, 0, 0, 0];
    for (let pass = 0; pass < 2; pass += 1)
      for (let i = 1 - width; i < width; i += 1) {
        const hann = 0.5 + 0.5 * Math.cos((Math.PI * i) / width);
        const value = ring[(((middle + i) % samples) + samples) % samples] as number;
        if (pass === 0) {
          mean += hann * value;
          weight += hann;
          continue;
        }
        const angle = (2 * Math.PI * count * (middle + i)) / samples;
        re += hann * (value - mean / weight) * Math.cos(angle);
        im -= hann * (value - mean / weight) * Math.sin(angle);
      }
    strength[j] = Math.hypot(re, im);
    phase[j] = Math.atan2(im, re);
  }
  const off = withoutShape(strength, phase);
  const usual = Float64Array.from(strength).sort()[count >> 1] as number;
  let [agreement, weight, inStep] = [0, 0, 0];
  for (let j = 0; j < count; j += 1) {
    // A glint or an edge of dirt has no more say than two teeth.
    const say = Math.min(strength[j] as number, 2 * usual);
    agreement += say * Math.cos(off[j] as number);
    weight += say;
    if ((strength[j] as number) > FAINT * usual && Math.abs(off[j] as number) < Math.PI / 4) inStep += 1;
  }
  return { agreement: weight > 0 ? agreement / weight : 0, inStep: inStep / count, strength, off };
}

const wrapped = (angle: number) => Math.atan2(Math.sin(angle), Math.cos(angle));

/** The phases less the constant, and the once and twice around, that fit them best. */
function withoutShape(strength: Float64Array, phase: Float64Array): Float64Array {
  const count = phase.length;
  const usual = Float64Array.from(strength).sort()[count >> 1] as number;
  const row = (j: number) => {
    const angle = (2 * Math.PI * j) / count;
    return [1, Math.cos(angle), Math.sin(angle), Math.cos(2 * angle), Math.sin(2 * angle)];
  };
  const shape = new Float64Array(SHAPE);
  let [re, im] = [0, 0];
  for (let j = 0; j < count; j += 1) {
    const say = Math.min(strength[j] as number, 2 * usual);
    re += say * Math.cos(phase[j] as number);
    im += say * Math.sin(phase[j] as number);
  }
  shape[0] = Math.atan2(im, re);
  const off = new Float64Array(count);
  const rest = () => {
    for (let j = 0; j < count; j += 1) {
      const fitted = row(j).reduce((sum, value, k) => sum + value * (shape[k] as number), 0);
      off[j] = wrapped((phase[j] as number) - fitted);
    }
  };
  rest();
  for (let step = 0; step < 6; step += 1) {
    const normal = new Float64Array(TRIANGLE);
    const gradient = new Float64Array(SHAPE);
    for (let j = 0; j < count; j += 1) {
      const own = row(j);
      // What is far out of step pulls less.
      const left = off[j] as number;
      const say = Math.min(strength[j] as number, 2 * usual) / (1 + (left / 0.7) ** 4);
      for (let a = 0, at = 0; a < SHAPE; a += 1) {
        for (let b = 0; b <= a; b += 1, at += 1)
          normal[at] = (normal[at] as number) + say * (own[a] as number) * (own[b] as number);
        gradient[a] = (gradient[a] as number) - say * (own[a] as number) * left;
      }
    }
    const change = new Float64Array(SHAPE);
    if (!(solveSymmetric(SHAPE, normal, gradient, 0, new Float64Array(TRIANGLE), change) > 0)) break;
    for (let a = 0; a < SHAPE; a += 1) shape[a] = (shape[a] as number) + (change[a] as number);
    rest();
  }
  return off;
}
