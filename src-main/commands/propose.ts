import { mkdir } from 'node:fs/promises';
import { join } from 'node:path';
import { quoted } from '../../shared-math/outside/index.ts';
import {
  drawnFigures,
  figureRows,
  gatherProposals,
  givingWords,
  HOLDS,
  type HoldName,
  heldAsMeasured,
  heldWords,
  isRoomName,
  isWordedRoomName,
  type NewPart,
  NONE_LEFT,
  type NoFit,
  type Proposal,
  type ProposalFigures,
  type ProposeAnswer,
  type ProposeQuestion,
  ROOM_NAMES,
  ROOMS_IN_WORDS,
  type Rooms,
  readRoom,
  readWordedRoom,
  roomsWords,
  standsBy,
  type TaskResult,
  whyNothingFits,
} from '../../shared-math/propose/index.ts';
import type { LengthStyle } from '../../shared-math/units/index.ts';
import { readShelfCsv, SHELF_TEXT_MAX, safeFileName, writeReason } from '../files/index.ts';
import { onlyFile, takeArguments } from './arguments.ts';
import { readLayoutFile, readText, shown } from './layout-file.ts';
import { calledOffByHand, writeOut } from './out-file.ts';
import { searchOnThreads } from './propose-threads.ts';
import { readSeed } from './tune-arguments.ts';
import { type Answer, type Command, InputError, type SlowAnswer, UsageError } from './usage.ts';

const STYLE: LengthStyle = { unit: 'mm', fraction: 16 };

/** What stands as drawn: names with commas between, `none` for nothing; undefined if the option is not given. */
function readHeld(text: string | undefined): HoldName[] | undefined {
  if (text === undefined) return undefined;
  const names = text.split(',').map((name) => name.trim());
  if (names.length === 1 && names[0] === 'none') return [];
  return names.map((name, i) => {
    const known = HOLDS.find((each) => each === name);
    if (!known)
      throw new UsageError(`--hold: ${quoted(name)} is not known; there are ${HOLDS.join(', ')}, none`);
    if (names.indexOf(name) < i) throw new UsageError(`--hold: ${name} is given twice`);
    return known;
  });
}

/** The entries of `--room`: a name and what stands behind its sign; what has no sign of its own goes on with the one before it. */
function roomEntries(text: string): (readonly [name: string, given: string | undefined])[] {
  const entries: (readonly [name: string, given: string | undefined])[] = [];
  for (const part of text.split(',').map((each) => each.trim())) {
    const before = entries.at(-1);
    const [name = '', ...given] = part.split('=').map((each) => each.trim());
    if (given.length === 0 && before?.[1] !== undefined && isWordedRoomName(before[0]))
      entries.splice(-1, 1, [before[0], `${before[1]},${part}`]);
    else entries.push([name, given.length === 0 ? undefined : given.join('=')]);
  }
  return entries;
}

/** What of one freedom may be tried. */
function readRoomOf(name: HoldName, given: string | undefined): Rooms {
  if (isWordedRoomName(name)) {
    const ways = given?.split(',').map((way) => way.trim()) ?? [''];
    const read = readWordedRoom(name, ways);
    if (!read.ok) throw new UsageError(`--room ${name}: ${read.failure}`);
    return { [name]: read.value };
  }
  if (given === undefined || given.includes('='))
    throw new UsageError(
      `--room expects ${name}=FROM:TO, found ${quoted(given === undefined ? name : `${name}=${given}`)}`,
    );
  if (!isRoomName(name)) throw new Error(`${name} has no room`);
  const read = readRoom(name, given, STYLE);
  if (!read.ok) throw new UsageError(`--room ${name}: ${read.failure}`);
  return { [name]: read.value };
}

