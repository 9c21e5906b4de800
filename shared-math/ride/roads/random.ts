import { quoted } from '../../outside/index.ts';
import { seededRandom } from '../../solve/random.ts';
import { type Road, type RoadKindOf, rangeProblem, startProblem } from './road-kind.ts';

/** Classes of roughness of ISO 8608, from a very good road to what is hardly one. */
export type RoadClass = 'A' | 'B' | 'C' | 'D' | 'E' | 'F' | 'G' | 'H';
export const ROAD_CLASSES: readonly RoadClass[] = ['A', 'B', 'C', 'D', 'E', 'F', 'G', 'H'];

/** A rough road of a class that looks random and is the same for the same seed; it rises out of the flat over `start`. */
export interface RandomRoad {
  readonly kind: 'random';
  readonly roadClass: RoadClass;
  readonly seed: number;
  readonly start: number;
}

/** Cycles/m. The band in which ISO 8608 describes roads, and the frequency at which it gives their roughness. */
export const BAND = [0.011, 2.83] as const;
const REFERENCE = 0.1;

/** m³. Geometric mean of a class at the reference frequency: 16e-6 for A, four times as much for each next (ISO 8608). */
export function roughness(roadClass: RoadClass): number {
  return 16e-6 * 4 ** ROAD_CLASSES.indexOf(roadClass);
}

/** m³. Displacement's spectral density at a frequency (cycles/m), falling with its square (ISO 8608, w = 2). */
export function spectralDensity(roadClass: RoadClass, frequency: number): number {
  return roughness(roadClass) * (frequency / REFERENCE) ** -2;
}

/**
 * How alike both tracks are at a frequency (cycles/m): 1 the same, 0 strangers. The standard leaves it open; taken here
 * as e^(-n · 1.5 m), so that long waves lift both wheels and short ones each its own. Own assumption, no source.
 */
export function likeness(frequency: number): number {
  return Math.exp(-1.5 * frequency);
}

const LINES = 160;

/** mm between the places at which a stretch of road is worked out, and how many of them make a stretch. */
const SPACING = 20;
const STRETCH = 256;

/** Lines of the spectrum: rad/mm, and for each track the cosine's and the sine's part in mm. */
interface Lines {
  readonly wave: Float64Array;
  readonly cosine: readonly [Float64Array, Float64Array];
  readonly sine: readonly [Float64Array, Float64Array];
}

/**
 * The band in equal ratios; in each part one line with a frequency drawn within it, whose power is the part's:
 * a²/2 = ∫ G n0²/n² dn = G n0² (1/n1 - 1/n2). Frequencies that have no common measure never repeat.
 */
function drawLines({ roadClass, seed }: RandomRoad): Lines {
  const random = seededRandom(seed);
  const lines: Lines = {
    wave: new Float64Array(LINES),
    cosine: [new Float64Array(LINES), new Float64Array(LINES)],
    sine: [new Float64Array(LINES), new Float64Array(LINES)],
  };
  const [from, to] = BAND;
  for (let i = 0; i < LINES; i += 1) {
    const lower = from * (to / from) ** (i / LINES);
    const upper = from * (to / from) ** ((i + 1) / LINES);
    const frequency = lower + (upper - lower) * random();
    const power = roughness(roadClass) * REFERENCE ** 2 * (1 / lower - 1 / upper);
    const amplitude = 1000 * Math.sqrt(2 * power);
    const phase = 2 * Math.PI * random();
    const stranger = 2 * Math.PI * random();
    const alike = likeness(frequency);
    const own = Math.sqrt(1 - alike * alike);
    lines.wave[i] = (2 * Math.PI * frequency) / 1000;
    lines.cosine[0][i] = amplitude * Math.cos(phase);
    lines.sine[0][i] = amplitude * Math.sin(phase);
    lines.cosine[1][i] = amplitude * (alike * Math.cos(phase) + own * Math.cos(stranger));
    lines.sine[1][i] = amplitude * (alike * Math.sin(phase) + own * Math.sin(stranger));
  }
  return lines;
}

/** Heights and slopes at the places of one stretch, left and right. */
interface Stretch {
  index: number;
  readonly height: readonly [Float64Array, Float64Array];
  readonly slope: readonly [Float64Array, Float64Array];
}

