import { levenbergMarquardt } from 'ml-levenberg-marquardt';
import type { Point } from '../../shared-math/geometry/points.ts';
import type { Layout } from '../../shared-math/layout/index.ts';

/**
 * The axle's residuals written out once more, plainly, from the model's description and not from the program: full
 * rotation matrices multiplied together, every residual in a list with the root of its weight. A registry optimiser
 * solves them. Slow and obvious on purpose.
 */

type Matrix = readonly [Point, Point, Point];

function rotation(axis: 'x' | 'y' | 'z', angle: number): Matrix {
  const c = Math.cos(angle);
  const s = Math.sin(angle);
  if (axis === 'x') return [[1, 0, 0], [0, c, -s], [0, s, c]]; // biome-ignore format: a matrix reads by rows
  if (axis === 'y') return [[c, 0, s], [0, 1, 0], [-s, 0, c]]; // biome-ignore format: a matrix reads by rows
  return [[c, -s, 0], [s, c, 0], [0, 0, 1]]; // biome-ignore format: a matrix reads by rows
}

function times(m: Matrix, p: Point): Point {
  return m.map((row) => row[0] * p[0] + row[1] * p[1] + row[2] * p[2]) as unknown as Point;
}

export interface RawPose {
  readonly x: number;
  readonly y: number;
  readonly yaw: number;
  readonly left: number;
  readonly right: number;
  /** Of a Watt's linkage: how far its rocker has turned. */
  readonly rocker?: number;
}

/** Where a point of a half goes: A + Rz(yaw) Rx(roll) Ry(pitch) (P - A0). */
export function rawPlace(
  layout: Layout,
  heave: number,
  roll: number,
  pose: RawPose,
  half: 'left' | 'right',
  p: Point,
): Point {
  const { left, right } = layout.axle;
  const a0 = [0, 1, 2].map((i) => ((left.wheelCentre[i] as number) + (right.wheelCentre[i] as number)) / 2);
  const d: Point = [p[0] - a0[0]!, p[1] - a0[1]!, p[2] - a0[2]!];
  const turned = times(
    rotation('z', pose.yaw),
    times(rotation('x', roll), times(rotation('y', pose[half]), d)),
  );
  return [a0[0]! + pose.x + turned[0], a0[1]! + pose.y + turned[1], a0[2]! + heave + turned[2]];
}

const gap = (a: Point, b: Point) => Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);

