import { resolveLayout } from '../../shared-math/layout/index.ts';
import { prepareFrontEnd } from '../../shared-math/linkage/index.ts';
import { visitGrid } from '../../shared-math/sweep/index.ts';
import { toRadians } from '../../shared-math/units/index.ts';
import { headOf } from '../output/tables/column.ts';
import { SWEEP_COLUMNS, sweepLine, sweepRow, usualHeaves } from '../output/tables/travel.ts';
import { onlyFile, readRange, takeArguments } from './arguments.ts';
import { readLayoutFile } from './layout-file.ts';
import { type Answer, type Command, UsageError } from './usage.ts';

const POSES_MAX = 1_000_000;

/** Beyond these no car goes; the pose is walked to in steps, so there has to be an end. */
const LARGEST = {
  heave: [20_000, 'mm'],
  roll: [180, 'degrees'],
  handwheel: [36_000, 'degrees'],
} as const;

function* answer(file: string, options: ReadonlyMap<string, string>, csv: boolean): Answer {
  const range = (name: keyof typeof LARGEST) => {
    const text = options.get(name);
    if (text === undefined) return undefined;
    const values = readRange(name, text);
    const [largest, unit] = LARGEST[name];
    if (values.some((value) => Math.abs(value) > largest))
      throw new UsageError(`--${name} goes beyond ${largest} ${unit}`);
    return values;
  };
  const given = { heave: range('heave'), roll: range('roll') ?? [0], handwheel: range('handwheel') ?? [0] };
  const layout = resolveLayout(readLayoutFile(file));
  const heaves = given.heave ?? usualHeaves(layout);
  const { roll: rolls, handwheel: handwheels } = given;
  const poses = heaves.length * rolls.length * handwheels.length;
  if (poses > POSES_MAX)
    throw new UsageError(`the ranges make ${poses} poses, more than ${POSES_MAX}: take a larger step`);

  const frontEnd = prepareFrontEnd(layout);
  yield csv
    ? `${headOf(SWEEP_COLUMNS)}\n`
    : `{"format":"toeboard-sweep","version":1,"layout":${JSON.stringify(layout.name)},"rows":[`;
  let first = true;
  // One heave at a time, so that a large grid is written as it is solved.
  for (const heave of heaves) {
    const lines: string[] = [];
    let index = 0;
    visitGrid(frontEnd, [heave], rolls.map(toRadians), handwheels.map(toRadians), (state, status, bump) => {
      const at = {
        heave: heave + 0,
        roll: (rolls[Math.floor(index / handwheels.length)] as number) + 0,
        handwheel: (handwheels[index % handwheels.length] as number) + 0,
      };
      index += 1;
      const pose = { at, status, state, bump };
      lines.push(csv ? `${sweepLine(pose)}\n` : `${first ? '\n' : ',\n'}${JSON.stringify(sweepRow(pose))}`);
      first = false;
    });
    yield lines.join('');
  }
  if (!csv) yield '\n]}\n';
}

export const sweep: Command = {
  name: 'sweep',
  usage: 'sweep LAYOUT.json [--heave FROM:TO:STEP] [--roll FROM:TO:STEP] [--handwheel FROM:TO:STEP] [--csv]',
  about: 'Wheel angles, bump steer and axle pose over a grid of heave (mm), roll and handwheel (degrees).',
  run(args) {
    const taken = takeArguments(args, { values: ['heave', 'roll', 'handwheel'], flags: ['csv'] });
    return answer(onlyFile(taken), taken.values, taken.flags.has('csv'));
  },
};
