import {
  type BumpSteerMap,
  createMap,
  fillMap,
  findAim,
  holdTravel,
  PLACE_DRAG_LINK,
  PLACE_HIT_FROM,
  PLACE_OK,
  PLACE_TIE_ROD,
  prepareMapKernel,
  usualWindow,
} from '../../../shared-math/aim/index.ts';
import { type MapHit, markHits } from '../../../shared-math/clearance/index.ts';
import type { FrontEnd } from '../../../shared-math/linkage/index.ts';
import { sweepTurn } from '../../../shared-math/sweep/index.ts';
import { textCell } from './cells.ts';
import { type Column, headOf, lineOf } from './column.ts';

/** Places each way. */
const PLACES = 64;

/** What stands at a place: ok, or why there is nothing to have there. */
export function statusOf(reason: number): string {
  if (reason === PLACE_OK) return 'ok';
  if (reason === PLACE_DRAG_LINK) return 'drag-link-out-of-reach';
  if (reason === PLACE_TIE_ROD) return 'tie-rod-out-of-reach';
  return 'hit';
}

const hitOf = (hits: readonly MapHit[], reason: number): MapHit | undefined => hits[reason - PLACE_HIT_FROM];

export const AXIS_NAMES = ['x', 'y', 'z'] as const;

/** A place of the map: its numbers, and what would be hit there. */
interface MapPlace {
  readonly across: number;
  readonly up: number;
  readonly worst: number;
  readonly reason: number;
  readonly hit: MapHit | undefined;
}

export const mapColumns = (axis: (typeof AXIS_NAMES)[number]): readonly Column<MapPlace>[] => [
  { name: axis, unit: 'mm', of: ({ across }) => across },
  { name: 'z', unit: 'mm', of: ({ up }) => up },
  { name: 'worstBumpSteer', unit: 'deg', of: ({ worst }) => (Number.isFinite(worst) ? worst : undefined) },
  { name: 'status', unit: 'word', of: ({ reason }) => statusOf(reason) },
  { name: 'hit', unit: 'word', of: ({ hit }) => hit && textCell(`${hit.a}|${hit.b}`) },
];

export function* mapLines(map: BumpSteerMap, hits: readonly MapHit[]): Iterable<string> {
  const { window, columns, rows, across, up, worst, reason } = map;
  const table = mapColumns(AXIS_NAMES[window.axes[0]]);
  yield `${headOf(table)}\n`;
  for (let row = 0; row < rows; row += 1) {
    const lines: string[] = [];
    for (let column = 0; column < columns; column += 1) {
      const at = row * columns + column;
      const why = reason[at] as number;
      const place: MapPlace = {
        across: across[column] as number,
        up: up[row] as number,
        worst: worst[at] as number,
        reason: why,
        hit: hitOf(hits, why),
      };
      lines.push(`${lineOf(table, place)}\n`);
    }
    yield lines.join('');
  }
}

/** Worst bump steer for the pitman ball at each place around where it is; only its head where nothing can be mapped. */
export function* mapTable(frontEnd: FrontEnd): Iterable<string> {
  const travel = holdTravel(frontEnd);
  const found = findAim(frontEnd, travel);
  const map = createMap(usualWindow(frontEnd, found.ok ? found.value : undefined), PLACES, PLACES);
  const kernel = travel.status === 'ok' ? prepareMapKernel(travel) : undefined;
  const filled = kernel && fillMap(travel, map, kernel);
  if (!filled?.ok) {
    yield* mapLines({ ...map, rows: 0 }, []);
    return;
  }
  const turn = sweepTurn(frontEnd, 0, 0, 2);
  const locks = { right: turn.right.handwheel, left: turn.left.handwheel };
  yield* mapLines(
    filled.value,
    turn.status === 'ok' ? markHits(frontEnd, filled.value, locks, { every: 1 }) : [],
  );
}
