import type { JointKind } from '../layout/index.ts';
import { MM_PER_INCH, type Radians, toRadians } from '../units/index.ts';

// Usual figures for steering shafts. All are common practice, no published source; a shop and a maker's figure rule.

/** The largest angle of a joint by kind. */
export type JointLimits = Readonly<Record<JointKind, Radians>>;

/** Degrees. A single joint up to about 30, a double joint up to about 70. */
export const USUAL_JOINT_DEGREES: Readonly<Record<JointKind, number>> = { single: 30, double: 70 };

export const USUAL_JOINT_LIMITS: JointLimits = {
  single: toRadians(USUAL_JOINT_DEGREES.single),
  double: toRadians(USUAL_JOINT_DEGREES.double),
};

/** rad. Below this a joint's needles stay on one spot and wear there. */
export const LEAST_JOINT_ANGLE: Radians = toRadians(1);

/** rad. How far a clock may be off its best before it is felt at modest angles: about 20 degrees; 45 is plain. */
export const CLOCK_NOTICED: Radians = toRadians(20);

/** mm. A longer shaft between joint and bearing wants a support: 30 in. */
export const LONGEST_SPAN = 30 * MM_PER_INCH;

/** mm. How near to the middle joint a support stands: within 3 in. */
export const SUPPORT_FROM_JOINT = 2.5 * MM_PER_INCH;

/** mm. A support's bore over the shaft's diameter, so that it slides on round and double-D alike: 0.007 in. */
export const SUPPORT_BORE_OVER = 0.007 * MM_PER_INCH;

/** mm. Sliding left in a shaft for frame flex and a column that collapses: 1/2 to 1 in. */
export const SLIP = { least: 0.5 * MM_PER_INCH, usual: MM_PER_INCH } as const;

/** mm. How deep sliding pieces sit in one another at the least, beside the slip itself: 1 in. */
export const SLIDING_OVERLAP = MM_PER_INCH;

/** mm. Depth of the dimple under a set screw: 1/8 in. */
export const DIMPLE_DEPTH = MM_PER_INCH / 8;

/** mm. What a notch is filed deeper than the bolt needs, so that the bolt goes through without force: 0.010 in. */
export const NOTCH_CLEARANCE = 0.01 * MM_PER_INCH;

/** lbf·ft. A common torque of a steering joint's pinch bolt; the maker's figure rules. */
export const PINCH_BOLT_POUND_FEET = 45;

/** mm. An end this much larger than its bore does not go in; one this much smaller rattles: 0.0005 and 0.015 in. */
export const TIGHT_FROM = -0.0005 * MM_PER_INCH;
export const LOOSE_FROM = 0.015 * MM_PER_INCH;
