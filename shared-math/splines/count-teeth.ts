import { failed, type Outcome, succeeded } from '../outcome.ts';
import { findGaps } from './blanks.ts';
import { type RingSpectrum, ringCounter, strongestWave, waveOf } from './periodicity.ts';
import { type GreyImage, type MarkedCircle, meanAround, unwrapBand } from './unwrap.ts';

/** A blank: where a tooth is missing or a space is filled. Angles in rad, clockwise as seen from the picture's right. */
export interface SplineGap {
  readonly angle: number;
  /** How many teeth's width it takes. */
  readonly teeth: number;
  readonly kind: 'missing-tooth' | 'filled-space' | 'unclear';
}

/** A count of teeth from a picture, with what the eye needs to check it. */
export interface ToothCount {
  /** Around the whole circle, those that a blank takes away counted in. */
  readonly count: number;
  /** 0 to 1: how far the rhythm of this count stands out; below TRUSTED_FROM it is a guess. */
  readonly confidence: number;
  /** The centre as the teeth have it; the mark may be a little off. */
  readonly circle: MarkedCircle;
  /** Where the teeth are, rad, clockwise as seen from the picture's right; one for each tooth, blanks too. */
  readonly teeth: Float64Array;
  readonly gaps: readonly SplineGap[];
  /** The unwrapped ring that was counted: mean grey at evenly spaced angles. */
  readonly ring: Float64Array;
  /** The band that was unwrapped, as shares of the radius. */
  readonly band: readonly [inner: number, outer: number];
  /** The next best counts and their power against the best, strongest first. */
  readonly rivals: readonly { readonly count: number; readonly share: number }[];
}

export type CountFailure =
  /** The marked circle reaches out of the picture. */
  | 'off-picture'
  /** The circle is too small to hold teeth that can be told apart. */
  | 'too-small'
  /** The ring is even: there is nothing to count. */
  | 'no-teeth';

/** Below this confidence a count is not to be relied on. */
export const TRUSTED_FROM = 0.5;

/** Bands of the radius in which teeth may stand, from root to crest; the clearest is counted. */
const BANDS: readonly (readonly [number, number])[] = [
  [0.82, 0.87],
  [0.87, 0.91],
  [0.91, 0.945],
  [0.945, 0.98],
];
const ROWS = 3;
const SAMPLES = 720;
const LEAST_TEETH = 8;
const MOST_TEETH = 120;
/** Pixels. Fewer for each tooth cannot be told from noise. */
const PIXELS_A_TOOTH = 3;
const SMALLEST_RADIUS = 25;
/** Share of the radius by which a mark may be off centre. */
const OFF_CENTRE = 0.06;
/** Grey levels. A weaker rhythm than this is none. */
const FAINTEST = 0.4;
/** Share of the strongest wave that half as many waves need to be taken for the teeth: two bright edges on each. */
const HALF_RHYTHM = 0.02;

/**
 * Counts the teeth of a splined shaft's end on a picture whose centre and rim are marked.
 *
 * Rings of the picture are laid straight, and waves that fit around the ring a whole number of times are weighed
 * against each other. A mark off the centre by e radii shifts the teeth's angles by up to e rad, which at many teeth
 * smears the wave; so the centre is moved about the mark to where the strongest wave is strongest. The count is that
 * wave's, or half of it where half as many waves stand out too (teeth with two bright edges). Blanks do not change it,
 * and are found as places where the rhythm fails.
 * Frame:    the picture's pixels, x right, y down. Units: pixels, rad. The picture is not changed.
 * Outcomes: ok (look at `confidence`); off-picture; too-small; no-teeth.
 * Source:   own derivation; no randomness.
 * Checked:  tests/unit/splines.test.ts (rendered ends: noise, light from a side, blanks, marks off centre).
 */
