import { type Layout, resolveLayout } from '../../shared-math/layout/index.ts';
import { type FrontEnd, prepareFrontEnd } from '../../shared-math/linkage/index.ts';
import { routeOf, turningOf } from '../../shared-math/shaft/index.ts';
import {
  effortOfTurn,
  kingpinTrack,
  type Lock,
  lockAngles,
  type ReturnEnds,
  type ReturnToStraight,
  returnEnds,
  returnToStraight,
  SIDE_FORCE_SHARE,
  sweepTurn,
  type TurnSweep,
  turningCircle,
  turnsLockToLock,
  turnThroughShaft,
  worstOffEven,
} from '../../shared-math/sweep/index.ts';
import { type Radians, toDegrees, toRadians } from '../../shared-math/units/index.ts';
import { headOf, lineOf } from '../output/tables/column.ts';
import { TURN_COLUMNS, TURN_POSES, turnRow } from '../output/tables/turn.ts';
import { onlyFile, single, takeArguments } from './arguments.ts';
import { readLayoutFile, shown } from './layout-file.ts';
import { type Answer, type Command, InputError } from './usage.ts';

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
    circleByInnerWheel: circle?.byInner ?? null,
    circleByOuterWheel: circle?.byOuter ?? null,
    circleBetweenWalls: circle?.betweenWalls ?? null,
  };
}

/** Columns that the shaft adds; degrees, the ratio of rim to wheels. */
const SHAFT_COLUMNS = [
  'boxHandwheel',
  'shaftLeftSteer',
  'shaftRightSteer',
  'shaftMeanSteer',
  'shaftRatio',
  'shaftOff',
];

/** The turn through the layout's steering shaft, or one line why there is none. */
function throughShaft(file: string, frontEnd: FrontEnd, sweep: TurnSweep, heave: number, roll: Radians) {
  const { shaft } = frontEnd.layout;
  if (!shaft) throw new InputError(`${shown(file)}: shaft: there is no steering shaft in this layout`);
  const turning = turningOf(shaft, routeOf(shaft));
  if (!turning.ok)
    throw new InputError(
      `${shown(file)}: shaft.joints[${turning.failure.joint}]: folded so far that the shaft does not turn`,
    );
  const { motion } = turning.value;
  const turn = turnThroughShaft(frontEnd, sweep, heave, roll, motion);
  const row = (i: number) =>
    [turn.boxHandwheel, turn.leftSteer, turn.rightSteer, turn.meanSteer, turn.ratio, turn.off].map(
      (column) => (column === turn.ratio ? (column[i] as number) : toDegrees(column[i] as number)),
    );
  return { motion, turn, row, worstOff: worstOffEven(frontEnd, sweep, heave, roll, motion) };
}

/** Where the wheels no longer come back by themselves, degrees of handwheel; null where they do all the way to the lock. */
function stopsReturning(
  frontEnd: FrontEnd,
  sweep: TurnSweep,
  heave: number,
  roll: Radians,
  back: ReturnToStraight | undefined,
) {
  const ends = returnEnds(frontEnd, sweep, heave, roll, back);
  if (!ends) return null;
  const degrees = (end: number | null) => (end === null ? null : toDegrees(end));
  const side = ({ bySideForce, byWeight, both }: ReturnEnds) => ({
    bySideForce: degrees(bySideForce),
    byWeight: degrees(byWeight),
    both: degrees(both),
  });
  return {
    sideForce: SIDE_FORCE_SHARE * frontEnd.layout.car.frontAxleLoad,
    stopsAt: { left: side(ends.left), right: side(ends.right) },
  };
}

function* answer(
  file: string,
  options: ReadonlyMap<string, string>,
  { csv, withShaft }: { readonly csv: boolean; readonly withShaft: boolean },
): Answer {
  const heave = single(options, 'heave', 20_000);
  const roll = single(options, 'roll', 180);
  const layout = resolveLayout(readLayoutFile(file));
  const frontEnd = prepareFrontEnd(layout);
  const sweep = sweepTurn(frontEnd, heave, toRadians(roll), TURN_POSES);
  const back = returnToStraight(frontEnd, sweep, heave, toRadians(roll));
  const rows = Array.from({ length: sweep.count }, (_, index) => turnRow(sweep, index, back));
  const through = withShaft ? throughShaft(file, frontEnd, sweep, heave, toRadians(roll)) : undefined;
  if (csv) {
    yield `${[headOf(TURN_COLUMNS), ...(through ? SHAFT_COLUMNS : [])].join(',')}\n`;
    for (const index of rows.keys())
      yield `${[lineOf(TURN_COLUMNS, { sweep, index, back }), ...(through?.row(index) ?? [])].join(',')}\n`;
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
  const effort = effortOfTurn(layout, sweep);
  yield `${JSON.stringify(
    {
      ...head,
      turnsLockToLock: turnsLockToLock(sweep),
      kingpinTrack: kingpinTrack(layout),
      left: lock(layout, sweep.left),
      right: lock(layout, sweep.right),
      overallRatio: sweep.straightRatio,
      parkingEffort: effort
        ? {
            kingpins: effort.centre.kingpinTorque,
            handwheel: effort.centre.handwheelTorque,
            rim: effort.centre.rimForce,
            worst: {
              at: toDegrees(effort.worst.handwheel),
              handwheel: effort.worst.handwheelTorque,
              rim: effort.worst.rimForce,
            },
          }
        : null,
      returnToStraight: stopsReturning(frontEnd, sweep, heave, toRadians(roll), back),
      ...(through
        ? {
            shaft: {
              columnYoke: toDegrees(through.turn.columnYoke),
              swing: toDegrees(through.motion.swing),
              worstOff: through.worstOff === undefined ? null : toDegrees(through.worstOff),
              rows: rows.map(({ handwheel }, i) => ({
                handwheel,
                ...Object.fromEntries(SHAFT_COLUMNS.map((name, at) => [name, through.row(i)[at]])),
              })),
            },
          }
        : {}),
      rows,
    },
    null,
    1,
  )}\n`;
}

export const turn: Command = {
  name: 'turn',
  usage: 'turn LAYOUT.json [--heave MM] [--roll DEGREES] [--shaft] [--csv]',
  about: [
    'The whole turn of the handwheel: wheel angles, overall ratio, Ackermann, locks, turning circle, effort, and what brings',
    'the wheels back: trail and scrub (mm) square to each kingpin; returnBySideForce, returnByWeight and both in returnMoment,',
    'N·m at the handwheel, above 0 back to straight, without friction. returnToStraight: the side force of both tyres (N), and',
    'at how much handwheel they stop coming back; null, not before the lock.',
  ].join('\n      '),
  run(args) {
    const taken = takeArguments(args, { values: ['heave', 'roll'], flags: ['csv', 'shaft'] });
    const { flags } = taken;
    return answer(onlyFile(taken), taken.values, { csv: flags.has('csv'), withShaft: flags.has('shaft') });
  },
};
