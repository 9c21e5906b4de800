import type {
  AxlePoint,
  FramePoint,
  PitmanPoint,
  Point,
  RockerPoint,
  SpindlePoint,
} from '../geometry/points.ts';

/**
 * What carries a point: the frame, a half of the axle beam, the spindle turned on its kingpin, the pitman arm,
 * the rocker of a Watt's linkage. */
export type Carrier =
  | 'frame'
  | 'axle-left'
  | 'axle-right'
  | 'spindle-left'
  | 'spindle-right'
  | 'pitman'
  | 'rocker';

/** The type of a point as it is drawn, by its carrier. */
export interface CarriedPoints {
  readonly frame: FramePoint;
  readonly 'axle-left': AxlePoint;
  readonly 'axle-right': AxlePoint;
  readonly 'spindle-left': SpindlePoint;
  readonly 'spindle-right': SpindlePoint;
  readonly pitman: PitmanPoint;
  readonly rocker: RockerPoint;
}

/** A named point of the layout, at ride height. */
export interface Hardpoint {
  /** Its place in the document with mirrored sides spelled out: `axle.right.kingpinTop`. */
  readonly id: string;
  /** What a builder calls it. */
  readonly name: string;
  readonly carrier: Carrier;
  readonly at: Point;
  /** The same point of the other side, where the layout mirrors it: moving one moves both. */
  readonly twin?: string;
  /** Points that are bolted to it and come along when it is moved. */
  readonly brings?: readonly string[];
  /** The part whose axis it slides on. */
  readonly slides?: 'column' | 'box';
}
