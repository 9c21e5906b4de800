/**
 * What it takes to turn the wheels of a standing car. Rough by nature: the grip of the floor alone is a guess.
 */

/** Friction of rubber on a dry floor in the published formula; it falls as the scrub radius grows. */
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
 * W the wheel's load. B/√8 is a disc's radius of gyration, 3 to 10 per cent above its mean friction radius, so the
 * formula errs high.
 * Units:    N, mm, N·m. `overallRatio` is handwheel to wheels at the centre.
 * Source:   a hydraulic steering handbook's sizing formula; the disc factor computed.
 * Checked:  tests/reference/parking-effort.test.ts (the handbook's example; a double integral over the disc).
 */
export function parkingEffort(facts: {
  readonly frontAxleLoad: number;
  readonly tyreWidth: number;
  readonly scrubRadius: number;
  readonly overallRatio: number;
  readonly handwheelRadius: number;
  readonly friction?: number;
  readonly efficiency?: number;
}): ParkingEffort {
  const { frontAxleLoad, tyreWidth, scrubRadius, overallRatio, handwheelRadius } = facts;
  const { friction = PARKING_FRICTION, efficiency = BOX_EFFICIENCY } = facts;
  const arm = Math.sqrt((tyreWidth * tyreWidth) / 8 + scrubRadius * scrubRadius);
  const kingpinTorque = (friction * frontAxleLoad * arm) / 1000;
  const handwheelTorque = kingpinTorque / (Math.abs(overallRatio) * efficiency);
  return { kingpinTorque, handwheelTorque, rimForce: handwheelTorque / (handwheelRadius / 1000) };
}

/** At the rim with assistance that works, N, from the lightest usual valve to the firmest. `handwheelRadius` in mm. */
export function assistedRimForce(handwheelRadius: number): { readonly least: number; readonly most: number } {
  const radius = handwheelRadius / 1000;
  return { least: ASSISTED_TORQUE.least / radius, most: ASSISTED_TORQUE.most / radius };
}
