import type { Layout, Side, SpringDocument } from '../layout/index.ts';

/** N/mm². Young's modulus of spring steel: 206 GPa, as handbooks of springs give it (from memory). */
const SPRING_STEEL = 206_000;

type Leaf = Extract<SpringDocument, { kind: 'leaf' }>;

/**
 * Load for each mm at the seat of a leaf spring that is clamped between its eyes, N/mm.
 * Each part from the seat to an eye is a cantilever. With leaves cut to a triangle the pack bends in a circle: a force F
 * at the eye bends it by F l³/(2 E I), I = n b t³/12. Leaves that run the whole length with square ends share the load
 * as beams of even section, F l³/(3 E I): n of the one and m of the other carry F = E b t³ (2 n + 3 m)/(12 l³) for each
 * mm. Halves of a and b mm share a load at the seat as b : a, and the seat sinks by the mean of the eyes', so that with
 * c = F l³ for each mm the rate is c (a + b)/(a² b²); with a = b = l, 2 c/l³.
 * Units:   mm; N/mm².
 * Source:  the handbook formula for a half-elliptic leaf spring, E b t³ (2 n + 3 m)/(6 l³) with equal halves (textbooks
 *          of machine design; from memory), derived as above. Friction between the leaves and clamping are left out.
 * Checked: tests/reference/ride-springs.test.ts (bending of the stepped beam, integrated).
 */
export function leafRate(leaf: Omit<Leaf, 'kind' | 'lie'>, front: number, rear: number): number {
  const full = leaf.fullLeaves ?? 0;
  const cut = leaf.leaves - full;
  const perEye = (SPRING_STEEL * leaf.width * leaf.thickness ** 3 * (2 * cut + 3 * full)) / 12;
  return (perEye * (front + rear)) / (front * front * rear * rear);
}

/** How a leaf along the rail is split by its seat: as the layout draws it, in equal halves where it draws none. mm. */
export function leafHalves(
  layout: Layout,
  length: number,
  side: Side = 'left',
): [fixed: number, shackle: number] {
  if (layout.location.kind !== 'parallel-leaf') return [length / 2, length / 2];
  const { fixedEye, seat, shackleEye } = layout.location[side];
  const fixed = Math.abs(fixedEye[0] - seat[0]);
  const shackle = Math.abs(shackleEye[0] - seat[0]);
  return [(length * fixed) / (fixed + shackle), (length * shackle) / (fixed + shackle)];
}

/** Rate of one side at the axle, N/mm, of a spring as the document tells it. */
export function springRateOf(spring: SpringDocument, layout: Layout): number {
  switch (spring.kind) {
    case 'rate':
      return spring.rate;
    case 'measured':
      return spring.load / spring.settles / 2;
    case 'leaf': {
      const { lie, length } = spring;
      // A quarter-elliptic spring is one half of a leaf: one cantilever from its clamp to its eye.
      // Across the car one spring carries both sides, each on one of its halves.
      if (lie === 'across') return leafRate(spring, length / 2, length / 2) / 2;
      if (layout.location.kind === 'quarter-elliptic') return leafRate(spring, length, length) / 2;
      return leafRate(spring, ...leafHalves(layout, length));
    }
  }
}
