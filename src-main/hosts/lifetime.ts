import { fstatSync } from 'node:fs';

const SIGNALS: readonly NodeJS.Signals[] = ['SIGINT', 'SIGTERM', 'SIGHUP'];

function stdinIsPipe(): boolean {
  try {
    const stdin = fstatSync(0);
    return stdin.isFIFO() || stdin.isSocket();
  } catch {
    return false;
  }
}

/**
 * Calls once when whoever started this program wants it to end or is gone: a signal, or the end of standard input
 * where that is a pipe. A terminal or nothing at all says nothing about the launcher.
 */
export function onLauncherEnd(end: () => void): void {
  let ended = false;
  const once = () => {
    if (ended) return;
    ended = true;
    end();
  };
  for (const signal of SIGNALS) process.on(signal, once);
  if (stdinIsPipe()) process.stdin.resume().on('end', once).on('error', once);
}
