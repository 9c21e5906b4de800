import {
  type AxlePoint,
  distance,
  type FramePoint,
  type Point,
  type RockerPoint,
} from '../geometry/points.ts';
import { subtract } from '../geometry/vectors.ts';
import type { Side } from '../layout/index.ts';

/**
 * What holds an axle, as residuals in mm of the five forms below. Location kinds and lateral kinds are given in
 * these forms only, so the solver knows no kind by name.
 */
export type AxleRow =
  /** A point of the axle's half stays on a point of the frame; one weight for each of x, y and z, 0 for none. */
  | {
      readonly form: 'coincide';
      readonly half: Side;
      readonly axle: AxlePoint;
      readonly frame: FramePoint;
      readonly weights: Point;
    }
  /** A point of the half keeps its drawn distance from a point of the frame; `drawn`: where that point was drawn, if elsewhere. */
  | {
      readonly form: 'distance';
      readonly half: Side;
      readonly axle: AxlePoint;
      readonly frame: FramePoint;
      readonly drawn?: AxlePoint;
    }
  /**
   * The half pitches `pitchPerRise` radians for each mm that its seat rises, as its leaf makes it, and is wound up by
   * `wound` radians beside that; absent, by none.
   */
  | {
      readonly form: 'leaf-pitch';
      readonly half: Side;
      readonly seat: AxlePoint;
      readonly pitchPerRise: number;
      readonly wound?: number;
    }
  /** The axle stays centred below the frame at a height above the ground. `height` absent: that of the wheel centres. */
  | { readonly form: 'centred'; readonly height: number | undefined }
  /**
   * A rocker turns freely on a fore-and-aft bolt of the axle's half or of the frame; two bars keep their drawn lengths from its
   * ends to points of the other of the two, on the axle each with its own half.
   */
  | {
      readonly form: 'rocker';
      readonly on: 'axle' | 'frame';
      /** Of the bolt, if it is on the axle. */
      readonly half: Side;
      readonly pivot: Point;
      readonly upper: RockerRowBar;
      readonly lower: RockerRowBar;
    };

interface RockerRowBar {
  readonly rocker: RockerPoint;
  readonly end: Point;
  /** Of the far end, if that is on the axle. */
  readonly half: Side;
}

/** A row that stands in the flat table; a rocker has a place of its own (`rocker.ts`). */
export type FlatRow = Exclude<AxleRow, { form: 'rocker' }>;

/** A location or lateral kind: the residuals it puts on the axle. */
export interface AxleKind<Description> {
  /** True where the links tie both halves to one pitch, whatever the beam. */
  readonly joinsHalves?: boolean;
  rows(description: Description): AxleRow[];
}

/** Weight of a hairpin ball's sideways offset: rods flex sideways, at about a thousandth of a bar's stiffness. */
export const SIDEWAYS_WEIGHT = 0.001;

/** Weight of a leaf's pitch: springs wrap rather than bind. */
export const LEAF_PITCH_WEIGHT = 0.05;

/** mm. Angles count in the least squares as what they move at one metre. */
export const ANGLE_ARM = 1000;

export const FORM_COINCIDE = 0;
export const FORM_DISTANCE = 1;
export const FORM_LEAF_PITCH = 2;
export const FORM_CENTRED = 3;

/**
 * Rows in one flat table for the solver's inner loop. Each takes STRIDE numbers: form, half (0 left, 1 right),
 * axle point from the axle's centre (3), frame point from it (3), then by form: the three weights; the drawn
 * length; pitch per rise and wind-up; or the height from the axle's centre.
 */
export const STRIDE = 11;

export function flattenRows(rows: readonly FlatRow[], axleCentre: Point): Float64Array {
  const table = new Float64Array(rows.length * STRIDE);
  rows.forEach((row, index) => {
    const at = index * STRIDE;
    switch (row.form) {
      case 'coincide':
        table.set([FORM_COINCIDE, row.half === 'left' ? 0 : 1], at);
        table.set([...subtract(row.axle, axleCentre), ...subtract(row.frame, axleCentre)], at + 2);
        table.set(row.weights, at + 8);
        break;
      case 'distance':
        table.set([FORM_DISTANCE, row.half === 'left' ? 0 : 1], at);
        table.set([...subtract(row.axle, axleCentre), ...subtract(row.frame, axleCentre)], at + 2);
        table[at + 8] = distance(row.drawn ?? row.axle, row.frame);
        break;
      case 'leaf-pitch':
        table.set([FORM_LEAF_PITCH, row.half === 'left' ? 0 : 1], at);
        table.set(subtract(row.seat, axleCentre), at + 2);
        table[at + 8] = row.pitchPerRise;
        table[at + 9] = row.wound ?? 0;
        break;
      case 'centred':
        table[at] = FORM_CENTRED;
        table[at + 8] = row.height === undefined ? 0 : row.height - axleCentre[2];
        break;
    }
  });
  return table;
}
