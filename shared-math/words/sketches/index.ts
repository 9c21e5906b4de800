export {
  DASHES,
  type Dash,
  FIELD,
  LETTERS,
  type Mark,
  type Sketch,
  type SketchInk,
} from './marks.ts';
