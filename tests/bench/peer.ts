import { levenbergMarquardt } from 'ml-levenberg-marquardt';
import { distance, type Point } from '../../shared-math/geometry/points.ts';
import type { Layout } from '../../shared-math/layout/index.ts';

/**
 * The peer: one pose with both spindles on hairpins and a transverse spring, as nine equations in seven unknowns
 * (x, y, yaw, two pitches, two spindle turns), written lean and without allocation in the residuals, and solved by
 * ml-levenberg-marquardt with its difference slopes. The same equations that the program solves.
 */
export interface Peer {
  /** Solves from the numbers in `start` (mm; angles in mm at one metre) and overwrites them. */
  solve(heave: number, roll: number, start: number[]): void;
}

export function preparePeer(layout: Layout): Peer {
  const { location, lateral, axle, steering } = layout;
  if (location.kind !== 'hairpins' || lateral.kind !== 'spring')
    throw new Error('the peer knows hairpins and a spring');
  const { left, right } = axle;
  const a0 = [0, 1, 2].map((i) => (left.wheelCentre[i]! + right.wheelCentre[i]!) / 2);
  const from = (p: Point): Point => [p[0] - a0[0]!, p[1] - a0[1]!, p[2] - a0[2]!];
  const pivots = [from(location.left.framePivot), from(location.right.framePivot)] as const;
  const spindle = (half: typeof left, ball: Point) => {
    const k = from(half.kingpinBottom);
    const length = distance(half.kingpinTop, half.kingpinBottom);
    const u: Point = [0, 1, 2].map(
      (i) => (half.kingpinTop[i]! - half.kingpinBottom[i]!) / length,
    ) as unknown as Point;
    const q = from(ball);
    return { k, u, d: [q[0] - k[0], q[1] - k[1], q[2] - k[2]] as const };
  };
  const arm = spindle(left, steering.dragLinkBall);
  const tieLeft = spindle(left, left.tieRodBall);
  const tieRight = spindle(right, right.tieRodBall);
  const pitman = from(steering.box.pitmanBall);
  const dragLink = distance(steering.dragLinkBall, steering.box.pitmanBall);
  const tieRod = distance(left.tieRodBall, right.tieRodBall);
  const height = (lateral.height ?? a0[2]!) - a0[2]!;
  const side = Math.sqrt(0.001);

  let [heave, cr, sr] = [0, 1, 0];
  const r = new Float64Array(9);
  const p = new Float64Array(9);

  const place = (
    x: number,
    y: number,
    cy: number,
    sy: number,
    cp: number,
    sp: number,
    px: number,
    py: number,
    pz: number,
    at: number,
  ) => {
    const v1x = cp * px + sp * pz;
    const v1z = cp * pz - sp * px;
    const v2y = cr * py - sr * v1z;
    p[at] = x + cy * v1x - sy * v2y;
    p[at + 1] = y + sy * v1x + cy * v2y;
    p[at + 2] = heave + sr * py + cr * v1z;
  };
  const turned = (s: ReturnType<typeof spindle>, c: number, n: number, axis: 0 | 1 | 2) => {
    const [ux, uy, uz] = s.u;
    const [dx, dy, dz] = s.d;
    const along = (ux * dx + uy * dy + uz * dz) * (1 - c);
    if (axis === 0) return s.k[0] + dx * c + (uy * dz - uz * dy) * n + ux * along;
    if (axis === 1) return s.k[1] + dy * c + (uz * dx - ux * dz) * n + uy * along;
    return s.k[2] + dz * c + (ux * dy - uy * dx) * n + uz * along;
  };

  const evaluate = (u: readonly number[]) => {
    const [x, y] = [u[0]!, u[1]!];
    const cy = Math.cos(u[2]! / 1000);
    const sy = Math.sin(u[2]! / 1000);
    const cl = Math.cos(u[3]! / 1000);
    const sl = Math.sin(u[3]! / 1000);
    const cR = Math.cos(u[4]! / 1000);
    const sR = Math.sin(u[4]! / 1000);
    const ca = Math.cos(u[5]! / 1000);
    const sa = Math.sin(u[5]! / 1000);
    const cb = Math.cos(u[6]! / 1000);
    const sb = Math.sin(u[6]! / 1000);
    for (let half = 0; half < 2; half += 1) {
      const pivot = pivots[half as 0 | 1];
      place(x, y, cy, sy, half === 0 ? cl : cR, half === 0 ? sl : sR, pivot[0], pivot[1], pivot[2], 0);
      r[3 * half] = p[0]! - pivot[0];
      r[3 * half + 1] = side * (p[1]! - pivot[1]);
      r[3 * half + 2] = p[2]! - pivot[2];
    }
    r[6] = y - height * sr;
    place(x, y, cy, sy, cl, sl, turned(arm, ca, sa, 0), turned(arm, ca, sa, 1), turned(arm, ca, sa, 2), 0);
    r[7] =
      Math.sqrt((p[0]! - pitman[0]) ** 2 + (p[1]! - pitman[1]) ** 2 + (p[2]! - pitman[2]) ** 2) - dragLink;
    place(
      x,
      y,
      cy,
      sy,
      cl,
      sl,
      turned(tieLeft, ca, sa, 0),
      turned(tieLeft, ca, sa, 1),
      turned(tieLeft, ca, sa, 2),
      3,
    );
    place(
      x,
      y,
      cy,
      sy,
      cR,
      sR,
      turned(tieRight, cb, sb, 0),
      turned(tieRight, cb, sb, 1),
      turned(tieRight, cb, sb, 2),
      6,
    );
    r[8] = Math.sqrt((p[3]! - p[6]!) ** 2 + (p[4]! - p[7]!) ** 2 + (p[5]! - p[8]!) ** 2) - tieRod;
  };

  const data = { x: [0, 1, 2, 3, 4, 5, 6, 7, 8], y: new Array(9).fill(0) };
  const read = (i: number) => r[i]!;
  return {
    solve(h, roll, start) {
      heave = h;
      cr = Math.cos(roll);
      sr = Math.sin(roll);
      const found = levenbergMarquardt(
        data,
        (u: number[]) => {
          // The library asks for a function of the row; the rows are worked out once for each set of unknowns.
          evaluate(u);
          return read;
        },
        {
          initialValues: start,
          damping: 1e-7,
          gradientDifference: 1e-3,
          maxIterations: 20,
          // Square mm: links closed to 1e-7 mm, ten times looser than the program's own.
          errorTolerance: 1e-14,
        },
      );
      for (let i = 0; i < 7; i += 1) start[i] = found.parameterValues[i]!;
    },
  };
}
