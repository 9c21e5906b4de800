import { createState, prepareFrontEnd, solveFrontEnd } from '../linkage/index.ts';
import { ROW_OK, sweepTravel } from '../sweep/index.ts';
import { toDegrees } from '../units/index.ts';
import { layoutAt, type UnknownTable } from './unknowns.ts';

/** mm. Half the step of a derivative by differences: the pose is solved to 1e-9 mm, so its noise stays below 1e-7 of it. */
const STEP = 0.01;

/** Poses over the travel, as the sweep has them where no range is given. */
const HEAVES = 31;

/** Steer of the wheels and their mean at one heave (roll 0, handwheel 0), degrees; `failure` if it cannot be solved. */
export type SteerAt = { readonly left: number; readonly right: number; readonly mean: number };

/** Solves a layout at heave 0 and at each of some heaves. Returns undefined if one is out of reach or has no pose. */
export function steersAt(
  table: UnknownTable,
  x: Float64Array,
  heaves: readonly number[],
): { readonly ride: SteerAt; readonly at: readonly SteerAt[] } | undefined {
  const frontEnd = prepareFrontEnd(layoutAt(table, x));
  const state = createState();
  const solve = (heave: number): SteerAt | undefined => {
    const status = solveFrontEnd(frontEnd, heave, 0, 0, state);
    if (status !== 'ok' || !Number.isFinite(state.meanSteer)) return undefined;
    return {
      left: toDegrees(state.left.steer),
      right: toDegrees(state.right.steer),
      mean: toDegrees(state.meanSteer),
    };
  };
  const ride = solve(0);
  if (!ride) return undefined;
  const at: SteerAt[] = [];
  for (const heave of heaves) {
    const found = solve(heave);
    if (!found) return undefined;
    at.push(found);
  }
  return { ride, at };
}

/**
 * Derivatives of steer changes by every unknown, by central differences: for each unknown, what `write` makes of the
 * steers a step further less a step back, over two steps. Degrees per mm.
 * Returns false if a layout beside x is out of reach.
 */
export function differentiateSteers(
  table: UnknownTable,
  x: Float64Array,
  heaves: readonly number[],
  write: (unknown: number, further: readonly SteerAt[], back: readonly SteerAt[], per: number) => void,
): boolean {
  const beside = Float64Array.from(x);
  for (let j = 0; j < table.unknowns.length; j += 1) {
    const changes = [1, -1].map((sign) => {
      beside[j] = (x[j] as number) + sign * STEP;
      const found = steersAt(table, beside, heaves);
      return found?.at.map((steer) => ({
        left: steer.left - found.ride.left,
        right: steer.right - found.ride.right,
        mean: steer.mean - found.ride.mean,
      }));
    });
    beside[j] = x[j] as number;
    const [further, back] = changes;
    if (!further || !back) return false;
    write(j, further, back, 1 / (2 * STEP));
  }
  return true;
}

/** The largest |bump steer| over the travel (roll 0, handwheel straight), degrees, and its derivatives, degrees per mm. */
export interface WorstBumpSteer {
  readonly worst: number;
  /** mm. */
  readonly heave: number;
  readonly slopes: Float64Array;
}

/**
 * The worst bump steer of the adjusted layout over its sweep's 31 heaves, with its derivatives by the unknowns at the
 * heave where it is worst (the place of a maximum does not move it at first order).
 * Returns undefined if one of the heaves is not ok: a worst of part of the travel is not the worst.
 */
export function worstBumpSteer(table: UnknownTable, x: Float64Array): WorstBumpSteer | undefined {
  const layout = layoutAt(table, x);
  const { bump, rebound: droop } = layout.travel;
  const sweep = sweepTravel(prepareFrontEnd(layout), 'heave', -droop, bump, HEAVES, 0);
  let row = 0;
  for (let i = 0; i < sweep.count; i += 1) {
    if (sweep.status[i] !== ROW_OK || !Number.isFinite(sweep.bumpSteer[i])) return undefined;
    if (Math.abs(sweep.bumpSteer[i] as number) > Math.abs(sweep.bumpSteer[row] as number)) row = i;
  }
  const heave = sweep.at[row] as number;
  const sign = (sweep.bumpSteer[row] as number) < 0 ? -1 : 1;
  const slopes = new Float64Array(x.length);
  const solved = differentiateSteers(table, x, [heave], (j, further, back, per) => {
    slopes[j] = sign * per * ((further[0] as SteerAt).mean - (back[0] as SteerAt).mean);
  });
  if (!solved) return undefined;
  return { worst: toDegrees(Math.abs(sweep.bumpSteer[row] as number)), heave, slopes };
}
