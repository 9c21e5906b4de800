import type { Face } from './face.ts';
import { unwrapAgainstFace } from './face.ts';
import type { RimEllipse } from './rim.ts';
import { type GreyImage, unwrapBand } from './unwrap.ts';

/**
 * A place where the teeth's rhythm fails. Only where all that shows is as a tooth that is not there, or a space that is
 * filled, leaves it is it called so; dirt, a glint, a scratch make it `unread`. Angles in rad about the shaft, clockwise as seen
 * from the picture's right.
 */
export interface SplineGap {
  readonly angle: number;
  /** How many teeth's width it takes, at least one. */
  readonly teeth: number;
  readonly kind: 'missing-tooth' | 'filled-space' | 'unread';
}

/** What is known of a ring when its blanks are looked for. */
export interface CountedRing {
  readonly image: GreyImage;
  readonly face: Face;
  readonly rim: RimEllipse;
  readonly count: number;
  /** rad: the middle of a tooth. */
  readonly first: number;
  /** Laid straight in the band that was counted, a whole number of samples for each tooth. */
  readonly ring: Float64Array;
}

/** Share of the usual strength of the rhythm below which a tooth or space is missing. */
const WEAK = 0.5;

function median(values: ArrayLike<number>): number {
  const sorted = Float64Array.from(values).sort();
  return sorted[sorted.length >> 1] as number;
}

/** Runs of the ring where the rhythm is weak: middle in samples, width in teeth. */
function weakRuns(ring: Float64Array, teeth: number): { middle: number; teeth: number }[] {
  const count = ring.length;
  const width = count / teeth;
  const at = (i: number) => ring[((i % count) + count) % count] as number;
  const strength = new Float64Array(count);
  for (let i = 0; i < count; i += 1) {
    let re = 0;
    let im = 0;
    const start = i - (width >> 1);
    for (let j = 0; j < width; j += 1) {
      const angle = (2 * Math.PI * j) / width;
      re += at(start + j) * Math.cos(angle);
      im += at(start + j) * Math.sin(angle);
    }
    strength[i] = Math.hypot(re, im);
  }
  const usual = median(strength);
  const reach = Math.round(count / 6);
  const weak = new Uint8Array(count);
  const near = new Float64Array(Math.floor((2 * reach) / 4) + 1);
  for (let i = 0; i < count; i += 1) {
    for (let j = 0; j < near.length; j += 1)
      near[j] = strength[(((i - reach + 4 * j) % count) + count) % count] as number;
    if ((strength[i] as number) < WEAK * Math.max(median(near), 0.5 * usual)) weak[i] = 1;
  }
  // Runs of weak places around the ring, begun at a place that is not weak.
  const begin = weak.indexOf(0);
  const runs: { middle: number; teeth: number }[] = [];
  for (let i = 0; begin >= 0 && i < count; ) {
    let length = 0;
    while (i + length < count && weak[(begin + i + length) % count] === 1) length += 1;
    // Less than half a tooth's width is a scratch.
    if (length > width / 2)
      runs.push({ middle: begin + i + (length - 1) / 2, teeth: Math.max(Math.round(length / width), 1) });
    i += length + 1;
  }
  return runs;
}

/** Shares of the rim that are looked at one by one, from below the roots to the crests. */
const FROM = 0.78;
const STEP = 0.01;
const LEVELS = 21;
/** The last share that still lies on the teeth, and the one just off them. */
const CREST = 0.97;
const OUTSIDE = 1.05;
/** Of what a tooth and a space differ by: nearer than this to one of them it is that one. */
const LIKE = 0.25;
/** Teeth between two places that are taken for one piece of dirt. */
const BESIDE = 4;
/** Of a space's difference from the face, and in grey levels: what one space may differ from the next by. */
const ALIKE = 0.3;
const ALIKE_LEAST = 14;

/**
 * Finds where a ring of teeth has lost its rhythm, and says what is there.
 *
 * The strength of the rhythm at a place is the amplitude of one tooth's wave over one tooth's width around it, weighed
 * against its median over a third of the ring nearby; a run of less than half of that is looked at. There the picture is
 * read at every depth from root to crest, at the middles of the teeth and of the spaces within the run. A tooth is
 * missing where its middle is as its neighbours' spaces are, at all depths and in grey; a space is filled where it is as
 * the face is. In both cases the face under the roots must be bare, what is beyond the crests like what is beside it, and the
 * teeth on both sides plain to see. Everything else cannot be read.
 * Source:   own derivation.
 * Checked:  tests/thorough/splines.test.ts, tests/thorough/spline-trust.test.ts (rendered photos).
 */