export function countTeeth(image: GreyImage, marked: MarkedCircle): Outcome<ToothCount, CountFailure> {
  const { x, y, radius } = marked;
  const slack = OFF_CENTRE * radius;
  if (!(radius >= SMALLEST_RADIUS)) return failed('too-small');
  if (
    !(x - radius >= -slack && y - radius >= -slack) ||
    !(x + radius <= image.width - 1 + slack && y + radius <= image.height - 1 + slack)
  )
    return failed('off-picture');
  const most = Math.min(MOST_TEETH, Math.floor((2 * Math.PI * radius * 0.9) / PIXELS_A_TOOTH));
  const spectrum = ringCounter(SAMPLES, LEAST_TEETH, most);
  const ring = new Float64Array(SAMPLES);
  const weigh = (circle: MarkedCircle, [inner, outer]: readonly [number, number]) => {
    unwrapBand(image, circle, inner, outer, ROWS, ring);
    return spectrum(ring);
  };

  const { circle, band } = clearestRing(marked, weigh);
  const waves = weigh(circle, band);
  const strongest = strongestWave(waves);
  if (!(2 * Math.sqrt(strongest.power) > FAINTEST)) return failed('no-teeth');
  // All bands are asked for the half rhythm: where two edges happen to stand evenly, one band alone is deaf to it.
  const everywhere = { ...waves, power: new Float64Array(most + 1) };
  for (const entry of BANDS)
    weigh(circle, entry).power.forEach((power, k) => {
      everywhere.power[k] = (everywhere.power[k] as number) + power;
    });
  const count = halved(everywhere, strongest.waves);
  const rivals = rivalsOf(waves, count);

  // Again with a whole number of samples for each tooth, finely.
  const fine = new Float64Array(count * 32);
  unwrapBand(image, circle, band[0], band[1], 2 * ROWS, fine);
  const brightTeeth =
    meanAround(image, circle, 0.7 * radius) >= meanAround(image, circle, 1.08 * radius) ? 1 : -1;
  const wave = waveOf(fine, count);
  const first = (Math.atan2(-wave.im, wave.re) + (brightTeeth > 0 ? 0 : Math.PI)) / count;
  const turn = 2 * Math.PI;
  const amplitude = Math.hypot(wave.re, wave.im);
  return succeeded({
    count,
    confidence: confidenceOf(waves, count, rivals),
    circle,
    teeth: Float64Array.from(
      { length: count },
      (_, i) => (((first + (turn * i) / count) % turn) + turn) % turn,
    ),
    gaps: findGaps(fine, count).map(({ angle, teeth, level }) => {
      const toward = (level * brightTeeth) / amplitude;
      const kind = toward > 0.3 ? 'filled-space' : toward < -0.3 ? 'missing-tooth' : 'unclear';
      return { angle, teeth, kind };
    }),
    ring: fine,
    band,
    rivals: rivals.slice(0, 3),
  });
}

type Weigh = (circle: MarkedCircle, band: readonly [number, number]) => RingSpectrum;

/** The centre near the mark, and the band, whose strongest wave has most power, weighed by its share of all. */
function clearestRing(marked: MarkedCircle, weigh: Weigh) {
  const clarity = (circle: MarkedCircle, band: readonly [number, number]) => {
    const { power, share } = strongestWave(weigh(circle, band));
    return power * share;
  };
  let circle = marked;
  let band = BANDS[0] as readonly [number, number];
  let best = -1;
  const steps = 4;
  for (let i = -steps; i <= steps; i += 1)
    for (let j = -steps; j <= steps; j += 1) {
      const unit = (OFF_CENTRE * marked.radius) / steps;
      const moved = { ...marked, x: marked.x + i * unit, y: marked.y + j * unit };
      for (const entry of BANDS) {
        const value = clarity(moved, entry);
        if (value > best) [circle, band, best] = [moved, entry, value];
      }
    }
  for (let step = (OFF_CENTRE * marked.radius) / steps / 2; step > 0.05; step /= 2) {
    for (let moving = true; moving; ) {
      moving = false;
      for (const [dx, dy] of [
        [step, 0],
        [-step, 0],
        [0, step],
        [0, -step],
      ] as const) {
        const moved = { ...circle, x: circle.x + dx, y: circle.y + dy };
        const value = clarity(moved, band);
        if (value > best) {
          [circle, best] = [moved, value];
          moving = true;
        }
      }
    }
  }
  return { circle, band };
}

/** Half of the waves, where half as many stand out from their neighbours; else all of them. */
function halved({ power, least }: RingSpectrum, waves: number): number {
  const half = waves / 2;
  if (!Number.isInteger(half) || half < least) return waves;
  const at = power[half] as number;
  const beside = Math.max(power[half - 1] as number, power[half + 1] as number);
  return at > HALF_RHYTHM * (power[waves] as number) && at > 6 * beside ? half : waves;
}

/** Other counts by their power against the strongest; overtones of the count itself are no rivals. */
function rivalsOf({ power, least, most }: RingSpectrum, count: number): { count: number; share: number }[] {
  let strongest = 0;
  for (let k = count; k <= most; k += count) strongest = Math.max(strongest, power[k] as number);
  const rivals: { count: number; share: number }[] = [];
  for (let k = least; k <= most; k += 1)
    if (k % count !== 0) rivals.push({ count: k, share: (power[k] as number) / strongest });
  return rivals.sort((a, b) => b.share - a.share);
}

/**
 * How far a count stands out: one less the amplitude of the next best against its own, less again where its waves hold
 * under half of all power. A ring of noise has many waves of about one strength, and ends near 0.
 */
function confidenceOf(
  { power, least, most }: RingSpectrum,
  count: number,
  rivals: readonly { share: number }[],
): number {
  let own = 0;
  let all = 0;
  for (let k = least; k <= most; k += 1) {
    all += power[k] as number;
    if (k % count === 0) own += power[k] as number;
  }
  const next = Math.sqrt(Math.min(rivals[0]?.share ?? 0, 1));
  return (1 - next) * Math.min(1, (2 * own) / all);
}
