/** Powers of a ring's whole-numbered waves. */
export interface RingSpectrum {
  /** `power[k]` for k waves a turn; below `least` it holds 0. */
  readonly power: Float64Array;
  readonly least: number;
  readonly most: number;
}

/**
 * Makes a counter of waves around a ring of `count` samples. A ring closes on itself, so waves that fit it a whole
 * number of times are distinguished without any window: the power of k waves is |Σ s e^(-2πi k j / count)|² / count².
 * What goes around once or a few times (a light from one side, a circle marked off centre) stays below `least` and is
 * left out: that is the detrending.
 */
export function ringCounter(
  count: number,
  least: number,
  most: number,
): (ring: Float64Array) => RingSpectrum {
  const cosine = Float64Array.from({ length: count }, (_, i) => Math.cos((2 * Math.PI * i) / count));
  const sine = Float64Array.from({ length: count }, (_, i) => Math.sin((2 * Math.PI * i) / count));
  return (ring) => {
    const power = new Float64Array(most + 1);
    for (let k = least; k <= most; k += 1) {
      let re = 0;
      let im = 0;
      let at = 0;
      for (let j = 0; j < count; j += 1) {
        const value = ring[j] as number;
        re += value * (cosine[at] as number);
        im -= value * (sine[at] as number);
        at += k;
        if (at >= count) at -= count;
      }
      power[k] = (re * re + im * im) / (count * count);
    }
    return { power, least, most };
  };
}

/** The wave with the most power, and how much of all power it has. */
export function strongestWave({ power, least, most }: RingSpectrum): {
  waves: number;
  power: number;
  share: number;
} {
  let waves = least;
  let total = 0;
  for (let k = least; k <= most; k += 1) {
    total += power[k] as number;
    if ((power[k] as number) > (power[waves] as number)) waves = k;
  }
  const strongest = power[waves] as number;
  return { waves, power: strongest, share: total > 0 ? strongest / total : 0 };
}

/** Amplitude (cosine, sine) of so many waves a turn in a ring. */
export function waveOf(ring: Float64Array, waves: number): { re: number; im: number } {
  let re = 0;
  let im = 0;
  for (let j = 0; j < ring.length; j += 1) {
    const angle = (2 * Math.PI * waves * j) / ring.length;
    re += (ring[j] as number) * Math.cos(angle);
    im -= (ring[j] as number) * Math.sin(angle);
  }
  return { re: (2 * re) / ring.length, im: (2 * im) / ring.length };
}
