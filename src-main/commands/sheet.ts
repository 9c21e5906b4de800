import { quoted } from '../../shared-math/outside/index.ts';
import { PRINT_KINDS, type PrintJob } from '../output/pages/job.ts';
import { NoType } from '../output/pens/no-type.ts';
import { PAPER_NAMES } from '../output/pens/papers.ts';
import { type Arguments, choice, FRACTIONS, onlyFile, takeArguments, UNITS } from './arguments.ts';
import { readLayoutFile, shown } from './layout-file.ts';
import { calledOffByHand, writeOut } from './out-file.ts';
import { ROOM_USAGE, roomsFrom } from './rooms.ts';
import { type Command, InputError, type SlowAnswer, UsageError } from './usage.ts';

/** The day that stands on the sheet: a date as YYYY-MM-DD, at noon so that it is the same day everywhere; else now, to the minute. */
function dayOf({ values }: Arguments): Pick<PrintJob, 'date' | 'dayOnly'> {
  const given = values.get('date');
  if (given === undefined) return { date: new Date() };
  const match = /^(\d{4})-(\d{2})-(\d{2})$/.exec(given);
  const [year, month, day] = (match ?? []).slice(1).map(Number) as [number?, number?, number?];
  const date = new Date(year ?? Number.NaN, (month ?? 0) - 1, day, 12);
  if (Number.isNaN(date.getTime()) || date.getMonth() + 1 !== month || date.getDate() !== day)
    throw new UsageError(`--date is a day as YYYY-MM-DD, found ${quoted(given)}`);
  return { date, dayOnly: true };
}

/** The revision that stands on the sheet; without the shop's store nothing counts it. */
function revisionOf({ values }: Arguments): Pick<PrintJob, 'revision'> {
  const given = values.get('revision');
  if (given === undefined) return {};
  if (!/^[1-9]\d{0,5}$/.test(given))
    throw new UsageError(`--revision is a whole number from 1, found ${quoted(given)}`);
  return { revision: Number(given) };
}

/** What this command makes: what is printed, and the page that moves, which is handed on as it is. */
const KINDS = [...PRINT_KINDS, 'moving'] as const;
type Kind = (typeof KINDS)[number];

/** The kinds whose picture can show another layout beside it. */
const SHOWS_BOTH: ReadonlySet<Kind> = new Set(['customer', 'moving']);

type SheetJob = Omit<PrintJob, 'document' | 'kind'>;

/** How each kind is made; loaded when it is, so that no other command waits for it. */
async function made(kind: Kind, job: SheetJob & Pick<PrintJob, 'document'>): Promise<Uint8Array> {
  if (kind === 'moving') return (await import('../output/moving/moving-page.ts')).movingPage(job);
  return (await import('../output/pages/index.ts')).printPdf({ ...job, kind });
}

async function* answer(
  file: string,
  out: string,
  kind: Kind,
  besideFile: string | undefined,
  job: SheetJob,
): SlowAnswer {
  const document = readLayoutFile(file);
  const beside = besideFile === undefined ? {} : { beside: readLayoutFile(besideFile) };
  const bytes = await calledOffByHand(async (signal) => {
    const whole = await made(kind, { ...job, ...beside, document, signal }).catch((error: unknown) => {
      throw error instanceof NoType ? new InputError(`${shown(file)}: ${error.message}`) : error;
    });
    signal.throwIfAborted();
    await writeOut(out, whole);
    return whole.length;
  });
  const paper = kind === 'moving' ? {} : { paper: job.paper };
  yield `${JSON.stringify({ format: 'toeboard-sheet', version: 1, layout: document.name, kind, ...paper, file: out, bytes })}\n`;
}

export const sheet: Command = {
  name: 'sheet',
  usage: `sheet LAYOUT.json --out FILE.pdf|html [--kind ${KINDS.join('|')}] [--beside OTHER.json] ${ROOM_USAGE} [--paper letter|a4] [--unit in|mm] [--fraction 16|32|64|0] [--customer NAME] [--car NAME] [--drawn-by NAME] [--revision N] [--date YYYY-MM-DD]`,
  about:
    'Prints a PDF: the build sheet, templates at full size, the customer’s copy or the measuring sheet; or writes the page that moves, one HTML file. A layout beside it is shown on the customer’s copy and on the page that moves.',
  run(args) {
    const taken = takeArguments(args, {
      values: [
        'out',
        'kind',
        'paper',
        'unit',
        'fraction',
        'customer',
        'car',
        'date',
        'drawn-by',
        'revision',
        'beside',
        'room',
      ],
      flags: [],
    });
    const file = onlyFile(taken);
    const out = taken.values.get('out');
    const kind = choice(taken, 'kind', KINDS);
    if (!out) throw new UsageError(`--out needs the ${kind === 'moving' ? 'HTML file' : 'PDF'} to write`);
    const beside = taken.values.get('beside');
    if (beside !== undefined && !SHOWS_BOTH.has(kind))
      throw new UsageError(`--beside is for --kind ${[...SHOWS_BOTH].join(' or ')}`);
    if (taken.values.has('room') && kind !== 'sheet') throw new UsageError('--room is for --kind sheet');
    const unit = choice(taken, 'unit', UNITS);
    return answer(file, out, kind, beside, {
      // Who measures in millimetres has A4 in the printer.
      paper: choice(taken, 'paper', unit === 'mm' ? [...PAPER_NAMES].reverse() : PAPER_NAMES),
      unit,
      fraction: Number(choice(taken, 'fraction', FRACTIONS)) as PrintJob['fraction'],
      customer: taken.values.get('customer') ?? '',
      car: taken.values.get('car') ?? '',
      ...dayOf(taken),
      ...revisionOf(taken),
      ...roomsFrom(taken),
      drawnBy: taken.values.get('drawn-by') ?? '',
    });
  },
};
