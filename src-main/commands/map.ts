import {
  type Aim,
  type BumpSteerMap,
  createMap,
  fillMap,
  findAim,
  findBestSpot,
  type HeldTravel,
  holdTravel,
  holdWheels,
  leastNode,
  MAP_NODES_MAX,
  type MapWindow,
  mapWindow,
  PLACE_HIT_FROM,
  placeOf,
  prepareMapKernel,
  usualWindow,
  valleyRidge,
} from '../../shared-math/aim/index.ts';
import { type MapHit, markHits } from '../../shared-math/clearance/index.ts';
import { resolveLayout } from '../../shared-math/layout/index.ts';
import { arrangementOf, type FrontEnd, prepareFrontEnd } from '../../shared-math/linkage/index.ts';
import { quoted } from '../../shared-math/outside/index.ts';
import { sweepTurn } from '../../shared-math/sweep/index.ts';
import { toDegrees } from '../../shared-math/units/index.ts';
import { AXIS_NAMES, mapLines, statusOf } from '../output/tables/map.ts';
import { onlyFile, plainNumber, takeArguments } from './arguments.ts';
import { readLayoutFile, shown } from './layout-file.ts';
import { type Answer, type Command, InputError, UsageError } from './usage.ts';

const USUAL_POINTS = 96;

/** Reads X0:X1,Z0:Z1 as two ranges of mm. */
function readWindow(text: string): [[number, number], [number, number]] {
  const ranges = text.split(',').map((range) => range.split(':').map(plainNumber));
  if (ranges.length !== 2 || ranges.some((range) => range.length !== 2 || !range.every(Number.isFinite)))
    throw new UsageError(`--window expects X0:X1,Z0:Z1 in mm, found ${quoted(text)}`);
  return ranges as [[number, number], [number, number]];
}

/** Reads N, as many places each way, or NxM. */
function readPoints(text: string | undefined): [number, number] {
  if (text === undefined) return [USUAL_POINTS, USUAL_POINTS];
  const match = /^(\d+)(?:x(\d+))?$/.exec(text.trim());
  if (!match) throw new UsageError(`--points expects a whole number, or two as 96x48, found ${quoted(text)}`);
  const columns = Number(match[1]);
  const rows = Number(match[2] ?? match[1]);
  if (Math.min(columns, rows) < 2 || Math.max(columns, rows) > MAP_NODES_MAX)
    throw new UsageError(`--points must be 2 to ${MAP_NODES_MAX} each way`);
  return [columns, rows];
}

/** Rows from the lowest; null where a place is out of reach. */
function* json(
  head: Record<string, unknown>,
  map: BumpSteerMap,
  hits: readonly MapHit[],
  ridge: Float64Array,
): Answer {
  const { columns, rows, across, up, worst, reason } = map;
  const reported = {
    ...head,
    across: [...across],
    up: [...up],
    ridge: Array.from({ length: ridge.length / 3 }, (_, i) => [
      ridge[3 * i],
      ridge[3 * i + 1],
      toDegrees(ridge[3 * i + 2] as number),
    ]),
    hits: hits.map(({ a, b }) => `${a}|${b}`),
  };
  yield `${JSON.stringify(reported, null, 1).slice(0, -2)},\n "worstBumpSteer": [`;
  for (let row = 0; row < rows; row += 1) {
    const values = Array.from(worst.subarray(row * columns, (row + 1) * columns), (value) =>
      Number.isFinite(value) ? toDegrees(value) : null,
    );
    yield `${row === 0 ? '' : ','}\n  ${JSON.stringify(values)}`;
  }
  yield `\n ],\n "status": [`;
  for (let row = 0; row < rows; row += 1) {
    const values = Array.from(reason.subarray(row * columns, (row + 1) * columns), (why) =>
      why >= PLACE_HIT_FROM ? `hit ${why - PLACE_HIT_FROM}` : statusOf(why),
    );
    yield `${row === 0 ? '' : ','}\n  ${JSON.stringify(values)}`;
  }
  yield '\n ]\n}\n';
}

function headOf(
  frontEnd: FrontEnd,
  travel: HeldTravel,
  aim: Aim | undefined,
  map: BumpSteerMap,
  eachWheel: boolean,
) {
  const { layout } = frontEnd;
  const { window } = map;
  const best = aim ? findBestSpot(frontEnd, aim, travel) : undefined;
  const least = leastNode(map);
  return {
    format: 'toeboard-map',
    version: 1,
    layout: layout.name,
    arrangement: arrangementOf(layout),
    over: eachWheel ? 'each-wheel' : 'heave',
    axes: window.axes.map((axis) => AXIS_NAMES[axis]),
    kept: { [AXIS_NAMES[window.axes[0] === 0 ? 1 : 0]]: window.kept },
    pitmanBall: layout.steering.box.pitmanBall,
    aimPoint: aim?.point ?? null,
    bestSpot: best ? { point: best.point, worstBumpSteer: toDegrees(best.worstBumpSteer) } : null,
    least: least
      ? {
          point: placeOf(window, map.across[least.column] as number, map.up[least.row] as number),
          worstBumpSteer: toDegrees(least.worst),
        }
      : null,
  };
}

function* answer(
  file: string,
  options: ReadonlyMap<string, string>,
  { asCsv, eachWheel }: { readonly asCsv: boolean; readonly eachWheel: boolean },
): Answer {
  const [columns, rows] = readPoints(options.get('points'));
  const text = options.get('window');
  const ranges = text === undefined ? undefined : readWindow(text);
  const layout = resolveLayout(readLayoutFile(file));
  const frontEnd = prepareFrontEnd(layout);
  const heave = holdTravel(frontEnd);
  const found = findAim(frontEnd, heave);
  const travel = eachWheel ? holdWheels(heave) : heave;
  const aim = found.ok ? found.value : undefined;
  let window: MapWindow;
  if (ranges) {
    const asked = mapWindow(frontEnd, ...ranges);
    if (!asked.ok) throw new UsageError(`--window: ${asked.failure}`);
    window = asked.value;
  } else window = usualWindow(frontEnd, aim);

  const kernel = travel.status === 'ok' ? prepareMapKernel(travel) : undefined;
  const filled = fillMap(travel, createMap(window, columns, rows), kernel);
  if (!filled.ok || !kernel)
    throw new InputError(`${shown(file)}: the links leave the axle free to move, so there is nothing to map`);
  const map = filled.value;
  const ridge = valleyRidge(kernel, map);
  const turn = sweepTurn(frontEnd, 0, 0, 2);
  const locks = { right: turn.right.handwheel, left: turn.left.handwheel };
  const hits = turn.status === 'ok' ? markHits(frontEnd, map, locks, { every: 1 }) : [];
  yield* asCsv ? mapLines(map, hits) : json(headOf(frontEnd, travel, aim, map, eachWheel), map, hits, ridge);
}

export const map: Command = {
  name: 'map',
  usage: 'map LAYOUT.json [--window X0:X1,Z0:Z1] [--points N|NxM] [--each-wheel] [--csv]',
  about:
    'Worst bump steer for the pitman ball at each place of a window (mm; Y0:Y1,Z0:Z1 for cross steer), what is out of reach and what is hit; --each-wheel: with each wheel anywhere in its own travel, not heave alone.',
  run(args) {
    const taken = takeArguments(args, { values: ['window', 'points'], flags: ['csv', 'each-wheel'] });
    return answer(onlyFile(taken), taken.values, {
      asCsv: taken.flags.has('csv'),
      eachWheel: taken.flags.has('each-wheel'),
    });
  },
};
