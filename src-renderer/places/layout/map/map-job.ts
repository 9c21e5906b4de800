import {
  type BumpSteerMap,
  type Contour,
  contourLines,
  createMap,
  fillMap,
  findAim,
  findBestSpot,
  holdTravel,
  holdWheels,
  type MapKernel,
  type MapWindow,
  PLACE_OK,
  prepareMapKernel,
  usualWindow,
  valleyRidge,
} from '../../../../shared-math/aim/index.ts';
import { leastClearances, type MapHit, markHits } from '../../../../shared-math/clearance/index.ts';
import { type LayoutDocument, resolveLayout } from '../../../../shared-math/layout/index.ts';
import { type FrontEnd, prepareFrontEnd } from '../../../../shared-math/linkage/index.ts';
import { sweepTurn } from '../../../../shared-math/sweep/index.ts';
import { type MapImage, mapImage } from './map-image.ts';
import { chosenWindow } from './map-window-choice.ts';

export interface MapQuestion {
  readonly document: LayoutDocument;
  /** Coarse while a hand drags, fine when it rests; only then is it looked at what is hit. */
  readonly fine: boolean;
  /** Whether each wheel is anywhere in its own travel, not the heave alone. */
  readonly eachWheel: boolean;
  /** rad, ascending. */
  readonly levels: readonly number[];
  /** The window shown last. */
  readonly before: MapWindow | undefined;
}

/** What is hit at places of a map, by node of its own grid. */
export interface MapHits {
  readonly window: MapWindow;
  readonly columns: number;
  readonly rows: number;
  /** As `BumpSteerMap.reason` has it. */
  readonly reason: Uint8Array;
  readonly hits: readonly MapHit[];
  /** What is hit already as the car is drawn: no matter of the place, and not among `reason`. */
  readonly asDrawn: readonly MapHit[];
}

export interface MapAnswer {
  readonly fine: boolean;
  readonly window: MapWindow;
  readonly levels: readonly number[];
  readonly image: MapImage;
  readonly contours: readonly Contour[];
  /** Three numbers for each point: across, up, worst; mm, rad. */
  readonly ridge: Float64Array;
  /** The best spot of all; undefined if none is in reach. */
  readonly best: { readonly across: number; readonly up: number; readonly worst: number } | undefined;
  /** Reach, and what is hit; without the latter while it is still being looked at, and in a coarse map. */
  readonly reach: MapHits;
  readonly hits: MapHits | undefined;
}

/** Nodes each way, and pixels of the picture for each of their cells. */
const COARSE = { nodes: 41, fold: 4 } as const;
const FINE = { nodes: 97, fold: 4 } as const;
/** Nodes each way at which it is looked at what is hit, and how many rows of them in one step of the job. */
const HIT_NODES = 33;
const STRIP = 3;

function answerOf(
  { fine, levels }: MapQuestion,
  map: BumpSteerMap,
  kernel: MapKernel,
  best: MapAnswer['best'],
): MapAnswer {
  const { window, columns, rows, reason } = map;
  return {
    fine,
    window,
    levels,
    image: mapImage(map, levels, fine ? FINE.fold : COARSE.fold, window.axes[0] === 0),
    contours: contourLines(map, levels),
    ridge: valleyRidge(kernel, map),
    best,
    reach: { window, columns, rows, reason, hits: [], asDrawn: [] },
    hits: undefined,
  };
}

/** What of the car hits as it is drawn, over travel and turn. */
function hitsAsDrawn(frontEnd: FrontEnd, locks: { right: number; left: number }): MapHit[] {
  return leastClearances(frontEnd, locks, { within: 1, heaves: 3, turns: 5 })
    .pairs.filter(({ distance }) => distance <= 0)
    .map(({ a, b, nameOfA, nameOfB }) => ({ a, b, nameOfA, nameOfB }));
}

/** Looks at what is hit, a few rows at a time. */
function* lookForHits(frontEnd: FrontEnd, window: MapWindow): Generator<undefined, MapHits | undefined> {
  const turn = sweepTurn(frontEnd, 0, 0, 2);
  if (turn.status !== 'ok' || turn.count < 2) return undefined;
  const locks = { right: turn.right.handwheel, left: turn.left.handwheel };
  const asDrawn = hitsAsDrawn(frontEnd, locks);
  yield undefined;
  const map = createMap(window, HIT_NODES, HIT_NODES);
  let hits: MapHit[] = [];
  for (let row = 0; row < HIT_NODES; row += STRIP) {
    const rows = Math.min(STRIP, HIT_NODES - row);
    const strip: BumpSteerMap = {
      ...map,
      rows,
      up: map.up.subarray(row, row + rows),
      worst: map.worst.subarray(row * HIT_NODES, (row + rows) * HIT_NODES),
      reason: map.reason.subarray(row * HIT_NODES, (row + rows) * HIT_NODES),
    };
    strip.reason.fill(PLACE_OK);
    hits = markHits(frontEnd, strip, locks, { every: 1, leaving: asDrawn });
    yield undefined;
  }
  return { window, columns: HIT_NODES, rows: HIT_NODES, reason: map.reason, hits, asDrawn };
}

/**
 * The map of a layout: first what the scale shades, reported as news where what is hit is still to come, then all of it.
 * Undefined if the links leave the axle free to move.
 */
export function* mapJob(question: MapQuestion): Generator<MapAnswer | undefined, MapAnswer | undefined> {
  const frontEnd = prepareFrontEnd(resolveLayout(question.document));
  const heave = holdTravel(frontEnd);
  const found = findAim(frontEnd, heave);
  const travel = question.eachWheel ? holdWheels(heave) : heave;
  const aim = found.ok ? found.value : undefined;
  const wanted = usualWindow(frontEnd, aim);
  const { pitmanBall } = frontEnd.layout.steering.box;
  const [across] = wanted.axes;
  const window = chosenWindow(question.before, wanted, [pitmanBall[across], pitmanBall[2]]);
  const { nodes } = question.fine ? FINE : COARSE;
  const kernel = travel.status === 'ok' ? prepareMapKernel(travel) : undefined;
  const filled = fillMap(travel, createMap(window, nodes, nodes), kernel);
  if (!filled.ok || !kernel) return undefined;
  const spot = aim ? findBestSpot(frontEnd, aim, travel) : undefined;
  const best = spot && {
    across: spot.point[across],
    up: spot.point[2],
    worst: spot.worstBumpSteer,
  };
  const answer = answerOf(question, filled.value, kernel, best);
  if (!question.fine) return answer;
  yield answer;
  return { ...answer, hits: yield* lookForHits(frontEnd, window) };
}
