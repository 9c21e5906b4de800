import { existsSync, globSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { Stryker } from '@stryker-mutator/core';
import { EQUIVALENT } from './equivalent.ts';
import { isPart, PARTS, type PartName, patternsOf } from './parts.ts';
import { type Mutant, mutantOf, shares, tallyOf } from './tally.ts';

// npm run mutants [-- PART | PART/FILE …] [--again | --every N] [--cores N]
// Changes one spot of the mathematics at a time and sees whether a test fails. Not part of npm test: it takes hours.

const USAGE = `npm run mutants [-- PART …] [--again | --every N] [--cores N]
PART: ${Object.keys(PARTS).join(', ')}, or one file of one, as sweep/turn.ts; all parts if none is named.
--again tries only what the last run of that part left alive. --every N tries the mutants of each Nth line alone: a
sample, for a first look. --cores: 2 unless given.`;

const ENOUGH = 90;
const root = resolve(import.meta.dirname, '../..');
process.chdir(root);

interface Choice {
  readonly again: boolean;
  readonly every: number;
  readonly cores: number;
}

interface Wish {
  readonly name: string;
  readonly part: PartName;
  readonly patterns: readonly string[];
}

function wishOf(name: string): Wish | undefined {
  const [part = '', ...file] = name.split('/');
  if (!isPart(part)) return undefined;
  return { name, part, patterns: patternsOf(part, file.join('/')) };
}

const reportOf = ({ name }: Wish) => join(root, 'out/mutants', `${name.replaceAll('/', '-')}.json`);

/** The mutants that a part's last run left alive, as stretches of lines and columns. */
function leftAlive(wish: Wish): string[] {
  const path = reportOf(wish);
  if (!existsSync(path)) throw new Error(`no run of ${wish.name} to go on from; leave out --again`);
  const mutants = JSON.parse(readFileSync(path, 'utf8')) as Mutant[];
  const alive = mutants.filter(({ status }) => status === 'survived');
  return [...new Set(alive.map(({ file, stretch }) => `${file}:${stretch}`))];
}

function filesOf({ patterns }: Wish): string[] {
  const left = patterns.filter((one) => one.startsWith('!')).map((one) => one.slice(1));
  return patterns.filter((one) => !one.startsWith('!')).flatMap((one) => globSync(one, { exclude: left }));
}

/** Each Nth line of a part's files; mutants that reach over several lines are not among them. */
const sampled = (wish: Wish, every: number): string[] =>
  filesOf(wish)
    .sort()
    .flatMap((file) => {
      const lines = readFileSync(file, 'utf8').split('\n').length;
      const first = 1 + Math.floor(every / 2);
      return Array.from({ length: Math.ceil((lines - first + 1) / every) }, (_, i) => {
        const line = first + i * every;
        return `${file}:${line}-${line}`;
      });
    });

async function run(wish: Wish, { again, every, cores }: Choice): Promise<boolean> {
  process.env['MUTANTS_PART'] = wish.part;
  const patterns = again ? leftAlive(wish) : every > 1 ? sampled(wish, every) : [...wish.patterns];
  if (patterns.length === 0) return true;
  const tempDirName = mkdtempSync(join(tmpdir(), 'toeboard-mutants-'));
  const started = Date.now();
  // As they are now: the run takes a copy, and they may be worked on meanwhile.
  const sources = new Map(filesOf(wish).map((file) => [resolve(file), readFileSync(file, 'utf8')]));
  const results = await new Stryker({
    testRunner: 'lean',
    plugins: [join(import.meta.dirname, 'lean-runner.ts')],
    mutate: patterns,
    ignorePatterns: ['out', 'tests/browser', 'tests/golden', 'projects/photos'],
    coverageAnalysis: 'perTest',
    concurrency: cores,
    // Loops without end are known by how often they come by; this is for those that come by nothing.
    timeoutMS: 20_000,
    disableTypeChecks: true,
    reporters: [process.stdout.isTTY ? 'progress' : 'progress-append-only'],
    allowConsoleColors: false,
    tempDirName,
    cleanTempDir: 'always',
  }).runMutationTest();
  rmSync(tempDirName, { recursive: true, force: true });
  const minutes = (Date.now() - started) / 60_000;

  const mutants = results.flatMap((result) => mutantOf(result, sources.get(result.fileName) ?? '', root));
  mkdirSync(join(root, 'out/mutants'), { recursive: true });
  if (every === 1) writeFileSync(reportOf(wish), JSON.stringify(mutants, null, 1));
  const tally = tallyOf(mutants, EQUIVALENT);
  for (const { file, line, is, becomes, status } of tally.alive)
    process.stdout.write(`${file}:${line} ${status}\n  is       ${is}\n  becomes  ${becomes}\n`);
  for (const { file, is } of tally.stale)
    if (
      !again &&
      every === 1 &&
      wish.name === wish.part &&
      file.startsWith(`shared-math/${PARTS[wish.part].folder}/`)
    )
      process.stdout.write(`in the list of equivalent mutants, but killed or gone: ${file}: ${is}\n`);
  for (const line of shares(tally)) process.stdout.write(`${line}\n`);
  const late = results.filter(({ status }) => status === 'Timeout').length;
  process.stdout.write(
    `${wish.name}${again ? ', what was left' : every > 1 ? `, each ${every}th line` : ''}: ${mutants.length} mutants, ${tally.percent.toFixed(1)} of 100 killed or equivalent (${late} by running on without end), in ${minutes.toFixed(1)} min\n`,
  );
  return tally.percent >= ENOUGH;
}

const { values, positionals } = readWords();
const wishes = (positionals.length > 0 ? positionals : Object.keys(PARTS)).map(wishOf);
const choice: Choice = {
  again: values.again === true,
  every: Number(values.every ?? 1),
  cores: Number(values.cores ?? 2),
};
if (wishes.includes(undefined) || !(choice.cores >= 1) || !(choice.every >= 1)) {
  process.stderr.write(`${USAGE}\n`);
  process.exit(2);
}
let enough = true;
for (const wish of wishes) enough = (await run(wish as Wish, choice)) && enough;
process.exit(enough ? 0 : 1);

function readWords() {
  try {
    return parseArgs({
      allowPositionals: true,
      options: { again: { type: 'boolean' }, every: { type: 'string' }, cores: { type: 'string' } },
    });
  } catch {
    process.stderr.write(`${USAGE}\n`);
    process.exit(2);
  }
}
