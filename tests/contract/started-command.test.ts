import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { type Answer, startedToeboard, toeboard } from '../support/command-line.ts';
import { newFolder, removeFolder } from '../support/host-folder.ts';
import { ROOT } from '../support/host-process.ts';
import { rawLayout } from '../support/layouts.ts';

// The other tests run commands inside their own process. Here the program is started as a shell starts it, with a process,
// streams and an exit code of its own.

const PROGRAM = join(ROOT, 'src-main/command-line.ts');
const GOOD = 'projects/hairpins-side-steer.json';
const folder = newFolder();
afterAll(() => removeFolder(folder));

describe('a started program says on its streams, and leaves as exit code, what the command gives', () => {
  const rubbish = join(folder, 'rubbish.json');
  writeFileSync(
    rubbish,
    Uint8Array.from({ length: 10_000_000 }, (_, i) => (i * 2654435761) >>> 24),
  );

  test.each<[string, readonly string[], number]>([
    ['help', ['--help'], 0],
    ['help on one command', ['ride', '--help'], 0],
    ['an answer', ['check', GOOD], 0],
    ['a table', ['sweep', GOOD, '--heave=-75:75:25', '--csv'], 0],
    ['a wrong input', ['aim', 'package.json'], 1],
    ['ten megabytes of rubbish', ['sweep', rubbish], 1],
    ['an endless device', ['check', '/dev/zero'], 1],
    ['no command', [], 2],
    ['a wrong option', ['turn', GOOD, '--wheels', '4'], 2],
  ])('%s', async (_, args, code) => {
    const started = await startedToeboard(args);
    expect(started).toEqual(await toeboard(...args));
    expect(started.code).toBe(code);
  });
});

/** Starts a command whose reader takes `pieces` pieces of the answer and then closes the pipe. */
async function readFrom(args: readonly string[], pieces: number): Promise<Answer> {
  const child = spawn(process.execPath, [PROGRAM, ...args], { cwd: ROOT, stdio: ['ignore', 'pipe', 'pipe'] });
  let out = '';
  let err = '';
  let left = pieces;
  child.stdout.on('data', (data: Buffer) => {
    out += data.toString();
    left -= 1;
    if (left === 0) child.stdout.destroy();
  });
  child.stderr.on('data', (data: Buffer) => {
    err += data.toString();
  });
  const [code] = (await once(child, 'close')) as [number];
  return { code, out, err };
}

describe('an answer larger than a pipe holds', () => {
  const file = join(folder, 'layout.json');
  writeFileSync(file, JSON.stringify(rawLayout()));
  const args = ['sweep', file, '--heave=-75:75:0.05', '--csv'];

  test('arrives whole', async () => {
    const answer = await readFrom(args, Number.POSITIVE_INFINITY);
    expect(answer).toEqual(await toeboard(...args));
    expect(answer.code).toBe(0);
    expect(answer.out.length).toBeGreaterThan(500_000);
  });

  test('is broken off without a word by a reader that has seen enough', async () => {
    const { code, out, err } = await readFrom(args, 1);
    expect({ code, err }).toEqual({ code: 0, err: '' });
    const whole = (await toeboard(...args)).out;
    expect(whole.startsWith(out)).toBe(true);
    expect(out.length).toBeLessThan(whole.length);
  });
});
