import type { Point } from '../../geometry/points.ts';
import { subtract, unit } from '../../geometry/vectors.ts';
import { type Layout, SIDES } from '../../layout/index.ts';
import { cantileverCentre } from '../cantilever.ts';
import { type AxleKind, type AxleRow, SIDEWAYS_WEIGHT } from '../rows.ts';

type QuarterElliptic = Extract<Layout['location'], { kind: 'quarter-elliptic' }>;

/** The centre of the arc that the eye of a side's spring runs about; mm, as drawn. */
export function quarterCentre({ butt, clamp, eye }: QuarterElliptic['left']): Point {
  return cantileverCentre(clamp, unit(subtract(clamp, butt)), eye);
}

/**
 * Half a leaf spring each side, its thick end clamped to the frame, with a radius rod above or below it. An eye that is bolted
 * to the axle makes of the spring a link of three quarters of its length, and rod and spring hold the axle as two bars do.
 * What a spring's end that slides on the axle leaves free its rod has to hold, rigid with the axle as a hairpin is.
 * Left out: the spring's own twist in roll, and a slide's friction.
 */
export const quarterElliptic: AxleKind<QuarterElliptic> = {
  rows: (location) =>
    SIDES.flatMap((side): AxleRow[] => {
      const { eye, rod } = location[side];
      if (location.eyes === 'sliding')
        return [
          {
            form: 'coincide',
            half: side,
            // The rod is rigid with the axle: its ball is drawn where the frame holds it.
            axle: rod.frame as Point,
            frame: rod.frame,
            weights: [1, SIDEWAYS_WEIGHT, 1],
          },
        ];
      return [
        { form: 'distance', half: side, axle: eye, frame: quarterCentre(location[side]) },
        { form: 'distance', half: side, axle: rod.axle, frame: rod.frame },
      ];
    }),
};
