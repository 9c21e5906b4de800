import { failed, type Outcome, succeeded } from '../outcome.ts';
import { goldenSection } from '../solve/golden-section.ts';
import { evenly } from '../sweep/index.ts';
import type { HeldTravel } from './held-travel.ts';
import { fillRow, type MapKernel, prepareMapKernel, rowScratch, worstAt } from './map-kernel.ts';
import { type MapWindow, placeOf } from './map-window.ts';

/**
 * Worst |bump steer| over the travel for a frame end at each node of a grid over a window. Nodes stand on the window's
 * edges too. Plain data: typed arrays that may be handed from thread to thread.
 */
export interface BumpSteerMap {
  readonly window: MapWindow;
  readonly columns: number;
  readonly rows: number;
  /** mm: where the columns and the rows stand, ascending. */
  readonly across: Float64Array;
  readonly up: Float64Array;
  /** rad, row by row from the lowest: entry row · columns + column. Infinity where it is out of reach. */
  readonly worst: Float64Array;
  /** PLACE_OK, PLACE_DRAG_LINK, PLACE_TIE_ROD, or from PLACE_HIT_FROM on what is hit there. */
  readonly reason: Uint8Array;
}

/** Nodes each way. Below two there is no grid; above, a picture is no finer and only slower. */
export const MAP_NODES_MAX = 2000;

/** The arrays of a map, to be filled again and again. `columns` and `rows` are whole numbers from 2 on. */
export function createMap(window: MapWindow, columns = 96, rows = 96): BumpSteerMap {
  return {
    window,
    columns,
    rows,
    across: evenly(window.from[0], window.to[0], columns),
    up: evenly(window.from[1], window.to[1], rows),
    worst: new Float64Array(columns * rows),
    reason: new Uint8Array(columns * rows),
  };
}

/** The same map's arrays over another window. */
export function mapOver(map: BumpSteerMap, window: MapWindow): BumpSteerMap {
  map.across.set(evenly(window.from[0], window.to[0], map.columns));
  map.up.set(evenly(window.from[1], window.to[1], map.rows));
  return { ...map, window };
}

/**
 * Fills a map: the pitman ball at each node in turn, the box with it, the drag link's length as it would be drawn.
 * Frame:    vehicle. Units: mm; rad. Shapes: `columns` × `rows` nodes; each costs the same, a pass over the poses.
 * Outcomes: the map; no-pose where the links leave the axle without a pose somewhere in the travel.
 * Source:   own derivation: `fillRow`.
 * Checked:  tests/unit/map.test.ts (against the ordinary sweep of the moved layout).
 */
export function fillMap(
  travel: HeldTravel,
  map: BumpSteerMap,
  kernel: MapKernel | undefined = undefined,
): Outcome<BumpSteerMap, 'no-pose'> {
  if (travel.status !== 'ok') return failed('no-pose');
  const ready = kernel ?? prepareMapKernel(travel);
  const { window, columns, rows, across, up, worst, reason } = map;
  const step = window.axes[0] === 0 ? ([1, 0, 0] as const) : ([0, 1, 0] as const);
  const scratch = rowScratch(columns);
  for (let row = 0; row < rows; row += 1) {
    const origin = placeOf(window, 0, up[row] as number);
    fillRow(ready, origin, step, across, columns, worst, reason, row * columns, scratch);
  }
  return succeeded(map);
}

/** The node of a map with the least worst |bump steer|; undefined if none is in reach. */
export function leastNode(map: BumpSteerMap): { column: number; row: number; worst: number } | undefined {
  let best = -1;
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i < map.worst.length; i += 1)
    if ((map.worst[i] as number) < least) {
      least = map.worst[i] as number;
      best = i;
    }
  if (best < 0) return undefined;
  return { column: best % map.columns, row: Math.floor(best / map.columns), worst: least };
}

/** mm. To this the ridge's heights are closed in: a hundredth of what a tape measure tells. */
const RIDGE_END = 0.01;

/**
 * The ridge of the valley: for each column that has one, the height of least worst |bump steer|, so that a builder can
 * slide the box along it. The valley is narrow in height and its floor has a kink (the worst of two poses), so the
 * height is closed in by golden section between the neighbours of the column's best node. Columns whose best node is
 * at the window's edge have their valley outside it.
 * Units:    mm, rad. Shapes: 3 numbers for each point, in the order of the columns: across, up, worst.
 */
export function valleyRidge(kernel: MapKernel, map: BumpSteerMap): Float64Array {
  const { window, columns, rows, across, up, worst } = map;
  const found: number[] = [];
  for (let column = 0; column < columns; column += 1) {
    const at = across[column] as number;
    const value = (z: number) => worstAt(kernel, placeOf(window, at, z));
    let best = 0;
    for (let row = 1; row < rows; row += 1)
      if ((worst[row * columns + column] as number) < (worst[best * columns + column] as number)) best = row;
    if (best === 0 || best === rows - 1) continue;
    const { low, high } = goldenSection(value, up[best - 1] as number, up[best + 1] as number, RIDGE_END);
    const z = (low + high) / 2;
    found.push(at, z, value(z));
  }
  return Float64Array.from(found);
}
