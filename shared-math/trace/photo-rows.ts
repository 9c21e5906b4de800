import type { Point } from '../geometry/points.ts';
import { CAMERA_UNKNOWNS, type CameraFrame, SEEN_SIZE, see, turnOf } from './camera-model.ts';
import type { PhotoSpot } from './photo-places.ts';

interface RowOf {
  readonly id: string;
  /** One standard deviation: px of clicks and spots, mm of lengths and distances. */
  readonly doubt: number;
}

export type PhotoRow =
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
      readonly kind: 'coordinate';
      readonly of: string;
      readonly axis: 0 | 1 | 2;
      readonly value: number;
    })
  | (RowOf & {
      readonly kind: 'distance';
      readonly camera: number;
      /** Of the camera from a plane: a point of it, and the unit vector from it toward the camera. */
      readonly through: string;
      readonly normal: Point;
      readonly distance: number;
    });

/** What stands in the list of all values, in this order: cameras, points (three each), two ends of each line. */
export interface PhotoValues {
  readonly cameras: readonly CameraFrame[];
  readonly points: readonly string[];
}

/** What a row observes, computes and how that moves; `at` is the first of its numbers, `slope` is by one of all values. */
export interface PreparedRow {
  readonly id: string;
  readonly observed: readonly number[];
  readonly doubts: readonly number[];
  compute(values: Float64Array, computed: Float64Array, at: number): boolean;
  slopes(values: Float64Array, at: number, add: (row: number, value: number, slope: number) => void): void;
}

/** Where a point's three values stand in the list, and where the lines' begin. */
export const pointAt = (cameras: number, point: number): number => CAMERA_UNKNOWNS * cameras + 3 * point;

/**
 * The rows over one list of all values, which has to hold where the search begins: lines start from there. Every point that a
 * row names is among the points.
 */
export function prepareRows(
  all: readonly PhotoRow[],
  { cameras, points }: PhotoValues,
  values: Float64Array,
): PreparedRow[] {
  const place = new Map(points.map((id, i) => [id, pointAt(cameras.length, i)]));
  const of = (id: string) => place.get(id) as number;
  let lineAt = pointAt(cameras.length, points.length);
  return all.map((row) => {
    if (row.kind === 'length') return lengthRow(row, of(row.from), of(row.to));
    if (row.kind === 'coordinate') return coordinateRow(row, of(row.of) + row.axis);
    const frame = cameras[row.camera] as CameraFrame;
    const camera = CAMERA_UNKNOWNS * row.camera;
    if (row.kind === 'click') return clickRow(row, frame, camera, of(row.point));
    if (row.kind === 'distance') return distanceRow(row, camera, of(row.through));
    const line = lineRow(row, frame, camera, lineAt, values);
    lineAt += 2;
    return line;
  });
}

type Kind<K extends PhotoRow['kind']> = Extract<PhotoRow, { kind: K }>;

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

function coordinateRow({ id, value, doubt }: Kind<'coordinate'>, from: number): PreparedRow {
  return {
    id,
    observed: [value],
    doubts: [doubt],
    compute(values, computed, at) {
      computed[at] = values[from] as number;
      return true;
    },
    slopes(_, at, add) {
      add(at, from, 1);
    },
  };
}

function distanceRow(
  { id, normal, distance, doubt }: Kind<'distance'>,
  camera: number,
  through: number,
): PreparedRow {
  return {
    id,
    observed: [distance],
    doubts: [doubt],
    compute(values, computed, at) {
      let sum = 0;
      for (let j = 0; j < 3; j += 1)
        sum += (normal[j] as number) * ((values[camera + 4 + j] as number) - (values[through + j] as number));
      computed[at] = sum;
      return true;
    },
    slopes(_, at, add) {
      for (let j = 0; j < 3; j += 1) {
        add(at, camera + 4 + j, normal[j] as number);
        add(at, through + j, -(normal[j] as number));
      }
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
