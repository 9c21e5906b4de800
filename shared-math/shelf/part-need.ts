import type { JointSide, ShaftEnd, ShaftStock } from '../layout/index.ts';
import type { Degrees } from '../units/index.ts';
import type { PartOf } from './part-schema.ts';

type SplineEnd = Extract<ShaftEnd, { kind: 'spline' }>;

/** What is wanted, by dimension; a figure that is not known yet is left out. mm, degrees. */
export type Wanted =
  | (Pick<PartOf<'box'>, 'kind' | 'mounting' | 'assist' | 'ratio' | 'sectorTravel'> & {
      readonly input: SplineEnd | undefined;
    })
  | {
      readonly kind: 'joint';
      readonly joint: PartOf<'joint'>['joint'];
      readonly ends: readonly [JointSide | undefined, JointSide | undefined];
    }
  | { readonly kind: 'stock'; readonly stock: ShaftStock; readonly length: number | undefined }
  | { readonly kind: 'support'; readonly bore: number | undefined }
  | {
      readonly kind: 'rod-end';
      readonly hand: PartOf<'rod-end'>['hand'] | undefined;
      /** Outside diameter of the tube that its thread goes into. */
      readonly tube: number;
      readonly ballAngle: Degrees | undefined;
    }
  | { readonly kind: 'arm'; readonly arm: PartOf<'arm'>['arm']; readonly length: number }
  /** No shelf keeps these: tube is cut, bolts and screws are bought. */
  | { readonly kind: 'tube'; readonly diameter: number; readonly length: number }
  | { readonly kind: 'fixing' };

/** A line of what a car needs. */
export interface PartNeed {
  readonly wanted: Wanted;
  readonly count: number;
  /** "Steering box, side steer, manual, 16 to 1, sector 35.0° each way". */
  readonly words: string;
}

/** The most that each ball tilts over travel and turn, by hardpoint; undefined if it has not been worked out. */
export type Tilts = (hardpoint: string) => Degrees | undefined;
