import type { Point } from '../geometry/points.ts';
import {
  geometryRefusal,
  type Hardpoint,
  hardpoints,
  isOtherOfPair,
  type LayoutDocument,
  moveHardpoint,
  resolveLayout,
} from '../layout/index.ts';
import { prepareFrontEnd } from '../linkage/index.ts';
import { failed, type Outcome, succeeded } from '../outcome.ts';
import { summariseTravel, sweepTravel } from '../sweep/index.ts';
import type { Radians } from '../units/index.ts';

/** What a point that is off by a little, along one axis, adds to the worst bump steer over heave. */
export interface PlaceEffect {
  readonly id: string;
  readonly axis: 0 | 1 | 2;
  /** rad, the worse of both ways, never below 0; undefined if a layout with the step is none or does not reach over the travel. */
  readonly adds: Radians | undefined;
}

/** Poses over heave: a step's effect is asked, not a curve. */
const POSES = 15;

/** Worst |bump steer| over heave; undefined if the layout is none or does not reach everywhere. */
function worstOf(document: LayoutDocument): number | undefined {
  if (geometryRefusal(document)) return undefined;
  const layout = resolveLayout(document);
  const { bump, rebound: droop } = layout.travel;
  const heave = sweepTravel(prepareFrontEnd(layout), 'heave', -droop, bump, POSES, 0);
  const { okCount, worstBumpSteer } = summariseTravel(heave);
  return okCount < heave.count ? undefined : worstBumpSteer;
}

/** Points that a mis-step of makes another bump steer: all but the shaft's, one of each mirrored pair. */
function asked(document: LayoutDocument): Hardpoint[] {
  return hardpoints(document).filter(
    (point) => !point.id.startsWith('shaft.') && !(point.twin && isOtherOfPair(point)),
  );
}

/**
 * What each hardpoint that is off by `step` does to the worst bump steer over heave, along x, y and z. Links are made to fit,
 * so their lengths are those of the moved layout; a mirrored point moves with its twin.
 * Frame:    vehicle. Units: mm, rad. Shapes: three effects for each point, x, y, z.
 * Outcomes: the effects; no-travel where the layout as drawn does not reach over its own travel.
 * Source:   own writing: differences of the sweep, no derivatives.
 * Checked:  tests/unit/sixteenth.test.ts.
 */
export function placeEffects(
  document: LayoutDocument,
  step: number,
): Outcome<readonly PlaceEffect[], 'no-travel'> {
  const drawn = worstOf(document);
  if (drawn === undefined) return failed('no-travel');
  return succeeded(
    asked(document).flatMap(({ id, at }) =>
      ([0, 1, 2] as const).map((axis): PlaceEffect => {
        let adds: number | undefined = 0;
        for (const way of [-1, 1]) {
          const to = [...at] as [number, number, number];
          to[axis] += way * step;
          const worst = worstOf(moveHardpoint(document, id, to as Point));
          adds = worst === undefined || adds === undefined ? undefined : Math.max(adds, worst - drawn);
        }
        return { id, axis, adds: adds as Radians | undefined };
      }),
    ),
  );
}
