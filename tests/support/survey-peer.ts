import { levenbergMarquardt } from 'ml-levenberg-marquardt';
import { inverse, Matrix } from 'ml-matrix';
import type { SurveyRow } from '../../shared-math/adjust/index.ts';

type Point = readonly [number, number, number];
export type Points = Readonly<Record<string, Point>>;

/** The key of the sector shaft's direction among the points. */
export const SECTOR_AXIS = 'steering.box.sectorAxis';

/**
 * What rows of a survey come to, written anew from the words of the contract: distances, heights, angles of the kingpin.
 * Nothing of the project computes here.
 */
export function plainValue(row: SurveyRow, points: Points, drawn: Points): number {
  const at = (id: string) => points[id]!;
  const degrees = 180 / Math.PI;
  switch (row.kind) {
    case 'back':
      return -at(row.of)[0];
    case 'out':
      return drawn[row.of]![1] >= 0 ? at(row.of)[1] : -at(row.of)[1];
    case 'up':
      return at(row.of)[2];
    case 'straight': {
      const [a, b] = [at(row.from), at(row.to)];
      return Math.sqrt((a[0] - b[0]) ** 2 + (a[1] - b[1]) ** 2 + (a[2] - b[2]) ** 2);
    }
    case 'plumb': {
      const [a, b] = [at(row.from), at(row.to)];
      return Math.sqrt((a[0] - b[0]) ** 2 + (a[1] - b[1]) ** 2);
    }
    case 'level':
      return at(row.to)[2] - at(row.from)[2];
    case 'behind':
      return at(row.from)[0] - at(row.to)[0];
    case 'across':
      return at(row.to)[1] - at(row.from)[1];
    case 'arm': {
      // Area of the triangle over the kingpin, by Heron, and so the height over it.
      const [p, a, b] = [at(row.of), at(`axle.${row.side}.kingpinTop`), at(`axle.${row.side}.kingpinBottom`)];
      const long = (u: Point, v: Point) =>
        Math.sqrt((u[0] - v[0]) ** 2 + (u[1] - v[1]) ** 2 + (u[2] - v[2]) ** 2);
      const [c, d, e] = [long(a, b), long(p, a), long(p, b)];
      const s = (c + d + e) / 2;
      return (2 * Math.sqrt(s * (s - c) * (s - d) * (s - e))) / c;
    }
    case 'sector-arm': {
      // What the shaft's direction and the way to the ball span between them, over the direction's own length.
      const [p, c, u] = [at(row.of), at('steering.box.sectorCentre'), at(SECTOR_AXIS)];
      const d = [p[0] - c[0], p[1] - c[1], p[2] - c[2]] as const;
      const spanned = Math.hypot(
        u[1] * d[2] - u[2] * d[1],
        u[2] * d[0] - u[0] * d[2],
        u[0] * d[1] - u[1] * d[0],
      );
      return spanned / Math.hypot(...u);
    }
    case 'caster':
    case 'inclination': {
      const [a, b] = [at(`axle.${row.side}.kingpinTop`), at(`axle.${row.side}.kingpinBottom`)];
      if (row.kind === 'caster') return degrees * Math.atan2(b[0] - a[0], a[2] - b[2]);
      return degrees * Math.atan2((b[1] - a[1]) * (row.side === 'left' ? 1 : -1), a[2] - b[2]);
    }
    case 'steer-change':
      throw new Error('needs a pose');
  }
}

export interface PeerUnknown {
  readonly id: string;
  readonly axis: number;
}

export interface PeerTask {
  readonly drawn: Points;
  readonly unknowns: readonly PeerUnknown[];
  /** Right points that are the left ones with y negated. */
  readonly mirrored: readonly string[];
  readonly rows: readonly SurveyRow[];
  readonly doubts: readonly number[];
}

function pointsAt({ drawn, unknowns, mirrored }: PeerTask, x: readonly number[]): Points {
  const points: Record<string, number[]> = Object.fromEntries(
    Object.entries(drawn).map(([id, point]) => [id, [...point]]),
  );
  for (const [j, { id, axis }] of unknowns.entries()) points[id]![axis] = x[j]!;
  for (const id of mirrored) {
    const left = points[id.replace('.right.', '.left.')]!;
    points[id] = [left[0]!, -left[1]!, left[2]!];
  }
  return points as unknown as Points;
}

/** All residuals in their doubts: the rows, then the drawing's own weak knowledge at 250 mm. */
function residuals(task: PeerTask, x: readonly number[]): number[] {
  const points = pointsAt(task, x);
  return [
    ...task.rows.map((row, i) => (row.value - plainValue(row, points, task.drawn)) / task.doubts[i]!),
    ...task.unknowns.map(({ id, axis }, j) => (x[j]! - task.drawn[id]![axis]!) / 250),
  ];
}

export function peerSum(task: PeerTask, x: readonly number[]): number {
  return residuals(task, x).reduce((sum, value) => sum + value * value, 0);
}

/** The same least squares by ml-levenberg-marquardt, with its own differences. */
export function peerSolution(task: PeerTask, start?: readonly number[]): number[] {
  const count = task.rows.length + task.unknowns.length;
  const result = levenbergMarquardt(
    { x: Array.from({ length: count }, (_, i) => i), y: new Array(count).fill(0) },
    (parameters: number[]) => {
      const values = residuals(task, parameters);
      return (i: number) => values[i]!;
    },
    {
      initialValues: [...(start ?? task.unknowns.map(({ id, axis }) => task.drawn[id]![axis]!))],
      damping: 1e-3,
      gradientDifference: 1e-3,
      centralDifference: true,
      maxIterations: 400,
      errorTolerance: 1e-14,
    },
  );
  return result.parameterValues;
}

/** Covariance, and redundancies of the rows, by ml-matrix and differences of the plain values. */
export function peerCovariance(task: PeerTask, x: readonly number[]) {
  const size = task.unknowns.length;
  const slopes = task.unknowns.map((_, j) => {
    const [further, back] = [1e-3, -1e-3].map((step) =>
      residuals(
        task,
        x.map((v, k) => (k === j ? v + step : v)),
      ),
    );
    return further!.map((value, i) => (value - back![i]!) / 2e-3);
  });
  const jacobian = new Matrix(slopes).transpose();
  const covariance = inverse(jacobian.transpose().mmul(jacobian));
  const hat = jacobian.mmul(covariance).mmul(jacobian.transpose());
  return {
    deviations: Array.from({ length: size }, (_, j) => Math.sqrt(covariance.get(j, j))),
    redundancies: task.rows.map((_, i) => 1 - hat.get(i, i)),
    correlation: (i: number, k: number) =>
      -hat.get(i, k) / Math.sqrt((1 - hat.get(i, i)) * (1 - hat.get(k, k))),
  };
}
