import type { LayoutDocument } from '../layout/index.ts';
import { type Outcome, succeeded } from '../outcome.ts';
import { type AdjustFailure, type Adjustment, adjust, distancesFromDrawing, FITS_WITHIN } from './adjust.ts';
import type { FurtherOf } from './further.ts';
import { likelySlips, type Slip } from './slips.ts';
import type { SurveyRow } from './survey.ts';
import { unknownsOf } from './unknowns.ts';

/** More misfits than this among a few dozen rows are no slips: the drawing is of another car. */
const MISFITS_MAX = 6;

/** How many of the rows with the largest residuals are tried; the worst residual is not always the wrong row's. */
const TRIED = 10;

/**
 * Standard deviations from the drawing, weak as it is, beyond which a figure is named before all others: out by metres,
 * it drags the points so far that their residuals tell little, and can leave no minimum at all.
 */
const ABSURD_FROM = 8;

/** A row that does not fit the others. */
export interface Misfit {
  readonly id: string;
  /** Its standardised residual among the rows that were left when it was found; of an absurd one, from the drawing. */
  readonly w: number;
  /** Rows that the data cannot tell from it: it is one of these. */
  readonly alike: readonly string[];
  /** What the other rows say instead: mm or degrees; null where that pose cannot be solved. */
  readonly expected: number | null;
  readonly slips: readonly Slip[];
}

/** Something that was observed beside the rows and does not fit. */
export interface FurtherMisfit {
  readonly id: string;
  readonly w: number;
  /** Rows and further observations that the data cannot tell from it: it is one of these. */
  readonly alike: readonly string[];
}

export interface Snooping {
  /** The row with the largest |w| of all, whether it fits or not, and those alike; undefined if nothing checks any row. */
  readonly worst: { readonly id: string; readonly w: number; readonly alike: readonly string[] } | undefined;
  /** In the order in which they were found, each with the ones before it set aside. */
  readonly misfits: readonly Misfit[];
  readonly furtherMisfits: readonly FurtherMisfit[];
  /** All that `clean` leaves out. */
  readonly aside: ReadonlySet<string>;
  /** The adjustment of the rows that are left. */
  readonly clean: Adjustment;
}

/**
 * Looks for rows that do not fit, one after another: of the rows with |w| above 3.29 the one whose leaving brings the
 * sum of squares down most (at first order by w², so that it is the row of the largest |w|; after a large slip the sums
 * themselves tell better) is named and set aside, until every row fits. Of what was observed further of one point, all that
 * cannot be distinguished goes aside together: whichever of them were kept, the point would stand where that one alone has it.
 * Frame:    vehicle, ISO 8855, at ride height. Units: mm and degrees, as the survey has them.
 * Outcomes: what was found; or why an adjustment could not be made.
 * Source:   W. Baarda, A testing procedure for use in geodetic networks, 1968 (data snooping), from memory.
 * Checked:  tests/thorough/adjust/misfits.test.ts (invented surveys with blunders and slips).
 */
export function findMisfits(
  document: LayoutDocument,
  rows: readonly SurveyRow[],
  {
    slips: wantsSlips = true,
    further,
    pointsOnly = false,
  }: {
    readonly slips?: boolean;
    readonly further?: FurtherOf | undefined;
    readonly pointsOnly?: boolean;
  } = {},
): Outcome<Snooping, AdjustFailure> {
  const aside = new Set<string>();
  const misfits: Misfit[] = [];
  const furtherMisfits: FurtherMisfit[] = [];
  const observed = further?.(unknownsOf(document));
  const seen = observed?.seen;
  const numbers = new Map(observed?.rows.map((row) => [row.id, row.observed.length]));
  const seesOne = (id: string) => (seen?.get(id)?.length === 1 ? seen.get(id)?.[0] : undefined);
  const found = () => misfits.length + furtherMisfits.length;
  let worst: Snooping['worst'];
  for (;;) {
    const outcome = adjust(document, rows, { aside, pointsOnly: true, further });
    const [furthest] = distancesFromDrawing(document, rows, aside).sort(
      (a, b) => Math.abs(b.w) - Math.abs(a.w),
    );
    const absurd = furthest && Math.abs(furthest.w) > (outcome.ok ? ABSURD_FROM : FITS_WITHIN);
    if (absurd && found() < MISFITS_MAX) {
      const slips = wantsSlips ? likelySlips(document, rows, furthest.id, aside, further) : [];
      misfits.push({ ...furthest, alike: [], slips });
      worst ??= { id: furthest.id, w: furthest.w, alike: [] };
      aside.add(furthest.id);
      continue;
    }
    if (!outcome.ok) return outcome;
    const checked = outcome.value.rows
      .flatMap(({ id, w, alike }) => (w === null ? [] : [{ id, w, alike }]))
      .sort((a, b) => Math.abs(b.w) - Math.abs(a.w));
    worst ??= checked[0];
    const furtherChecked = outcome.value.further.flatMap(({ id, w, alike }) =>
      w === null ? [] : [{ id, w, alike }],
    );
    const suspects = [...checked, ...furtherChecked]
      .filter(({ w }) => Math.abs(w) > FITS_WITHIN)
      .sort((a, b) => Math.abs(b.w) - Math.abs(a.w))
      .slice(0, TRIED);
    if (suspects.length === 0 || found() === MISFITS_MAX) {
      const clean = adjust(document, rows, { aside, pointsOnly, further });
      return clean.ok ? succeeded({ worst, misfits, furtherMisfits, aside, clean: clean.value }) : clean;
    }
    let named = suspects[0] as (typeof suspects)[number];
    let least = Number.POSITIVE_INFINITY;
    let expected: number | null = null;
    for (const suspect of suspects) {
      const without = adjust(document, rows, {
        aside: new Set([...aside, suspect.id]),
        pointsOnly: true,
        further,
      });
      if (!without.ok) continue;
      // What is more than one number can explain more by chance: each further one has to earn its place.
      const sum = without.value.sum + ((numbers.get(suspect.id) ?? 1) - 1) * FITS_WITHIN ** 2;
      if (sum >= least) continue;
      least = sum;
      named = suspect;
      expected = without.value.rows.find(({ id }) => id === suspect.id)?.computed ?? null;
    }
    aside.add(named.id);
    const { id, w, alike } = named;
    if (seen?.has(id)) {
      furtherMisfits.push({ id, w, alike });
      const point = seesOne(id);
      for (const other of alike) if (point !== undefined && seesOne(other) === point) aside.add(other);
    } else {
      const before = new Set([...aside].filter((each) => each !== id));
      const slips = wantsSlips ? likelySlips(document, rows, id, before, further) : [];
      misfits.push({ id, w, alike, expected, slips });
    }
  }
}
