import { extname } from 'node:path';
import { quoted } from '../../shared-math/outside/index.ts';
import { DrawingRefused } from '../output/drawings/job.ts';
import { FILM_SECONDS, FILM_WIDTHS, FILMED, type FilmJob } from '../output/film/job.ts';
import { NoType } from '../output/pens/no-type.ts';
import { choice, FRACTIONS, onlyFile, takeArguments, UNITS } from './arguments.ts';
import { readLayoutFile, shown } from './layout-file.ts';
import { calledOffByHand, writeOut } from './out-file.ts';
import { type Command, InputError, type SlowAnswer, UsageError } from './usage.ts';

async function* answer(
  file: string,
  out: string,
  besideFile: string | undefined,
  job: Omit<FilmJob, 'document'>,
): SlowAnswer {
  const document = readLayoutFile(file);
  const beside = besideFile === undefined ? {} : { beside: readLayoutFile(besideFile) };
  // Loaded here, so that no other command waits for it.
  const { makeFilm } = await import('../output/film/film.ts');
  const bytes = await calledOffByHand(async (signal) => {
    const whole = await makeFilm({ ...job, ...beside, document, signal }).catch((error: unknown) => {
      throw error instanceof DrawingRefused || error instanceof NoType
        ? new InputError(`${shown(file)}: ${error.message}`)
        : error;
    });
    signal.throwIfAborted();
    await writeOut(out, whole);
    return whole.length;
  });
  const { over, width, seconds } = job;
  yield `${JSON.stringify({ format: 'toeboard-film', version: 1, layout: document.name, over, width, seconds, file: out, bytes })}\n`;
}

const written = <Value extends number>(values: readonly Value[]) => values.map(String) as `${Value}`[];

export const film: Command = {
  name: 'film',
  usage: `film LAYOUT.json --out FILE.png [--over ${FILMED.join('|')}] [--width ${FILM_WIDTHS.join('|')}] [--seconds ${FILM_SECONDS.join('|')}] [--beside OTHER.json] [--unit in|mm] [--fraction 16|32|64|0] [--car NAME]`,
  about:
    'Films the pictorial through its bump, its roll or its steering, there and back: an animated PNG, of which readers that play none show the first picture.',
  run(args) {
    const taken = takeArguments(args, {
      values: ['out', 'over', 'width', 'seconds', 'beside', 'unit', 'fraction', 'car'],
      flags: [],
    });
    const file = onlyFile(taken);
    const out = taken.values.get('out');
    if (!out) throw new UsageError('--out needs the PNG to write');
    if (extname(out).toLowerCase() !== '.png' && extname(out).toLowerCase() !== '.apng')
      throw new UsageError(`--out: a film ends in .png or .apng, found ${quoted(out)}`);
    return answer(file, out, taken.values.get('beside'), {
      over: choice(taken, 'over', FILMED),
      width: Number(choice(taken, 'width', written(FILM_WIDTHS))) as FilmJob['width'],
      seconds: Number(choice(taken, 'seconds', written(FILM_SECONDS))) as FilmJob['seconds'],
      unit: choice(taken, 'unit', UNITS),
      fraction: Number(choice(taken, 'fraction', FRACTIONS)) as FilmJob['fraction'],
      car: taken.values.get('car') ?? '',
    });
  },
};
