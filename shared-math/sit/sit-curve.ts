import { type LayoutDocument, resolveLayout } from '../layout/index.ts';
import { prepareFrontEnd } from '../linkage/index.ts';
import { summariseTravel, sweepTravel } from '../sweep/index.ts';
import { type Lowered, type SitFailure, sat } from './sit.ts';

/** What a car is like at one ride height; angles in rad, the slope in rad per mm, signed as the wheels are. */
export interface SitRow {
  readonly lowered: Lowered;
  /** Undefined if it sits so; the figures mean something only then. */
  readonly failure: SitFailure | undefined;
  /** Largest bump steer over the travel that is left, a magnitude; the slope at the new ride height. */
  readonly worstBumpSteer: number;
  readonly slope: number;
  readonly caster: number;
  /** mm: travel left, and by how much the drag link is set longer. */
  readonly bump: number;
  readonly droop: number;
  readonly dragLinkBy: number;
}

const NOTHING = { worstBumpSteer: 0, slope: 0, caster: 0, bump: 0, droop: 0, dragLinkBy: 0 };
const POSES = 31;

/** Bump steer, caster and travel left at each of some ride heights, each worked out as a layout of its own. */
export function* sitRows(document: LayoutDocument, heights: Iterable<Lowered>): Generator<SitRow> {
  for (const lowered of heights) {
    const sits = sat(document, lowered);
    if (!sits.ok) {
      yield { lowered, failure: sits.failure, ...NOTHING };
      continue;
    }
    const layout = resolveLayout(sits.value.document);
    const { bump, rebound: droop } = layout.travel;
    const frontEnd = prepareFrontEnd(layout);
    const summary = summariseTravel(sweepTravel(frontEnd, 'heave', -droop, bump, POSES, 0));
    const { kingpinTop, kingpinBottom } = layout.axle.left;
    yield {
      lowered,
      failure: summary.okCount > 1 ? undefined : { kind: 'no-pose' },
      worstBumpSteer: summary.worstBumpSteer,
      slope: summary.slopeAtRide,
      caster: Math.atan2(kingpinBottom[0] - kingpinTop[0], kingpinTop[2] - kingpinBottom[2]),
      bump,
      droop,
      dragLinkBy: sits.value.dragLinkBy,
    };
  }
}
