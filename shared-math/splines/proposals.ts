import { nelderMead } from '../solve/nelder-mead.ts';
import type { RingSpectrum } from './periodicity.ts';
import { type RimEllipse, rimRadius, stretchedRim } from './rim.ts';

type Band = readonly [inner: number, outer: number];

/** Bands of the rim's size in which teeth may stand, from root to crest; the clearest is counted. */
export const BANDS: readonly Band[] = [
  [0.82, 0.87],
  [0.87, 0.91],
  [0.91, 0.945],
  [0.945, 0.98],
];

/** Share of the radius by which a mark may be off centre at the most. */
export const OFF_CENTRE = 0.06;
/** How far centre and stretch may be off what was marked, one standard deviation. Own choice, no published source. */
const CENTRE_OFF = 0.08;
const STRETCH_OFF = 0.012;

/** A count, and the rim and band in which its wave stands out most. */
export interface Proposal {
  readonly count: number;
  readonly rim: RimEllipse;
  readonly band: Band;
  /** Power of its wave times its share of all. */
  readonly clarity: number;
}

const clarityOf = ({ power, least, most }: RingSpectrum, into: Float64Array): Float64Array => {
  let total = 0;
  for (let k = least; k <= most; k += 1) total += power[k] as number;
  for (let k = least; k <= most; k += 1) into[k] = (power[k] as number) ** 2 / (total || 1);
  return into;
};

/**
 * The counts whose waves stand out most somewhere near the marked rim, each with its own best rim and band.
 *
 * A centre off by e radii shifts the teeth's angles by up to e rad once around, a stretch off by s twice around by s rad; at
 * many teeth either smears the right wave, and may raise a wrong one. So every count is given the rim that is best
 * for it: the centre over a lattice about the mark, then, for the `wanted` most likely, centre and stretch together by
 * the simplex method, both held to what was marked. Which of them the teeth keep step with is judged after.
 */
export function proposals(
  marked: RimEllipse,
  weigh: (rim: RimEllipse, band: Band) => RingSpectrum,
  wanted: number,
): Proposal[] {
  const radius = rimRadius(marked);
  const along = (marked.xx - marked.yy) / 2 / radius;
  const diagonal = marked.xy / radius;
  const best = new Map<number, { clarity: number; dx: number; dy: number; band: Band }>();
  const steps = 4;
  let clear = new Float64Array(0);
  for (let i = -steps; i <= steps; i += 1)
    for (let j = -steps; j <= steps; j += 1) {
      const [dx, dy] = [(OFF_CENTRE * i) / steps, (OFF_CENTRE * j) / steps];
      const held = Math.exp(-(dx * dx + dy * dy) / (2 * CENTRE_OFF ** 2));
      for (const band of BANDS) {
        const spectrum = weigh({ ...marked, x: marked.x + dx * radius, y: marked.y + dy * radius }, band);
        if (clear.length === 0) clear = new Float64Array(spectrum.power.length);
        clarityOf(spectrum, clear);
        for (let k = spectrum.least; k <= spectrum.most; k += 1) {
          const clarity = held * (clear[k] as number);
          if (clarity > (best.get(k)?.clarity ?? 0)) best.set(k, { clarity, dx, dy, band });
        }
      }
    }
  const leading = [...best.entries()].sort(([, a], [, b]) => b.clarity - a.clarity).slice(0, wanted);
  return leading.map(([count, { dx, dy, band }]) => {
    const at = (x: readonly number[]) => {
      const [ex, ey, da, dd] = x as [number, number, number, number];
      return stretchedRim(marked.x + ex * radius, marked.y + ey * radius, radius, along + da, diagonal + dd);
    };
    const found = nelderMead(
      (x) => {
        const [ex, ey, da, dd] = x as [number, number, number, number];
        const off = (ex * ex + ey * ey) / CENTRE_OFF ** 2 + (da * da + dd * dd) / STRETCH_OFF ** 2;
        return -(clarityOf(weigh(at(x), band), clear)[count] as number) * Math.exp(-off / 2);
      },
      [dx, dy, 0, 0],
      { scale: [0.008, 0.008, 0.006, 0.006], tolerance: 0.02, evaluations: 160 },
    );
    return { count, rim: at(found.at), band, clarity: -found.value };
  });
}
