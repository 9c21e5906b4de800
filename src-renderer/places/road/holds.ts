import {
  type Drawing,
  isClosed,
  isShown,
  type Outline,
  outline,
  paintOrder,
  VIEWS,
  type View,
  type ViewPoint,
} from '../../../shared-math/drawing/index.ts';
import type { Layout } from '../../../shared-math/layout/index.ts';
import { isWithin } from '../../board/body-spots.ts';
import type { Held, Hold } from './axle-pull.svelte.ts';

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
export function holdUnder(holds: readonly DrawnHold[], view: View, place: ViewPoint): Held | undefined {
  return holds.findLast((hold) => hold.view === view && isWithin(hold.outline, place))?.held;
}

/** A hold as a view took it: the hand pulls along what that view shows. */
export interface HeldIn extends Hold {
  readonly view: View;
  /** Where it was pressed, in the view's own plane. */
  readonly at: ViewPoint;
}

/** Where on the car a hand takes hold: a tyre at its middle, the beam where it is pressed if the view shows that. */
export function holdOf(held: Held, view: View, at: ViewPoint, { axle }: Layout): HeldIn {
  const [, y, z] = (held === 'right' ? axle.right : axle.left).wheelCentre;
  const sideways = view === 'front';
  if (held !== 'axle') return { held, view, at, y, z, sideways };
  const across = view === 'front' ? at[0] : view === 'top' ? at[1] : 0;
  return { held, view, at, y: across, z, sideways };
}
