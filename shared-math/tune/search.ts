import { nelderMead } from '../solve/nelder-mead.ts';
import type { Random } from '../solve/random.ts';

/** A least value sought within bounds, under conditions. */
export interface Problem {
  readonly from: readonly number[];
  readonly to: readonly number[];
  /** Where the search begins; inside the bounds or brought there. */
  readonly start: readonly number[];
  /** More places that are likely, tried before any drawn by lot. */
  readonly starts?: readonly (readonly number[])[];
  /** How many places are kept; eight for each number, and twelve at the least, if absent. */
  readonly members?: number;
  /** How many places the closing in may ask in each of its two rounds; 120 for each number if absent, none if 0. */
  readonly closingIn?: number;
  /** What is to be least; infinity where it has no value. */
  value(x: readonly number[]): number;
  /**
   * By how much conditions are broken, 0 where all hold. Costly: asked only where the value would be taken, and need not
   * be reported exactly from `settledAt` on.
   */
  violation(x: readonly number[], settledAt: number): number;
  /** What a violation of 1 counts in the value's unit while the best is closed in on. */
  readonly penalty: number;
}

export interface SearchProgress {
  /** How much is done, 0 to 1. */
  readonly share: number;
  /** The least value found at which all conditions hold; nothing before there is one. */
  readonly best: number | undefined;
}

export interface Found {
  readonly at: readonly number[];
  readonly value: number;
  /** 0 where all conditions hold there. */
  readonly violation: number;
  readonly evaluations: number;
}

interface Member {
  at: number[];
  value: number;
  violation: number;
}

/** Shares of the way from one member to others, and of coordinates that change; usual figures of the method. */
const STEP_FROM = 0.5;
const STEP_TO = 0.9;
const CROSSING = 0.9;
/** Share of the bounds. A population no wider than this has found its place. */
const TOGETHER = 1e-4;
/** Share of the best value. A population whose values are all as near as this has nothing more to find but the polish. */
const ALIKE = 1e-3;

/** Back into the bounds by reflection, as light between two mirrors. */
function reflected(value: number, from: number, to: number): number {
  const width = to - from;
  if (width <= 0) return from;
  const over = (((value - from) % (2 * width)) + 2 * width) % (2 * width);
  return from + (over <= width ? over : 2 * width - over);
}

/** Whether one is better than another: conditions first, then the value. */
function isBetter(one: Member, other: Member): boolean {
  if (one.violation > 0 || other.violation > 0)
    return one.violation < other.violation || (one.violation === other.violation && one.value < other.value);
  return one.value < other.value;
}

function widest(members: readonly Member[], { from, to }: Problem): number {
  let most = 0;
  for (let i = 0; i < from.length; i += 1) {
    const width = (to[i] as number) - (from[i] as number);
    if (width <= 0) continue;
    const column = members.map(({ at }) => at[i] as number);
    most = Math.max(most, (Math.max(...column) - Math.min(...column)) / width);
  }
  return most;
}

/** Whether all members keep the conditions and are of one value, near enough. */
function areAlike(members: readonly Member[]): boolean {
  if (members.some(({ violation }) => violation > 0)) return false;
  const values = members.map(({ value }) => value);
  return Math.max(...values) - Math.min(...values) <= ALIKE * Math.abs(Math.min(...values));
}

/**
 * Least value within bounds by differential evolution (Storn and Price, Journal of Global Optimization 11, 1997: a
 * member tries its own place moved toward the best and by the difference of two others, and keeps the better), then
 * closed in on by the simplex method. Conditions go before the value (Deb, Computer Methods in Applied Mechanics and
 * Engineering 186, 2000): they are asked only where the value alone would be taken, since they cost far more.
 * A generator: each step is a stretch of work after which the caller may stop; the same seed gives the same answer.
 * Frame:    none. Units: the bounds' own. Shapes: as many coordinates as bounds.
 * Outcomes: the best place that keeps all conditions; if none was found, the one that breaks them least.
 * Source:   the two papers, from memory; own writing.
 * Checked:  tests/thorough/tune.test.ts (functions of known least value, bounded and conditioned).
 */
