import { type Clearances, leastClearances } from '../clearance/index.ts';
import type { Point } from '../geometry/points.ts';
import {
  hardpoints,
  type LayoutDocument,
  moveHardpoint,
  readLayout,
  resolveLayout,
} from '../layout/index.ts';
import { createState, prepareFrontEnd, solveFrontEnd, steerRates } from '../linkage/index.ts';
import { failed, type Outcome, succeeded } from '../outcome.ts';
import { summariseTravel, sweepTravel, sweepTurn } from '../sweep/index.ts';
import { toeChangeOver } from './figures.ts';
import { locksOf } from './holds.ts';

/** mm: an eighth of an inch, what a weld draws or a tape misses. */
export const USUAL_STEP = 3.175;

/** What is reported of a layout in which one hardpoint was moved. mm, rad. */
export interface StepFigures {
  readonly worstBumpSteer: number;
  /** rad for each mm of heave, at ride height. */
  readonly slope: number;
  /** Most less least of the total toe-in over the travel. */
  readonly toeChange: number;
  /** Overall, at the centre; undefined if it does not steer. */
  readonly ratio: number | undefined;
  /** The least distance of the pairs that this hardpoint has a part in; undefined if none comes near. */
  readonly clearance: number | undefined;
}

/** What a step along one axis does. */
export interface StepEffect {
  readonly axis: 0 | 1 | 2;
  readonly direction: 1 | -1;
  /** Undefined if the layout with the step is none, or does not reach over the travel. */
  readonly figures: StepFigures | undefined;
}

export interface Sensitivity {
  readonly id: string;
  readonly step: number;
  readonly drawn: StepFigures;
  /** Both ways along x, y and z. */
  readonly effects: readonly StepEffect[];
}

/** Travel and turn are looked at this finely: a step's effect on a gap, not the gap itself, is what is reported. */
const FINENESS = { heaves: 9, turns: 13, within: 300 } as const;

interface Measured {
  readonly figures: Omit<StepFigures, 'clearance'>;
  readonly clearances: Clearances | undefined;
}

function measure(document: LayoutDocument): Measured | undefined {
  const read = readLayout(document);
  if (!read.ok) return undefined;
  const layout = resolveLayout(read.value);
  const frontEnd = prepareFrontEnd(layout);
  const { bump, rebound: droop } = layout.travel;
  const heave = sweepTravel(frontEnd, 'heave', -droop, bump, 31, 0);
  const { worstBumpSteer, slopeAtRide, okCount } = summariseTravel(heave);
  if (okCount < heave.count) return undefined;
  const state = createState();
  const rate =
    solveFrontEnd(frontEnd, 0, 0, 0, state) === 'ok' ? steerRates(frontEnd, state).mean : Number.NaN;
  const turn = sweepTurn(frontEnd, 0, 0, 2);
  return {
    figures: {
      worstBumpSteer,
      slope: slopeAtRide,
      toeChange: toeChangeOver(heave),
      ratio: Number.isFinite(1 / rate) ? 1 / rate : undefined,
    },
    clearances:
      turn.status === 'ok' && turn.count > 1 ? leastClearances(frontEnd, locksOf(turn), FINENESS) : undefined,
  };
}

const keyed = (clearances: Clearances | undefined) =>
  new Map((clearances?.pairs ?? []).map(({ a, b, distance }) => [`${a} ${b}`, distance]));

/** mm. A gap that changes by less has nothing to do with the hardpoint. */
const CHANGED = 1e-6;

/** The pairs whose gap is another in any of the layouts. */
function concerned(drawn: Measured, others: readonly (Measured | undefined)[]): Set<string> {
  const base = keyed(drawn.clearances);
  const keys = new Set<string>();
  for (const other of others)
    for (const [key, distance] of keyed(other?.clearances)) {
      const before = base.get(key);
      if (before === undefined || Math.abs(before - distance) > CHANGED) keys.add(key);
    }
  return keys;
}

function withClearance(measured: Measured, keys: ReadonlySet<string>): StepFigures {
  let least: number | undefined;
  for (const [key, distance] of keyed(measured.clearances))
    if (keys.has(key)) least = Math.min(least ?? Number.POSITIVE_INFINITY, distance);
  return { ...measured.figures, clearance: least };
}

/**
 * What moving one hardpoint by a small step either way along each axis does to bump steer, its slope, toe, ratio and
 * the gaps that it has a part in. Lengths are taken as drawn anew, as a link is made to fit; a mirrored point moves
 * with its twin.
 * Frame:    vehicle. Units: mm, rad. Shapes: six effects, -x +x -y +y -z +z.
 * Outcomes: a sensitivity; unknown-point; no-travel where the layout as drawn does not reach over its own travel.
 * Source:   own writing: differences of the sweep, no derivatives.
 * Checked:  tests/unit/sensitivity.test.ts (against the sweep of moved layouts, and the rule of thumb of height).
 */
export function sensitivityOf(
  document: LayoutDocument,
  id: string,
  step = USUAL_STEP,
): Outcome<Sensitivity, 'unknown-point' | 'no-travel'> {
  const point = hardpoints(document).find((hardpoint) => hardpoint.id === id);
  if (!point) return failed('unknown-point');
  const drawn = measure(document);
  if (!drawn) return failed('no-travel');
  const steps = ([0, 1, 2] as const).flatMap((axis) =>
    ([-1, 1] as const).map((direction) => {
      const to = [...point.at] as [number, number, number];
      to[axis] += direction * step;
      return { axis, direction, measured: measure(moveHardpoint(document, id, to as Point)) };
    }),
  );
  const keys = concerned(
    drawn,
    steps.map(({ measured }) => measured),
  );
  return succeeded({
    id,
    step,
    drawn: withClearance(drawn, keys),
    effects: steps.map(({ axis, direction, measured }) => ({
      axis,
      direction,
      figures: measured ? withClearance(measured, keys) : undefined,
    })),
  });
}
