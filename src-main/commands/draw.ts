import { extname } from 'node:path';
import { quoted } from '../../shared-math/outside/index.ts';
import type { Turn } from '../../shared-math/pictorial/index.ts';
import { toRadians } from '../../shared-math/units/index.ts';
import {
  DRAWING_FORMATS,
  DRAWN_VIEWS,
  type DrawingJob,
  DrawingRefused,
  formatTrouble,
  roomsTrouble,
  USUAL_TURN,
} from '../output/drawings/job.ts';
import { NoType } from '../output/pens/no-type.ts';
import { choice, FRACTIONS, onlyFile, single, takeArguments, UNITS } from './arguments.ts';
import { readLayoutFile, shown } from './layout-file.ts';
import { calledOffByHand, writeOut } from './out-file.ts';
import { ROOM_USAGE, roomsFrom } from './rooms.ts';
import { type Command, InputError, type SlowAnswer, UsageError } from './usage.ts';

/** The format that a file's ending tells. */
function formatOf(file: string): DrawingJob['format'] {
  const ending = extname(file).slice(1).toLowerCase();
  const format = DRAWING_FORMATS.find((entry) => entry === ending);
  if (!format)
    throw new UsageError(
      `--out: a drawing ends in ${DRAWING_FORMATS.map((entry) => `.${entry}`).join(', ')}, found ${quoted(file)}`,
    );
  return format;
}

/** The grip that the brakes use, as a share of the load; 0, they are off. */
function gripIn(options: ReadonlyMap<string, string>): number {
  const grip = single(options, 'braking', 2);
  if (grip < 0) throw new UsageError('--braking is a share of the load, from 0 to 2');
  return grip;
}

/** From where a pictorial looks: degrees from ahead toward the car's left, and above level. */
function turnIn(view: DrawingJob['view'], options: ReadonlyMap<string, string>): Turn {
  const { azimuth, elevation } = USUAL_TURN;
  for (const name of ['turn', 'rise'])
    if (options.has(name) && view !== 'pictorial') throw new UsageError(`--${name} is for --view pictorial`);
  const rise = single(options, 'rise', 90);
  if (rise < 0) throw new UsageError('--rise is an angle above level, from 0 to 90');
  return {
    azimuth: options.has('turn') ? toRadians(single(options, 'turn', 360)) : azimuth,
    elevation: options.has('rise') ? toRadians(rise) : elevation,
  };
}

async function* answer(file: string, out: string, job: Omit<DrawingJob, 'document'>): SlowAnswer {
  const document = readLayoutFile(file);
  // Loaded here, so that no other command waits for it.
  const { drawFile } = await import('../output/drawings/index.ts');
  const bytes = await calledOffByHand(async (signal) => {
    const whole = await drawFile({ ...job, document, signal }).catch((error: unknown) => {
      throw error instanceof DrawingRefused || error instanceof NoType
        ? new InputError(`${shown(file)}: ${error.message}`)
        : error;
    });
    signal.throwIfAborted();
    await writeOut(out, whole);
    return whole.length;
  });
  const { view, format, unit } = job;
  yield `${JSON.stringify({ format: 'toeboard-drawing', version: 1, layout: document.name, view, kind: format, unit, file: out, bytes })}\n`;
}

export const draw: Command = {
  name: 'draw',
  usage: `draw LAYOUT.json --view side|top|front|views|pictorial|templates|3d|curves|steer|toe|turn --out FILE.dxf|svg|png [--unit in|mm] [--fraction 16|32|64|0] [--heave MM] [--roll DEGREES] [--handwheel DEGREES] [--braking GRIP] [--turn DEGREES] [--rise DEGREES] ${ROOM_USAGE}`,
  about:
    'Draws a view, the points and links in space (dxf) or curves (svg, png) into a file; its ending says which kind.',
  run(args) {
    const taken = takeArguments(args, {
      values: [
        'view',
        'out',
        'unit',
        'fraction',
        'heave',
        'roll',
        'handwheel',
        'braking',
        'turn',
        'rise',
        'room',
      ],
      flags: [],
    });
    const file = onlyFile(taken);
    const out = taken.values.get('out');
    if (!out) throw new UsageError('--out needs the file to write');
    if (!taken.values.has('view')) throw new UsageError(`--view needs one of ${DRAWN_VIEWS.join(', ')}`);
    const view = choice(taken, 'view', DRAWN_VIEWS);
    const format = formatOf(out);
    const trouble = formatTrouble(view, format);
    if (trouble) throw new UsageError(trouble);
    const rooms = roomsFrom(taken);
    const noRooms = roomsTrouble(view, rooms.rooms);
    if (noRooms) throw new UsageError(noRooms);
    return answer(file, out, {
      ...rooms,
      view,
      format,
      unit: choice(taken, 'unit', UNITS),
      fraction: Number(choice(taken, 'fraction', FRACTIONS)) as DrawingJob['fraction'],
      pose: {
        heave: single(taken.values, 'heave', 20_000),
        roll: toRadians(single(taken.values, 'roll', 180)),
        handwheel: toRadians(single(taken.values, 'handwheel', 36_000)),
        braking: gripIn(taken.values),
      },
      turn: turnIn(view, taken.values),
    });
  },
};
