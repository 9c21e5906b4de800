/** What a search without derivatives ended with. */
export interface SearchResult {
  readonly at: number[];
  readonly value: number;
  readonly evaluations: number;
}

export interface SearchLimits {
  /** Edge of the first simplex, in the unit of each variable. */
  readonly scale: readonly number[];
  /** Ends when the simplex is smaller than this share of `scale`. */
  readonly tolerance: number;
  readonly evaluations: number;
}

/**
 * Least value of a function of a few variables by the simplex method of Nelder and Mead (The Computer Journal 7, 1965:
 * reflect 1, expand 2, contract 1/2, shrink 1/2), started again at its best point until a fresh start no longer gains:
 * on a ridge the simplex can fold flat before it is at the bottom. No randomness: the same input gives the same answer.
 * The function may answer infinity where it has no value. It is given what is of interest: where its value is `enough`
 * or more it may answer anything that is no less than that. Not for hot loops: it allocates.
 */
export function nelderMead(
  f: (x: readonly number[], enough: number) => number,
  start: readonly number[],
  limits: SearchLimits,
): SearchResult {
  let best = { at: [...start], value: f(start, Number.POSITIVE_INFINITY) };
  let evaluations = 1;
  let scale = 1;
  while (evaluations < limits.evaluations) {
    const before = best.value;
    const round = descendSimplex(f, best.at, best.value, limits, scale, limits.evaluations - evaluations);
    evaluations += round.evaluations;
    if (round.value < best.value) best = { at: round.at, value: round.value };
    if (!(before - best.value > 1e-9 * Math.abs(before))) break;
    scale *= 0.5;
  }
  return { ...best, evaluations };
}

function descendSimplex(
  f: (x: readonly number[], enough: number) => number,
  start: readonly number[],
  startValue: number,
  limits: SearchLimits,
  scale: number,
  budget: number,
): SearchResult {
  const n = start.length;
  let evaluations = 0;
  const evaluate = (at: number[], enough = Number.POSITIVE_INFINITY) => {
    evaluations += 1;
    return { at, value: f(at, enough) };
  };
  const along = (from: readonly number[], to: readonly number[], share: number) =>
    from.map((value, i) => value + share * ((to[i] as number) - value));

  const simplex = [{ at: [...start], value: startValue }];
  for (let i = 0; i < n; i += 1) {
    const at = [...start];
    at[i] = (at[i] as number) + scale * (limits.scale[i] as number);
    simplex.push(evaluate(at));
  }
  while (evaluations < budget) {
    simplex.sort((a, b) => a.value - b.value);
    const best = simplex[0] as { at: number[]; value: number };
    const worst = simplex[n] as { at: number[]; value: number };
    let extent = 0;
    for (const corner of simplex)
      for (let i = 0; i < n; i += 1)
        extent = Math.max(
          extent,
          Math.abs((corner.at[i] as number) - (best.at[i] as number)) / (limits.scale[i] as number),
        );
    if (extent < limits.tolerance) break;

    const centre = start.map((_, i) => {
      let sum = 0;
      for (let k = 0; k < n; k += 1) sum += (simplex[k] as { at: number[] }).at[i] as number;
      return sum / n;
    });
    // What is no better than the worst is not kept, whatever it is.
    const reflected = evaluate(along(centre, worst.at, -1), worst.value);
    if (reflected.value < best.value) {
      const expanded = evaluate(along(centre, worst.at, -2), reflected.value);
      simplex[n] = expanded.value < reflected.value ? expanded : reflected;
      continue;
    }
    if (reflected.value < (simplex[n - 1] as { value: number }).value) {
      simplex[n] = reflected;
      continue;
    }
    const outside = reflected.value < worst.value;
    const least = Math.min(worst.value, reflected.value);
    const contracted = evaluate(along(centre, worst.at, outside ? -0.5 : 0.5), least);
    if (contracted.value < least) {
      simplex[n] = contracted;
      continue;
    }
    for (let k = 1; k <= n; k += 1)
      simplex[k] = evaluate(along(best.at, (simplex[k] as { at: number[] }).at, 0.5));
  }
  simplex.sort((a, b) => a.value - b.value);
  const { at, value } = simplex[0] as { at: number[]; value: number };
  return { at, value, evaluations };
}
