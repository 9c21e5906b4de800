import { failed, type Outcome, succeeded } from '../outcome.ts';
import { findGaps, type SplineGap } from './blanks.ts';
import { faceOf, unwrapAgainstFace } from './face.ts';
import { type RingSpectrum, ringCounter, strongestWave, waveOf } from './periodicity.ts';
import { BANDS, OFF_CENTRE, proposals } from './proposals.ts';
import { rhythmOf } from './rhythm.ts';
import { circularRim, type MarkedCircle, type RimEllipse, rimRadius } from './rim.ts';
import { type GreyImage, meanAround, unwrapBand } from './unwrap.ts';

/** A count of teeth from a picture, with what the eye needs to check it. */
export interface ToothCount {
  /** Around the whole circle, those that a blank takes away counted in. */
  readonly count: number;
  /** 0 to 1: how far the teeth keep step with this count and no other; below TRUSTED_FROM it is a guess. */
  readonly confidence: number;
  /** The rim as the teeth have it; the marks may be a little off. */
  readonly rim: RimEllipse;
  /** Where the teeth are about the shaft, rad, clockwise as seen from the picture's right; one for each tooth, blanks too. */
  readonly teeth: Float64Array;
  readonly gaps: readonly SplineGap[];
  /** The unwrapped ring that was counted: mean grey at evenly spaced angles of the shaft. */
  readonly ring: Float64Array;
  /** The band that was unwrapped, as shares of the rim. */
  readonly band: readonly [inner: number, outer: number];
  /** The next best counts and how well they keep step against the best, strongest first. */
  readonly rivals: readonly { readonly count: number; readonly share: number }[];
}

export type CountFailure =
  /** The marked rim reaches out of the picture. */
  | 'off-picture'
  /** The rim is too small to hold teeth that can be distinguished. */
  | 'too-small'
  /** The ring is even: there is nothing to count. */
  | 'no-teeth';

/**
 * Below this confidence a count is not to be relied on. Over 300 rendered photos (npm run spline-trust) those called clear
 * from 0.5 on were right in 985 of 1000: teeth lost in glare stood at up to 0.67. From here on one was wrong.
 */
export const TRUSTED_FROM = 0.68;

/** Below this confidence plain greys are tried too. */
const PLAIN_BELOW = 0.5;

const ROWS = 3;
/** Counts that are given their own best rim and judged tooth by tooth. */
const PROPOSALS = 5;
/** Samples of the ring for each tooth when it is judged tooth by tooth. */
const PER_TOOTH = 32;
const SAMPLES = 720;
const LEAST_TEETH = 8;
const MOST_TEETH = 120;
/** Pixels. Fewer for each tooth cannot be distinguished from noise. */
const PIXELS_A_TOOTH = 3;
const SMALLEST_RADIUS = 25;
/** Grey levels. A weaker rhythm than this is none. */
const FAINTEST = 0.4;
/** Share of the strongest wave that half as many waves need to be taken for the teeth: two bright edges on each. */
const HALF_RHYTHM = 0.02;

/** How a ring is laid straight: plainly by its greys, or by how far they are from the face's. */
type Unwrap = (rim: RimEllipse, band: readonly [number, number], rows: number, out: Float64Array) => void;

/**
 * Counts the teeth of a splined shaft's end on a picture whose rim is marked.
 *
 * Rings of the picture are laid straight, as how far they are from the grey of the end's face, and waves that fit around the
 * ring a whole number of times are weighed against each other. Every likely count is given the rim near the marked one
 * in which its wave is clearest, since marks are a little off and an end is seen off square; then the teeth are gone
 * through one by one, and the count is the one with which they keep step (`rhythmOf`), or half of it where half as many
 * waves stand out too (teeth with two bright edges). Where that is not plain, as on teeth that shine at their edges only,
 * plain greys are tried too. Blanks do not change the count, and are found as places where the rhythm fails.
 * Frame:    the picture's pixels, x right, y down. Units: pixels, rad. The picture is not changed.
 * Outcomes: ok (look at `confidence`); off-picture; too-small; no-teeth.
 * Source:   own derivation; no randomness.
 * Checked:  tests/thorough/splines.test.ts (rendered ends: noise, light from a side, blanks, marks off centre);
 *           tests/thorough/spline-trust.test.ts (how often a count called clear is right, over rendered photos).
 */
