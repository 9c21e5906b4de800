import type { Point } from '../geometry/points.ts';
import { type Carrier, halfOf, type Layout } from '../layout/index.ts';

/** What holds the bolt of a Watt's rocker, and where it is drawn; a layout without a rocker has no points on one. */
export function rockerBolt({ lateral }: Layout): { readonly bearer: Carrier; readonly pivot: Point } {
  if (lateral.kind !== 'watt') return { bearer: 'frame', pivot: [0, 0, 0] };
  const { pivot, rockerOn } = lateral;
  return { bearer: rockerOn === 'axle' ? `axle-${halfOf(pivot)}` : 'frame', pivot };
}

/** A drawn point of the rocker with the rocker turned about x on its bolt, which itself has not moved; overwritten by the next. */
export function turnedOnBolt(pivot: Point, at: Point, turn: number): Point {
  const c = Math.cos(turn);
  const s = Math.sin(turn);
  const y = at[1] - pivot[1];
  const z = at[2] - pivot[2];
  turned[0] = at[0];
  turned[1] = pivot[1] + c * y - s * z;
  turned[2] = pivot[2] + s * y + c * z;
  return turned;
}

const turned: [number, number, number] = [0.5, 0.5, 0.5];
