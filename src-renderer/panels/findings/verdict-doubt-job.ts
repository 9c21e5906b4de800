import {
  adjust,
  doubtOf,
  type Further,
  type FurtherOf,
  type SurveyRow,
} from '../../../shared-math/adjust/index.ts';
import { analyse, type Finding, findings, type ShopLimits } from '../../../shared-math/findings/index.ts';
import { type LayoutDocument, resolveLayout } from '../../../shared-math/layout/index.ts';
import { prepareFrontEnd } from '../../../shared-math/linkage/index.ts';
import { seededRandom } from '../../../shared-math/solve/random.ts';
import { photosFurther } from '../../../shared-math/trace/index.ts';

/** Cars that are judged beside the drawn one: enough to see that a verdict hangs in the balance. */
export const CARS_TRIED = 12;
const SEED = 20;

/** What the drawing was adjusted to. */
export interface AdjustedTo {
  readonly document: LayoutDocument;
  /** The rows of the survey; those that do not fit left out. */
  readonly rows: readonly SurveyRow[];
  /** What of the photos was left aside; undefined where no photo was adjusted. */
  readonly photosAside: readonly string[] | undefined;
}

export interface VerdictDoubtQuestion extends AdjustedTo {
  readonly limits: ShopLimits;
}

/** What one car is found to be: of each finding what it is of and how grave. */
export type FoundOfCar = readonly Pick<Finding, 'rule' | 'part' | 'between' | 'severity'>[];

/** All that photos observe, and what was known beforehand of their cameras, with noise of their doubts. */
function withNoise(of: FurtherOf, normal: () => number): FurtherOf {
  return (table): Further => {
    const further = of(table);
    return {
      ...further,
      unknowns: further.unknowns.map((each) => ({ ...each, known: each.known + normal() * each.doubt })),
      rows: further.rows.map((row) => ({
        ...row,
        observed: row.observed.map((value, i) => value + normal() * (row.doubts[i] as number)),
      })),
    };
  };
}

/**
 * Cars that the measurements allow: rows and photos with noise of their doubts, adjusted anew. The points that come of
 * it are spread as the adjustment's covariance has it; what nobody measured stays where it is drawn, as it is a guess and
 * said to be one. Numbers of a normal distribution by Box and Muller; the same noise at every asking. One that cannot be
 * adjusted is undefined.
 */
export function* carsAllowed(
  { document, rows, photosAside }: AdjustedTo,
  count: number,
): Generator<LayoutDocument | undefined, void> {
  const random = seededRandom(SEED);
  const normal = () => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
  for (let car = 0; car < count; car += 1) {
    const noisy = rows.map((row) => ({ ...row, value: row.value + normal() * doubtOf(row) }));
    const outcome = adjust(document, noisy, {
      pointsOnly: true,
      ...(photosAside
        ? { further: withNoise(photosFurther(noisy), normal), aside: new Set(photosAside) }
        : {}),
    });
    yield outcome.ok ? outcome.value.document : undefined;
  }
}

/** Judges cars that the measurements allow. */
export function* verdictDoubtJob({
  limits,
  ...adjustedTo
}: VerdictDoubtQuestion): Generator<undefined, FoundOfCar[]> {
  const cars: FoundOfCar[] = [];
  for (const car of carsAllowed(adjustedTo, CARS_TRIED)) {
    if (!car) continue;
    const layout = resolveLayout(car);
    const analysis = analyse(layout, prepareFrontEnd(layout));
    cars.push(
      findings(analysis, { unit: 'mm', fraction: 16 }, limits).map(({ rule, part, between, severity }) => ({
        rule,
        part,
        severity,
        ...(between ? { between } : {}),
      })),
    );
    yield undefined;
  }
  return cars;
}
