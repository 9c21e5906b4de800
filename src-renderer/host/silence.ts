import type { Call, CallHost, Request } from '../../src-main/api/contract.ts';

/** ms without an answer after which the person is informed. */
export const SILENT_AFTER = 5000;

/** Calls that may well take longer: they read or write files of any size. */
const SLOW: ReadonlySet<Call> = new Set([
  'file.import',
  'file.exportCar',
  'shelf.importCsv',
  'demonstration.take',
]);

const listeners = new Set<(silent: boolean) => void>();
const silent = new Set<object>();

function tell(): void {
  for (const listener of listeners) listener(silent.size > 0);
}

/** The same host, listened to: while a call has been without an answer for too long, the listeners know. */
export function listening(host: CallHost): CallHost {
  const call = async (name: Call, input: Request<Call>) => {
    if (SLOW.has(name)) return host(name, input);
    const asked = {};
    const timer = setTimeout(() => {
      silent.add(asked);
      tell();
    }, SILENT_AFTER);
    try {
      return await host(name, input);
    } finally {
      clearTimeout(timer);
      if (silent.delete(asked)) tell();
    }
  };
  return call as CallHost;
}

/** Listens for a host that has not answered for a while (true), and for its answer (false). Returns how to stop. */
export function onSilence(listener: (silent: boolean) => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}
