import { execFile } from 'node:child_process';
import { resolve } from 'node:path';
import { runCommand } from '../../src-main/commands/run.ts';

const ROOT = resolve(import.meta.dirname, '../..');

/** What a command leaves behind: its exit code and all that it wrote on the two streams. */
export interface Answer {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}

/** Runs a command in the test's own process, through the one function that the program itself is. Paths as from the root. */
export async function toeboard(...args: string[]): Promise<Answer> {
  const out: string[] = [];
  const err: string[] = [];
  const code = await runCommand(args, {
    out: async (text) => void out.push(text),
    err: (text) => void err.push(text),
  });
  return { code, out: out.join(''), err: err.join('') };
}

/** What a real start may need that one in the test's process cannot have. */
export interface StartOptions {
  readonly uid?: number | undefined;
}

/** Starts the program as a shell does and waits for its end: a process of its own, real streams, a real exit code. */
export function startedToeboard(args: readonly string[], { uid }: StartOptions = {}): Promise<Answer> {
  return new Promise((done) => {
    execFile(
      process.execPath,
      [resolve(ROOT, 'src-main/command-line.ts'), ...args],
      { cwd: ROOT, maxBuffer: 64e6, ...(uid === undefined ? {} : { uid }) },
      (error, out, err) => done({ code: error ? Number(error.code) : 0, out, err }),
    );
  });
}
