export * as axleSketches from './axle.ts';
export * as judgingSketches from './judging.ts';
export {
  DASHES,
  type Dash,
  FIELD,
  LETTERS,
  type Mark,
  type Sketch,
  type SketchInk,
} from './marks.ts';
export * as shaftSketches from './shaft.ts';
export * as steeringSketches from './steering.ts';
export * as wheelSketches from './wheel.ts';
