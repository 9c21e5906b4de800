import { adjust, doubtOf, type SurveyRow } from '../../../shared-math/adjust/index.ts';
import { analyse, type Finding, findings, type ShopLimits } from '../../../shared-math/findings/index.ts';
import { type LayoutDocument, resolveLayout } from '../../../shared-math/layout/index.ts';
import { prepareFrontEnd } from '../../../shared-math/linkage/index.ts';
import { seededRandom } from '../../../shared-math/solve/random.ts';

/** Cars that are judged beside the drawn one: enough to see that a verdict hangs in the balance. */
export const CARS_TRIED = 12;
const SEED = 20;

export interface VerdictDoubtQuestion {
  readonly document: LayoutDocument;
  /** The rows that the drawing was adjusted to; those that do not fit left out. */
  readonly rows: readonly SurveyRow[];
  readonly limits: ShopLimits;
}

/** What one car is found to be: of each finding what it is of and how grave. */
export type FoundOfCar = readonly Pick<Finding, 'rule' | 'part' | 'between' | 'severity'>[];

/**
 * Judges cars that the measurements allow: the rows with noise of their doubts, adjusted anew. The points that come of
 * it are spread as the adjustment's covariance has it; what nobody measured stays where it is drawn, as it is a guess and
 * said to be one. Numbers of a normal distribution by Box and Muller; the same noise at every asking.
 */
export function* verdictDoubtJob({
  document,
  rows,
  limits,
}: VerdictDoubtQuestion): Generator<undefined, FoundOfCar[]> {
  const random = seededRandom(SEED);
  const normal = () => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
  const cars: FoundOfCar[] = [];
  for (let car = 0; car < CARS_TRIED; car += 1) {
    const noisy = rows.map((row) => ({ ...row, value: row.value + normal() * doubtOf(row) }));
    const outcome = adjust(document, noisy, { pointsOnly: true });
    if (!outcome.ok) continue;
    const layout = resolveLayout(outcome.value.document);
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
