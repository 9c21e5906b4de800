import { toDegrees, toRadians } from '../../units/index.ts';
import type { EntryWay, TypedFigures } from './list-row.ts';

// The ways in which a figure is taken. What the survey holds is always the contract's figure; what was typed is kept beside.

/** As the survey has it. */
export function plainWay(name: string, unit: EntryWay['unit'] = 'length'): EntryWay {
  return {
    id: 'plain',
    name,
    unit,
    needs: [],
    figure: (typed) => typed,
    typed: (figure) => figure,
    spread: (doubt) => doubt,
  };
}

/** The hub's height by the tyre's: from the floor to the top of the tread, half of which it is on a round tyre. */
export const BY_TYRE_HEIGHT: EntryWay = {
  id: 'tyre-height',
  name: "the tyre's height, floor to top of tread",
  unit: 'length',
  needs: [],
  figure: (typed) => typed / 2,
  typed: (figure) => figure * 2,
  spread: (doubt) => doubt / 2,
};

/** A figure that is the sum of another row's and of what is typed, with its sign. */
function counted(id: string, name: string, from: string, sign: 1 | -1): EntryWay {
  return {
    id,
    name,
    unit: 'length',
    needs: [from],
    figure: (typed, others) => added(others.get(from), sign * typed),
    typed: (figure, others) => {
      const other = others.get(from);
      return other === undefined ? undefined : sign * (figure - other);
    },
    // Two readings of the same instrument, one on top of the other.
    spread: (doubt) => doubt * Math.SQRT2,
  };
}

function added(figure: number | undefined, more: number): number | undefined {
  return figure === undefined ? undefined : figure + more;
}

export const RAIL_OUTER = 'rail-outer';
export const RAIL_TOP = 'rail-top';
export const PITMAN_ARM = 'pitman-arm';

/** Out from the rail's outer face; inboard of it negative. */
export const FROM_RAIL = counted('from-rail', "out from the rail's outer face", RAIL_OUTER, 1);
/** Down from the rail's top edge; above it negative. */
export const DOWN_FROM_RAIL = counted('down-from-rail', "down from the rail's top edge", RAIL_TOP, -1);

/**
 * How far the pitman ball stands from below its shaft, by the arm's lean from plumb: arm · sin(lean). A lean that is off
 * by δ moves it by arm · cos(lean) · δ.
 */
export function byLean(name: string): EntryWay {
  const arm = (others: TypedFigures) => others.get(PITMAN_ARM);
  return {
    id: 'lean',
    name,
    unit: 'angle',
    needs: [PITMAN_ARM],
    figure: (typed, others) => {
      const length = arm(others);
      return length === undefined ? undefined : length * Math.sin(toRadians(typed));
    },
    typed: (figure, others) => {
      const length = arm(others);
      if (length === undefined || Math.abs(figure) > length) return undefined;
      return toDegrees(Math.asin(figure / length));
    },
    spread: (doubt, typed, others) =>
      Math.max(0.1, (arm(others) ?? 0) * Math.cos(toRadians(typed)) * toRadians(doubt)),
  };
}
