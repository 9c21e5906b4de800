import { routeOf, type ShaftMotion, turningOf, USUAL_JOINT_DEGREES } from '../../shared-math/shaft/index.ts';
import { toDegrees } from '../../shared-math/units/index.ts';
import { onlyFile, takeArguments } from './arguments.ts';
import { readLayoutFile, shown } from './layout-file.ts';
import { type Answer, type Command, InputError } from './usage.ts';

/** Least and greatest ratio, and the swing in degrees. */
function reported(motion: ShaftMotion) {
  return { min: motion.min, max: motion.max, swing: toDegrees(motion.swing) };
}

function* answer(file: string): Answer {
  const { shaft } = readLayoutFile(file);
  if (!shaft) throw new InputError(`${shown(file)}: shaft: there is no steering shaft in this layout`);
  const route = routeOf(shaft);
  const turning = turningOf(shaft, route);
  const answered = {
    format: 'toeboard-shaft',
    version: 1,
    joints: shaft.joints.map(({ kind, limit }, i) => ({
      kind,
      angle: toDegrees(route.joints[i]?.angle as number),
      limit: limit ?? USUAL_JOINT_DEGREES[kind],
    })),
    shafts: route.lengths.map((length, i) => ({
      length,
      clock: shaft.shafts[i]?.clock,
      bestClock: turning.ok ? toDegrees(turning.value.bestClocks[i] as number) : null,
    })),
    // A joint folded to a right angle turns nothing: there is no ratio to tell.
    ratio: turning.ok ? reported(turning.value.motion) : null,
    best: turning.ok ? reported(turning.value.best) : null,
    offAxis: { column: route.column.off, box: route.box.off },
  };
  yield `${JSON.stringify(answered, null, 2)}\n`;
}

export const shaft: Command = {
  name: 'shaft',
  usage: 'shaft LAYOUT.json',
  about:
    'The steering shaft: true angle of every joint, lengths, ratio and swing over a turn, best clocking.',
  run: (args) => answer(onlyFile(takeArguments(args, { values: [], flags: [] }))),
};
