import type { AxlePoint, FramePoint, Point } from '../geometry/points.ts';
import { add, dot, norm, scaled, subtract } from '../geometry/vectors.ts';

/** Share of its length at which the centre of a half spring's arc stands out from the clamp, along the clamp's line. */
const CENTRE_SHARE = 1 / 4;

/**
 * The centre of the arc that the eye of a half spring runs about, the other end of the half being clamped to the frame.
 * A half of length L that bends by φ from its clamp's line in a circle has its eye L sin φ/φ out along that line and
 * L (1 - cos φ)/φ beside it. To second order these are L (1 - φ²/6) and L φ/2: a parabola of radius 3/4 L at its vertex,
 * and a circle of that radius about the point L/4 out follows it within a thousandth of L up to φ = 1. So one circle serves
 * the spring however it is arched as drawn, but its centre lies on the clamp's line and not on the chord. As the chord turns
 * from that line by ψ = φ/2, the drawn points give L = chord · ψ/sin ψ.
 * Frame:   vehicle. Units: mm; `line` of length 1 as the leaf leaves the clamp, `eye` as drawn, ahead of the clamp on it.
 * Source:  own derivation. 3/4 is SAE HS-788's for a spring whose leaves are cut so that all of it bends alike (from
 *          memory); one leaf of even section runs an arc of 5/6 of its length about a point a sixth out, by the
 *          same expansion of the bent beam.
 * Checked: tests/reference/cantilever-arc.test.ts (bent leaves, integrated).
 */
export function cantileverCentre(clamp: FramePoint, line: Point, eye: AxlePoint): FramePoint {
  const chord = subtract(eye, clamp);
  const along = dot(chord, line);
  const turn = Math.atan2(norm(subtract(chord, scaled(line, along))), along);
  const length = norm(chord) * (turn < 1e-9 ? 1 : turn / Math.sin(turn));
  return add(clamp, scaled(line, CENTRE_SHARE * length));
}
