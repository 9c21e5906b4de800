/** A place on the ring where the teeth's rhythm fails. */
export interface RhythmGap {
  /** Middle, rad from the ring's start. */
  readonly angle: number;
  /** How many teeth's width it takes, at least one. */
  readonly teeth: number;
  /** Mean of the ring within it, less the ring's mean nearby. */
  readonly level: number;
}

/** Share of the usual strength of the rhythm below which a tooth or space is missing. */
const WEAK = 0.5;

function median(values: Float64Array): number {
  const sorted = Float64Array.from(values).sort();
  return sorted[sorted.length >> 1] as number;
}

/**
 * Finds where a ring of teeth has lost its rhythm: a tooth missing, a space filled, a flat.
 * The strength of the rhythm at a place is the amplitude of one tooth's wave over one tooth's width around it; it is
 * weighed against its median over a third of the ring nearby, since light falls from one side. A place is a gap where
 * less than half is left.
 * Shapes: `ring` holds a whole number of samples for each tooth. Units: rad.
 */
export function findGaps(ring: Float64Array, teeth: number): RhythmGap[] {
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
  if (begin < 0) return [];
  const gaps: RhythmGap[] = [];
  for (let i = 0; i < count; ) {
    let length = 0;
    while (i + length < count && weak[(begin + i + length) % count] === 1) length += 1;
    // Less than half a tooth's width is a scratch.
    if (length > width / 2) {
      const middle = begin + i + (length - 1) / 2;
      const wide = Math.max(Math.round(length / width), 1);
      gaps.push({
        angle: ((2 * Math.PI * middle) / count) % (2 * Math.PI),
        teeth: wide,
        level: meanOf(at, Math.round(middle), width) - meanOf(at, Math.round(middle), (6 + 3 * wide) * width),
      });
    }
    i += length + 1;
  }
  return gaps;
}

/** Mean over so many samples around one. */
function meanOf(at: (i: number) => number, middle: number, samples: number): number {
  let sum = 0;
  const half = Math.round(samples / 2);
  for (let i = -half; i <= half; i += 1) sum += at(middle + i);
  return sum / (2 * half + 1);
}
