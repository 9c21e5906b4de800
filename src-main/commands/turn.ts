import { type Layout, resolveLayout } from '../../shared-math/layout/index.ts';
import { groundOffsets, prepareFrontEnd } from '../../shared-math/linkage/index.ts';
import {
  kingpinTrack,
  type Lock,
  lockAngles,
  parkingEffort,
  sweepTurn,
  turningCircle,
  turnsLockToLock,
} from '../../shared-math/sweep/index.ts';
import { toDegrees, toRadians } from '../../shared-math/units/index.ts';
import { TURN_COLUMNS, TURN_POSES, turnRow } from '../tables/turn.ts';
import { onlyFile, single, takeArguments } from './arguments.ts';
import { readLayoutFile } from './layout-file.ts';
import type { Answer, Command } from './usage.ts';

/** A lock: where, what sets it, both wheels, the circle. Degrees and mm. */
function lock(layout: Layout, end: Lock) {
  const { inner, outer, idealOuter } = lockAngles(layout, end);
  const circle = turningCircle(layout, end);
  return {
    handwheel: toDegrees(end.handwheel),
    limitedBy: end.cause,
    inner: toDegrees(inner),
    outer: toDegrees(outer),
    idealOuter: toDegrees(idealOuter),
    circleBetweenKerbs: circle?.betweenKerbs ?? null,
    circleBetweenWalls: circle?.betweenWalls ?? null,
  };
}

function* answer(file: string, options: ReadonlyMap<string, string>, csv: boolean): Answer {
  const heave = single(options, 'heave', 20_000);
  const roll = single(options, 'roll', 180);
  const layout = resolveLayout(readLayoutFile(file));
  const frontEnd = prepareFrontEnd(layout);
  const sweep = sweepTurn(frontEnd, heave, toRadians(roll), TURN_POSES);
  const rows = Array.from({ length: sweep.count }, (_, index) => turnRow(sweep, index));
  if (csv) {
    yield `${TURN_COLUMNS.join(',')}\n`;
    for (const entry of rows) yield `${TURN_COLUMNS.map((name) => entry[name]).join(',')}\n`;
    return;
  }
  const head = {
    format: 'toeboard-turn',
    version: 1,
    layout: layout.name,
    heave,
    roll,
    status: sweep.status,
  };
  if (sweep.status !== 'ok') {
    yield `${JSON.stringify(head)}\n`;
    return;
  }
  const overall = sweep.ratio[(TURN_POSES - 1) / 2] as number;
  const effort = parkingEffort({
    frontAxleLoad: layout.car.frontAxleLoad,
    tyreWidth: layout.car.tyreWidth,
    scrubRadius: groundOffsets(layout, 'left').scrubRadius,
    overallRatio: overall,
    handwheelRadius: layout.car.handwheelRadius,
  });
  yield `${JSON.stringify(
    {
      ...head,
      turnsLockToLock: turnsLockToLock(sweep),
      kingpinTrack: kingpinTrack(layout),
      left: lock(layout, sweep.left),
      right: lock(layout, sweep.right),
      parkingEffort: {
        kingpins: effort.kingpinTorque,
        handwheel: effort.handwheelTorque,
        rim: effort.rimForce,
      },
      rows,
    },
    null,
    1,
  )}\n`;
}

export const turn: Command = {
  name: 'turn',
  usage: 'turn LAYOUT.json [--heave MM] [--roll DEGREES] [--csv]',
  about:
    'The whole turn of the handwheel: wheel angles, overall ratio, Ackermann, locks, turning circle, effort.',
  run(args) {
    const taken = takeArguments(args, { values: ['heave', 'roll'], flags: ['csv'] });
    return answer(onlyFile(taken), taken.values, taken.flags.has('csv'));
  },
};
