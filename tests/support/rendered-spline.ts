import type { GreyImage, MarkedCircle } from '../../shared-math/splines/index.ts';

/** An invented picture of a splined shaft's end, drawn from its outline; nothing of the counting is used. */
export interface RenderedSpline {
  readonly teeth: number;
  /** Pixels. */
  readonly size?: number;
  readonly radius?: number;
  readonly centre?: readonly [number, number];
  /** Root radius over crest radius. */
  readonly root?: number;
  /** Teeth that are not there, and spaces (after the tooth of that number) that are filled. */
  readonly missing?: readonly number[];
  readonly filled?: readonly number[];
  /** Standard deviation of noise, grey levels. */
  readonly noise?: number;
  /** Light from one side: share of brightness lost at the far edge. */
  readonly shade?: number;
  readonly metal?: number;
  readonly ground?: number;
  /** rad. Where the first tooth stands. */
  readonly turn?: number;
  /** Bright edges on each tooth, as a chamfer gives, instead of bright teeth. */
  readonly edges?: boolean;
  readonly seed?: number;
}

/** The same numbers each time: a linear congruence, and bells of twelve of its draws. */
function draws(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 4294967296;
  };
}

/** Grey of the end at a place, without light and noise. */
function outline(spec: RenderedSpline, radius: number, dx: number, dy: number): number {
  const { teeth, root = 0.88, missing = [], filled = [], metal = 185, ground = 55, turn = 0 } = spec;
  const r = Math.hypot(dx, dy) / radius;
  if (r > 1) return ground;
  if (r < root) return metal;
  const phase = ((((Math.atan2(dy, dx) - turn) * teeth) / (2 * Math.PI)) % teeth) + teeth;
  const tooth = Math.round(phase) % teeth;
  // 0 at the tooth's middle, 0.5 in the space's middle.
  const off = Math.abs(phase - Math.round(phase));
  // Teeth narrow toward the crest.
  const half = 0.33 - 0.16 * ((r - root) / (1 - root));
  let inTooth = off < half && !missing.includes(tooth);
  const before = (Math.floor(phase) + teeth) % teeth;
  if (filled.includes(before)) inTooth = true;
  if (spec.edges) return Math.abs(off - half) < 0.07 && !missing.includes(tooth) ? metal + 50 : ground + 40;
  return inTooth ? metal : ground;
}

export function renderSpline(spec: RenderedSpline): { image: GreyImage; circle: MarkedCircle } {
  const { size = 320, noise = 0, shade = 0, seed = 1 } = spec;
  const radius = spec.radius ?? size * 0.38;
  const [cx, cy] = spec.centre ?? [size / 2 + 3.3, size / 2 - 2.7];
  const draw = draws(seed);
  const data = new Uint8Array(size * size);
  for (let y = 0; y < size; y += 1)
    for (let x = 0; x < size; x += 1) {
      let sum = 0;
      // Nine samples a pixel: antialiased.
      for (let i = 0; i < 9; i += 1)
        sum += outline(spec, radius, x + ((i % 3) - 1) / 3 - cx, y + (Math.floor(i / 3) - 1) / 3 - cy);
      const light = 1 - (shade * (x + y)) / (2 * size);
      let bell = -6;
      if (noise > 0) for (let i = 0; i < 12; i += 1) bell += draw();
      else bell = 0;
      data[y * size + x] = Math.min(Math.max(Math.round((sum / 9) * light + noise * bell), 0), 255);
    }
  return { image: { data, width: size, height: size }, circle: { x: cx, y: cy, radius } };
}
