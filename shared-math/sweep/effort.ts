import type { Layout, Side } from '../layout/index.ts';
import { groundOffsets } from '../linkage/index.ts';
import type { TurnSweep } from './turn.ts';

/**
 * What it takes to turn the wheels of a standing car. Rough by nature: the grip of the floor alone is a guess.
 */

/** Friction of rubber on a dry floor in the published formula; it falls as the eccentricity grows. */
export const PARKING_FRICTION = 0.7;

/** Share of the handwheel's torque that a manual box hands on; common practice, no published source. */
export const BOX_EFFICIENCY = 0.7;

/**
 * What a driver is left to do at the handwheel of an assisted box, N·m, at a standstill: its valve settles that, not
 * the layout. Common practice, no published source.
 */
export const ASSISTED_TORQUE = { least: 2, most: 6 } as const;

export interface ParkingEffort {
  /** Both kingpins together, N·m. */
  readonly kingpinTorque: number;
  /** At the handwheel, N·m. */
  readonly handwheelTorque: number;
  /** At its rim, N. */
  readonly rimForce: number;
}

/**
 * Effort to steer at a standstill.
 * Each kingpin takes T = μ W √(B²/8 + E²): B the tyre's width, E the distance at the ground from kingpin axis to contact,
 * both sideways and fore and aft (`groundEccentricity`), W the wheel's load. B/√8 is a disc's radius of gyration, 3 to 10 per cent above its mean friction radius, so the
 * formula errs high.
 * Units:    N, mm, N·m. `overallRatio` is handwheel to wheels where the effort is asked.
 * Source:   a hydraulic steering handbook's sizing formula; the disc factor computed.
 * Checked:  tests/reference/parking-effort.test.ts (the handbook's example; a double integral over the disc).
 */
export function parkingEffort(facts: {
  readonly frontAxleLoad: number;
  readonly tyreWidth: number;
  readonly eccentricity: number;
  readonly overallRatio: number;
  readonly handwheelRadius: number;
  readonly friction?: number;
  readonly efficiency?: number;
}): ParkingEffort {
  const { frontAxleLoad, tyreWidth, eccentricity, overallRatio, handwheelRadius } = facts;
  const { friction = PARKING_FRICTION, efficiency = BOX_EFFICIENCY } = facts;
  const arm = Math.sqrt((tyreWidth * tyreWidth) / 8 + eccentricity * eccentricity);
  const kingpinTorque = (friction * frontAxleLoad * arm) / 1000;
  const handwheelTorque = kingpinTorque / (Math.abs(overallRatio) * efficiency);
  return { kingpinTorque, handwheelTorque, rimForce: handwheelTorque / (handwheelRadius / 1000) };
}

/** At the rim with assistance that works, N, from the lightest usual valve to the firmest. `handwheelRadius` in mm. */
export function assistedRimForce(handwheelRadius: number): { readonly least: number; readonly most: number } {
  const radius = handwheelRadius / 1000;
  return { least: ASSISTED_TORQUE.least / radius, most: ASSISTED_TORQUE.most / radius };
}

/** Distance at the ground from the kingpin's axis to the tyre's contact point as drawn, mm: √(scrub² + trail²). */
export function groundEccentricity(layout: Layout, side: Side): number {
  const { scrubRadius, mechanicalTrail } = groundOffsets(layout, side);
  return Math.hypot(scrubRadius, mechanicalTrail);
}

/** Parking effort straight ahead, and where it is most on the way from lock to lock. */
export interface TurnEffort {
  readonly centre: ParkingEffort;
  readonly worst: ParkingEffort & {
    /** rad: where the overall ratio is least. */
    readonly handwheel: number;
  };
}

/**
 * What parking takes through a turn: the kingpins take as much everywhere, the handwheel most where the overall ratio is
 * least. Each kingpin by its own eccentricity and half the load; the mean rate of the wheels hands it on. Undefined if
 * there is no turn.
 * Units:    N, mm, N·m, rad. Source: `parkingEffort`; the ratio's least of the sweep's rows and straight ahead.
 * Checked:  tests/unit/turn.test.ts (rates by differences of the solved linkage).
 */
export function effortOfTurn(layout: Layout, turn: TurnSweep): TurnEffort | undefined {
  if (turn.status !== 'ok' || turn.count < 2 || !Number.isFinite(turn.straightRatio)) return undefined;
  const { frontAxleLoad, tyreWidth, handwheelRadius } = layout.car;
  const at = (overallRatio: number): ParkingEffort => {
    const sides = (['left', 'right'] as const).map((side) =>
      parkingEffort({
        frontAxleLoad: frontAxleLoad / 2,
        tyreWidth,
        eccentricity: groundEccentricity(layout, side),
        overallRatio,
        handwheelRadius,
      }),
    ) as [ParkingEffort, ParkingEffort];
    const [left, right] = sides;
    return {
      kingpinTorque: left.kingpinTorque + right.kingpinTorque,
      handwheelTorque: left.handwheelTorque + right.handwheelTorque,
      rimForce: left.rimForce + right.rimForce,
    };
  };
  let [least, handwheel] = [Math.abs(turn.straightRatio), 0];
  for (let row = 0; row < turn.count; row += 1) {
    const ratio = Math.abs(turn.ratio[row] as number);
    if (ratio < least) [least, handwheel] = [ratio, turn.handwheel[row] as number];
  }
  return { centre: at(turn.straightRatio), worst: { ...at(least), handwheel } };
}