export function* searchLeast(
  problem: Problem,
  random: Random,
  generations = 40,
): Generator<SearchProgress, Found> {
  const { from, to } = problem;
  const n = from.length;
  let evaluations = 0;
  let best: Member | undefined;
  const note = (member: Member): Member => {
    if (!best || isBetter(member, best)) best = { ...member, at: [...member.at] };
    return member;
  };
  const valueAt = (at: readonly number[]) => {
    evaluations += 1;
    return problem.value(at);
  };
  const inside = (at: readonly number[]) =>
    at.map((x, i) => reflected(x, from[i] as number, to[i] as number));

  const size = problem.members ?? Math.max(12, 8 * n);
  const likely = [problem.start, ...(problem.starts ?? [])];
  const members: Member[] = Array.from({ length: size }, (_, k) => {
    // The start itself and what else is likely, then places anywhere in the bounds, by the random numbers alone.
    const at =
      likely[k]?.map((x, i) => Math.min(to[i] as number, Math.max(from[i] as number, x))) ??
      from.map((low, i) => low + random() * ((to[i] as number) - low));
    const value = valueAt(at);
    return note({
      at,
      value,
      violation: Number.isFinite(value)
        ? problem.violation(at, Number.POSITIVE_INFINITY)
        : Number.POSITIVE_INFINITY,
    });
  });
  const feasible = () => (best && best.violation === 0 ? best.value : undefined);
  yield { share: 0.05, best: feasible() };

  for (let generation = 0; generation < generations; generation += 1) {
    for (let k = 0; k < size; k += 1) {
      const member = members[k] as Member;
      const pick = () => members[Math.floor(random() * size)] as Member;
      const [one, other] = [pick(), pick()];
      const toward = best as Member;
      const step = STEP_FROM + random() * (STEP_TO - STEP_FROM);
      const sure = Math.floor(random() * n);
      const at = inside(
        member.at.map((x, i) =>
          i === sure || random() < CROSSING
            ? x +
              step * ((toward.at[i] as number) - x) +
              step * ((one.at[i] as number) - (other.at[i] as number))
            : x,
        ),
      );
      const value = valueAt(at);
      // Where the conditions hold already, a worse value cannot be taken: they need not be asked.
      if (!Number.isFinite(value) || (member.violation === 0 && value >= member.value)) continue;
      // Of a violation it is enough to know that it is no less than the member's; of none, that there is one.
      const settledAt = Math.max(member.violation, Number.MIN_VALUE);
      const trial = { at, value, violation: problem.violation(at, settledAt) };
      if (isBetter(trial, member)) members[k] = note(trial);
    }
    yield { share: 0.05 + (0.75 * (generation + 1)) / generations, best: feasible() };
    if (widest(members, problem) < TOGETHER || areAlike(members)) break;
  }

  // The polish: from the best, in steps of a hundredth of the bounds, with what is broken counted in.
  const free = from.flatMap((low, i) => ((to[i] as number) > low ? [i] : []));
  const whole = (x: readonly number[]) => {
    const at = [...(best as Member).at];
    free.forEach((i, j) => {
      at[i] = x[j] as number;
    });
    return at;
  };
  const closingIn = problem.closingIn ?? 120 * n;
  for (let round = 0; round < 2 && free.length > 0 && closingIn > 0; round += 1) {
    const centre = best as Member;
    const at0 = [...centre.at];
    nelderMead(
      (x, enough) => {
        const at = whole(x);
        if (at.some((value, i) => value < (from[i] as number) || value > (to[i] as number)))
          return Number.POSITIVE_INFINITY;
        const value = valueAt(at);
        if (!Number.isFinite(value)) return value;
        const known = best as Member;
        // Behind the best by more than a violation could hide, it is left as it is.
        const asked = value <= known.value || known.violation > 0;
        // No less than the best's rules a place out of it; how much more there is only the simplex asks.
        const settledAt = Math.max((enough - value) / problem.penalty, known.violation, Number.MIN_VALUE);
        const violation = asked ? problem.violation(at, settledAt) : 0;
        if (asked && violation < settledAt) note({ at, value, violation });
        const weighed = value + problem.penalty * violation;
        return violation >= settledAt ? Math.max(weighed, enough) : weighed;
      },
      free.map((i) => at0[i] as number),
      {
        scale: free.map((i) => ((to[i] as number) - (from[i] as number)) / (round === 0 ? 50 : 500)),
        tolerance: 1e-5,
        evaluations: closingIn,
      },
    );
    yield { share: 0.9 + 0.1 * round, best: feasible() };
  }
  return { ...(best as Member), evaluations };
}
