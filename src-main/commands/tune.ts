import {
  type Figures,
  type FreeMove,
  type Holds,
  holdsOf,
  type TuneResult,
  tune as tuneLayout,
  tuneRefusalWords,
} from '../../shared-math/tune/index.ts';
import { toDegrees } from '../../shared-math/units/index.ts';
import { onlyFile, takeArguments } from './arguments.ts';
import { readLayoutFile, shown } from './layout-file.ts';
import { readFree, readHolds, readSeed } from './tune-arguments.ts';
import { type Answer, type Command, InputError } from './usage.ts';

const orNull = (value: number | undefined): number | null =>
  value === undefined || !Number.isFinite(value) ? null : value;
const degreesOrNull = (angle: number | undefined): number | null =>
  orNull(angle === undefined ? undefined : toDegrees(angle));

/** Figures as they are reported: degrees, mm; null where the layout does not steer. */
function reported(figures: Figures) {
  const { nearest } = figures;
  return {
    worstBumpSteerHeave: toDegrees(figures.worstHeave),
    worstBumpSteerRoll: toDegrees(figures.worstRoll),
    worstBumpSteerOneWheel: degreesOrNull(figures.worstOneWheel),
    slopePerMm: toDegrees(figures.slope),
    toeChange: toDegrees(figures.toeChange),
    overallRatio: orNull(figures.ratio),
    turnsLockToLock: orNull(figures.turns),
    innerLock: degreesOrNull(figures.innerLock),
    circleBetweenKerbs: orNull(figures.circle),
    ballTilt: degreesOrNull(figures.tilt),
    nearest: nearest ? { a: nearest.a, b: nearest.b, distance: nearest.distance } : null,
    outOfReach: orNull(figures.outOfReach),
  };
}

/** Slack as it is reported: degrees where the hold is an angle. */
function slack(name: string, value: number): number | null {
  return name === 'lock' || name === 'tilt' ? degreesOrNull(value) : orNull(value);
}

function asJson(result: TuneResult, seed: number): string {
  const answer = {
    format: 'toeboard-tune',
    version: 1,
    layout: result.document.name,
    seed,
    improved: result.improved,
    moves: Object.fromEntries(result.moves.map(({ name, by }) => [name, by])),
    before: reported(result.before),
    after: reported(result.after),
    holds: Object.fromEntries(
      result.holds.map(({ name, before, after }) => [
        name,
        { slackBefore: slack(name, before), slackAfter: slack(name, after) },
      ]),
    ),
    evaluations: result.evaluations,
    proposal: result.document,
  };
  return `${JSON.stringify(answer, null, 2)}\n`;
}

/** A figure with its unit, at a fixed width; a dash where there is none. */
function cell(value: number | null, decimals: number, unit: string): string {
  return (value === null ? '-' : `${value.toFixed(decimals)}${unit}`).padStart(14);
}

function* asText(result: TuneResult): Answer {
  yield `${result.document.name}\n`;
  yield result.improved ? 'Proposed:\n' : 'Nothing better was found; nearest to it:\n';
  for (const { name, by } of result.moves)
    yield `  ${name.padEnd(20)}${`${by > 0 ? '+' : ''}${by.toFixed(2)} mm`.padStart(14)}\n`;
  const [before, after] = [reported(result.before), reported(result.after)];
  yield `${''.padEnd(26)}${'before'.padStart(14)}${'after'.padStart(14)}\n`;
  const line = (
    words: string,
    pick: (figures: typeof before) => number | null,
    decimals: number,
    unit: string,
  ) => `${words.padEnd(26)}${cell(pick(before), decimals, unit)}${cell(pick(after), decimals, unit)}\n`;
  yield line('Bump steer over heave', (figures) => figures.worstBumpSteerHeave, 3, '°');
  yield line('Bump steer over roll', (figures) => figures.worstBumpSteerRoll, 3, '°');
  yield line('One wheel over a bump', (figures) => figures.worstBumpSteerOneWheel, 3, '°');
  yield line('Toe change over heave', (figures) => figures.toeChange, 3, '°');
  yield line('Overall ratio', (figures) => figures.overallRatio, 2, ' to 1');
  yield line('Inner wheel at full lock', (figures) => figures.innerLock, 1, '°');
  yield line('Circle between kerbs', (figures) => figures.circleBetweenKerbs, 0, ' mm');
  yield line('Ball tilt', (figures) => figures.ballTilt, 1, '°');
  yield line('Nearest parts', (figures) => figures.nearest?.distance ?? null, 1, ' mm');
  const { nearest } = result.after;
  if (nearest) yield `Nearest after: ${nearest.nameOfA} to ${nearest.nameOfB}\n`;
}

function* answer(
  file: string,
  free: readonly FreeMove[],
  holds: Holds | undefined,
  seed: number,
  json: boolean,
): Answer {
  const document = readLayoutFile(file);
  const search = tuneLayout(document, free, { seed, ...(holds ? { holds } : {}) });
  let step = search.next();
  while (!step.done) step = search.next();
  const outcome = step.value;
  if (!outcome.ok) throw new InputError(`${shown(file)}: ${tuneRefusalWords(outcome.failure)}`);
  if (json) yield asJson(outcome.value, seed);
  else yield* asText(outcome.value);
}

export const tune: Command = {
  name: 'tune',
  usage:
    'tune LAYOUT.json --free NAME[=N|=FROM:TO],… [--within N|FROM:TO] [--hold NAME[=LEAST:MOST],…] [--seed N] [--json]',
  about:
    'Moves what is free (box-up, box-along, pitman-length, …; mm from where it is drawn) to the least bump steer over heave and roll, while ratio, lock, circle, tilt and clearance hold.',
  run(args) {
    const taken = takeArguments(args, { values: ['free', 'within', 'hold', 'seed'], flags: ['json'] });
    const file = onlyFile(taken);
    const free = readFree(taken.values.get('free'), taken.values.get('within'));
    const holds = readHolds(taken.values.get('hold'), holdsOf({}));
    return answer(file, free, holds, readSeed(taken.values.get('seed')), taken.flags.has('json'));
  },
};
