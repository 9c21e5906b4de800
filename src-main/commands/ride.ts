import { refusalLine, resolveLayout } from '../../shared-math/layout/index.ts';
import { quoted } from '../../shared-math/outside/index.ts';
import {
  FLAG_BUMP_STOP,
  FLAG_DROOP_STOP,
  FLAG_LEFT_OFF_GROUND,
  FLAG_NO_KICK,
  FLAG_RIGHT_OFF_GROUND,
  RIDE_RANGES,
  type RideRun,
  type RoadProfile,
  RUN_DIVERGED,
  RUN_OK,
  RUN_SECONDS_MAX,
  RUN_SPEED_MAX,
  rideFigures,
  roadProblem,
  runRide,
} from '../../shared-math/ride/index.ts';
import { toDegrees } from '../../shared-math/units/index.ts';
import { onlyFile, plainNumber, takeArguments } from './arguments.ts';
import { readLayoutFile, shown } from './layout-file.ts';
import { ROAD_NAMES, ROAD_OPTIONS, readRoad } from './road-argument.ts';
import { type Answer, type Command, InputError, UsageError } from './usage.ts';

const USUAL_SECONDS = 3;
/** mm/s in one km/h. */
const KMH = 1e6 / 3600;

const STATUS = ['ok', 'out-of-reach', 'no-pose', 'diverged'] as const;

const FLAGS = [
  [FLAG_BUMP_STOP, 'bump-stop'],
  [FLAG_DROOP_STOP, 'rebound-stop'],
  [FLAG_LEFT_OFF_GROUND, 'left-off-ground'],
  [FLAG_RIGHT_OFF_GROUND, 'right-off-ground'],
  [FLAG_NO_KICK, 'no-kick'],
] as const;

type RunColumn = { [Key in keyof RideRun]: RideRun[Key] extends Float64Array ? Key : never }[keyof RideRun];

/** Columns in order; those marked are angles, given in degrees. */
const TRAVEL: readonly (readonly [RunColumn, boolean])[] = [
  ['distance', false],
  ['roadLeft', false],
  ['roadRight', false],
  ['heave', false],
  ['roll', true],
  ['frameRise', false],
  ['frameRoll', true],
  ['loadLeft', false],
  ['loadRight', false],
];
const STEERING: readonly (readonly [RunColumn, boolean])[] = [
  ['leftSteer', true],
  ['rightSteer', true],
  ['meanSteer', true],
  ['bumpSteer', true],
  ['totalToeIn', true],
  ['kick', true],
];
const CSV_COLUMNS = ['time', 'status', 'flags', ...[...TRAVEL, ...STEERING].map(([name]) => name)];

const figureAt = (run: RideRun, column: RunColumn, isAngle: boolean, row: number): number => {
  const value = run[column][row] as number;
  return (isAngle ? toDegrees(value) : value) + 0;
};

const flagsOf = (run: RideRun, row: number): string[] =>
  FLAGS.filter(([bit]) => ((run.flags[row] as number) & bit) !== 0).map(([, name]) => name);

/** One moment: mm, degrees, N, s. A failed one holds what is still known of it: the travel, or the time alone. */
function row(run: RideRun, index: number): Record<string, unknown> {
  const status = run.status[index] as number;
  const reported: Record<string, unknown> = { time: run.time[index], status: STATUS[status] };
  if (status === RUN_DIVERGED) return reported;
  const flags = flagsOf(run, index);
  reported['flags'] = flags;
  for (const [column, isAngle] of TRAVEL) reported[column] = figureAt(run, column, isAngle, index);
  if (status !== RUN_OK) return reported;
  for (const [column, isAngle] of STEERING)
    if (column !== 'kick' || !flags.includes('no-kick'))
      reported[column] = figureAt(run, column, isAngle, index);
  return reported;
}