export function findGaps(counted: CountedRing): SplineGap[] {
  const { ring, count, first } = counted;
  const samples = ring.length;
  const gaps = weakRuns(ring, count).map(({ middle, teeth }) => {
    const angle = ((2 * Math.PI * middle) / samples) % (2 * Math.PI);
    const place = ((angle - first) * count) / (2 * Math.PI);
    return { angle, place, teeth, kind: kindOf(counted, place, teeth) };
  });
  return gaps.map(({ place, ...gap }) => {
    // What cannot be read right beside it is more likely of one piece with it than a second fault of the part.
    const spoiled = gaps.some((other) => {
      const apart = Math.abs(place - other.place) % count;
      const between = Math.min(apart, count - apart) - (gap.teeth + other.teeth) / 2;
      return other.kind === 'unread' && between < BESIDE;
    });
    return spoiled ? { ...gap, kind: 'unread' as const } : gap;
  });
}

/** What is at a place, in teeth from the first, so many teeth wide. */
function kindOf(counted: CountedRing, place: number, teeth: number): SplineGap['kind'] {
  const { image, face, rim, count, first } = counted;
  if (teeth > count / 4) return 'unread';
  // Off the face and grey at half-tooth steps: even entries teeth, odd ones spaces, each over a fifth of a tooth.
  const halves = 2 * count;
  const readings = (share: number, against: boolean) => {
    const fine = new Float64Array(count * 20);
    if (against) unwrapAgainstFace(image, face, rim, share, share, 1, fine);
    else unwrapBand(image, rim, share, share, 1, fine);
    return Float64Array.from({ length: halves }, (_, half) => {
      const from = Math.round(((first / (2 * Math.PI)) * count + half / 2) * 20) - 2;
      let sum = 0;
      for (let i = from; i < from + 5; i += 1)
        sum += fine[((i % fine.length) + fine.length) % fine.length] as number;
      return sum / 5;
    });
  };
  const at = (values: Float64Array, half: number) => values[((half % halves) + halves) % halves] as number;
  const reach = teeth / 2;
  const teethIn: number[] = [];
  const spacesIn: number[] = [];
  for (let half = Math.ceil(2 * (place - reach) - 0.4); half <= 2 * (place + reach) + 0.4; half += 1)
    (half % 2 === 0 ? teethIn : spacesIn).push(half);
  const edge = Math.ceil(2 * reach + 0.4);
  const near = Math.round(2 * place);
  const beside = [1, 2, 3, 4, 5, 6].flatMap((k) => [near - edge - k, near + edge + k]);
  const teethBeside = beside.filter((half) => half % 2 === 0);
  const spacesBeside = beside.filter((half) => half % 2 !== 0);
  const mid = (values: Float64Array, list: readonly number[]) => median(list.map((half) => at(values, half)));

  let [depths, missing, filled] = [0, 0, 0];
  let root = CREST;
  for (let level = 0; level < LEVELS; level += 1) {
    const share = FROM + STEP * level;
    if (share > CREST) break;
    const off = readings(share, true);
    const [tooth, space] = [mid(off, teethBeside), mid(off, spacesBeside)];
    // Above the roots, and where the teeth beside are plain.
    if (!(space - tooth > 0.3)) continue;
    if (depths === 0) root = share;
    depths += 1;
    const like = (half: number) => (at(off, half) - tooth) / (space - tooth);
    // Teeth narrow toward the crest, spaces toward the root: the middles stay.
    if (teethIn.length > 0 && teethIn.every((half) => like(half) > 1 - LIKE)) missing += 1;
    if (spacesIn.length > 0 && spacesIn.every((half) => like(half) < LIKE)) filled += 1;
  }
  if (depths < 3) return 'unread';
  const covered = [root - 0.03, root - 0.06].some((share) => {
    const off = readings(share, true);
    return [...teethIn, ...spacesIn].some((half) => at(off, half) > mid(off, beside) + 0.3);
  });
  const outside = readings(OUTSIDE, false);
  const spaced = readings((root + CREST) / 2, false);
  const ground = mid(spaced, spacesBeside);
  const own = median(face.grey);
  const slack = Math.max(ALIKE_LEAST, ALIKE * Math.abs(ground - own));
  const alike = (values: Float64Array, list: readonly number[], beside: readonly number[]) =>
    list.every((half) => Math.abs(at(values, half) - mid(values, beside)) < slack);
  if (covered || !alike(outside, [...teethIn, ...spacesIn], beside)) return 'unread';
  if (missing >= 0.8 * depths && alike(spaced, teethIn, spacesBeside)) return 'missing-tooth';
  if (filled >= 0.8 * depths && alike(spaced, spacesIn, teethBeside)) return 'filled-space';
  return 'unread';
}
