import type { Point } from '../geometry/points.ts';
import { CAMERA_UNKNOWNS, type CameraFrame, SEEN_SIZE, see, turnOf } from './camera-model.ts';
import type { PhotoSpot } from './photo-places.ts';

export interface BundleCamera {
  readonly size: PhotoSpot;
  /** About where it stood, and what by: focal length px, turn by rows (world to right, down, ahead), place mm. */
  readonly start: { readonly focal: number; readonly turn: Float64Array; readonly at: Point };
  /** Known beforehand, from the photo's file: px, and one standard deviation as a share of it. */
  readonly focal?: { readonly px: number; readonly share: number } | undefined;
  /** How many radial terms of its lens are unknown; the others are 0. */
  readonly terms: 0 | 1 | 2;
}

export interface BundlePoint {
  readonly id: string;
  /** What is known of it, or where the search starts. */
  readonly at: Point;
  /** One standard deviation of each coordinate: 0 holds it fast, Infinity knows nothing. */
  readonly doubt: Point;
}

interface RowOf {
  readonly id: string;
  /** One standard deviation: px of clicks and spots, mm of lengths and distances. */
  readonly doubt: number;
}

export type BundleRow =
  | (RowOf & {
      readonly kind: 'click';
      readonly camera: number;
      readonly point: string;
      readonly at: PhotoSpot;
    })
  | (RowOf & {
      readonly kind: 'line';
      readonly camera: number;
      /** Two or more, the ends first and last. */
      readonly spots: readonly PhotoSpot[];
      /** The way it runs in the world, where that is known, and how well: rad. */
      readonly along?: { readonly toward: Point; readonly doubt: number } | undefined;
    })
  | (RowOf & { readonly kind: 'length'; readonly from: string; readonly to: string; readonly length: number })
  | (RowOf & {
      readonly kind: 'distance';
      readonly camera: number;
      /** Of the camera from a plane: a point of it, and the unit vector from it toward the camera. */
      readonly plane: { readonly through: Point; readonly normal: Point };
      readonly distance: number;
    });

export interface BundleTask {
  readonly cameras: readonly BundleCamera[];
  readonly points: readonly BundlePoint[];
  readonly rows: readonly BundleRow[];
}

/**
 * One standard deviation of a radial term about 0 before anything is seen of it: a tenth of a corner's radius. Common
 * practice for lenses of phones and cameras, no published source.
 */
export const LENS_WEAKLY = 0.1;

/** What a row observes, computes and how that moves; `at` is the first of its numbers, `slope` is by one of all values. */
export interface PreparedRow {
  readonly id: string;
  readonly observed: readonly number[];
  readonly doubts: readonly number[];
  compute(values: Float64Array, computed: Float64Array, at: number): boolean;
  slopes(values: Float64Array, at: number, add: (row: number, value: number, slope: number) => void): void;
}

/** The rows of a task over one list of all values: cameras, points, two ends of each line; undefined if a row's ends are not there. */
export function prepareRows(task: BundleTask, values: Float64Array): PreparedRow[] | undefined {
  const frames = task.cameras.map(({ size, start }): CameraFrame => ({ size, turn: start.turn }));
  const pointsAt = CAMERA_UNKNOWNS * task.cameras.length;
  const place = new Map(task.points.map(({ id }, i) => [id, pointsAt + 3 * i]));
  let lineAt = pointsAt + 3 * task.points.length;
  const rows: PreparedRow[] = [];
  for (const row of task.rows) {
    const frame = 'camera' in row ? frames[row.camera] : undefined;
    const camera = 'camera' in row ? CAMERA_UNKNOWNS * row.camera : 0;
    if (row.kind === 'length') {
      const [a, b] = [place.get(row.from), place.get(row.to)];
      if (a === undefined || b === undefined) return undefined;
      rows.push(lengthRow(row, a, b));
    } else if (!frame) return undefined;
    else if (row.kind === 'click') {
      const point = place.get(row.point);
      if (point === undefined) return undefined;
      rows.push(clickRow(row, frame, camera, point));
    } else if (row.kind === 'distance') rows.push(distanceRow(row, camera));
    else {
      if (row.spots.length < 2) return undefined;
      rows.push(lineRow(row, frame, camera, lineAt, values));
      lineAt += 2;
    }
  }
  return rows;
}

type Kind<K extends BundleRow['kind']> = Extract<BundleRow, { kind: K }>;

function clickRow(
  { id, at: spot, doubt }: Kind<'click'>,
  frame: CameraFrame,
  camera: number,
  point: number,
): PreparedRow {
  const seen = new Float64Array(SEEN_SIZE);
  return {
    id,
    observed: [...spot],
    doubts: [doubt, doubt],
    compute(values, computed, at) {
      if (!see(values, camera, frame, values, point, seen)) return false;
      computed[at] = seen[0] as number;
      computed[at + 1] = seen[1] as number;
      return true;
    },
    slopes(values, at, add) {
      see(values, camera, frame, values, point, seen);
      for (let axis = 0; axis < 2; axis += 1) {
        const from = 2 + axis * (CAMERA_UNKNOWNS + 3);
        for (let j = 0; j < CAMERA_UNKNOWNS; j += 1) add(at + axis, camera + j, seen[from + j] as number);
        for (let j = 0; j < 3; j += 1) add(at + axis, point + j, seen[from + CAMERA_UNKNOWNS + j] as number);
      }
    },
  };
}