/** How far what is not held may go: NAME=FROM:TO, mm and degrees, or NAME=WAY,WAY, with commas between. */
function readRooms(text: string | undefined, held: readonly HoldName[]): Rooms {
  let rooms: Rooms = {};
  for (const [given, room] of text === undefined ? [] : roomEntries(text)) {
    const name = HOLDS.find((each) => each === given);
    if (!name) throw new UsageError(`--room: ${quoted(given)} is not known; there are ${HOLDS.join(', ')}`);
    if (rooms[name]) throw new UsageError(`--room: ${name} is given twice`);
    const by = standsBy(held, name);
    if (by === name)
      throw new UsageError(`--room: ${name} is held as drawn; leave it out of --hold to give it room`);
    if (by)
      throw new UsageError(
        `--room: ${name} stands as drawn, as ${by} is held; leave ${by} out of --hold to give it room`,
      );
    rooms = { ...rooms, ...readRoomOf(name, room) };
  }
  return rooms;
}

function readShelf(file: string | undefined): NonNullable<ProposeQuestion['shelf']> {
  if (file === undefined) return [];
  const read = readShelfCsv(readText(file, SHELF_TEXT_MAX, 'a shelf'));
  if (!read.ok) throw new InputError(`${shown(file)}: ${read.failure}`);
  return read.value.map((part, i) => ({ id: String(i + 1), part }));
}

const orNull = (value: number | undefined): number | null =>
  value === undefined || !Number.isFinite(value) ? null : value;

/** Figures as they are reported: degrees, mm, N; null where there is none. */
function reported(figures: ProposalFigures) {
  const { oneWheel, brakeSteer, band, nearest, ...rest } = figures;
  return {
    ...rest,
    oneWheel: orNull(oneWheel),
    brakeSteer: orNull(brakeSteer),
    band: orNull(band),
    nearest: nearest ?? null,
  };
}

function asJson(question: ProposeQuestion, answer: ProposeAnswer, files: readonly string[]): string {
  const { document, held, rooms, seed } = question;
  const drawn = drawnFigures(question);
  return `${JSON.stringify(
    {
      format: 'toeboard-proposals',
      version: 1,
      layout: document.name,
      seed,
      held,
      rooms,
      evaluations: answer.evaluations,
      drawn: drawn ? reported(drawn) : null,
      proposals: answer.proposals.map(({ layout, figures, nearestLimit, ...rest }, i) => ({
        ...rest,
        nearestLimit: nearestLimit ?? null,
        figures: reported(figures),
        file: files[i] ?? null,
        layout,
      })),
      why: answer.why
        ? {
            sentence: answer.why.sentence,
            excluding: answer.why.excluding,
            single: answer.why.single,
            ways: answer.why.ways,
          }
        : null,
      reason: answer.noFits.map(({ layout, ...rest }) => ({ ...rest, nearest: layout ?? null })),
    },
    null,
    2,
  )}\n`;
}

const partLine = ({ words, count, onShelf }: NewPart) =>
  `    ${count} x ${words}${onShelf > 0 ? ` (${onShelf} on the shelf)` : ''}\n`;

function* proposalText(proposal: Proposal, drawn: ProposalFigures | undefined): Answer {
  for (const sentence of proposal.good) yield `  + ${sentence}\n`;
  for (const sentence of proposal.costs) yield `  - ${sentence}\n`;
  yield `  Nearest limit: ${proposal.nearestLimit?.sentence ?? 'none comes near'}\n`;
  const rows = figureRows(proposal.figures, drawn, STYLE);
  yield `  ${''.padEnd(34)}${'this one'.padEnd(30)}${drawn ? ' as drawn' : ''}`.trimEnd();
  yield '\n';
  for (const { what, proposed, drawn: beside } of rows)
    yield `${`  ${what.padEnd(34)}${proposed.padEnd(30)}${drawn ? ` ${beside ?? 'none'}` : ''}`.trimEnd()}\n`;
  if (proposal.newParts.length > 0) yield '  Parts to get:\n';
  for (const part of proposal.newParts) yield partLine(part);
}

function* reasonText(list: readonly NoFit[], why: ProposeAnswer['why']): Answer {
  yield `${why ? why.sentence : 'Nothing fits this car as it is drawn and held.'}\n`;
  const giving = why ? givingWords(why) : '';
  if (giving) yield `${giving}\n`;
  for (const { words, name } of why?.ways ?? []) yield `With ${words}: ${name}.\n`;
  yield list.length > 0 ? 'What stands in the way, the nearest first:\n' : `${NONE_LEFT}\n`;
  for (const { idea, sentences } of list) {
    yield `${idea}\n`;
    for (const sentence of sentences) yield `  ${sentence}\n`;
  }
}

