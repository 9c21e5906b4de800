import type { Point } from '../../geometry/points.ts';
import { unit } from '../../geometry/vectors.ts';
import { halfOf, type Lateral } from '../../layout/index.ts';
import { cantileverCentre } from '../cantilever.ts';
import type { AxleKind } from '../rows.ts';

type FixedSpring = Extract<Lateral, { kind: 'fixed-spring' }>;

/** The line on which the half spring leaves its clamp: level, toward its eye. Length 1. */
export function clampLine({ clamp, eye }: FixedSpring): Point {
  return unit([eye[0] - clamp[0], eye[1] - clamp[1], 0]);
}

/**
 * A spring across the car, clamped to the frame in its middle, with one eye bolted to the axle and the other on a shackle.
 * The shackle lets its own end go where it will; the half with the fixed eye holds the axle sideways, and as it bends its
 * eye runs an arc (`cantileverCentre`) that carries the axle across.
 */
export const fixedSpring: AxleKind<FixedSpring> = {
  rows: (spring) => [
    {
      form: 'distance',
      half: halfOf(spring.eye),
      axle: spring.eye,
      frame: cantileverCentre(spring.clamp, clampLine(spring), spring.eye),
    },
  ],
};