function lengthRow({ id, length, doubt }: Kind<'length'>, a: number, b: number): PreparedRow {
  const apart = (values: Float64Array) =>
    Math.hypot(
      (values[b] as number) - (values[a] as number),
      (values[b + 1] as number) - (values[a + 1] as number),
      (values[b + 2] as number) - (values[a + 2] as number),
    );
  return {
    id,
    observed: [length],
    doubts: [doubt],
    compute(values, computed, at) {
      computed[at] = apart(values);
      return apart(values) > 0;
    },
    slopes(values, at, add) {
      const size = apart(values);
      for (let j = 0; j < 3; j += 1) {
        const slope = ((values[b + j] as number) - (values[a + j] as number)) / size;
        add(at, b + j, slope);
        add(at, a + j, -slope);
      }
    },
  };
}

function distanceRow({ id, plane, distance, doubt }: Kind<'distance'>, camera: number): PreparedRow {
  return {
    id,
    observed: [distance],
    doubts: [doubt],
    compute(values, computed, at) {
      let sum = 0;
      for (let j = 0; j < 3; j += 1)
        sum +=
          (plane.normal[j] as number) * ((values[camera + 4 + j] as number) - (plane.through[j] as number));
      computed[at] = sum;
      return true;
    },
    slopes(_, at, add) {
      for (let j = 0; j < 3; j += 1) add(at, camera + 4 + j, plane.normal[j] as number);
    },
  };
}

/**
 * How far spots lie from one straight line of the unbent picture, px of the photo, and by how much (sine) that line runs
 * otherwise than its given direction shows there. The line goes through two spots as they were at the start, each moved
 * sideways by an unknown. With d the direction in the camera's frame, a line along it that shows at (x, y) runs there
 * as (d₀ - x d₂, d₁ - y d₂). Derivatives by central differences.
 */
function lineRow(
  { id, spots, doubt, along }: Kind<'line'>,
  frame: CameraFrame,
  camera: number,
  line: number,
  start: Float64Array,
): PreparedRow {
  const [width, height] = frame.size;
  const half = Math.hypot(width, height) / 2;
  /** Of a spot: from the middle without bending, px; and how much the lens stretches there. */
  const straight = (values: Float64Array, [x, y]: PhotoSpot) => {
    const [u, v] = [x - width / 2, y - height / 2];
    const square = (u * u + v * v) / half ** 2;
    const stretch = 1 + square * ((values[camera + 7] as number) + (values[camera + 8] as number) * square);
    return [u * stretch, v * stretch, stretch] as const;
  };
  const [ax, ay] = straight(start, spots[0] as PhotoSpot);
  const [bx, by] = straight(start, spots[spots.length - 1] as PhotoSpot);
  const long = Math.hypot(bx - ax, by - ay);
  const [nx, ny] = [-(by - ay) / long, (bx - ax) / long];
  const write = (values: Float64Array, out: Float64Array, at: number) => {
    const [p, q] = [values[line] as number, values[line + 1] as number];
    const [px, py] = [ax + p * nx, ay + p * ny];
    const [dx, dy] = [bx + q * nx - px, by + q * ny - py];
    const size = Math.hypot(dx, dy);
    for (const [i, spot] of spots.entries()) {
      const [u, v, stretch] = straight(values, spot);
      out[at + i] = (dx * (v - py) - dy * (u - px)) / size / stretch;
    }
    if (!along) return;
    const turn = turnOf(values, camera, frame);
    const focal = Math.exp(values[camera] as number);
    const [x, y] = [(px + dx / 2) / focal, (py + dy / 2) / focal];
    const way = (i: number) =>
      (turn[3 * i] as number) * along.toward[0] +
      (turn[3 * i + 1] as number) * along.toward[1] +
      (turn[3 * i + 2] as number) * along.toward[2];
    const [ex, ey] = [way(0) - x * way(2), way(1) - y * way(2)];
    out[at + spots.length] = (dx * ey - dy * ex) / (size * Math.hypot(ex, ey));
  };
  const count = spots.length + (along ? 1 : 0);
  const [plus, minus] = [new Float64Array(count), new Float64Array(count)];
  const moved = [0, 1, 2, 3, 7, 8].map((j) => [camera + j, 1e-6] as const);
  const all = [...moved, [line, 1e-3] as const, [line + 1, 1e-3] as const];
  return {
    id,
    observed: new Array<number>(count).fill(0),
    doubts: [...spots.map(() => doubt), ...(along ? [along.doubt] : [])],
    compute(values, computed, at) {
      write(values, computed, at);
      for (let i = 0; i < count; i += 1) if (!Number.isFinite(computed[at + i])) return false;
      return true;
    },
    slopes(values, at, add) {
      for (const [j, step] of all) {
        const was = values[j] as number;
        values[j] = was + step;
        write(values, plus, 0);
        values[j] = was - step;
        write(values, minus, 0);
        values[j] = was;
        for (let i = 0; i < count; i += 1)
          add(at + i, j, ((plus[i] as number) - (minus[i] as number)) / (2 * step));
      }
    },
  };
}
