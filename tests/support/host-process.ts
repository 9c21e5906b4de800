import { type ChildProcess, spawn } from 'node:child_process';
import { resolve } from 'node:path';
import { onTestFinished } from 'vitest';

export const ROOT = resolve(import.meta.dirname, '../..');

export interface RunningProgram {
  readonly child: ChildProcess;
  /** All that it has said so far, both streams. */
  readonly said: () => string;
  /** Waits until it has said something that fits, and gives the fit. */
  readonly says: (pattern: RegExp) => Promise<RegExpMatchArray>;
  /** Its exit code, or the signal that ended it. */
  readonly ended: Promise<number | string | null>;
}

export interface ProgramOptions {
  readonly env?: Record<string, string>;
  readonly stdin?: 'pipe' | 'ignore';
  readonly uid?: number;
  readonly detached?: boolean;
}

/** Starts a program of this repository with the Node of the tests; it does not outlive its test. */
export function startProgram(
  file: string,
  args: readonly string[],
  options: ProgramOptions = {},
): RunningProgram {
  const { env = {}, stdin = 'ignore', ...others } = options;
  // Without the variables that would keep a window from opening, or make one open: each test says what it wants.
  const { CI: _ci, DISPLAY: _display, WAYLAND_DISPLAY: _wayland, ...inherited } = process.env;
  const child = spawn(process.execPath, [resolve(ROOT, file), ...args], {
    cwd: ROOT,
    env: { ...inherited, TOEBOARD_NO_WINDOW: '1', ...env },
    stdio: [stdin, 'pipe', 'pipe'],
    ...others,
  });
  let text = '';
  const listeners = new Set<() => void>();
  for (const stream of [child.stdout, child.stderr])
    stream?.on('data', (chunk: Buffer) => {
      text += chunk.toString();
      for (const listener of listeners) listener();
    });
  const ended = new Promise<number | string | null>((done) =>
    child.once('close', (code, signal) => {
      done(signal ?? code);
      for (const listener of listeners) listener();
    }),
  );
  let over = false;
  void ended.then(() => {
    over = true;
  });
  onTestFinished(async () => {
    if (!over) child.kill('SIGKILL');
    await ended;
  });

  const says = (pattern: RegExp) =>
    new Promise<RegExpMatchArray>((found, failed) => {
      const look = () => {
        const match = text.match(pattern);
        if (!match && child.exitCode === null && child.signalCode === null) return;
        listeners.delete(look);
        if (match) found(match);
        else failed(new Error(`the program ended without saying ${pattern}: ${text}`));
      };
      listeners.add(look);
      look();
    });

  return { child, said: () => text, says, ended };
}

/** The address that a loopback host prints. */
export const ADDRESS = /http:\/\/127\.0\.0\.1:\d+\/#code=[\w-]+/;
