import type { Part } from '../../../../shared-math/drawing/index.ts';
import { partLayer } from '../../pens/part-layers.ts';
import type { StrokeKind } from '../strokes/view-strokes.ts';

// Layers, line types and weights by ISO 128-2 (the numbers of its line types and its dash lengths are from memory).

/** mm of the narrow and of the wide lines on paper: a line group of ISO 128-2, one to two. */
export const NARROW = 0.25;
export const WIDE = 0.5;

/** Line types by what they draw, with their pattern in widths of the narrow line: dash, gap, dash …; a dot is a dash of 0. */
export const LINE_TYPES = {
  /** Type 02, dashed. */
  'hidden-edges': { words: '_ _ _ _', pattern: [12, -3] },
  /** Type 04, long-dashed dotted. */
  'middle-lines': { words: '___ . ___ .', pattern: [24, -3, 0, -3] },
  /** Type 05, long-dashed double-dotted: what stands beside the part that is drawn, and the extreme places of what moves. */
  neighbours: { words: '___ . . ___', pattern: [24, -3, 0, -3, 0, -3] },
} as const;

export type DxfLineType = keyof typeof LINE_TYPES | 'Continuous';

export interface LayerLook {
  /** Colour number (group code 62 of the DXF reference): legible on black and on white. */
  readonly colour: number;
  readonly line: DxfLineType;
  /** mm on paper. */
  readonly width: number;
}

const wide = (colour: number): LayerLook => ({ colour, line: 'Continuous', width: WIDE });
const narrow = (colour: number, line: DxfLineType = 'Continuous'): LayerLook => ({
  colour,
  line,
  width: NARROW,
});

/** The layers of a view, named after what is on them. */
export const VIEW_LAYERS = {
  axle: wide(7),
  wheels: wide(7),
  steering: wide(5),
  location: wide(34),
  rails: wide(7),
  obstacles: narrow(8, 'neighbours'),
  shaft: wide(94),
  ground: narrow(8),
  'ball-path': narrow(7),
  'link-arc': narrow(1),
  'arc-gaps': narrow(1),
  'room-tyre': narrow(8, 'neighbours'),
  'room-drag-link': narrow(5, 'neighbours'),
  'room-tie-rod': narrow(5, 'neighbours'),
  'fine-lines': narrow(8),
  'middle-lines': narrow(8, 'middle-lines'),
  'hidden-edges': narrow(8, 'hidden-edges'),
  hardpoints: narrow(1),
  dimensions: narrow(6),
  words: narrow(7),
} as const satisfies Record<string, LayerLook>;

export type ViewLayer = keyof typeof VIEW_LAYERS;

/** The layer that a stroke of a part is on: its part's, or that of all fine, middle or hidden lines. */
export function layerOf(part: Part, kind: StrokeKind): ViewLayer {
  if (kind === 'middle') return 'middle-lines';
  if (kind === 'hidden') return 'hidden-edges';
  if (kind === 'fine' && part.role !== 'ground' && part.role !== 'obstacle') return 'fine-lines';
  return partLayer(part);
}
