import {
  AlignedDimension,
  type AlignedDimOptions,
  DimensionType,
  LinearDimension,
  type LinearDimOptions,
  type vec3_t,
} from '@tarikjabiri/dxf';

// Dimensions that have a block of their own with what they look like; the library's say that they share one.

/** Measured along the straight line between its two places. */
export class AlongDimension extends AlignedDimension {
  constructor(first: vec3_t, second: vec3_t, options: AlignedDimOptions) {
    super(first, second, options);
    this.dimensionType = DimensionType.Aligned | DimensionType.ReferencedByThis;
  }
}

/** Measured along one direction of the drawing. */
export class LevelDimension extends LinearDimension {
  constructor(first: vec3_t, second: vec3_t, options: LinearDimOptions) {
    super(first, second, options);
    this.dimensionType = DimensionType.Default | DimensionType.ReferencedByThis;
  }
}