/** The largest of a column either way among the moments that have it, and when; undefined if none has. */
function worst(run: RideRun, column: RunColumn, isAngle: boolean) {
  const steers = STEERING.some(([name]) => name === column);
  let found: { value: number; time: number } | null = null;
  for (let i = 0; i < run.count; i += 1) {
    const status = run.status[i] as number;
    if (steers ? status !== RUN_OK : status === RUN_DIVERGED) continue;
    const value = figureAt(run, column, isAngle, i);
    if (!found || Math.abs(value) > Math.abs(found.value)) found = { value, time: run.time[i] as number };
  }
  return found;
}

/** A measured road is named by its size: its rows are in the file that it came from. */
function roadFigures(road: RoadProfile): object {
  if (road.kind !== 'measured') return road;
  return { kind: road.kind, rows: road.distance.length, from: road.distance[0], to: road.distance.at(-1) };
}

function* json(layout: string, road: RoadProfile, speed: number, run: RideRun): Answer {
  const { parameters, origin } = run.setUp;
  const figures = rideFigures(parameters);
  const head = {
    format: 'toeboard-ride',
    version: 1,
    layout,
    road: roadFigures(road),
    speed,
    ride: { parameters, origin, figures, usual: RIDE_RANGES },
    worst: {
      bumpSteer: worst(run, 'bumpSteer', true),
      kick: worst(run, 'kick', true),
      heave: worst(run, 'heave', false),
      roll: worst(run, 'roll', true),
    },
  };
  yield `${JSON.stringify(head).slice(0, -1)},"rows":[`;
  for (let i = 0; i < run.count; i += 1) yield `${i === 0 ? '\n' : ',\n'}${JSON.stringify(row(run, i))}`;
  yield '\n]}\n';
}

function* csv(run: RideRun): Answer {
  yield `${CSV_COLUMNS.join(',')}\n`;
  for (let i = 0; i < run.count; i += 1) {
    const reported = row(run, i);
    const cells = CSV_COLUMNS.map((name) => {
      const value = reported[name];
      return Array.isArray(value) ? value.join(' ') : String(value ?? '');
    });
    yield `${cells.join(',')}\n`;
  }
}

function readNumber(options: ReadonlyMap<string, string>, name: string, most: number): number | undefined {
  const text = options.get(name);
  if (text === undefined) return undefined;
  const value = plainNumber(text);
  if (!Number.isFinite(value)) throw new UsageError(`--${name}: ${quoted(text)} is not a number`);
  if (!(value > 0 && value <= most))
    throw new UsageError(`--${name} must be more than 0 and at most ${most}, found ${value}`);
  return value;
}

function* answer(file: string, options: ReadonlyMap<string, string>, asCsv: boolean): Answer {
  const roadText = options.get('road');
  if (roadText === undefined) throw new UsageError('--road is missing');
  const speed = readNumber(options, 'speed', Math.round(RUN_SPEED_MAX / KMH));
  if (speed === undefined) throw new UsageError('--speed is missing');
  const seconds = readNumber(options, 'seconds', RUN_SECONDS_MAX) ?? USUAL_SECONDS;
  const road = readRoad(roadText, options);
  const document = readLayoutFile(file);
  const layout = resolveLayout(document);
  const problem = roadProblem(road, layout.car.tyreRadius);
  if (problem) throw new UsageError(`--road: ${refusalLine(problem)}`);
  const run = runRide(document, road, { speed: speed * KMH, seconds });
  if (!run.ok) throw new InputError(`${shown(file)}: ${refusalLine(run.failure)}`);
  yield* asCsv ? csv(run.value) : json(document.name, road, speed, run.value);
}

export const ride: Command = {
  name: 'ride',
  usage: `ride LAYOUT.json --road KIND[:key=value,…] --speed KMH ${ROAD_OPTIONS.map(({ name, values }) => `[--${name} ${values}]`).join(' ')} [--seconds S] [--csv]`,
  about: `The car driven over a road: travel, steer, toe and the handwheel’s movement over time. Roads: ${ROAD_NAMES}.`,
  run(args) {
    const taken = takeArguments(args, {
      values: ['road', 'speed', ...ROAD_OPTIONS.map(({ name }) => name), 'seconds'],
      flags: ['csv'],
    });
    return answer(onlyFile(taken), taken.values, taken.flags.has('csv'));
  },
};