/** All residuals times the root of their weight, mm. */
export function rawResiduals(layout: Layout, heave: number, roll: number, pose: RawPose): number[] {
  const place = (half: 'left' | 'right', p: Point) => rawPlace(layout, heave, roll, pose, half, p);
  const residuals: number[] = [];
  const { location, lateral } = layout;
  if (location.kind === 'hairpins' || location.kind === 'split-rods')
    for (const half of ['left', 'right'] as const) {
      const pivot = location[half].framePivot;
      const ball = place(half, pivot);
      residuals.push(ball[0] - pivot[0], ball[2] - pivot[2], Math.sqrt(0.001) * (ball[1] - pivot[1]));
    }
  if (location.kind === 'wishbone') {
    const ball = place('left', location.framePivot);
    for (let i = 0; i < 3; i += 1) residuals.push(ball[i]! - location.framePivot[i]!);
  }
  if (location.kind === 'four-bar')
    for (const half of ['left', 'right'] as const)
      for (const bar of [location[half].upper, location[half].lower])
        residuals.push(gap(place(half, bar.axle), bar.frame) - gap(bar.axle, bar.frame));
  if (location.kind === 'parallel-leaf')
    for (const half of ['left', 'right'] as const) {
      const { fixedEye: eye, seat, shackleEye } = location[half];
      const q = eye.map((value, i) => value + (seat[i]! - value) / 4) as unknown as Point;
      const now = place(half, seat);
      residuals.push(gap(now, q) - gap(seat, q));
      const front = eye[0] > shackleEye[0] ? eye : shackleEye;
      const rear = eye[0] > shackleEye[0] ? shackleEye : eye;
      const a = Math.hypot(front[0] - seat[0], front[1] - seat[1]);
      const b = Math.hypot(rear[0] - seat[0], rear[1] - seat[1]);
      const k = -(a - b) / (a * b);
      residuals.push(Math.sqrt(0.05) * 1000 * (pose[half] - k * (now[2] - seat[2])));
    }
  if (location.kind === 'quarter-elliptic')
    for (const half of ['left', 'right'] as const) {
      const { butt, clamp, eye, rod } = location[half];
      const ball = place(half, rod.frame);
      if (location.eyes === 'sliding') {
        residuals.push(
          ball[0] - rod.frame[0],
          ball[2] - rod.frame[2],
          Math.sqrt(0.001) * (ball[1] - rod.frame[1]),
        );
        continue;
      }
      // The spring leaves its clamp along butt to clamp and bends in a circle: its chord turns by half of its bend. Its
      // eye runs an arc about the point that lies a quarter of the leaf's own length out on that line.
      const stub = gap(butt, clamp);
      const way = [0, 1, 2].map((i) => (clamp[i]! - butt[i]!) / stub);
      const chord = gap(eye, clamp);
      const along = [0, 1, 2].reduce((sum, i) => sum + (eye[i]! - clamp[i]!) * way[i]!, 0);
      const turned = Math.acos(Math.min(1, along / chord));
      const leaf = turned < 1e-12 ? chord : (chord * turned) / Math.sin(turned);
      const centre = [0, 1, 2].map((i) => clamp[i]! + (leaf / 4) * way[i]!) as unknown as Point;
      residuals.push(
        gap(place(half, eye), centre) - gap(eye, centre),
        gap(place(half, rod.axle), rod.frame) - gap(rod.axle, rod.frame),
      );
    }
  if (lateral.kind === 'bar') {
    const half = lateral.axle[1] < 0 ? 'right' : 'left';
    residuals.push(gap(place(half, lateral.axle), lateral.frame) - gap(lateral.axle, lateral.frame));
  } else if (lateral.kind === 'fixed-spring') {
    // The half spring bends in a circle from a level clamp: its chord turns by half of its bend. The centre of the eye's
    // arc lies a quarter of the leaf's own length out from the clamp.
    const { clamp, eye } = lateral;
    const [out, down] = [Math.hypot(eye[0] - clamp[0], eye[1] - clamp[1]), eye[2] - clamp[2]];
    const bend = 2 * Math.atan2(Math.abs(down), out);
    const leaf = bend === 0 ? out : (bend * out) / Math.sin(bend);
    const share = leaf / 4 / out;
    const centre: Point = [
      clamp[0] + share * (eye[0] - clamp[0]),
      clamp[1] + share * (eye[1] - clamp[1]),
      clamp[2],
    ];
    const half = eye[1] < 0 ? 'right' : 'left';
    residuals.push(gap(place(half, eye), centre) - gap(eye, centre));
  } else if (lateral.kind === 'watt') {
    // The rocker's turn about its fore-and-aft bolt is an unknown of its own; both bars are of their drawn lengths.
    const { pivot, rockerOn } = lateral;
    const sideOf = (p: Point) => (p[1] < 0 ? 'right' : 'left');
    for (const bar of [lateral.upper, lateral.lower]) {
      const from: Point = [bar.rocker[0] - pivot[0], bar.rocker[1] - pivot[1], bar.rocker[2] - pivot[2]];
      const arm = times(rotation('x', pose.rocker ?? 0), from);
      const tip: Point = [pivot[0] + arm[0], pivot[1] + arm[1], pivot[2] + arm[2]];
      const ends: [Point, Point] =
        rockerOn === 'axle' ? [place(sideOf(pivot), tip), bar.end] : [place(sideOf(bar.end), bar.end), tip];
      residuals.push(gap(...ends) - gap(bar.rocker, bar.end));
    }
  } else {
    const middle = (layout.axle.left.wheelCentre[2] + layout.axle.right.wheelCentre[2]) / 2;
    residuals.push(pose.y - ((lateral.height ?? middle) - middle) * Math.sin(roll));
  }
  return residuals;
}

/** Which of the raw residuals do not count as bind: those that only guide, and those of a spring's wrap. */
export function softRows({ location }: Layout): { guiding: number[]; wrapping: number[] } {
  return {
    guiding:
      location.kind === 'hairpins' ||
      location.kind === 'split-rods' ||
      (location.kind === 'quarter-elliptic' && location.eyes === 'sliding')
        ? [2, 5]
        : [],
    wrapping: location.kind === 'parallel-leaf' ? [1, 3] : [],
  };
}

export function isJoined(layout: Layout): boolean {
  return layout.axle.beam === 'tube' || layout.location.kind === 'wishbone';
}

/** A pose of as many numbers as there are unknowns, angles as mm at a metre; the rocker's turn last where there is one. */
export function toRawPose(joined: boolean, p: readonly number[]): RawPose {
  const left = p[3]! / 1000;
  const turn = p[joined ? 4 : 5];
  return {
    x: p[0]!,
    y: p[1]!,
    yaw: p[2]! / 1000,
    left,
    right: joined ? left : p[4]! / 1000,
    ...(turn === undefined ? {} : { rocker: turn / 1000 }),
  };
}

/** The least squares solved by ml-levenberg-marquardt, which fits y(x): x counts the residuals, y is nothing. */
export function solveByRegistry(layout: Layout, heave: number, roll: number, iterations = 60): RawPose {
  const joined = isJoined(layout);
  const start = new Array<number>((joined ? 4 : 5) + (layout.lateral.kind === 'watt' ? 1 : 0)).fill(0);
  const count = rawResiduals(layout, heave, roll, toRawPose(joined, start)).length;
  // The library's own restarts would not matter here: one minimum, a good start.
  const result = levenbergMarquardt(
    { x: Array.from({ length: count }, (_, i) => i), y: new Array(count).fill(0) },
    (parameters: number[]) => {
      const residuals = rawResiduals(layout, heave, roll, toRawPose(joined, parameters));
      return (i: number) => residuals[i]!;
    },
    {
      initialValues: start,
      damping: 1e-6,
      gradientDifference: 1e-4,
      centralDifference: true,
      maxIterations: iterations,
      errorTolerance: 0,
      improvementThreshold: 0,
    },
  );
  return toRawPose(joined, result.parameterValues);
}