export function countTeeth(
  image: GreyImage,
  marked: MarkedCircle | RimEllipse,
): Outcome<ToothCount, CountFailure> {
  const rim = 'radius' in marked ? circularRim(marked) : marked;
  const radius = rimRadius(rim);
  const slack = OFF_CENTRE * radius;
  if (!(radius >= SMALLEST_RADIUS)) return failed('too-small');
  if (
    !(rim.x - rim.xx >= -slack && rim.y - rim.yy >= -slack) ||
    !(rim.x + rim.xx <= image.width - 1 + slack && rim.y + rim.yy <= image.height - 1 + slack)
  )
    return failed('off-picture');
  const face = faceOf(image, rim);
  const best = bestCount(rim, (at, [inner, outer], rows, out) =>
    unwrapAgainstFace(image, face, at, inner, outer, rows, out),
  );
  const plainly: Unwrap = (at, [inner, outer], rows, out) => unwrapBand(image, at, inner, outer, rows, out);
  const plain = best && best.confidence >= PLAIN_BELOW ? undefined : bestCount(rim, plainly);
  const taken = plain && plain.confidence > (best?.confidence ?? 0) ? plain : best;
  if (!taken || !faintly(image, taken.rim, taken.band)) return failed('no-teeth');
  const { count, confidence, band, ring, rivals } = taken;

  const wave = waveOf(ring, count);
  // Off the face a tooth is where the ring is low; in plain greys where it is as the face is.
  const brightTeeth =
    taken === best || meanAround(image, taken.rim, 0.7) < meanAround(image, taken.rim, 1.08);
  const first = (Math.atan2(-wave.im, wave.re) + (brightTeeth ? Math.PI : 0)) / count;
  const turn = 2 * Math.PI;
  return succeeded({
    count,
    confidence,
    rim: taken.rim,
    teeth: Float64Array.from(
      { length: count },
      (_, i) => (((first + (turn * i) / count) % turn) + turn) % turn,
    ),
    gaps: taken === best ? findGaps({ image, face, rim: taken.rim, count, first, ring }) : [],
    ring,
    band,
    rivals,
  });
}

/** Whether there is any rhythm in the greys themselves: an even picture has none, however its grain falls. */
function faintly(image: GreyImage, rim: RimEllipse, band: readonly [number, number]): boolean {
  const ring = new Float64Array(SAMPLES);
  unwrapBand(image, rim, band[0], band[1], ROWS, ring);
  const most = Math.min(MOST_TEETH, SAMPLES / 4);
  return 2 * Math.sqrt(strongestWave(ringCounter(SAMPLES, LEAST_TEETH, most)(ring)).power) > FAINTEST;
}

/** The count with which a ring keeps step best. */
function bestCount(marked: RimEllipse, unwrap: Unwrap) {
  const most = Math.min(MOST_TEETH, Math.floor((2 * Math.PI * rimRadius(marked) * 0.9) / PIXELS_A_TOOTH));
  const spectrum = ringCounter(SAMPLES, LEAST_TEETH, most);
  const coarse = new Float64Array(SAMPLES);
  const weigh = (rim: RimEllipse, band: readonly [number, number]) => {
    unwrap(rim, band, ROWS, coarse);
    return spectrum(coarse);
  };
  const judged = proposals(marked, weigh, PROPOSALS).map((entry) => {
    // All bands are asked for the half rhythm: where two edges happen to stand evenly, one band alone is deaf to it.
    const everywhere = new Float64Array(most + 1);
    for (const band of BANDS)
      weigh(entry.rim, band).power.forEach((power, k) => {
        everywhere[k] = (everywhere[k] as number) + power;
      });
    const count = halved({ power: everywhere, least: LEAST_TEETH, most }, entry.count);
    const ring = new Float64Array(count * PER_TOOTH);
    unwrap(entry.rim, entry.band, 2 * ROWS, ring);
    const own = new Float64Array(entry.count * PER_TOOTH);
    unwrap(entry.rim, entry.band, 2 * ROWS, own);
    const { agreement, inStep } = rhythmOf(own, entry.count);
    return { ...entry, count, ring, step: Math.max(agreement, 0) * inStep };
  });
  const clearest = Math.max(...judged.map(({ clarity }) => clarity));
  const ranked = judged
    .map((entry) => ({ ...entry, score: entry.step * Math.sqrt(entry.clarity / clearest) }))
    .sort((a, b) => b.score - a.score);
  const [best] = ranked;
  if (!best || !(best.score > 0)) return undefined;
  const rivals = ranked
    .filter(({ count }) => count !== best.count && count % best.count !== 0)
    .map(({ count, score }) => ({ count, share: score / best.score }));
  return { ...best, rivals, confidence: best.step * (1 - (rivals[0]?.share ?? 0) ** 2) };
}

/** Half of the waves, where half as many stand out from their neighbours; else all of them. */
function halved({ power, least }: RingSpectrum, waves: number): number {
  const half = waves / 2;
  if (!Number.isInteger(half) || half < least) return waves;
  const at = power[half] as number;
  const beside = Math.max(power[half - 1] as number, power[half + 1] as number);
  return at > HALF_RHYTHM * (power[waves] as number) && at > 6 * beside ? half : waves;
}
