import {
  type Drawing,
  isClosed,
  isShown,
  type Outline,
  outline,
  type Place,
  paintOrder,
  VIEWS,
  type View,
} from '../../shared-math/drawing/index.ts';
import type { Held } from '../document/grab.svelte.ts';
import { isWithin } from './body-spots.ts';

/** A part of the car that a hand can take hold of and pull, as one view draws it: the view's own plane, mm. */
export interface DrawnHold {
  readonly held: Held;
  readonly view: View;
  readonly outline: readonly number[];
}

/** What is pulled by a part: a tyre by itself and by its spindle, the whole axle by its beam. */
const HOLDS: Readonly<Record<string, Held>> = {
  'tyre-left': 'left',
  'tyre-right': 'right',
  'spindle-left': 'left',
  'spindle-right': 'right',
  beam: 'axle',
};

/** Tyres, spindles and beam in all views, where a placed drawing has them; those painted last come last. */
export function drawnHolds(drawing: Drawing, placed: Float64Array): DrawnHold[] {
  return VIEWS.flatMap((view) =>
    paintOrder(drawing, placed, view).flatMap(({ id, shapes }) => {
      const held = HOLDS[id];
      if (!held) return [];
      return shapes
        .filter((shape) => isClosed(shape) && isShown(shape, view))
        .map((shape) => {
          const line: Outline = [];
          outline(shape, placed, view, line);
          return { held, view, outline: line };
        });
    }),
  );
}

/** What a hand takes hold of at a place of a view; of several parts the one painted last. */
export function holdUnder(holds: readonly DrawnHold[], view: View, place: Place): Held | undefined {
  return holds.findLast((hold) => hold.view === view && isWithin(hold.outline, place))?.held;
}
