import {
  isClosed,
  isShown,
  type Part,
  paintOrder,
  type View,
} from '../../../../shared-math/drawing/index.ts';
import type { Scene } from '../scene.ts';
import { type Cover, coverOf, seenOf } from './covered.ts';
import { Once } from './once.ts';
import { outlineStrokes } from './outline-strokes.ts';
import type { Stroke } from './stroke.ts';

/**
 * What a stroke is by ISO 128-2: the edge of a part, a fine line within one, a line of symmetry or of an axis, or an edge
 * that is hidden.
 */
export type StrokeKind = 'edge' | 'fine' | 'middle' | 'hidden';

export interface ViewStroke {
  readonly part: Part;
  readonly kind: StrokeKind;
  readonly stroke: Stroke;
}

interface Drawn {
  readonly part: Part;
  readonly kind: Exclude<StrokeKind, 'hidden'>;
  readonly strokes: readonly Stroke[];
  readonly cover: Cover | undefined;
}

function drawnShapes({ drawing, placed }: Scene, view: View): Drawn[] {
  return paintOrder(drawing, placed, view).flatMap((part) =>
    part.shapes
      .filter((shape) => isShown(shape, view))
      .map((shape): Drawn => {
        const strokes = outlineStrokes(shape, placed, view);
        // What is on the car's far side is drawn finely, as the sheet draws it pale.
        const far = view === 'side' && part.side === 'right' && part.role !== 'steering';
        const kind =
          shape.ink === 'broken' && part.role !== 'ground'
            ? 'middle'
            : shape.ink === 'outline' && !far
              ? 'edge'
              : 'fine';
        return {
          part,
          kind,
          strokes,
          cover:
            shape.fill === 'none' || !isClosed(shape) || strokes.length === 0 ? undefined : coverOf(strokes),
        };
      }),
  );
}

/**
 * A view of a scene as strokes, each drawn once: first what is seen, the nearest first, then what is hidden behind it, in
 * the order in which the sheet paints. Lines of axes are drawn over everything, as draughtsmen do.
 * Frame: the view's own plane, right and up. Units: mm.
 */
export function viewStrokes(scene: Scene, view: View): ViewStroke[] {
  const drawn = drawnShapes(scene, view);
  const seen: ViewStroke[] = [];
  const hidden: ViewStroke[] = [];
  for (let i = drawn.length - 1; i >= 0; i -= 1) {
    const { part, kind, strokes } = drawn[i] as Drawn;
    const covers = kind === 'middle' ? [] : drawn.slice(i + 1).flatMap(({ cover }) => (cover ? [cover] : []));
    for (const stroke of strokes)
      for (const stretch of seenOf(stroke, covers)) {
        if (!stretch.hidden) seen.push({ part, kind, stroke: stretch.stroke });
        // The fine lines within a hidden part tell nothing that its edges do not.
        else if (kind === 'edge') hidden.push({ part, kind: 'hidden', stroke: stretch.stroke });
      }
  }
  const once = new Once();
  return [...seen, ...hidden].flatMap((each) => once.add(each.stroke).map((stroke) => ({ ...each, stroke })));
}
