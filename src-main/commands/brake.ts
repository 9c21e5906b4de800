import {
  BRAKING_LEFT_OUT,
  type BrakingCar,
  brakingCar,
  brakingChanges,
  JUDGED_GRIP,
  sweepBraking,
  usualGrips,
} from '../../shared-math/brake/index.ts';
import { type Layout, refusalLine, resolveLayout, type Side } from '../../shared-math/layout/index.ts';
import { prepareFrontEnd } from '../../shared-math/linkage/index.ts';
import { toDegrees, toRadians } from '../../shared-math/units/index.ts';
import { BRAKING_COLUMNS, brakingColumnsOf, brakingLine } from '../output/tables/braking.ts';
import { dataOf, headOf } from '../output/tables/column.ts';
import { onlyFile, readRange, single, takeArguments } from './arguments.ts';
import { readLayoutFile, shown } from './layout-file.ts';
import { type Answer, type Command, InputError, UsageError } from './usage.ts';

/** Shares of load. More than twice its load no tyre holds. */
const GRIP_MOST = 2;
const ROWS_MOST = 10_000;

function readGrips(text: string | undefined): ArrayLike<number> {
  if (text === undefined) return usualGrips();
  const grips = readRange('grip', text);
  if (grips.some((grip) => !(grip >= 0 && grip <= GRIP_MOST)))
    throw new UsageError(`--grip is a share of the load, from 0 to ${GRIP_MOST}`);
  if (grips.length > ROWS_MOST) throw new UsageError(`--grip: more than ${ROWS_MOST} values`);
  return grips;
}

/** N·m for each degree; null where links resist and nothing gives. */
function perDegree(stiffness: number): number | null {
  return Number.isFinite(stiffness) ? (stiffness * toRadians(1)) / 1000 : null;
}

/** What the figures rest on, with where each comes from: `told`, `worked-out`, or `usual`, which nobody gave. */
function basis(car: BrakingCar) {
  const { stiffness, lever, by, origin } = car;
  const side = (name: Side) => ({ stiffness: perDegree(stiffness[name]), lever: lever[name] });
  return {
    car: {
      frontAxleLoad: car.frontAxleLoad,
      wheelbase: car.wheelbase,
      frontShare: car.frontShare,
      gravityHeight: car.gravityHeight,
    },
    windUp: {
      by,
      stiffness: perDegree(stiffness.left + stiffness.right),
      left: side('left'),
      right: side('right'),
    },
    origin,
  };
}

/** What could be changed, most caster left at the judged grip first; none where links hold the axle. */
function changesOf(layout: Layout) {
  return brakingChanges(layout).map(({ id, words, but, stiffer, caster, steer }) => ({
    id,
    change: words((mm) => `${mm} mm`),
    but: but ?? null,
    grip: JUDGED_GRIP,
    caster: toDegrees(caster),
    brakeSteer: toDegrees(steer),
    rideRateTimes: stiffer,
  }));
}

function* answer(file: string, options: ReadonlyMap<string, string>, csv: boolean): Answer {
  const grips = readGrips(options.get('grip'));
  const heave = single(options, 'heave', 20_000);
  const roll = single(options, 'roll', 180);
  const handwheel = single(options, 'handwheel', 36_000);
  const layout = resolveLayout(readLayoutFile(file));
  const car = brakingCar(layout);
  if (!car.ok) throw new InputError(`${shown(file)}: ${refusalLine(car.failure)}`);
  const rows = sweepBraking(prepareFrontEnd(layout), car.value, grips, {
    heave,
    roll: toRadians(roll),
    handwheel: toRadians(handwheel),
  });
  if (csv) {
    yield `${headOf(BRAKING_COLUMNS)}\n`;
    for (const row of rows) yield `${brakingLine(row)}\n`;
    return;
  }
  yield `${JSON.stringify(
    {
      format: 'toeboard-brake',
      version: 1,
      layout: layout.name,
      heave,
      roll,
      handwheel,
      ...basis(car.value),
      rows: rows.map((row) => dataOf(brakingColumnsOf(row), row)),
      changes: changesOf(layout),
      leftOut: BRAKING_LEFT_OUT,
    },
    null,
    1,
  )}\n`;
}

export const brake: Command = {
  name: 'brake',
  usage:
    'brake LAYOUT.json [--grip FROM:TO:STEP] [--heave MM] [--roll DEGREES] [--handwheel DEGREES] [--csv]',
  about: [
    'What braking does: how far the axle winds up on its springs, and what caster and steer are left, over grip 0.3 to 0.9.',
    'car and windUp say what it rests on, origin where each comes from (usual: nobody gave it). Stiffness is N·m for each',
    'degree, null where links resist; lever mm; loads and brakeForce N, front wheels together; moment N·m, both sides;',
    'brakeSteer the mean steer less that with the brakes off. changes tells what single changes leave at 0.7, most caster first;',
    'leftOut what is not in the figures.',
  ].join('\n      '),
  run(args) {
    const taken = takeArguments(args, { values: ['grip', 'heave', 'roll', 'handwheel'], flags: ['csv'] });
    return answer(onlyFile(taken), taken.values, taken.flags.has('csv'));
  },
};
