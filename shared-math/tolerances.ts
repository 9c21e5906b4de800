/** Every tolerance and iteration limit of the mathematics: value, unit, and the reason for it. */

/** mm. The pose has converged when no unknown moves further in a step (angles count as mm at one metre). */
export const POSE_STEP_END = 1e-9;

/**
 * Degrees. An axle that would wind up further than this has no springs that hold it: their leaves yield long before, and the
 * bending of beams by which the angle is worked out holds for small ones.
 */
export const WIND_UP_MOST = 30;

/** Steps. A layout whose links hold the axle needs three to ten; more means that they do not hold it. */
export const POSE_STEPS_MAX = 50;

/** Ratio. Below this share of the largest singular value the links leave the axle free in some direction. */
export const POSE_RANK_MIN = 1e-3;

/** mm. What links must give below this is less than a bushing's own slack, so it is shown as none. */
export const BIND_SHOWN_FROM = 0.05;

/**
 * Ratio. A link drawn exactly at the end of its reach may miss it by rounding; within this slack it is taken as
 * at the end. At a link of one metre it stands for 1e-9 mm, far inside the closure promise of 1e-6 mm.
 */
export const REACH_SLACK = 1e-12;

/** mm. Two points nearer than this are one spot: no tape measure tells them apart, and a link needs a length. */
export const SAME_SPOT = 0.01;

/** mm. No front end is twenty metres across: larger coordinates are slips of the keyboard. */
export const COORDINATE_MAX = 20_000;

/** mm and degrees. The largest step of pose from which the solver is started at its neighbour. */
export const NEIGHBOUR_HEAVE = 25;
export const NEIGHBOUR_ROLL = 2;
