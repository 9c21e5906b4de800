import { resolveLayout } from '../../shared-math/layout/index.ts';
import {
  type FrontEndState,
  type PoseStatus,
  prepareFrontEnd,
  type WheelState,
} from '../../shared-math/linkage/index.ts';
import { evenly, visitGrid } from '../../shared-math/sweep/index.ts';
import { toDegrees, toRadians } from '../../shared-math/units/index.ts';
import { onlyFile, readRange, takeArguments } from './arguments.ts';
import { readLayoutFile } from './layout-file.ts';
import { type Answer, type Command, UsageError } from './usage.ts';

const POSES_MAX = 1_000_000;
const DEFAULT_POSES = 31;

/** Beyond these no car goes; the pose is walked to in steps, so there has to be an end. */
const LARGEST = {
  heave: [20_000, 'mm'],
  roll: [180, 'degrees'],
  handwheel: [36_000, 'degrees'],
} as const;

function wheel(state: WheelState) {
  return {
    steer: toDegrees(state.steer),
    toeIn: toDegrees(state.toeIn),
    camber: toDegrees(state.camber),
    caster: toDegrees(state.caster),
    kingpinInclination: toDegrees(state.kingpinInclination),
    wheelRise: state.wheelRise,
  };
}

/** One row of the answer: degrees and mm, full precision. A pose that failed holds its inputs and status only. */
function row(
  at: { heave: number; roll: number; handwheel: number },
  status: PoseStatus,
  state: FrontEndState,
  bump: number,
) {
  if (status !== 'ok') return { ...at, status };
  const { axle } = state;
  return {
    ...at,
    status,
    left: wheel(state.left),
    right: wheel(state.right),
    meanSteer: toDegrees(state.meanSteer),
    bumpSteer: toDegrees(bump),
    totalToeIn: toDegrees(state.totalToeIn),
    axle: {
      x: axle.x,
      y: axle.y,
      pitch: toDegrees(axle.pitch),
      yaw: toDegrees(axle.yaw),
      twist: toDegrees(axle.twist),
    },
    bind: state.bind,
  };
}

type Row = ReturnType<typeof row>;

const WHEEL_COLUMNS = ['steer', 'toeIn', 'camber', 'caster', 'kingpinInclination', 'wheelRise'];
const CSV_COLUMNS = [
  'heave',
  'roll',
  'handwheel',
  'status',
  ...WHEEL_COLUMNS.map((name) => `left.${name}`),
  ...WHEEL_COLUMNS.map((name) => `right.${name}`),
  'meanSteer',
  'bumpSteer',
  'totalToeIn',
  'axle.x',
  'axle.y',
  'axle.pitch',
  'axle.yaw',
  'axle.twist',
  'bind',
];

/** A row as CSV, a failed pose's columns left empty. No value needs quoting. */
function csvLine(entry: Row): string {
  return CSV_COLUMNS.map((column) => {
    let value: unknown = entry;
    for (const key of column.split('.')) value = (value as Record<string, unknown> | undefined)?.[key];
    return value === undefined ? '' : String(value);
  }).join(',');
}

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
  const heaves = given.heave ?? [...evenly(-layout.travel.rebound, layout.travel.bump, DEFAULT_POSES)];
  const { roll: rolls, handwheel: handwheels } = given;
  const poses = heaves.length * rolls.length * handwheels.length;
  if (poses > POSES_MAX)
    throw new UsageError(`the ranges make ${poses} poses; at most ${POSES_MAX} are answered`);

  const frontEnd = prepareFrontEnd(layout);
  yield csv
    ? `${CSV_COLUMNS.join(',')}\n`
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
      const entry = row(at, status, state, bump);
      lines.push(csv ? `${csvLine(entry)}\n` : `${first ? '\n' : ',\n'}${JSON.stringify(entry)}`);
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
