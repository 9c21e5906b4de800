import { spawn } from 'node:child_process';
import { onLauncherEnd } from '../lifetime.ts';
import { REFUSED_EXIT } from './exit-codes.ts';

/** ms. A host that ends badly sooner than this has not come up. */
const UP_AFTER = 5000;

export interface HostEnd {
  /** What the launcher is to end with itself. */
  readonly code: number;
  /** In one clause why it did not come up; undefined if it did, or has said why not itself. */
  readonly failure: string | undefined;
}

/**
 * Runs a host until it ends. It is ended in its turn when this program is asked to or loses its own launcher: by a
 * signal, and by the end of its standard input, which it also notices if this program is killed.
 */
export function runHost(command: string, args: readonly string[]): Promise<HostEnd> {
  // Set in the terminals of some editors, it would turn Electron into a plain Node.
  const { ELECTRON_RUN_AS_NODE: _, ...env } = process.env;
  const begun = Date.now();
  const child = spawn(command, args, { stdio: ['pipe', 'inherit', 'inherit'], env });
  child.stdin.on('error', () => {});
  let askedToEnd = false;
  onLauncherEnd(() => {
    askedToEnd = true;
    child.stdin.end();
    // On Windows this would be no signal but a death.
    if (process.platform !== 'win32') child.kill('SIGTERM');
  });
  return new Promise((resolve) => {
    child.once('error', (error) => resolve({ code: 1, failure: error.message }));
    child.once('exit', (code, signal) => {
      const early = !askedToEnd && code !== 0 && code !== REFUSED_EXIT && Date.now() - begun < UP_AFTER;
      const failure = early ? `it ended at once with ${signal ?? `exit code ${code}`}` : undefined;
      resolve({ code: askedToEnd ? 0 : (code ?? 1), failure });
    });
  });
}
