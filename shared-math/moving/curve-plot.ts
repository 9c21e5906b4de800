import { formatDegrees, formatLength, type LengthStyle, toDegrees } from '../units/index.ts';
import type { MovedCar } from './moved-car.ts';

// The curve of a car that is moved about: the axle's travel stands upright, as the axle goes, and steer runs to the side
// to which the wheels go.

/** One car's curve as the data of an SVG path, and where the car stands on it. */
export interface PlotLine {
  readonly path: string;
  readonly mark: readonly [x: number, y: number] | undefined;
}

/** A plot in units of its own: as wide and as high as it says, x to the right and y down. */
export interface CurvePlot {
  readonly width: number;
  readonly height: number;
  /** The rectangle that the curves lie in. */
  readonly area: {
    readonly left: number;
    readonly top: number;
    readonly right: number;
    readonly bottom: number;
  };
  readonly lines: readonly PlotLine[];
  /** Along the lower edge: steer. */
  readonly across: readonly (readonly [x: number, words: string])[];
  /** Along the left edge: travel. */
  readonly up: readonly (readonly [y: number, words: string])[];
}

const SIZE = { width: 320, height: 230 };
const AREA = { left: 62, top: 10, right: 308, bottom: 200 };

/** Half ranges of steer that a plot may have, degrees. The least keeps next to nothing from looking like much. */
const RANGES = [0.5, 1, 2, 4, 6, 10, 20, 40, 90];

const round = (value: number) => Math.round(value * 100) / 100;

/** Least range of steer, degrees, that holds all that these cars' curves have in their poses. */
export function steerRange(cars: readonly MovedCar[]): number {
  const most = Math.max(
    0,
    ...cars.flatMap(({ curve, wheels }) =>
      [...curve.bumpSteer, wheels.bumpSteer].map((steer) => Math.abs(toDegrees(steer))),
    ),
  );
  return RANGES.find((range) => range >= most) ?? (RANGES.at(-1) as number);
}

/** The plot of one car or of two in the same pose; `range` as `steerRange` has it, degrees. */
export function curvePlot(cars: readonly MovedCar[], style: LengthStyle, range: number): CurvePlot {
  const { bump, rebound: droop } = (cars[0] as MovedCar).layout.travel;
  const most = Math.max(...cars.map(({ layout }) => layout.travel.bump));
  const least = Math.max(...cars.map(({ layout }) => layout.travel.rebound));
  const middle = (AREA.left + AREA.right) / 2;
  const x = (steer: number) => round(middle - (toDegrees(steer) / range) * (AREA.right - middle));
  const y = (heave: number) =>
    round(AREA.top + ((most - heave) / (most + least || 1)) * (AREA.bottom - AREA.top));
  const lines = cars.map((car) => {
    const { heave, bumpSteer } = car.curve;
    const path = heave.map((at, i) => `${i === 0 ? 'M' : 'L'}${x(bumpSteer[i] as number)} ${y(at)}`).join('');
    return { path, mark: car.standing ? ([x(car.wheels.bumpSteer), y(car.pose.heave)] as const) : undefined };
  });
  const side = (degrees: number): readonly [number, string] => [
    round(middle - (degrees / range) * (AREA.right - middle)),
    degrees === 0
      ? '0°'
      : `${formatDegrees(Math.abs(degrees), Number.isInteger(degrees) ? 0 : 2)} ${degrees > 0 ? 'left' : 'right'}`,
  ];
  const rows: (readonly [number, string])[] = [[y(0), 'ride height']];
  if (bump > 0) rows.unshift([y(bump), `${formatLength(bump, style)} up`]);
  if (droop > 0) rows.push([y(-droop), `${formatLength(droop, style)} down`]);
  return {
    ...SIZE,
    area: AREA,
    lines,
    across: [side(range), side(range / 2), side(0), side(-range / 2), side(-range)],
    up: rows,
  };
}
