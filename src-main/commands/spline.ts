import { quoted } from '../../shared-math/outside/index.ts';
import { CALIPER_UNCERTAINTY, identifySpline } from '../../shared-math/splines/index.ts';
import { parseLength } from '../../shared-math/units/index.ts';
import { takeArguments } from './arguments.ts';
import { type Answer, type Command, InputError, UsageError } from './usage.ts';

type Options = ReadonlyMap<string, string>;

/** A length in mm; without a unit it is in inches, as shafts are named. */
function lengthOf(options: Options, name: string, otherwise?: number): number {
  const text = options.get(name);
  if (text === undefined) {
    if (otherwise !== undefined) return otherwise;
    throw new UsageError(`--${name} is missing`);
  }
  const length = parseLength(text, 'in');
  if (!length.ok) throw new UsageError(`--${name}: ${length.failure}`);
  return length.value;
}

function wholeOf(options: Options, name: string): number | undefined {
  const text = options.get(name);
  if (text === undefined) return undefined;
  if (!/^\d{1,6}$/.test(text)) throw new UsageError(`--${name}: ${quoted(text)} is not a whole number`);
  return Number(text);
}

function* answer(options: Options): Answer {
  const outsideDiameter = lengthOf(options, 'diameter');
  const whole = wholeOf(options, 'count');
  const half = wholeOf(options, 'half');
  if ((whole === undefined) === (half === undefined))
    throw new UsageError('give --count or --half, one of the two');
  const measure = {
    outsideDiameter,
    counted: (whole ?? half) as number,
    over: half === undefined ? ('circle' as const) : ('half' as const),
    otherHalf: wholeOf(options, 'other-half'),
    missing: wholeOf(options, 'missing') ?? 0,
    uncertainty: lengthOf(options, 'caliper', CALIPER_UNCERTAINTY),
  };
  const found = identifySpline(measure, { unit: 'in', fraction: 0 });
  if (!found.ok) throw new InputError(`spline: ${found.failure}`);
  const { candidates, neighbours, ...identity } = found.value;
  yield `${JSON.stringify(
    {
      format: 'toeboard-spline',
      version: 1,
      measured: measure,
      ...identity,
      candidates: candidates.map(({ pitch, module, ...candidate }) => ({
        ...candidate,
        pitch: pitch ?? null,
        module: module ?? null,
      })),
      neighbours: neighbours.map(({ first, second, ...pair }) => ({
        between: [candidates[first]?.name, candidates[second]?.name],
        ...pair,
      })),
    },
    null,
    2,
  )}\n`;
}

export const spline: Command = {
  name: 'spline',
  usage:
    'spline --diameter LENGTH (--count TEETH | --half TEETH [--other-half TEETH]) [--missing TEETH] [--caliper LENGTH]',
  about:
    'What standard a spline may be, from its outside diameter (inches, or with mm) and its count around or over half.',
  run(args) {
    const { words, values } = takeArguments(args, {
      values: ['diameter', 'count', 'half', 'other-half', 'missing', 'caliper'],
      flags: [],
    });
    if (words.length > 0) throw new UsageError(`spline takes no file: remove ${quoted(words[0] as string)}`);
    return answer(values);
  },
};