function* asText(question: ProposeQuestion, answer: ProposeAnswer, files: readonly string[]): Answer {
  const { document, held = [], rooms = {}, seed } = question;
  yield `${document.name}\n`;
  yield `${heldWords(held)}\n`;
  const given = roomsWords(rooms, STYLE);
  if (given !== '') yield `${given}\n`;
  yield `${answer.evaluations} arrangements tried, seed ${seed}.\n`;
  if (answer.proposals.length === 0) yield* reasonText(answer.noFits, answer.why);
  const drawn = answer.proposals.length > 0 ? drawnFigures(question) : undefined;
  for (const [i, proposal] of answer.proposals.entries()) {
    yield `\n${i + 1}. ${proposal.name}\n`;
    yield* proposalText(proposal, drawn);
    if (files[i] !== undefined) yield `  Written to ${files[i]}\n`;
  }
}

/** Writes each proposal as a layout document; the files in the order of the proposals. */
async function writeAll(folder: string, { proposals }: ProposeAnswer): Promise<string[]> {
  try {
    await mkdir(folder, { recursive: true });
  } catch (error) {
    throw new InputError(`${shown(folder)}: ${writeReason(error) ?? (error as Error).message}`);
  }
  const files: string[] = [];
  for (const [i, { name, layout }] of proposals.entries()) {
    const file = join(folder, safeFileName(`${i + 1} ${name}`, 'json'));
    await writeOut(file, Buffer.from(`${JSON.stringify(layout, null, 2)}\n`, 'utf8'));
    files.push(file);
  }
  return files;
}

/** The answer out of all results; where nothing fits, with what excludes one another. */
async function withReason(
  question: ProposeQuestion,
  results: readonly TaskResult[],
  signal: AbortSignal,
): Promise<ProposeAnswer> {
  const gathered = gatherProposals(results);
  if (gathered.proposals.length > 0) return gathered;
  const search = whyNothingFits(question, results);
  let step = search.next();
  while (!step.done) {
    // So that the hand that calls it off is heard.
    await new Promise((resolve) => setImmediate(resolve));
    signal.throwIfAborted();
    step = search.next();
  }
  return { ...gathered, why: step.value };
}

async function* answer(question: ProposeQuestion, out: string | undefined, json: boolean): SlowAnswer {
  const [found, files] = await calledOffByHand(async (signal) => {
    const results = await searchOnThreads(question, signal);
    const gathered = await withReason(question, results, signal);
    return [gathered, out === undefined ? [] : await writeAll(out, gathered)] as const;
  });
  if (json) yield asJson(question, found, files);
  else yield* asText(question, found, files);
}

export const propose: Command = {
  name: 'propose',
  usage:
    'propose LAYOUT.json [--hold NAME,…|none] [--room NAME=FROM:TO|NAME=WAY,…,…] [--shelf SHELF.csv] [--seed N] [--out FOLDER] [--json]',
  about: `Looks for whole arrangements of the steering that fit this car, or says what stands in the way. What is measured or planned is held as drawn unless --hold says otherwise: ${HOLDS.join(', ')}. The rest may go as far as is usual, or as far as --room says, mm and degrees: ${ROOM_NAMES.join(', ')}; or one or several of these: ${Object.entries(
    ROOMS_IN_WORDS,
  )
    .map(([name, ways]) => `${name}=${ways.join(',')}`)
    .join('; ')}.`,
  run(args) {
    const taken = takeArguments(args, { values: ['hold', 'room', 'shelf', 'seed', 'out'], flags: ['json'] });
    const { values, flags } = taken;
    const document = readLayoutFile(onlyFile(taken));
    const held = readHeld(values.get('hold')) ?? heldAsMeasured(document);
    const question: ProposeQuestion = {
      document,
      held,
      rooms: readRooms(values.get('room'), held),
      shelf: readShelf(values.get('shelf')),
      limits: {},
      style: STYLE,
      seed: readSeed(values.get('seed')),
    };
    return answer(question, values.get('out'), flags.has('json'));
  },
};