/** Works out a stretch: each line turns on from place to place by a fixed angle, so that no cosine is asked for. */
function fillStretch(stretch: Stretch, index: number, { wave, cosine, sine }: Lines): void {
  stretch.index = index;
  const begin = index * STRETCH * SPACING;
  for (let track = 0 as 0 | 1; ; track = 1) {
    const height = stretch.height[track].fill(0);
    const slope = stretch.slope[track].fill(0);
    for (let i = 0; i < LINES; i += 1) {
      const k = wave[i] as number;
      const stepCos = Math.cos(k * SPACING);
      const stepSin = Math.sin(k * SPACING);
      const a = cosine[track][i] as number;
      const b = sine[track][i] as number;
      let c = Math.cos(k * begin);
      let s = Math.sin(k * begin);
      for (let at = 0; at <= STRETCH; at += 1) {
        height[at] = (height[at] as number) + a * c - b * s;
        slope[at] = (slope[at] as number) - k * (a * s + b * c);
        const next = c * stepCos - s * stepSin;
        s = s * stepCos + c * stepSin;
        c = next;
      }
    }
    if (track === 1) return;
  }
}

/**
 * A road as a sum of cosines. Two stretches are kept, worked out as the wheels come to them; between the places of a
 * stretch a cubic through heights and slopes, whose error at the shortest wave is (2π · 20/353)⁴/384, less than a ten-thousandth of that wave.
 */
function roughRoad(profile: RandomRoad): Road {
  const lines = drawLines(profile);
  const column = () => new Float64Array(STRETCH + 1);
  const stretches = [0, 1].map(
    (): Stretch => ({ index: Number.NaN, height: [column(), column()], slope: [column(), column()] }),
  ) as [Stretch, Stretch];
  const { start } = profile;
  const at = (distance: number, track: 0 | 1): number => {
    if (start > 0 && distance <= 0) return 0;
    const place = distance / SPACING;
    const index = Math.floor(place / STRETCH);
    const stretch = stretches[(index & 1) as 0 | 1];
    if (stretch.index !== index) fillStretch(stretch, index, lines);
    const inside = place - index * STRETCH;
    const i = Math.min(Math.floor(inside), STRETCH - 1);
    const t = inside - i;
    const height = stretch.height[track];
    const slope = stretch.slope[track];
    const h0 = height[i] as number;
    const h1 = height[i + 1] as number;
    const m0 = SPACING * (slope[i] as number);
    const m1 = SPACING * (slope[i + 1] as number);
    const rise = h1 - h0;
    const value = h0 + t * (m0 + t * (3 * rise - 2 * m0 - m1 + t * (m0 + m1 - 2 * rise)));
    if (distance >= start) return value;
    const share = distance / start;
    return value * share * share * (3 - 2 * share);
  };
  return { leftAt: (distance) => at(distance, 0), rightAt: (distance) => at(distance, 1) };
}

/** What the classes of ISO 8608 look like. The letters are the standard's; the words are ours. */
const CLASS_WORDS: Record<RoadClass, string> = {
  A: 'A, smooth as new',
  B: 'B, good road',
  C: 'C, worn road',
  D: 'D, poor road',
  E: 'E, gravel',
  F: 'F, rough track',
  G: 'G, field',
  H: 'H, hardly passable',
};

export const random: RoadKindOf<RandomRoad> = {
  usual: { kind: 'random', roadClass: 'C', seed: 1, start: 2000 },
  fields: [
    {
      key: 'roadClass',
      words: 'Class',
      holds: 'choice',
      choices: ROAD_CLASSES.map((letter) => [letter, CLASS_WORDS[letter]] as const),
      option: { name: 'class', values: 'A-H' },
    },
    {
      key: 'seed',
      words: 'Road number (same number, same bumps)',
      holds: 'number',
      option: { name: 'seed', values: 'N' },
    },
  ],
  board: { words: 'Rough, ISO 8608', figures: { roadClass: 'C', seed: 1 }, seconds: 6 },
  problem: ({ roadClass, seed, start }) => {
    if (!ROAD_CLASSES.includes(roadClass))
      return {
        path: 'road.class',
        reason: `expected one of ${ROAD_CLASSES.join(', ')}, found ${quoted(String(roadClass))}`,
      };
    if (!Number.isInteger(seed))
      return { path: 'road.seed', reason: `expected a whole number, found ${seed}` };
    return rangeProblem('seed', seed, 0, 4_294_967_295, '') ?? startProblem(start);
  },
  prepare: roughRoad,
};
