import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { Stryker } from '@stryker-mutator/core';
import { EQUIVALENT } from './equivalent.ts';
import { isPart, PARTS, type PartName } from './parts.ts';
import { type Mutant, mutantOf, shares, tallyOf } from './tally.ts';

// npm run mutants [-- PART | PART/FILE …] [--again] [--cores N]
// Changes one spot of the mathematics at a time and sees whether a test fails. Not part of npm test: it takes hours.

const USAGE = `npm run mutants [-- PART …] [--again] [--cores N]
PART: ${Object.keys(PARTS).join(', ')}, or one file of one, as sweep/turn.ts; all parts if none is named.
--again tries only what the last run of that part left alive. --cores: 2 unless given.`;

const ENOUGH = 90;
const root = resolve(import.meta.dirname, '../..');
process.chdir(root);

interface Wish {
  readonly name: string;
  readonly part: PartName;
  readonly pattern: string;
}

function wishOf(name: string): Wish | undefined {
  const [part = '', ...file] = name.split('/');
  if (!isPart(part)) return undefined;
  const folder = `shared-math/${PARTS[part].folder}`;
  return { name, part, pattern: file.length > 0 ? `${folder}/${file.join('/')}` : `${folder}/**/*.ts` };
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

async function run(wish: Wish, again: boolean, cores: number): Promise<boolean> {
  process.env['MUTANTS_PART'] = wish.part;
  const patterns = again ? leftAlive(wish) : [wish.pattern];
  if (patterns.length === 0) return true;
  const tempDirName = mkdtempSync(join(tmpdir(), 'toeboard-mutants-'));
  const started = Date.now();
  const results = await new Stryker({
    testRunner: 'vitest',
    plugins: ['@stryker-mutator/vitest-runner'],
    vitest: { configFile: 'tests/mutants/vitest.config.ts', related: false },
    mutate: patterns,
    ignorePatterns: ['out', 'tests/browser', 'tests/golden', 'projects/photos'],
    coverageAnalysis: 'perTest',
    concurrency: cores,
    timeoutMS: 4000,
    disableTypeChecks: true,
    reporters: process.stdout.isTTY ? ['progress'] : [],
    allowConsoleColors: false,
    tempDirName,
    cleanTempDir: 'always',
  }).runMutationTest();
  rmSync(tempDirName, { recursive: true, force: true });
  const minutes = (Date.now() - started) / 60_000;

  const mutants = results.flatMap((result) => mutantOf(result, readFileSync(result.fileName, 'utf8'), root));
  mkdirSync(join(root, 'out/mutants'), { recursive: true });
  writeFileSync(reportOf(wish), JSON.stringify(mutants, null, 1));
  const tally = tallyOf(mutants, EQUIVALENT);
  for (const { file, line, is, becomes, status } of tally.alive)
    process.stdout.write(`${file}:${line} ${status}\n  is       ${is}\n  becomes  ${becomes}\n`);
  for (const { file, is } of tally.stale)
    if (!again && wish.name === wish.part && file.startsWith(`shared-math/${PARTS[wish.part].folder}/`))
      process.stdout.write(`in the list of equivalent mutants, but killed or gone: ${file}: ${is}\n`);
  for (const line of shares(tally)) process.stdout.write(`${line}\n`);
  process.stdout.write(`${wish.name}: ${tally.percent.toFixed(1)} of 100, in ${minutes.toFixed(1)} min\n`);
  return tally.percent >= ENOUGH;
}

const words = process.argv.slice(2);
const again = words.includes('--again');
const coresAt = words.indexOf('--cores');
const cores = coresAt < 0 ? 2 : Number(words[coresAt + 1]);
const names = words.filter((word, at) => !word.startsWith('--') && (coresAt < 0 || at !== coresAt + 1));
const wishes = (names.length > 0 ? names : Object.keys(PARTS)).map(wishOf);
if (wishes.includes(undefined) || !(cores >= 1)) {
  process.stderr.write(`${USAGE}\n`);
  process.exit(2);
}
let enough = true;
for (const wish of wishes) enough = (await run(wish as Wish, again, cores)) && enough;
process.exit(enough ? 0 : 1);
