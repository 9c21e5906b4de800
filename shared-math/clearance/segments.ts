/** Squared distance of a point from a segment p to q, with the segment's nearest point at `share` of the way. */
function pointToSegment(
  x: number,
  y: number,
  z: number,
  segment: Float64Array,
  at: number,
): { squared: number; share: number } {
  const px = segment[at] as number;
  const py = segment[at + 1] as number;
  const pz = segment[at + 2] as number;
  const dx = (segment[at + 3] as number) - px;
  const dy = (segment[at + 4] as number) - py;
  const dz = (segment[at + 5] as number) - pz;
  const length = dx * dx + dy * dy + dz * dz;
  const along = (x - px) * dx + (y - py) * dy + (z - pz) * dz;
  const share = length > 0 ? Math.min(1, Math.max(0, along / length)) : 0;
  const ox = x - px - share * dx;
  const oy = y - py - share * dy;
  const oz = z - pz - share * dz;
  found.squared = ox * ox + oy * oy + oz * oz;
  found.share = share;
  return found;
}

const found = { squared: 0.5, share: 0.5 };

/**
 * Distance of two segments and their nearest points.
 * On the lines p + s d and q + t e the nearest points have s = (b f - c e²)/(d² e² - b²) with b = d·e, c = d·r, f = e·r,
 * r = p - q. Where they fall inside both segments they are the answer; else it lies at an end of one of them, and the
 * nearest of the four is taken. Nearly parallel lines, where s is all rounding, lose nothing by that.
 * Frame:    any. Units: mm. Shapes: six numbers each; writes the two points to `out`; allocates nothing.
 * Outcomes: the distance; 0 where they meet.
 * Source:   own derivation, as above.
 * Checked:  tests/unit/clearance.test.ts (closed forms; dense sampling).
 */
export function segmentToSegment(
  a: Float64Array,
  atA: number,
  b: Float64Array,
  atB: number,
  out: Float64Array,
): number {
  const px = a[atA] as number;
  const py = a[atA + 1] as number;
  const pz = a[atA + 2] as number;
  const dx = (a[atA + 3] as number) - px;
  const dy = (a[atA + 4] as number) - py;
  const dz = (a[atA + 5] as number) - pz;
  const qx = b[atB] as number;
  const qy = b[atB + 1] as number;
  const qz = b[atB + 2] as number;
  const ex = (b[atB + 3] as number) - qx;
  const ey = (b[atB + 4] as number) - qy;
  const ez = (b[atB + 5] as number) - qz;
  const rx = px - qx;
  const ry = py - qy;
  const rz = pz - qz;
  const dd = dx * dx + dy * dy + dz * dz;
  const ee = ex * ex + ey * ey + ez * ez;
  const de = dx * ex + dy * ey + dz * ez;
  const dr = dx * rx + dy * ry + dz * rz;
  const er = ex * rx + ey * ry + ez * rz;
  const determinant = dd * ee - de * de;

  let s = 0;
  let t = 0;
  let least = Number.POSITIVE_INFINITY;
  if (determinant > 1e-12 * dd * ee) {
    const inS = (de * er - dr * ee) / determinant;
    const inT = (dd * er - de * dr) / determinant;
    if (inS >= 0 && inS <= 1 && inT >= 0 && inT <= 1) {
      s = inS;
      t = inT;
      least = -1;
    }
  }
  if (least > 0) {
    for (let end = 0; end < 2; end += 1) {
      const onB = pointToSegment(px + end * dx, py + end * dy, pz + end * dz, b, atB);
      if (onB.squared < least) {
        least = onB.squared;
        s = end;
        t = onB.share;
      }
      const onA = pointToSegment(qx + end * ex, qy + end * ey, qz + end * ez, a, atA);
      if (onA.squared < least) {
        least = onA.squared;
        s = onA.share;
        t = end;
      }
    }
  }
  out[0] = px + s * dx;
  out[1] = py + s * dy;
  out[2] = pz + s * dz;
  out[3] = qx + t * ex;
  out[4] = qy + t * ey;
  out[5] = qz + t * ez;
  const ox = (out[0] as number) - (out[3] as number);
  const oy = (out[1] as number) - (out[4] as number);
  const oz = (out[2] as number) - (out[5] as number);
  return Math.sqrt(ox * ox + oy * oy + oz * oz);
}
