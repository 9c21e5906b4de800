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
import { toDegrees } from '../../../shared-math/units/index.ts';
import { textCell } from './cells.ts';

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

export function* mapLines(map: BumpSteerMap, hits: readonly MapHit[]): Iterable<string> {
  const { window, columns, rows, across, up, worst, reason } = map;
  yield `${AXIS_NAMES[window.axes[0]]},z,worstBumpSteer,status,hit\n`;
  for (let row = 0; row < rows; row += 1) {
    const lines: string[] = [];
    for (let column = 0; column < columns; column += 1) {
      const at = row * columns + column;
      const why = reason[at] as number;
      const hit = hitOf(hits, why);
      const value = worst[at] as number;
      const shown = Number.isFinite(value) ? toDegrees(value) : '';
      lines.push(
        `${across[column]},${up[row]},${shown},${statusOf(why)},${hit ? textCell(`${hit.a}|${hit.b}`) : ''}\n`,
      );
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
