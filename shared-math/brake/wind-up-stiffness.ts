/**
 * How stiffly a leaf spring clamped to the axle holds it against winding up, its height held: N·mm/rad.
 * From the seat each half is a cantilever whose eye the frame holds by a pin or a shackle: a force is all that it takes, no
 * moment. An eye that stands d off the seat's own tangent is pushed back with c d/l³ over a half of length l, c = 3 E I for
 * a leaf of even section and 2 E I for one cut to a triangle: one and the same c for both halves of one pack. The seat risen
 * by z and tipped by θ, kingpin top ahead, has its front eye at -(z - a θ) off the tangent and its rear eye at -(z + b θ), so
 * that with halves of a and b mm
 *   force up on the leaf        F = c (1/a³ + 1/b³) z + c (1/b² - 1/a²) θ
 *   moment that tips it ahead   M = c (1/b² - 1/a²) z + c (1/a + 1/b) θ.
 * With M = 0 these give the seat's own tipping, θ = -(a - b)/(a b) z, and the ride rate k = F/z = c (a + b)/(a² b²). At a
 * height that is held, M = c (1/a + 1/b) θ; with c from the rate that is
 *   M/θ = k a b,
 * or k L²/4 in the middle of a leaf L long. Left out: friction between the leaves, the seat's clamped length, the shackle's
 * own swing, the arch, which takes about a third of the eyes' rise off the lever.
 * Units:   `rate` N/mm at the seat; halves in mm along the leaf.
 * Source:  own derivation from the bending of beams (Euler and Bernoulli); that a leaf's wind-up follows from its rate and
 *          its halves is treated in SAE HS-788, from memory: the text was not at hand.
 * Checked: tests/reference/leaf-wind-up.test.ts (finite elements of a stepped beam; an arched frame).
 */
export function windUpStiffness(rate: number, front: number, rear: number): number {
  return rate * front * rear;
}
