import { writeAside, writeReason } from '../files/index.ts';
import { shown } from './layout-file.ts';
import { InputError } from './usage.ts';

/** Does the work with Ctrl-C heard: it is called off, and no half file is left. */
export async function calledOffByHand<Value>(work: (signal: AbortSignal) => Promise<Value>): Promise<Value> {
  const off = new AbortController();
  const stop = () => off.abort(new InputError('cancelled: nothing was written'));
  process.once('SIGINT', stop);
  try {
    return await work(off.signal);
  } finally {
    process.removeListener('SIGINT', stop);
  }
}

/** Writes what was made, whole or not at all; an InputError says why not. */
export async function writeOut(file: string, content: Uint8Array): Promise<void> {
  try {
    await writeAside(file, content);
  } catch (error) {
    throw new InputError(`${shown(file)}: ${writeReason(error) ?? (error as Error).message}`);
  }
}
